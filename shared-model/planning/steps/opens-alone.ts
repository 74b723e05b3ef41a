import type { DeviceId } from "../../model/ids.ts";
import type { PlacedOutlet } from "../../queries/outlets-of.ts";
import type { Added, Circuit, SensorCircuit } from "../../solver/circuit/circuit.ts";
import { currentThrough } from "../../solver/circuit/currents.ts";
import { throughMeters, type VoltReading } from "../../solver/circuit/instruments.ts";
import { byOvercurrent, byResidual, SUPPLY_V } from "../../solver/circuit/trip-limits.ts";
import { pairOf, twoPortOf } from "../../solver/circuit/two-port.ts";
import type { Phasor, Phasors } from "../../solver/network/network.ts";
import { between, over, size, times } from "../../solver/network/phasor.ts";

/**
 * What a resistance put into a circuit in which nothing opens makes open, by superposition on the circuit as it is: nothing,
 * one ground-fault device for certain, or "follow" where it takes more to tell: two see it, one may open, a breaker carries
 * too much. It costs one solution and no new network.
 */
export function opensAlone(circuit: Circuit, { from, to, ohm }: Added): DeviceId | undefined | "follow" {
  const [one, other] = [circuit.nodeOf(from), circuit.nodeOf(to)];
  if (one === undefined || other === undefined) return "follow";
  const { at, poles, sensors } = viewsOf(circuit);
  const [open, behind] = pairOf(circuit, at, one, other);
  const drawn = over(open, { re: ohm + behind.re, im: behind.im });
  const seen = ({ now, share }: View): number => {
    const change = times(drawn, between(share, other, one));
    return Math.hypot(now.re + change.re, now.im + change.im);
  };
  for (const { ratingA, view } of poles) if (byOvercurrent(seen(view), ratingA).trips !== "no") return "follow";
  const opening: DeviceId[] = [];
  for (const { sensor, view, supplyV } of sensors) {
    const trips = byResidual(sensor.class, seen(view) * 1000);
    if (trips === "no") continue;
    // What the heaviest load of a test takes from the supply is less than the margin to what electronics need.
    if (trips === "may" || supplyV < SUPPLY_V + SUPPLY_MARGIN_V) return "follow";
    opening.push(sensor.device);
  }
  return opening.length > 1 ? "follow" : opening[0];
}

const SUPPLY_MARGIN_V = 20;

/** A current that is looked at: what it is now, and by node how much of an ampere put in there goes through it. */
interface View {
  readonly now: Phasor;
  readonly share: Phasors;
}

interface Views {
  readonly at: Phasors;
  readonly poles: readonly { readonly ratingA: number; readonly view: View }[];
  readonly sensors: readonly { readonly sensor: SensorCircuit; readonly supplyV: number; readonly view: View }[];
}

const known = new WeakMap<Circuit, Views>();

/**
 * The matrix of a network of impedances is symmetric: what a sensor sees of an ampere put in anywhere is the voltage there
 * when its own branches are driven. One solution for each sensor and pole answers for every outlet.
 */
function viewsOf(circuit: Circuit): Views {
  let views = known.get(circuit);
  if (views === undefined) {
    const at = circuit.factor.operatingPoint();
    const closed = circuit.sensors.filter(({ contacts }) =>
      contacts.every((branch) => circuit.network.g[branch] !== 0),
    );
    views = {
      at,
      poles: circuit.overcurrent.flatMap(({ poles, ratingA }) =>
        poles.map((branch) => ({ ratingA, view: viewOf(circuit, at, [{ branch, sign: 1 }]) })),
      ),
      sensors: closed.map((sensor) => {
        const { lineHot, lineNeutral, summed } = sensor;
        const volts = lineNeutral === undefined ? [] : lineHot.map((hot) => size(between(at, hot, lineNeutral)));
        return { sensor, supplyV: Math.max(0, ...volts), view: viewOf(circuit, at, summed) };
      }),
    };
    known.set(circuit, views);
  }
  return views;
}

function viewOf(circuit: Circuit, at: Phasors, summed: SensorCircuit["summed"]): View {
  const { a, b, g, bS } = circuit.network;
  const nodes: number[] = [];
  const re: number[] = [];
  const im: number[] = [];
  let now: Phasor = { re: 0, im: 0 };
  for (const { branch, sign } of summed) {
    const current = currentThrough(circuit, branch, at);
    now = { re: now.re + sign * current.re, im: now.im + sign * current.im };
    nodes.push(a[branch] as number, b[branch] as number);
    re.push(sign * (g[branch] as number), -sign * (g[branch] as number));
    im.push(sign * (bS[branch] as number), -sign * (bS[branch] as number));
  }
  return { now, share: circuit.factor.solve({ nodes, re, im }) };
}

/**
 * Hot to neutral and neutral to ground of an outlet while so many ohms are plugged in at it, by superposition; the second is
 * absent without a ground. Undefined for an outlet that is not in the circuit.
 */
export function loadedAt(
  circuit: Circuit,
  { device, hot, neutral, ground }: PlacedOutlet,
  ohm: number,
): { readonly hn: VoltReading; readonly ng?: VoltReading } | undefined {
  const nodeOf = (node: string): number | undefined => circuit.nodeOf({ kind: "device", device: device.id, node });
  const [h, n] = [nodeOf(hot), nodeOf(neutral)];
  if (h === undefined || n === undefined) return undefined;
  const g = ground === undefined ? undefined : nodeOf(ground);
  const at = circuit.factor.operatingPoint();
  const [open, behind] = pairOf(circuit, at, h, n);
  const drawn = over(open, { re: behind.re + ohm, im: behind.im });
  // Beside a load of some ohms no meter changes anything that it can show.
  const hn = throughMeters({ re: drawn.re * ohm, im: drawn.im * ohm }, NOTHING);
  if (g === undefined) return { hn };
  const { second, z12, z22 } = twoPortOf(circuit, at, h, n, g);
  const moved = times(drawn, z12);
  return { hn, ng: throughMeters({ re: second.re - moved.re, im: second.im - moved.im }, z22) };
}

const NOTHING = { re: 0, im: 0 };
