import type { DeviceId, OutletKey } from "../../model/ids.ts";
import type { PlacedOutlet } from "../../queries/outlets-of.ts";
import { size } from "../network/phasor.ts";
import type { Circuit, Probe } from "./circuit.ts";
import type { TripRun } from "./trips.ts";
import { pairOf } from "./two-port.ts";

/** A place on a device that would still shock somebody who stands on the ground. */
interface Live {
  readonly place: Extract<Probe, { readonly kind: "device" }>;
  /** Volts to earth, at the most that any outcome leaves. */
  readonly volts: number;
}

/** A contact of an outlet, a luminaire or an appliance. */
export interface LiveContact extends Live {
  readonly outlet: OutletKey;
  readonly contact: "hot" | "neutral" | "ground";
}

/** Volts to earth from which a place counts as live, and ohms up to which there is something behind them: modelling values. */
const LIVE_FROM_V = 50;
const LIVE_MOST_OHM = 50_000;

/** Contacts of outlets that are live in at least one outcome of a run of trips, in the order of the outlets. */
export function liveAfter({ outcomes }: TripRun, outlets: readonly PlacedOutlet[]): readonly LiveContact[] {
  return worstOf(
    outcomes.map(({ circuit }) => {
      const voltsAt = liveVolts(circuit);
      return outlets.flatMap(({ key, device, hot, neutral, ground }) =>
        (["hot", "neutral", "ground"] as const).flatMap((contact): LiveContact[] => {
          const node = { hot, neutral, ground }[contact];
          const place = node === undefined ? undefined : ({ kind: "device", device: device.id, node } as const);
          const volts = place === undefined ? 0 : voltsAt(circuit.nodeOf(place));
          return place === undefined || volts === 0 ? [] : [{ outlet: key, contact, place, volts }];
        }),
      );
    }),
  );
}

/** LOAD terminals of open ground-fault devices that are live in at least one outcome: a way around, or supply on LOAD. */
export function liveLoadTerminals({ outcomes }: TripRun): readonly Live[] {
  return worstOf(
    outcomes.map(({ circuit }) => {
      const voltsAt = liveVolts(circuit);
      return loadTerminalsOfOpen(circuit).flatMap(([device, node]): Live[] => {
        const place = { kind: "device", device, node } as const;
        const volts = voltsAt(circuit.nodeOf(place));
        return volts === 0 ? [] : [{ place, volts }];
      });
    }),
  );
}

/** Each place once, with the most that any outcome leaves there. */
function worstOf<L extends Live>(outcomes: readonly (readonly L[])[]): readonly L[] {
  const found = new Map<string, L>();
  for (const live of outcomes.flat()) {
    const key = `${live.place.device} ${live.place.node}`;
    if (live.volts > (found.get(key)?.volts ?? 0)) found.set(key, live);
  }
  return [...found.values()];
}

/** Volts to earth of what is live: 50 V or more with less than 50 kilohms behind them; 0 for all else. */
function liveVolts(circuit: Circuit): (node: number | undefined) => number {
  const at = circuit.factor.operatingPoint();
  const known = new Map<number, number>();
  return (node) => {
    if (node === undefined) return 0;
    let volts = known.get(node);
    if (volts === undefined) {
      volts = Math.hypot(at.re[node] ?? 0, at.im[node] ?? 0);
      if (volts < LIVE_FROM_V || size(pairOf(circuit, at, node, -1)[1]) >= LIVE_MOST_OHM) volts = 0;
      known.set(node, volts);
    }
    return volts;
  };
}

const loadTerminalsOfOpen = ({ sensors, network }: Circuit): readonly (readonly [DeviceId, string])[] =>
  sensors
    .filter(({ contacts }) => contacts.some((branch) => network.g[branch] === 0))
    .flatMap(({ device, loadTerminals }) => loadTerminals.map((node) => [device, node] as const));
