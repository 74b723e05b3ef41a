import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { DeviceId } from "../../model/ids.ts";
import type { Circuit, SensorCircuit } from "./circuit.ts";
import { energise } from "./reversed-supply.ts";
import type { TripTime } from "./trip-limits.ts";
import { type BreakerState, isMore, type SensorState, type TripStates, tripStates } from "./trip-states.ts";

const wording = catalogue({
  afterAnother: (why: Part) => `After another has opened: ${why}`,
  fedOnLoadFaceLive: (why: Part) => `It is fed on LOAD: its face stays live after a trip. ${why}`,
  fedOnLoadFirst:
    "It is fed on LOAD: it cannot be reset when it is first installed. Installed once more, it may close and leave its face live.",
  fedOnLoadNoReset: "It is fed on LOAD: it cannot be reset. LOAD is live, LINE and face are dead.",
  fedOnLoadTrips: "It is fed on LOAD, and is made to trip then; LOAD stays live.",
});

/** A device that opens only as long as another, which sees the same, has not opened first. */
interface Contested {
  readonly orFirst: readonly DeviceId[];
}

export interface DeviceTrip extends SensorState, Contested {
  /** It is fed on LOAD. */
  readonly reversed: boolean;
}
export interface BreakerTrip extends BreakerState, Contested {}

/** One way in which trips may follow each other, up to the last. */
export interface TripOutcome {
  /** Devices that opened, in order; those of one time together. */
  readonly opened: readonly (readonly DeviceId[])[];
  /** What is left. */
  readonly circuit: Circuit;
}

export interface TripRun {
  /** As it is energised: devices that cannot be reset because they are fed on LOAD have open contacts. */
  readonly energised: Circuit;
  /** At their most: what a device does after another has opened counts too. */
  readonly devices: readonly DeviceTrip[];
  readonly breakers: readonly BreakerTrip[];
  /** More than one where either of two devices may open first. One without trips when nothing opens. */
  readonly outcomes: readonly TripOutcome[];
  /** There are more outcomes than were followed. */
  readonly cutShort: boolean;
}

/** Outcomes are followed up to this many. */
const MOST_OUTCOMES = 16;

/**
 * Energises a circuit and follows its trips to the end: whatever certainly opens first opens, and all is computed again,
 * at most as often as there are devices. Where devices see one fault and the first to open takes it from the others,
 * each of them is followed as the first; where that happens to several faults at once, not in every combination.
 */
export function runTrips(circuit: Circuit): TripRun {
  const { circuit: energised, reversed } = energise(circuit);
  return new Follower(energised).run(reversed);
}

class Follower {
  private readonly energised: Circuit;
  private readonly orFirst = new Map<DeviceId, Set<DeviceId>>();
  private readonly devices = new Map<DeviceId, SensorState>();
  private readonly breakers = new Map<DeviceId, BreakerState>();
  private readonly outcomes: TripOutcome[] = [];
  private readonly known = new Set<string>();
  private cutShort = false;

  constructor(energised: Circuit) {
    this.energised = energised;
  }

  run(reversed: readonly SensorCircuit[]): TripRun {
    this.follow(this.energised, tripStates(this.energised), []);
    const fedOnLoad = new Map(reversed.map((sensor) => [sensor.device, sensor]));
    const contested = (device: DeviceId): Contested => ({ orFirst: [...(this.orFirst.get(device) ?? [])].sort() });
    return {
      energised: this.energised,
      devices: [...this.devices.values()].map((state) => {
        const sensor = fedOnLoad.get(state.device);
        const shown = sensor === undefined ? state : reversedState(state, sensor);
        return { ...shown, ...contested(state.device), reversed: sensor !== undefined };
      }),
      breakers: [...this.breakers.values()].map((state) => ({ ...state, ...contested(state.device) })),
      outcomes: this.outcomes,
      cutShort: this.cutShort,
    };
  }

  private follow(circuit: Circuit, states: TripStates, opened: readonly (readonly DeviceId[])[]): void {
    // The same devices open: the same circuit, however it came about.
    const key = opened.flat().sort().join(" ");
    if (this.known.has(key)) return;
    this.known.add(key);
    this.note(states, opened.length > 0);
    const first = firstToOpen(states);
    if (first.length === 0) {
      this.outcomes.push({ opened, circuit });
      return;
    }
    for (const together of this.settle(circuit, first)) {
      if (this.outcomes.length === MOST_OUTCOMES) {
        this.cutShort = true;
        return;
      }
      const next = withOpen(circuit, together);
      this.follow(next, tripStates(next), [...opened, together]);
    }
  }

  /**
   * Which of the devices that are first open together, in each way that is followed: those that no other takes it from;
   * where there are none, one of each group that sees the same fault, so that each is the first in one of the ways.
   */
  private settle(circuit: Circuit, first: readonly DeviceId[]): readonly (readonly DeviceId[])[] {
    if (first.length === 1) return [first];
    const groups = new Map(first.map((device) => [device, [device]]));
    const spared = new Set<DeviceId>();
    for (const device of first) {
      const still = new Set(opening(tripStates(withOpen(circuit, [device]))).map(({ device: id }) => id));
      for (const other of first) {
        if (other === device || still.has(other)) continue;
        spared.add(other);
        this.orFirst.set(other, (this.orFirst.get(other) ?? new Set()).add(device));
        joinGroups(groups, device, other);
      }
    }
    const certain = first.filter((device) => !spared.has(device));
    if (certain.length > 0) return [certain];
    const each = [...new Set(groups.values())];
    const ways = Math.max(...each.map((group) => group.length));
    return Array.from({ length: ways }, (_, way) => each.flatMap((group) => group[way % group.length] ?? []));
  }

  /** Keeps the gravest that was seen of every device. */
  private note({ devices, breakers }: TripStates, later: boolean): void {
    keep(this.devices, devices, later);
    keep(this.breakers, breakers, later);
  }
}

function joinGroups(groups: Map<DeviceId, DeviceId[]>, one: DeviceId, other: DeviceId): void {
  const [into, from] = [groups.get(one), groups.get(other)];
  if (into === undefined || from === undefined || into === from) return;
  into.push(...from);
  for (const device of from) groups.set(device, into);
}

function keep<S extends SensorState | BreakerState>(all: Map<DeviceId, S>, states: readonly S[], later: boolean): void {
  for (const state of states) {
    const before = all.get(state.device);
    if (before === undefined) all.set(state.device, state);
    else if (isMore(state.trips, before.trips))
      all.set(state.device, later ? { ...state, why: wording.afterAnother(state.why) } : state);
  }
}

const withOpen = (circuit: Circuit, devices: readonly DeviceId[]): Circuit =>
  circuit.inSetting({ ...circuit.setting, tripped: new Set([...circuit.setting.tripped, ...devices]) });

interface Opening {
  readonly device: DeviceId;
  readonly time: TripTime;
}

/** Devices that certainly open. */
const opening = ({ devices, breakers }: TripStates): readonly Opening[] =>
  [...devices, ...breakers].flatMap(({ device, trips, time }) =>
    trips === "yes" && time !== undefined ? [{ device, time }] : [],
  );

/** Those of them that may be the first: none is certainly faster. */
function firstToOpen(states: TripStates): readonly DeviceId[] {
  const all = opening(states);
  const soonest = Math.min(...all.map(({ time }) => time.latestS));
  return [...new Set(all.filter(({ time }) => time.earliestS <= soonest).map(({ device }) => device))];
}

/** What a device that is fed on LOAD does about it. */
function reversedState(state: SensorState, { reversal }: SensorCircuit): SensorState {
  switch (reversal) {
    case "trips":
      return { ...state, trips: "yes", why: wording.fedOnLoadTrips };
    case "deny-first":
      return {
        ...state,
        why: wording.fedOnLoadFirst,
      };
    case "legacy":
      return { ...state, why: wording.fedOnLoadFaceLive(state.why) };
    default:
      return { ...state, why: wording.fedOnLoadNoReset };
  }
}
