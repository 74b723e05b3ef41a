import type { ActDone, NamedOutlet } from "../answers/energised.ts";
import type { ExpectedAnswer, WantedTest } from "../answers/expected-test.ts";
import { findDeviceType } from "../catalog/device-types.ts";
import type { DeviceId, OutletKey } from "../model/ids.ts";
import type { Installation, Project, Supply } from "../model/project.ts";
import type { ExpectedTest } from "../model/test-record.ts";
import { benchOf as testBenchOf } from "../planning/steps/test-bench.ts";
import { installationAt } from "../queries/test-record.ts";
import type { Circuit } from "../solver/circuit/circuit.ts";
import { RECORD_WITHIN_NEUTRAL_V, RECORD_WITHIN_V } from "../solver/circuit/instrument-values.ts";
import type { VoltReading } from "../solver/circuit/instruments.ts";
import { NOMINAL_V } from "../solver/circuit/modelling-values.ts";
import { type OutletReading, readOutlets } from "../solver/circuit/readings.ts";
import { runTrips } from "../solver/circuit/trips.ts";
import type { Section } from "../solver/section.ts";
import { sectionOf } from "../solver/sections.ts";
import { type Drawn, drawnIn } from "./drawn-outlets.ts";
import { circuitOf } from "./energise.ts";
import { doAct, ON_FROM_V } from "./energise-act.ts";

/**
 * What the drawing leads to expect of some tests, in the order given: volts at outlets, what a plug-in tester shows and
 * whether a luminaire lights, with lamps lit and nothing plugged in running, as the work steps have them measured; what goes
 * dark by a button and comes on again by RESET, with everything in use. A pure function of the document. What is not drawn any more, or may end in more than one way, has no expected result.
 */
export function expectedTests(project: Project, wanted: readonly WantedTest[]): readonly ExpectedAnswer[] {
  return wanted.map((one) => ({
    ...one,
    ...benchOf(installationAt(project, one.stage), project.supply).expect(one),
  }));
}

const benches = new WeakMap<Installation, { readonly supply: Supply; readonly bench: Bench }>();

/** Cached by the identity of the installation: a record is asked for box by box. */
function benchOf(installation: Installation, supply: Supply): Bench {
  const known = benches.get(installation);
  if (known?.supply === supply) return known.bench;
  const bench = new Bench(installation, supply);
  benches.set(installation, { supply, bench });
  return bench;
}

type Told = Pick<ExpectedAnswer, "expected" | "around">;
type Done = ReturnType<typeof doAct>;

/** One installation, energised once for what its buttons do. */
class Bench {
  private readonly installation: Installation;
  private readonly supply: Supply;
  private readonly drawn: Drawn;
  private energised: { readonly circuit: Circuit; readonly open: ReadonlySet<DeviceId> } | undefined;
  private readonly pressed = new Map<DeviceId, Done>();

  constructor(installation: Installation, supply: Supply) {
    this.installation = installation;
    this.supply = supply;
    this.drawn = drawnIn(installation);
  }

  expect({ test, point }: WantedTest): Told {
    switch (test) {
      case "hot-neutral":
        return figure(this.read(point)?.hn, RECORD_WITHIN_V);
      case "hot-ground":
        return figure(this.read(point)?.hg, RECORD_WITHIN_V);
      case "neutral-ground":
        return figure(this.read(point)?.ng, RECORD_WITHIN_NEUTRAL_V);
      case "polarity":
        return word(this.read(point)?.tester?.name);
      // Where it does not light as drawn it may light in another position of its switches.
      case "works":
        return word((this.read(point)?.hn.lowVolts ?? 0) >= ON_FROM_V ? "works" : undefined);
      case "own-test":
        return this.ownTestTold(point as DeviceId);
      case "plug-in-button":
        return this.drawn.outlets.has(point as OutletKey) ? this.dark(this.button(point as OutletKey)) : {};
      case "reset":
        return this.reset(point as DeviceId);
      case "dead":
        return word("dead");
      case "continuity":
      case "note":
        return {};
    }
  }

  private get now() {
    if (this.energised === undefined) {
      const run = runTrips(circuitOf(this.installation, this.supply));
      const [outcome] = run.outcomes;
      this.energised = { circuit: outcome?.circuit ?? run.energised, open: new Set(outcome?.opened.flat() ?? []) };
    }
    return this.energised;
  }

  /** On the bench of the work steps: one section with its panels and their supply, and every reading kept. */
  private read(point: string): OutletReading | undefined {
    const outlet = this.drawn.outlets.get(point as OutletKey);
    if (outlet === undefined) return undefined;
    const section = sectionOf(this.installation, this.drawn.named(outlet.key).enclosure);
    if (section === undefined) return readOutlets(this.now.circuit, [outlet])[0];
    const bench = testBenchOf(section, this.supply);
    const { circuit } = bench.run(bench.atRest);
    // The bench keeps those that some position of the switches brings a hot to; any other is read by itself.
    const reading = bench.read(circuit, outlet);
    if (reading !== undefined || isSupplyUntold(section)) return reading;
    return readOutlets(circuit, [outlet])[0];
  }

  private act(act: Parameters<typeof doAct>[2], circuit = this.now.circuit, open = this.now.open): Done {
    return doAct(this.drawn, circuit, act, this.supply.nominalV ?? NOMINAL_V, open);
  }

  private button(outlet: OutletKey): Done {
    return this.act({ kind: "plug-in-button", outlet });
  }

  private ownTest(device: DeviceId): Done | undefined {
    if (!this.drawn.devices.has(device)) return undefined;
    let done = this.pressed.get(device);
    if (done === undefined) {
      done = this.act({ kind: "own-test", device });
      this.pressed.set(device, done);
    }
    return done;
  }

  private dark(done: Done | undefined): Told {
    if (done === undefined || done.act.impossible !== undefined) return {};
    const { wentDark, offButLive, stayedOn } = done.act;
    // What is off and live to ground all the same is dark by the meter that is put from hot to neutral.
    return this.outlets(done, [...wentDark, ...offButLive], stayedOn);
  }

  private ownTestTold(device: DeviceId): Told {
    return this.opensBySelfTest(device) ? this.reset(device) : this.dark(this.ownTest(device));
  }

  /** TEST of one that does not look for milliamperes to ground checks its electronics, and opens it. */
  private opensBySelfTest(device: DeviceId): boolean {
    const found = this.drawn.devices.get(device);
    const sensing = found && findDeviceType(found.type)?.sensing;
    return sensing !== undefined && sensing.class !== "personnel";
  }

  /** After its own TEST. A device that does not open has nothing to close. */
  private reset(device: DeviceId): Told {
    if (!this.drawn.devices.has(device)) return {};
    if (this.opensBySelfTest(device)) {
      const { circuit } = this.now;
      const open = circuit.inSetting({ ...circuit.setting, tripped: new Set([...circuit.setting.tripped, device]) });
      return this.cameOn(device, open, [device], []);
    }
    const tested = this.ownTest(device);
    if (tested === undefined || tested.act.impossible !== undefined || !isPlain(tested)) return {};
    const opened = tested.opened.flat().map((one) => one.device);
    return opened.includes(device) ? this.cameOn(device, tested.after, opened, tested.act.stayedOn) : {};
  }

  private cameOn(device: DeviceId, open: Circuit, opened: readonly DeviceId[], stayedOn: readonly NamedOutlet[]): Told {
    const done = this.act({ kind: "reset", device }, open, new Set([...this.now.open, ...opened]));
    return this.outlets(done, done.act.cameOn, [...done.act.stayedOn, ...stayedOn]);
  }

  private outlets(done: Done, found: ActDone["wentDark"], others: readonly NamedOutlet[]): Told {
    const order = [...this.drawn.outlets.keys()];
    const place = ({ outlet }: NamedOutlet): number => order.indexOf(outlet);
    const sorted = [...found].sort((p, q) => place(p) - place(q));
    const around = [...new Map([...found, ...others].map((one) => [one.outlet, one])).values()]
      .sort((p, q) => place(p) - place(q))
      .map(({ outlet, name }) => ({ outlet, name }));
    if (!isPlain(done)) return { around };
    const expected: ExpectedTest = {
      kind: "outlets",
      outlets: sorted.map(({ outlet }) => outlet),
      names: sorted.map(({ name }) => name),
    };
    return { expected, around };
  }
}

/** What feeds it is not drawn, or more may come by a cable that leaves the drawing: that it is dead cannot be told. */
const isSupplyUntold = (section: Section): boolean =>
  section.breakers().length === 0 || section.cables.some(({ sides: { a, b } }) => "outside" in a || "outside" in b);

/** It can end in one way only. */
const isPlain = ({ otherwise = [], mayOpen = [] }: Done): boolean => otherwise.length === 0 && mayOpen.length === 0;

const word = (found: string | undefined): Told =>
  found === undefined ? {} : { expected: { kind: "word", word: found } };

/** A meter does not show a steady figure where nothing is joined. */
function figure(reading: VoltReading | undefined, within: number): Told {
  if (reading === undefined || reading.floating) return {};
  const value = Number(Math.abs(reading.volts).toFixed(2));
  return { expected: { kind: "figure", value, within, unit: "V" } };
}
