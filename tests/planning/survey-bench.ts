/** A box with unknown cables, readings of it as a person enters them, and what a truth would let a person read. */
import type { SurveyAnswer } from "../../shared-model/answers/survey.ts";
import type { Box } from "../../shared-model/model/enclosure.ts";
import type { ConductorKey } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import type { SurveyFacts, SurveyItem, SurveyPoint, SurveyTest } from "../../shared-model/model/survey.ts";
import { type GivenReading, surveyBox } from "../../shared-model/planning/survey/survey-box.ts";
import { type SurveyPriors, USUAL_PRIORS } from "../../shared-model/planning/survey/survey-values.ts";
import { boxId, cableId, drawing } from "../builders/drawing.ts";

/** One supply as it should be, everything listed in its place and nothing odd: the arrangements that are counted by hand. */
export const PLAIN_PRIORS: SurveyPriors = {
  ...USUAL_PRIORS,
  sources: { none: 0, one: 1, two: 0 },
  reversed: 0,
  openNeutral: 0,
  multiwireOfTwo: 0,
  switched: 0,
  loopFed: 0,
  loopFedWithoutSwitch: 0,
  dead: 0,
  loop: 0,
  otherNeutral: 0,
  unlisted: 0,
  legMiscount: 0,
  omitted: 0,
};

export const outletItem = (name: string): SurveyItem => ({ id: name, name, kind: "outlet" });
export const lightItem = (name: string, more: Partial<SurveyItem> = {}): SurveyItem => ({
  id: name,
  name,
  kind: "light",
  ...more,
});

/** Box "B" with cables "C1" and so on, far ends not drawn. */
export function unknownBox(count: number, item = "nm-12-2-g"): Project {
  const house = drawing().panel("P", "panel-16").box("B", "square-4-2-1-8");
  for (let index = 1; index <= count; index++) house.outside(`C${index}`, "B", { item });
  return house.project;
}

export function survey(
  project: Project,
  facts: SurveyFacts,
  readings: readonly GivenReading[],
  priors?: SurveyPriors,
  box = "B",
): SurveyAnswer {
  const answer = surveyBox(
    project.asFound,
    project.supply,
    project.asFound.enclosures[boxId(box)] as Box,
    facts,
    readings,
    priors,
  );
  if (!answer.ok) throw new Error(answer.problems.map(({ message }) => message).join("\n"));
  return answer.value;
}

const WIRES = { b: "bk", w: "wh", r: "rd" } as const;
type WireName = keyof typeof WIRES | "g";
const point = (cable: string, wire: WireName): SurveyPoint =>
  wire === "g" ? "ground" : { cable: cableId(cable), conductor: WIRES[wire] as ConductorKey };
const pair = (cable: string, from: WireName, to: WireName): SurveyTest => ({
  kind: "pair",
  from: point(cable, from),
  to: point(cable, to),
});

/** Volts in A2, by low-impedance meter unless told. */
export const volts = (
  cable: string,
  from: WireName,
  to: WireName,
  value: number,
  instrument: GivenReading["instrument"] = "low-impedance-meter",
): GivenReading => ({ instrument, value: String(value), survey: { arrangement: "A2", test: pair(cable, from, to) } });

/** Black to white, black to ground, white to ground. */
export const triple = (
  cable: string,
  [bw, bg, wg]: readonly [number, number, number],
  instrument?: GivenReading["instrument"],
): readonly GivenReading[] => [
  volts(cable, "b", "w", bw, instrument),
  volts(cable, "b", "g", bg, instrument),
  volts(cable, "w", "g", wg, instrument),
];

/** Ohms in A1, nothing plugged in, the switches named on. */
export const ohms = (
  cable: string,
  value: number | "open",
  on: readonly string[] = [],
  [from, to]: readonly [WireName, WireName] = ["b", "w"],
): GivenReading => ({
  instrument: "continuity",
  value: String(value),
  survey: {
    arrangement: "A1",
    test: pair(cable, from, to),
    nothingPlugged: true,
    switches: on.map((name) => ({ switch: name, on: true })),
  },
});

/** What worked in A3. */
export const works = (
  joined: readonly string[],
  items: readonly string[],
  on: readonly string[] = [],
): GivenReading => ({
  instrument: "by-eye",
  value: String(items.length),
  survey: {
    arrangement: "A3",
    joined: joined.map((name) => cableId(name)),
    test: { kind: "works", items },
    switches: on.map((name) => ({ switch: name, on: true })),
  },
});

/** What a cable is in truth. */
export type Truth =
  | { readonly is: "supply" | "reversed" | "open-neutral" | "loop-fed-filament" | "loop-fed-led" }
  | { readonly is: "dead" | "loop-open" | "loop-closed" }
  | { readonly is: "feeds"; readonly group: number; readonly lamp?: "filament" | "led" | "none" };

/** Key of the role that the survey gives to a truth. */
export const keyOf = (truth: Truth): string =>
  ({
    supply: "supply",
    reversed: "supply reversed",
    "open-neutral": "supply open-neutral",
    "loop-fed-filament": "loop-fed",
    "loop-fed-led": "loop-fed",
    dead: "dead",
    "loop-open": "loop",
    "loop-closed": "loop",
    feeds: `feeds ${"group" in truth ? truth.group : ""}`,
  })[truth.is];

/**
 * What a low-impedance meter shows at a cable that is apart, by hand and without the program: the table of readings that
 * the trade knows. `v` is the voltage of the house.
 */
export function voltsOf(truth: Truth, v: number): readonly [number, number, number] {
  switch (truth.is) {
    case "supply":
      return [v, v, 0];
    case "reversed":
      return [v, 0, v];
    case "open-neutral":
      return [0, v, 0];
    case "loop-fed-filament":
      // A meter of 3000 ohm through a lamp of 240: a divider.
      return [(v * 3000) / 3240, 0, v];
    case "loop-fed-led":
      // An LED lamp that does not light passes less than a milliampere.
      return [2, 0, v];
    default:
      return [0, 0, 0];
  }
}

/** Ohms from black to white with the power off: a cold filament of 60 W has 16 to 20 ohm. */
export function ohmsOf(truth: Truth): number | "open" {
  if (truth.is === "loop-closed") return 0.2;
  return truth.is === "feeds" && truth.lamp === "filament" ? 18 : "open";
}
