import type { ScopeBreaker, ScopeItem, StepReading } from "../../answers/scope.ts";
import { findDeviceType } from "../../catalog/device-types.ts";
import { catalogue } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { DeviceId, EnclosureId, OutletKey } from "../../model/ids.ts";
import type { Supply } from "../../model/project.ts";
import { landedAt } from "../../queries/landings.ts";
import type { PlacedOutlet } from "../../queries/outlets-of.ts";
import type { Circuit } from "../../solver/circuit/circuit.ts";
import type { Section } from "../../solver/section.ts";
import { outletReadings, worksReading } from "./commissioning-words.ts";
import type { StepDraft } from "./step-draft.ts";
import { type Arrangement, benchOf, type TestBench } from "./test-bench.ts";

const wording = catalogue({
  untold: "cannot be told: it may end in more than one way",
});

/** What is put into service: one section of proposed. */
export interface ToCommission {
  readonly section: Section;
  readonly supply: Supply;
  /** Boxes that the work opens. */
  readonly opened: ReadonlySet<EnclosureId>;
  /** Breakers of the circuits that come to them. */
  readonly breakers: readonly ScopeBreaker[];
  readonly isNew: (device: DeviceId) => boolean;
}

/** A ground-fault device of a circuit that is put into service. */
export interface Guard {
  readonly device: Device;
  /** It comes with this work, in a box: it is tripped as shipped. */
  readonly isNew: boolean;
  /** Something is landed on its LOAD. */
  readonly feedsOn: boolean;
  /** It has a handle in place of RESET: off, then on. */
  readonly isBreaker: boolean;
}

export const TEST_STAGE = 14;

/** The circuits of one section that the work touches, on the bench. */
export class Commissioned {
  readonly work: ToCommission;
  readonly bench: TestBench;
  /** What tells its tests from those of other sections. */
  readonly key: string;
  readonly outlets: readonly PlacedOutlet[];
  readonly guards: readonly Guard[];
  /** Nothing plugged in runs; lamps are lit. */
  readonly lit: Arrangement;
  /** Nothing runs and no lamp is lit. */
  readonly quiet: Arrangement;

  constructor(work: ToCommission) {
    const { section, supply, breakers } = work;
    this.work = work;
    this.bench = benchOf(section, supply);
    this.key = section.enclosures[0]?.id ?? "";
    const ids = new Set(breakers.map(({ device }) => device));
    const fed = new Set<OutletKey>(
      section.breakers().flatMap(({ device }) => (ids.has(device.id) ? section.circuitOf(device.id).outlets : [])),
    );
    this.outlets = this.bench.outlets.filter(({ key }) => fed.has(key));
    this.guards = guardsOf(work, ids);
    this.lit = this.bench.atRest;
    this.quiet = { idle: new Set([...(this.lit.idle ?? []), ...this.bench.wired()]) };
  }

  /** Devices that are tripped as they are shipped. */
  shipped(): readonly Device[] {
    return this.guards.flatMap(({ device, isNew }) => (isNew ? [device] : []));
  }

  on(circuit: Circuit): readonly PlacedOutlet[] {
    return this.outlets.filter((outlet) => this.bench.isOn(circuit, outlet));
  }

  onIn(arrangement: Arrangement): readonly PlacedOutlet[] {
    return this.on(this.bench.run(arrangement).circuit);
  }

  /** Of what was on, what is off in a circuit. */
  wentDark(before: readonly PlacedOutlet[], after: Circuit): readonly PlacedOutlet[] {
    return before.filter((outlet) => !this.bench.isOn(after, outlet));
  }

  /** Outlets that its own TEST sets dark, with lamps on. */
  behind(device: DeviceId): readonly PlacedOutlet[] {
    const result = this.bench.ownTest(device, this.lit);
    return result === undefined ? [] : this.wentDark(this.onIn(this.lit), result.circuit);
  }

  readings(arrangement: Arrangement, outlets: readonly PlacedOutlet[], withTester = false): readonly StepReading[] {
    const { circuit } = this.bench.run(arrangement);
    return outlets.flatMap((outlet) =>
      outlet.receptacle
        ? outletReadings(outlet, this.bench.read(circuit, outlet), withTester)
        : [worksReading(outlet, this.bench.isOn(circuit, outlet))],
    );
  }

  nameOf(id: DeviceId): string {
    const { section } = this.work;
    const all = [...section.sensingDevices(), ...section.breakers()];
    return all.find(({ device }) => device.id === id)?.device.name ?? id;
  }

  draft(test: string, about: string, rest: Omit<StepDraft, "id" | "stage" | "kind" | "test">): StepDraft {
    return { id: `${test}:${about}`, stage: TEST_STAGE, kind: "test", test, ...rest };
  }
}

function guardsOf({ section, isNew }: ToCommission, breakers: ReadonlySet<DeviceId>): readonly Guard[] {
  return section.sensingDevices().flatMap(({ device, enclosure }): readonly Guard[] => {
    const type = findDeviceType(device.type);
    if (type?.sensing?.class !== "personnel") return [];
    // The handle of a breaker is no RESET, and everything on its circuit is behind it.
    if (enclosure.kind !== "box")
      return breakers.has(device.id) ? [{ device, isNew: false, feedsOn: true, isBreaker: true }] : [];
    const feedsOn = type.terminals.some(
      ({ group, name }) => group === "LOAD" && landedAt(enclosure, device.id, name).length > 0,
    );
    return [{ device, isNew: isNew(device.id), feedsOn, isBreaker: false }];
  });
}

export const UNTOLD = wording.untold;

export const itemOf = ({ id, name }: Device): ScopeItem => ({ kind: "device", id, name });
export const itemsOf = (outlets: readonly PlacedOutlet[]): readonly ScopeItem[] =>
  outlets.map(({ device }) => itemOf(device));
export const namesOf = (outlets: readonly PlacedOutlet[]): readonly string[] => outlets.map(({ name }) => name);
