import type { SurveySetAside } from "../../answers/survey.ts";
import type { Reading } from "../../model/project.ts";
import type { SurveyInstrument, SurveyPoint } from "../../model/survey.ts";
import { colourCode } from "../../units/colour.ts";
import type { Probe } from "./bands.ts";
import { type BoxAtHand, type CableAtHand, noGroundWords } from "./box-at-hand.ts";
import { type Joining, type ReadAtCable, UNLISTED } from "./evidence.ts";
import type { Wire } from "./lead.ts";
import type { Surroundings } from "./lead-variants.ts";
import { ERRORS, LIVE_FROM_V } from "./survey-values.ts";
import { INSTRUMENT_WORDS, itemWords, listWords } from "./survey-words.ts";
import type { TakenReading } from "./taken-reading.ts";

/** Volts between the wires of two cables, apart and energised. */
export interface ReadBetween {
  readonly taken: TakenReading;
  readonly cables: readonly [number, number];
  readonly volts: number;
}

/** Readings by what they tell of. */
export interface SortedReadings {
  readonly taken: readonly TakenReading[];
  /** By place of the cable. */
  readonly atCable: readonly (readonly ReadAtCable[])[];
  readonly joinings: readonly Joining[];
  readonly between: readonly ReadBetween[];
  /** Two readings of one breaker: which cables it kills. */
  readonly breakers: readonly { readonly cable: number; readonly breaker: string; readonly wentDead: boolean }[];
  readonly setAside: readonly SurveySetAside[];
}

export const isSurveyInstrument = (instrument: Reading["instrument"]): instrument is SurveyInstrument =>
  Object.hasOwn(INSTRUMENT_WORDS, instrument);

/** Sorts readings by what they tell of; what cannot count is set aside with the reason. */
export function sortReadings(
  box: BoxAtHand,
  readings: readonly Omit<TakenReading, "words" | "index">[],
): SortedReadings {
  const sorter = new Sorter(box);
  sorter.addKnown();
  readings.forEach((reading, index) => {
    sorter.add({ ...reading, index, words: wordsOf(box, reading) });
  });
  return sorter.done;
}

class Sorter {
  private readonly box: BoxAtHand;
  private readonly taken: TakenReading[] = [];
  private readonly atCable: ReadAtCable[][];
  private readonly joinings: Joining[] = [];
  private readonly between: ReadBetween[] = [];
  private readonly breakers: SortedReadings["breakers"][number][] = [];
  private readonly setAside: SurveySetAside[] = [];
  private readonly items: ReadonlySet<string>;

  constructor(box: BoxAtHand) {
    this.box = box;
    this.atCable = box.cables.map(() => []);
    this.items = new Set(box.groups.flat().map(({ id }) => id));
  }

  get done(): SortedReadings {
    const { taken, atCable, joinings, between, breakers, setAside } = this;
    return { taken, atCable, joinings, between, breakers, setAside };
  }

  /** What a person knows of a cable stands beside what was read of it. */
  addKnown(): void {
    const { box, items, atCable } = this;
    for (const [place, { leadsTo, how }] of box.known) {
      const listed = leadsTo === "panel" ? leadsTo : leadsTo.filter((id) => items.has(id));
      const words = knownWords(box, leadsTo, how);
      atCable[place]?.push({ taken: { index: -1, words }, kind: "told", leadsTo: listed, error: ERRORS.mislabel });
    }
  }

  add(taken: TakenReading): void {
    const reason = this.sort(taken);
    this.taken.push(taken);
    if (reason !== undefined)
      this.setAside.push({ index: taken.index, reason, ...(taken.id !== undefined && { reading: taken.id }) });
  }

  /** Puts a reading where it belongs; why it does not count, where it does not. */
  private sort(taken: TakenReading): string | undefined {
    const { survey, instrument } = taken;
    const { test, arrangement } = survey;
    if (instrument === "noncontact") return "A noncontact indicator is a hint only: it proves neither live nor dead.";
    switch (test.kind) {
      case "works":
        return this.works(taken, test.items);
      case "pair":
        if (arrangement === "A0" || arrangement === undefined)
          return "As found all cables are joined: it does not tell them apart. It stays on the record.";
        if (arrangement === "A3" || arrangement === "A4")
          return "With cables joined a pair tells of all of them. Part them first (A1), then read (A2).";
        return this.pair(taken, test.from, test.to);
      case "current": {
        if (arrangement !== "A1")
          return "With the power on, the white of any feed carries current. Clamp it with the breaker off (A1).";
        const wire = this.cable(test.cable)?.wires.get(test.conductor);
        const value = Number(taken.value);
        if (wire !== "w" || !Number.isFinite(value)) return "Only a current in a white wire tells something here.";
        return this.put(taken, test.cable, { kind: "current", flows: Math.abs(value) >= FLOWS_FROM_A });
      }
      case "look":
        return this.put(taken, test.cable, { kind: "look", isLoop: test.feedThere });
      case "breaker": {
        const cable = this.place(test.cable);
        if (cable < 0) return NOT_HERE;
        this.breakers.push({ cable, breaker: test.breaker, wentDead: test.wentDead });
        return undefined;
      }
      case "test-lamp": {
        const value = Number(taken.value);
        if (!Number.isFinite(value)) return "The volts across the test lamp are missing.";
        const figure = { probe: { kind: "test-lamp" } as const, value, settles: false, weak: false };
        return (
          this.put(taken, test.cable, { kind: "figure", ...figure, around: aroundOf(survey) }) ??
          this.put(taken, test.cable, { kind: "glow", glows: test.lightGlows })
        );
      }
    }
  }

  private works(taken: TakenReading, items: readonly string[]): string | undefined {
    const { survey, instrument } = taken;
    if (survey.arrangement !== "A3" && survey.arrangement !== "A4")
      return "What works tells cables apart only with some of them joined to the supply (A3). It stays on the record.";
    const places = (survey.joined ?? []).map((id) => this.place(id));
    if (places.includes(-1)) return NOT_HERE;
    if (places.length < 2) return "It does not say which cables were joined.";
    this.joinings.push({
      taken,
      cables: new Set(places),
      works: new Set(items),
      unlisted: new Set(
        items.flatMap((item) =>
          this.items.has(item) ? [] : [item === UNLISTED.light ? UNLISTED.light : UNLISTED.outlets],
        ),
      ),
      around: aroundOf(survey),
      error: instrument === "plug-in-tester" ? ERRORS.plugIn : ERRORS.mislabel,
    });
    return undefined;
  }

  private pair(taken: TakenReading, from: SurveyPoint, to: SurveyPoint): string | undefined {
    const { survey, instrument } = taken;
    const isDead = survey.arrangement === "A1";
    const value = taken.value === OPEN ? Number.POSITIVE_INFINITY : Math.abs(Number(taken.value));
    if (Number.isNaN(value) || (value === Number.POSITIVE_INFINITY && !isDead)) return "The figure is missing.";
    if (isDead !== (instrument === "continuity"))
      return isDead
        ? "With the power off (A1) only ohms tell something."
        : "Ohms are measured with the power off (A1), volts with it on (A2).";
    if (!isDead && instrument !== "low-impedance-meter" && instrument !== "meter")
      return "Volts between two wires count by a meter only: read it by a low-impedance meter.";
    if (!isDead && value < LIVE_FROM_V && (survey.off?.length ?? 0) > 0)
      return "It was read with a breaker off: that it shows nothing does not tell. It stays on the record.";
    if (!this.box.hasReference && (this.isGround(from) || this.isGround(to)))
      return `${noGroundWords(this.box)}: a reading to ground counts only once its reference is proved, as by 120 V to a known hot.`;
    const [a, b] = [from, to].map((point) => (this.isGround(point) ? ("ground" as const) : this.wireAt(point)));
    if (a === undefined || b === undefined) return NOT_HERE;
    if (a === "ground" && b === "ground") return "Both leads were on grounds.";
    const cables = [a, b].flatMap((one) => (one === "ground" ? [] : [one.cable]));
    const [first, second = first] = cables as [number, number?];
    if (first !== second) {
      if (isDead || instrument !== "low-impedance-meter")
        return "Between two cables only volts by low-impedance meter are compared.";
      this.between.push({ taken, cables: [first, second], volts: value });
      return undefined;
    }
    const [one, other] = [a, b].map((end) => (end === "ground" ? end : end.wire)) as [Wire | "ground", Wire | "ground"];
    const probe: Probe = isDead
      ? { kind: "ohms", from: one, to: other }
      : { kind: "volts", from: one, to: other, meter: instrument === "meter" ? "high" : "low" };
    const weak = instrument === "meter";
    this.atCable[first]?.push({
      taken,
      kind: "figure",
      probe,
      value,
      around: aroundOf(survey),
      settles: !isDead && !weak,
      weak,
      error: weak ? ERRORS.highImpedance : ERRORS.meter,
    });
    return undefined;
  }

  private put(
    taken: TakenReading,
    id: string,
    read: DistributiveOmit<ReadAtCable, "taken" | "error">,
  ): string | undefined {
    const place = this.place(id);
    if (place < 0) return NOT_HERE;
    this.atCable[place]?.push({ taken, error: ERRORS.mislabel, ...read } as ReadAtCable);
    return undefined;
  }

  private readonly place = (id: string): number => this.box.cables.findIndex((one) => one.id === id);

  private readonly cable = (id: string): CableAtHand | undefined => this.box.cables.find((one) => one.id === id);

  private isGround(point: SurveyPoint): boolean {
    return point === "ground" || this.cable(point.cable)?.conductors[point.conductor]?.grounding === true;
  }

  private wireAt(point: SurveyPoint): { readonly cable: number; readonly wire: Wire } | undefined {
    if (point === "ground") return undefined;
    const wire = this.cable(point.cable)?.wires.get(point.conductor);
    return wire === undefined ? undefined : { cable: this.place(point.cable), wire };
  }
}

type DistributiveOmit<T, K extends PropertyKey> = T extends unknown ? Omit<T, K> : never;

/** As a reading without a figure is written. */
const OPEN = "open";
const FLOWS_FROM_A = 0.05;
const NOT_HERE = "It names a cable or a wire that this box no longer has.";

const aroundOf = ({ switches = [], nothingPlugged = false }: TakenReading["survey"]): Surroundings => ({
  switches,
  nothingPlugged,
});

/** What a person knows, as a phrase. */
function knownWords({ groups }: BoxAtHand, leadsTo: "panel" | readonly string[], how: string): string {
  const items = groups.flat().filter(({ id }) => leadsTo.includes(id));
  const where =
    leadsTo === "panel"
      ? "it comes from the panel"
      : `it leads to ${items.length === 0 ? listWords(leadsTo) : itemWords(items)}`;
  return `told, not measured: ${where} (${how})`;
}

/** A reading as a phrase. */
function wordsOf(box: BoxAtHand, { survey, instrument, value }: Omit<TakenReading, "words" | "index">): string {
  const { test, arrangement = "", joined = [] } = survey;
  const cable = (id: string): CableAtHand | undefined => box.cables.find((one) => one.id === id);
  const nameOf = (id: string): string => cable(id)?.name ?? "a cable that is gone";
  const place = (point: SurveyPoint): string => {
    if (point === "ground") return "ground";
    const conductor = cable(point.cable)?.conductors[point.conductor];
    return conductor === undefined ? "a wire that is gone" : conductor.grounding ? "ground" : conductor.colour;
  };
  const by = INSTRUMENT_WORDS[instrument];
  const isDead = arrangement === "A1";
  switch (test.kind) {
    case "pair": {
      const read = value === OPEN ? "open" : `${value} ${isDead ? "Ω" : "V"}`;
      const ids = new Set([test.from, test.to].flatMap((point) => (point === "ground" ? [] : [point.cable])));
      const among = ids.size > 1 ? ` between ${listWords([...ids].map(nameOf))}` : "";
      return `${read} ${place(test.from)} to ${place(test.to)}${among} ${by} in ${arrangement}`;
    }
    case "works": {
      const names = new Map(box.groups.flat().map(({ id, name }) => [id, name]));
      return `with ${listWords(joined.map(nameOf))} joined (${arrangement}), ${
        test.items.length === 0 ? "nothing worked" : `${listWords(test.items.map((id) => names.get(id) ?? id))} worked`
      }`;
    }
    case "current":
      return `${value} A in the ${cable(test.cable)?.conductors[test.conductor]?.colour ?? ""} wire of ${nameOf(test.cable)} ${by}`;
    case "test-lamp":
      return `${value} V across a test lamp on ${nameOf(test.cable)}, the light beyond ${test.lightGlows ? "glowed" : "stayed dark"}`;
    case "look":
      return `the feed of ${nameOf(test.cable)} is ${test.feedThere ? "" : "not "}in the luminaire's box, seen with the power off`;
    case "breaker":
      return `${nameOf(test.cable)} ${test.wentDead ? "went dead" : "stayed live"} with a breaker off`;
  }
}

/** What a code of a conductor is called in a tag: "BK". */
export const codeOf = (cable: CableAtHand, key: string): string => {
  const conductor = Object.entries(cable.conductors).find(([one]) => one === key)?.[1];
  return conductor === undefined ? key : colourCode(conductor.colour);
};
