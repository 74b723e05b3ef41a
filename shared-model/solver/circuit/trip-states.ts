import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { DeviceId } from "../../model/ids.ts";
import type { Phasors } from "../network/network.ts";
import { between, size } from "../network/phasor.ts";
import type { Circuit, OvercurrentCircuit, SensorCircuit } from "./circuit.ts";
import { mostAmps, residualOf } from "./currents.ts";
import { loopsAround, type SensorLoops } from "./sensor-loops.ts";
import {
  byOvercurrent,
  byResidual,
  classALimitS,
  GROUNDED_NEUTRAL_OHM,
  INSTANT_TIMES,
  RESIDUAL_LIMITS,
  SUPPLY_V,
  type Trips,
  type TripTime,
} from "./trip-limits.ts";

const wording = catalogue({
  contactsOpen: "Its contacts are open.",
  instant: (times: Part) => `${times} times its rating or more opens it at once`,
  afterAnHour: "it may open after an hour or more, or not at all",
  after: (earliest: Part, latest: Part) => `it opens after ${earliest} to ${latest}, as is typical`,
  sees: (milliamps: Part) => `It sees ${milliamps}`,
  staysClosed: (seen: Part, most: Part) => `${seen}; up to ${most} mA does not open it.`,
  between: (seen: Part, least: Part, most: Part) => `${seen}, between ${least} and ${most} mA: it may open.`,
  mustOpen: (seen: Part, least: Part, within: Part) => `${seen}: ${least} mA or more opens it, here within ${within}.`,
  seenDoesNotOpen: (seen: Part) => `${seen}: that does not open it.`,
  milliamps: (milliamps: Part) => `${milliamps} mA`,
  minutes: (minutes: Part) => `${minutes} min`,
  seconds: (seconds: Part) => `${seconds} s`,
  carries: (amps: Part, rating: Part) => `It carries ${amps} A of its ${rating} A`,
  forArcs: (milliamps: Part) => `It looks for arcs, not for leaks, and sees ${milliamps}`,
  forEquipment: (milliamps: Part) => `It protects equipment, not people, and sees ${milliamps}`,
  hotAroundMayOpen: (ohms: Part) => `Its LOAD hot has another way around the sensor, of ${ohms} Ω: that may open it.`,
  neutralAroundMayOpen: (ohms: Part, most: Part) =>
    `Its LOAD neutral has another way around the sensor, of ${ohms} Ω: up to ${most} Ω may open it.`,
  neutralAroundOpens: (ohms: Part, most: Part) =>
    `Its LOAD neutral has another way around the sensor, of ${ohms} Ω: up to ${most} Ω opens it, load or no load.`,
  seenMayOpen: (seen: Part) => `${seen}: that may open it.`,
  seenOpens: (seen: Part) => `${seen}: that opens it.`,
  unpowered: (volts: Part, needed: Part) =>
    `It has no power: ${volts} V at its LINE, and its electronics need ${needed} V.`,
  unpoweredAndStays: (volts: Part, needed: Part, milliamps: Part) =>
    `It has no power: ${volts} V at its LINE, and its electronics need ${needed} V: it stays closed with ${milliamps}.`,
});

/** A ground-fault device at one moment. */
export interface SensorState {
  readonly device: DeviceId;
  readonly trips: Trips;
  /** What it says about `trips`, as a sentence. */
  readonly why: string;
  readonly residualMa: number;
  /** By its residual alone, with or without power for it. */
  readonly byResidual: Trips;
  /** Its electronics have the volts that they need. */
  readonly powered: boolean;
  /** Volts at its electronics. */
  readonly supplyV: number;
  /** Open, by its setting or a trip before. */
  readonly open: boolean;
  readonly loops: SensorLoops;
  /** When it opens; absent when it does not. */
  readonly time?: TripTime;
}

/** A breaker or fuse at one moment. */
export interface BreakerState {
  readonly device: DeviceId;
  readonly trips: Trips;
  readonly why: string;
  /** Amperes through the pole that carries most. */
  readonly amps: number;
  readonly time?: TripTime;
}

export interface TripStates {
  readonly devices: readonly SensorState[];
  readonly breakers: readonly BreakerState[];
}

/** What every ground-fault device and breaker of a circuit does about the currents of its setting. */
export function tripStates(circuit: Circuit): TripStates {
  const at = circuit.factor.operatingPoint();
  return {
    devices: circuit.sensors.map((sensor) => sensorState(circuit, at, sensor)),
    breakers: circuit.overcurrent.map((breaker) => breakerState(circuit, at, breaker)),
  };
}

const RANK: Readonly<Record<Trips, number>> = { no: 0, may: 1, yes: 2 };
export const isMore = (one: Trips, other: Trips): boolean => RANK[one] > RANK[other];

function sensorState(circuit: Circuit, at: Phasors, sensor: SensorCircuit): SensorState {
  const { device, contacts, lineHot, lineNeutral } = sensor;
  const residualMa = size(residualOf(circuit, sensor, at)) * 1000;
  const supplyV =
    lineNeutral === undefined ? 0 : Math.max(0, ...lineHot.map((hot) => size(between(at, hot, lineNeutral))));
  const powered = Math.round(supplyV) >= SUPPLY_V;
  const open = contacts.some((branch) => circuit.network.g[branch] === 0);
  const residual = byResidual(sensor.class, residualMa);
  const state = { device, residualMa, byResidual: residual, powered, supplyV, open, loops: {} };
  if (open) return { ...state, trips: "no", why: wording.contactsOpen };
  if (!powered) return { ...state, trips: "no", why: whyUnpowered(supplyV, residual, residualMa) };
  if (sensor.class !== "personnel")
    return { ...state, trips: residual, ...whyOther(sensor.class, residual, residualMa) };
  const loops = loopsAround(circuit, sensor);
  const loop = byLoop(loops);
  if (residual === "yes" || (residual === "may" && loop !== "yes"))
    return { ...state, loops, trips: residual, ...whyResidual(residual, residualMa) };
  if (loop === "no") return { ...state, loops, trips: "no", ...whyResidual("no", residualMa) };
  return { ...state, loops, trips: loop, ...whyLoop(loops) };
}

/** A grounded neutral must be found; whether a way around the hot conductor is, no standard says. */
function byLoop({ neutral = Infinity, hot = Infinity }: SensorLoops): Trips {
  const { must, may } = GROUNDED_NEUTRAL_OHM;
  return neutral <= must ? "yes" : Math.min(neutral, hot) <= may ? "may" : "no";
}

function breakerState(circuit: Circuit, at: Phasors, breaker: OvercurrentCircuit): BreakerState {
  const { device, ratingA } = breaker;
  const amps = mostAmps(circuit, breaker, at);
  const { trips, time } = byOvercurrent(amps, ratingA);
  const carried = wording.carries(amps.toFixed(amps < 100 ? 1 : 0), ratingA);
  if (time === undefined) return { device, amps, trips, why: `${carried}.` };
  const { earliestS, latestS } = time;
  const when =
    amps / ratingA >= INSTANT_TIMES
      ? wording.instant(INSTANT_TIMES)
      : latestS === Infinity
        ? wording.afterAnHour
        : wording.after(seconds(earliestS), seconds(latestS));
  return { device, amps, trips, why: `${carried}: ${when}.`, time };
}

type Why = Pick<SensorState, "why" | "time">;

function whyUnpowered(supplyV: number, residual: Trips, residualMa: number): string {
  const volts = supplyV.toFixed(1);
  return residual === "no"
    ? wording.unpowered(volts, SUPPLY_V)
    : wording.unpoweredAndStays(volts, SUPPLY_V, milliamps(residualMa));
}

function whyResidual(residual: Trips, residualMa: number): Why {
  const { mayAboveMa, mustFromMa } = RESIDUAL_LIMITS.personnel;
  const seen = wording.sees(milliamps(residualMa));
  if (residual === "no") return { why: wording.staysClosed(seen, mayAboveMa) };
  const latestS = classALimitS(residualMa);
  const time = { earliestS: 0, latestS };
  if (residual === "may") return { why: wording.between(seen, mayAboveMa, mustFromMa), time };
  return { why: wording.mustOpen(seen, mustFromMa, seconds(latestS)), time };
}

function whyOther(kind: "equipment" | "arc-fault", residual: Trips, residualMa: number): Why {
  const seen = (kind === "equipment" ? wording.forEquipment : wording.forArcs)(milliamps(residualMa));
  if (residual === "no") return { why: wording.seenDoesNotOpen(seen) };
  return { why: (residual === "yes" ? wording.seenOpens : wording.seenMayOpen)(seen), time: NO_CLAIM };
}

/** No standard that is known here gives a time; the shortest overlaps with any other device's. */
const NO_CLAIM: TripTime = { earliestS: 0, latestS: classALimitS(0) };

function whyLoop({ neutral = Infinity, hot = Infinity }: SensorLoops): Why {
  const { must, may } = GROUNDED_NEUTRAL_OHM;
  const time = NO_CLAIM;
  if (neutral <= must) return { why: wording.neutralAroundOpens(neutral.toFixed(2), must), time };
  if (neutral <= may) return { why: wording.neutralAroundMayOpen(neutral.toFixed(2), may), time };
  return { why: wording.hotAroundMayOpen(hot.toFixed(2)), time };
}

const milliamps = (ma: number): string =>
  ma < 1000 ? wording.milliamps(ma.toFixed(1)) : `${(ma / 1000).toFixed(1)} A`;

function seconds(s: number): string {
  if (s >= 120) return wording.minutes(Math.round(s / 60));
  return wording.seconds(s < 1 ? s.toPrecision(2) : s < 10 ? s.toFixed(1) : s.toFixed(0));
}
