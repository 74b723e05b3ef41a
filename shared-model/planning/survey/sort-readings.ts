import type { SurveySetAside } from "../../answers/survey.ts";
import { COLOUR_WORDS } from "../../catalog/wire-words.ts";
import type { Reading } from "../../model/project.ts";
import type { SurveyInstrument, SurveyPoint } from "../../model/survey.ts";
import { colourCode } from "../../units/colour.ts";
import type { Probe } from "./bands.ts";
import { type BoxAtHand, type CableAtHand, noGroundWords } from "./box-at-hand.ts";
import { type Joining, type ReadAtCable, UNLISTED } from "./evidence.ts";
import type { Wire } from "./lead.ts";
import type { Surroundings } from "./lead-variants.ts";
import { ASIDE_WORDS, READING_WORDS as wording } from "./reading-words.ts";
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
    if (instrument === "noncontact") return ASIDE_WORDS.noncontact;
    switch (test.kind) {
      case "works":
        return this.works(taken, test.items);
      case "pair":
        if (arrangement === "A0" || arrangement === undefined) return ASIDE_WORDS.asFound;
        if (arrangement === "A3" || arrangement === "A4") return ASIDE_WORDS.joined;
        return this.pair(taken, test.from, test.to);
      case "current": {
        if (arrangement !== "A1") return ASIDE_WORDS.powerOn;
        const wire = this.cable(test.cable)?.wires.get(test.conductor);
        const value = Number(taken.value);
        if (wire !== "w" || !Number.isFinite(value)) return ASIDE_WORDS.whiteOnly;
        return this.put(taken, test.cable, { kind: "current", flows: Math.abs(value) >= FLOWS_FROM_A });
      }
      case "look":
        return this.put(taken, test.cable, { kind: "look", isLoop: test.feedThere });
      case "breaker": {
        const cable = this.place(test.cable);
        if (cable < 0) return ASIDE_WORDS.notHere;
        this.breakers.push({ cable, breaker: test.breaker, wentDead: test.wentDead });
        return undefined;
      }
      case "test-lamp": {
        const value = Number(taken.value);
        if (!Number.isFinite(value)) return ASIDE_WORDS.noVolts;
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
    if (survey.arrangement !== "A3" && survey.arrangement !== "A4") return ASIDE_WORDS.works;
    const places = (survey.joined ?? []).map((id) => this.place(id));
    if (places.includes(-1)) return ASIDE_WORDS.notHere;
    if (places.length < 2) return ASIDE_WORDS.whichJoined;
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
    if (Number.isNaN(value) || (value === Number.POSITIVE_INFINITY && !isDead)) return ASIDE_WORDS.noFigure;
    if (isDead !== (instrument === "continuity")) return isDead ? ASIDE_WORDS.ohmsOff : ASIDE_WORDS.voltsOn;
    if (!isDead && instrument !== "low-impedance-meter" && instrument !== "meter") return ASIDE_WORDS.voltsByMeter;
    if (!isDead && value < LIVE_FROM_V && (survey.off?.length ?? 0) > 0) return ASIDE_WORDS.breakerOff;
    if (!this.box.hasReference && (this.isGround(from) || this.isGround(to)))
      return ASIDE_WORDS.noReference(noGroundWords(this.box));
    const [a, b] = [from, to].map((point) => (this.isGround(point) ? ("ground" as const) : this.wireAt(point)));
    if (a === undefined || b === undefined) return ASIDE_WORDS.notHere;
    if (a === "ground" && b === "ground") return ASIDE_WORDS.grounds;
    const cables = [a, b].flatMap((one) => (one === "ground" ? [] : [one.cable]));
    const [first, second = first] = cables as [number, number?];
    if (first !== second) {
      if (isDead || instrument !== "low-impedance-meter") return ASIDE_WORDS.betweenCables;
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
    if (place < 0) return ASIDE_WORDS.notHere;
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

const aroundOf = ({ switches = [], nothingPlugged = false }: TakenReading["survey"]): Surroundings => ({
  switches,
  nothingPlugged,
});

/** What a person knows, as a phrase. */
function knownWords({ groups }: BoxAtHand, leadsTo: "panel" | readonly string[], how: string): string {
  const items = groups.flat().filter(({ id }) => leadsTo.includes(id));
  const where =
    leadsTo === "panel"
      ? wording.fromPanel
      : wording.leadsTo(items.length === 0 ? listWords(leadsTo) : itemWords(items));
  return wording.told(where, how);
}

/** A reading as a phrase. */
function wordsOf(box: BoxAtHand, { survey, instrument, value }: Omit<TakenReading, "words" | "index">): string {
  const { test, arrangement = "", joined = [] } = survey;
  const cable = (id: string): CableAtHand | undefined => box.cables.find((one) => one.id === id);
  const nameOf = (id: string): string => cable(id)?.name ?? wording.cableGone;
  const place = (point: SurveyPoint): string => {
    if (point === "ground") return wording.ground;
    const conductor = cable(point.cable)?.conductors[point.conductor];
    if (conductor === undefined) return wording.wireGone;
    return conductor.grounding ? wording.ground : COLOUR_WORDS[conductor.colour];
  };
  const by = INSTRUMENT_WORDS[instrument];
  const isDead = arrangement === "A1";
  switch (test.kind) {
    case "pair": {
      const read = value === OPEN ? wording.open : isDead ? wording.ohms(value) : wording.volts(value);
      const ids = new Set([test.from, test.to].flatMap((point) => (point === "ground" ? [] : [point.cable])));
      const [from, to] = [place(test.from), place(test.to)];
      return ids.size > 1
        ? wording.pairBetween(read, from, to, listWords([...ids].map(nameOf)), by, arrangement)
        : wording.pair(read, from, to, by, arrangement);
    }
    case "works": {
      const names = new Map(box.groups.flat().map(({ id, name }) => [id, name]));
      const cables = listWords(joined.map(nameOf));
      return test.items.length === 0
        ? wording.workedNothing(cables, arrangement)
        : wording.worked(cables, arrangement, listWords(test.items.map((id) => names.get(id) ?? id)));
    }
    case "current": {
      const colour = cable(test.cable)?.conductors[test.conductor]?.colour;
      return wording.current(value, colour === undefined ? "" : COLOUR_WORDS[colour], nameOf(test.cable), by);
    }
    case "test-lamp":
      return (test.lightGlows ? wording.testLampGlowed : wording.testLampDark)(value, nameOf(test.cable));
    case "look":
      return (test.feedThere ? wording.loop : wording.noLoop)(nameOf(test.cable));
    case "breaker":
      return (test.wentDead ? wording.wentDead : wording.stayedLive)(nameOf(test.cable));
  }
}

/** What a code of a conductor is called in a tag: "BK". */
export const codeOf = (cable: CableAtHand, key: string): string => {
  const conductor = Object.entries(cable.conductors).find(([one]) => one === key)?.[1];
  return conductor === undefined ? key : colourCode(conductor.colour);
};
