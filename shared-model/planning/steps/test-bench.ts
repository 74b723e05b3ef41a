import type { DeviceId, LoadId, OutletKey } from "../../model/ids.ts";
import type { Installation, Supply } from "../../model/project.ts";
import type { PlacedOutlet } from "../../queries/outlets-of.ts";
import {
  type Added,
  type Circuit,
  EVERYTHING_ON,
  type OperatingSetting,
  type Probe,
} from "../../solver/circuit/circuit.ts";
import { readVolts, throughMeters, type VoltReading } from "../../solver/circuit/instruments.ts";
import { loadsOn } from "../../solver/circuit/loads-on.ts";
import { NOMINAL_V } from "../../solver/circuit/modelling-values.ts";
import { type OutletReading, readOutlets } from "../../solver/circuit/readings.ts";
import { circuitOfSection } from "../../solver/circuit/section-circuit.ts";
import { ownTestOf, plugInTestAt } from "../../solver/circuit/test-currents.ts";
import { runTrips, type TripRun } from "../../solver/circuit/trips.ts";
import { pairOf } from "../../solver/circuit/two-port.ts";
import type { Phasors } from "../../solver/network/network.ts";
import { between, size } from "../../solver/network/phasor.ts";
import type { Section } from "../../solver/section.ts";
import { loadedAt, opensAlone } from "./opens-alone.ts";

/** Volts from hot to neutral, on a low-impedance meter, from which an outlet is on. */
const ON_FROM_V = 50;

/** A portable heater of 1200 W at 120 V: the load of a loaded test. A modelling value. */
export const HEATER_OHM = 12;

/** What is off, tripped or not in use for a test; whatever is not named is on, set and in use. */
export type Arrangement = Partial<Pick<OperatingSetting, "off" | "tripped" | "idle" | "positions">>;

/** What a test leads to. */
export interface TestResult {
  /** As it is afterwards: what was put in for the test is gone. */
  readonly circuit: Circuit;
  /** Devices and breakers that opened. */
  readonly opened: ReadonlySet<DeviceId>;
  /** It can end in one way only. */
  readonly isPlain: boolean;
}

const benches = new WeakMap<Circuit, TestBench>();

/** Kept as long as the wiring of the section, the loads and the supply are the same, with every test that was made. */
export function benchOf(section: Section, supply: Supply): TestBench {
  const circuit = circuitOfSection(section, supply);
  let bench = benches.get(circuit);
  if (bench === undefined) {
    bench = new TestBench(section, supply, circuit);
    benches.set(circuit, bench);
  }
  return bench;
}

/** One section of a drawing, energised as often as tests are made on it. Everything is computed from the drawing. */
class TestBench {
  readonly supplyV: number;
  /** Those that some position of the switches brings a hot to. */
  readonly outlets: readonly PlacedOutlet[];
  private readonly section: Section;
  private readonly circuit: Circuit;
  private readonly loads: Installation["loads"];
  private readonly results = new Map<string, TestResult>();
  private readonly points = new WeakMap<Circuit, Phasors>();
  private readonly lit = new WeakMap<Circuit, Map<OutletKey, boolean>>();
  private readonly readings = new WeakMap<Circuit, ReadonlyMap<OutletKey, OutletReading>>();

  constructor(section: Section, supply: Supply, circuit: Circuit) {
    this.section = section;
    this.loads = section.installation.loads;
    this.supplyV = supply.nominalV ?? NOMINAL_V;
    this.circuit = circuit;
    this.outlets = section.outlets().flatMap(({ outlet, live }) => (live ? [outlet] : []));
  }

  get assumptions(): readonly string[] {
    return this.circuit.assumptions;
  }

  /** What is plugged in at outlets of the section. */
  plugged(): readonly LoadId[] {
    const loads = loadsOn(this.loads);
    const devices = new Set(this.outlets.map(({ device }) => device.id));
    return [...devices].flatMap((id) => (loads.get(id) ?? []).map((load) => load.id));
  }

  /**
   * Lamps lit and nothing plugged in running: how outlets are measured before the work and after it. Steps and test record
   * both take this, so that they lead to expect the same figure.
   */
  get atRest(): Arrangement {
    return { idle: new Set<LoadId | DeviceId>(this.plugged()) };
  }

  /** Luminaires and appliances that are wired. */
  wired(): readonly DeviceId[] {
    return this.outlets.flatMap(({ receptacle, device }) => (receptacle ? [] : [device.id]));
  }

  /** Everything that opens by itself has opened. Kept by arrangement. */
  run(arrangement: Arrangement): TestResult {
    const key = keyOf(arrangement);
    let result = this.results.get(key);
    if (result === undefined) {
      result = this.energise(arrangement, []);
      this.results.set(key, result);
    }
    return result;
  }

  /** The same with something put in at an outlet and taken away again. What a single device certainly does is not followed step by step. */
  private putIn(arrangement: Arrangement, added: Added): TestResult {
    const before = this.run(arrangement);
    const device = before.isPlain ? opensAlone(before.circuit, added) : "follow";
    if (device === "follow") return this.energise(arrangement, [added]);
    if (device === undefined) return before;
    const { tripped } = before.circuit.setting;
    const after = this.run({ ...arrangement, tripped: new Set([...tripped, device]) });
    const isOff = after.isPlain && after.opened.size === 0 && !isFed(after.circuit, added);
    return isOff ? { ...after, opened: new Set([...before.opened, device]) } : this.energise(arrangement, [added]);
  }

  private energise(arrangement: Arrangement, added: readonly Added[]): TestResult {
    const run = runTrips(this.circuit.inSetting({ ...EVERYTHING_ON, ...arrangement, added }));
    const [first] = run.outcomes;
    const ended = first?.circuit ?? run.energised;
    const circuit = added.length === 0 ? ended : ended.inSetting({ ...ended.setting, added: [] });
    return { circuit, opened: new Set(first?.opened.flat() ?? []), isPlain: isPlain(run) };
  }

  /** TEST of a device; undefined where it has none. */
  ownTest(device: DeviceId, arrangement: Arrangement): TestResult | undefined {
    const found = this.section.sensingDevices().find((one) => one.device.id === device);
    const added = found && ownTestOf(found.device);
    return added && this.putIn(arrangement, added);
  }

  /** The button of a plug-in tester; undefined at an outlet without ground. */
  button(outlet: PlacedOutlet, arrangement: Arrangement): TestResult | undefined {
    const added = plugInTestAt(outlet);
    return added && this.putIn(arrangement, added);
  }

  /** A heater plugged in at an outlet and taken away again. */
  heated(outlet: PlacedOutlet, arrangement: Arrangement): TestResult {
    return this.putIn(arrangement, heaterAt(outlet));
  }

  /** What a meter shows at an outlet while a heater runs there; undefined where something opens. */
  loaded(outlet: PlacedOutlet, arrangement: Arrangement): ReturnType<typeof loadedAt> {
    const { circuit, opened } = this.heated(outlet, arrangement);
    return opened.size > 0 ? undefined : loadedAt(circuit, outlet, HEATER_OHM);
  }

  read(circuit: Circuit, outlet: PlacedOutlet): OutletReading | undefined {
    let known = this.readings.get(circuit);
    if (known === undefined) {
      known = new Map(readOutlets(circuit, this.outlets).map((reading) => [reading.outlet.key, reading]));
      this.readings.set(circuit, known);
    }
    return known.get(outlet.key);
  }

  volts(circuit: Circuit, device: DeviceId, from: string, to: string): VoltReading | undefined {
    return readVolts(circuit, { kind: "device", device, node: from }, { kind: "device", device, node: to });
  }

  /** Whether a low-impedance meter finds it on. Without volts at all it is not measured. */
  isOn(circuit: Circuit, outlet: PlacedOutlet): boolean {
    const known = this.lit.get(circuit) ?? new Map<OutletKey, boolean>();
    this.lit.set(circuit, known);
    let isOn = known.get(outlet.key);
    if (isOn === undefined) {
      isOn = this.findOn(circuit, outlet);
      known.set(outlet.key, isOn);
    }
    return isOn;
  }

  private findOn(circuit: Circuit, { device, hot, neutral }: PlacedOutlet): boolean {
    const nodeOf = (node: string): number | undefined => circuit.nodeOf({ kind: "device", device: device.id, node });
    const [h, n] = [nodeOf(hot), nodeOf(neutral)];
    if (h === undefined || n === undefined) return false;
    const at = this.pointOf(circuit);
    if (size(between(at, h, n)) < ON_FROM_V) return false;
    return throughMeters(...pairOf(circuit, at, h, n)).lowVolts >= ON_FROM_V;
  }

  private pointOf(circuit: Circuit): Phasors {
    let at = this.points.get(circuit);
    if (at === undefined) {
      at = circuit.factor.operatingPoint();
      this.points.set(circuit, at);
    }
    return at;
  }
}

export type { TestBench };

function heaterAt({ device, hot, neutral }: PlacedOutlet): Added {
  const at = (node: string): Probe => ({ kind: "device", device: device.id, node });
  return { from: at(hot), to: at(neutral), ohm: HEATER_OHM };
}

/** Whether the two places of what was put in still have volts between them. */
const isFed = (circuit: Circuit, { from, to }: Added): boolean => (readVolts(circuit, from, to)?.lowVolts ?? 0) > 1;

const isPlain = ({ outcomes, devices, breakers }: TripRun): boolean =>
  outcomes.length === 1 && ![...devices, ...breakers].some(({ trips }) => trips === "may");

function keyOf({ off, tripped, idle, positions }: Arrangement): string {
  const sorted = (ids: Iterable<string> = []): string => [...ids].sort().join(" ");
  const handles = [...(positions ?? [])].map(([handle, at]) => `${handle}=${at}`).sort();
  return [sorted(off), sorted(tripped), sorted(idle), handles.join(" ")].join("|");
}
