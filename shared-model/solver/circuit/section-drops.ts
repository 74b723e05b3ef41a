import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { DeviceId, EnclosureId } from "../../model/ids.ts";
import type { Installation, Supply } from "../../model/project.ts";
import type { PlacedOutlet } from "../../queries/outlets-of.ts";
import { HOT } from "../conduction-graph.ts";
import type { OutletStanding, Section } from "../section.ts";
import { modelOf, sectionFingerprint } from "../sections.ts";
import { settingWith } from "../ways.ts";
import { type Circuit, EVERYTHING_ON } from "./circuit.ts";
import { type DrawnUse, usesOn } from "./drawn-uses.ts";
import { type DropWay, measuredTo, wayOfOutlet } from "./drop-way.ts";
import { circuitOfSection } from "./section-circuit.ts";
import { type VoltageDrop, voltageDrops } from "./voltage-drop.ts";

/**
 * What is taken to be on: at a receptacle, a share of the rating of its breaker and nothing else; for what is wired in,
 * everything that is drawn behind the breaker.
 */
export type DropLoad =
  | { readonly kind: "stated"; readonly amps: number; readonly percent: number; readonly ratingA: number }
  | { readonly kind: "in-use"; readonly uses: readonly DrawnUse[] };

/** What is lost on the way to an outlet under its load. */
export interface KnownDrop {
  readonly kind: "drop";
  readonly breaker: Device;
  readonly panel: Enclosure;
  readonly load: DropLoad;
  /** From the buses of the service, and from those of the panel that the breaker is in. */
  readonly total: VoltageDrop;
  readonly branch: VoltageDrop;
  /** Found when asked for. Where the length of a cable on it is not recorded, the volts rest on an assumed one. */
  way(): DropWay;
}

export type OutletDrop = { readonly outlet: PlacedOutlet; readonly enclosure: Enclosure } & (
  | KnownDrop
  | { readonly kind: "no-rating"; readonly breaker: Device }
  /** No breaker or no switch position brings a source to it, or it does not get half of its voltage. */
  | { readonly kind: "not-fed" }
);

/**
 * Of the outlets of a section, or of some in it. A stated load is so many per cent of the rating of the breaker. Without
 * any outlet asked no circuit is made.
 */
export function sectionDrops(
  section: Section,
  supply: Supply,
  loadPercent: number,
  isAsked: (standing: OutletStanding) => boolean = () => true,
): readonly OutletDrop[] {
  const asked = section.outlets().flatMap((standing, index) => (isAsked(standing) ? [{ ...standing, index }] : []));
  if (asked.length === 0) return [];
  const found = new SectionDrops(section, supply, loadPercent);
  for (const { outlet, index } of asked) found.plan(outlet, index);
  return asked.map(({ outlet, enclosure }) => ({ outlet, enclosure, ...found.dropOf(outlet) }));
}

interface Kept {
  readonly loads: Installation["loads"];
  readonly supply: Supply;
  readonly loadPercent: number;
  readonly drops: readonly OutletDrop[];
}

const kept = new WeakMap<object, Kept>();

/**
 * The same of the outlets that may have no cable of unknown length on their ways; of the others nothing is worked out.
 * Kept as long as the wiring of the section, the loads and the supply are the same.
 */
export function measuredDrops(section: Section, supply: Supply, loadPercent: number): readonly OutletDrop[] {
  const fingerprint = sectionFingerprint(section);
  const { loads } = section.installation;
  const known = kept.get(fingerprint);
  if (known?.loads === loads && known.supply === supply && known.loadPercent === loadPercent) return known.drops;
  const isMeasured = measuredTo(section);
  const drops = sectionDrops(section, supply, loadPercent, ({ enclosure }) => isMeasured(enclosure.id));
  kept.set(fingerprint, { loads, supply, loadPercent, drops });
  return drops;
}

/** An outlet that can be asked, with the circuit and the test current that it is asked with. */
interface Planned {
  readonly breaker: Device;
  readonly panel: Enclosure;
  readonly load: DropLoad;
  readonly question: Question;
}

/** Outlets that are asked together: what is the same for all of them is worked out once. */
interface Question {
  readonly circuit: Circuit;
  readonly testA: number;
  readonly from: EnclosureId | undefined;
  readonly outlets: PlacedOutlet[];
  answers?: {
    readonly total: ReadonlyMap<string, VoltageDrop>;
    readonly branch: ReadonlyMap<string, VoltageDrop>;
  };
}

class SectionDrops {
  private readonly section: Section;
  private readonly supply: Supply;
  private readonly loadPercent: number;
  private readonly fedBy = new Map<string, { readonly device: Device; readonly panel: Enclosure }>();
  private readonly circuits = new Map<string, Circuit>();
  private readonly questions = new Map<string, Question>();
  private readonly planned = new Map<string, Planned | { readonly ratingOf: Device }>();
  private readonly uses = new Map<DeviceId, readonly DrawnUse[]>();

  constructor(section: Section, supply: Supply, loadPercent: number) {
    this.section = section;
    this.supply = supply;
    this.loadPercent = loadPercent;
    for (const breaker of section.breakers())
      for (const key of section.circuitOf(breaker.device.id).outlets)
        if (!this.fedBy.has(key)) this.fedBy.set(key, breaker);
  }

  plan(outlet: PlacedOutlet, index: number): void {
    const fed = this.fedBy.get(outlet.key);
    const moved = this.movedFor(index);
    if (fed === undefined || moved === undefined) return;
    const { device: breaker, panel } = fed;
    const load = this.loadOf(outlet, breaker);
    if (load === undefined) {
      this.planned.set(outlet.key, { ratingOf: breaker });
      return;
    }
    const testA = load.kind === "stated" ? load.amps : 0;
    const from = panel.kind === "panel" && panel.supply === "service" ? undefined : panel.id;
    const key = `${load.kind} ${testA} ${from} ${moved.join("|")}`;
    let question = this.questions.get(key);
    if (question === undefined) {
      question = { circuit: this.circuitIn(load.kind, moved), testA, from, outlets: [] };
      this.questions.set(key, question);
    }
    question.outlets.push(outlet);
    this.planned.set(outlet.key, { breaker, panel, load, question });
  }

  dropOf(outlet: PlacedOutlet): KnownDrop | { kind: "no-rating"; breaker: Device } | { kind: "not-fed" } {
    const planned = this.planned.get(outlet.key);
    if (planned === undefined) return { kind: "not-fed" };
    if ("ratingOf" in planned) return { kind: "no-rating", breaker: planned.ratingOf };
    const { breaker, panel, load, question } = planned;
    const { total: all, branch: ofBranch } = answered(question);
    const [total, branch] = [all.get(outlet.key), ofBranch.get(outlet.key)];
    if (total === undefined || branch === undefined) return { kind: "not-fed" };
    return { kind: "drop", breaker, panel, load, total, branch, way: () => wayOfOutlet(this.section, outlet) };
  }

  private loadOf(outlet: PlacedOutlet, breaker: Device): DropLoad | undefined {
    if (!outlet.receptacle) return { kind: "in-use", uses: this.usesBehind(breaker) };
    const ratingA = breaker.breakerRatingA;
    if (ratingA === undefined) return undefined;
    return { kind: "stated", amps: (ratingA * this.loadPercent) / 100, percent: this.loadPercent, ratingA };
  }

  private usesBehind(breaker: Device): readonly DrawnUse[] {
    let found = this.uses.get(breaker.id);
    if (found === undefined) {
      const outlets = new Set(this.section.circuitOf(breaker.id).outlets);
      const standings = this.section.outlets().filter(({ outlet }) => outlets.has(outlet.key));
      const devices = [...new Set(standings.map(({ outlet }) => outlet.device))];
      found = usesOn(this.section.installation.loads, outlets, devices);
      this.uses.set(breaker.id, found);
    }
    return found;
  }

  /** Handles in their second position in the first setting in which the outlet is live; undefined where none is. */
  private movedFor(index: number): readonly string[] | undefined {
    const model = modelOf(this.section);
    const reach = model.sourceReach();
    const nodes = model.placed()[index]?.nodes;
    if (nodes === undefined) return undefined;
    const setting = settingWith(reach, nodes.hot, HOT) ?? settingWith(reach, nodes.neutral, HOT);
    return setting?.handles.filter((handle) => setting.positionOf(handle) !== 0);
  }

  private circuitIn(load: DropLoad["kind"], moved: readonly string[]): Circuit {
    const key = `${load} ${moved.join("|")}`;
    let circuit = this.circuits.get(key);
    if (circuit === undefined) {
      const drawn = circuitOfSection(this.section, this.supply);
      const idle = new Set(load === "stated" ? drawn.parts.flatMap(userOf) : []);
      circuit = drawn.inSetting({ ...EVERYTHING_ON, positions: new Map(moved.map((handle) => [handle, 1])), idle });
      this.circuits.set(key, circuit);
    }
    return circuit;
  }
}

function answered(question: Question): NonNullable<Question["answers"]> {
  if (question.answers === undefined) {
    const { circuit, testA, from, outlets } = question;
    const total = byKey(voltageDrops(circuit, outlets, testA));
    question.answers = {
      total,
      branch: from === undefined ? total : byKey(voltageDrops(circuit, outlets, testA, from)),
    };
  }
  return question.answers;
}

const byKey = (drops: readonly VoltageDrop[]): ReadonlyMap<string, VoltageDrop> =>
  new Map(drops.map((drop) => [drop.outlet.key, drop]));

const userOf = (part: Circuit["parts"][number]) =>
  part.kind === "load" || part.kind === "leak" ? (part.load ?? part.device) : [];
