/**
 * The make-ups of ten worked boxes: nets, landings, splices, fill and what is protected, as an independent reference
 * implementation of the same trade method computes them. Counted by hand too: n is conductors in the joint.
 */
import { describe, expect, test } from "vitest";
import type { MakeUpIntent } from "../../shared-model/answers/make-up-intent.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { type MakeUpProposal, makeUp } from "../../shared-model/planning/make-up.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { fillLedger } from "../../shared-model/rules/fill/fill-ledger.ts";
import { fillEdition } from "../../shared-model/rules/fill-edition.ts";
import { sectionProof } from "../../shared-model/solver/circuit/section-proof.ts";
import { sectionOf } from "../../shared-model/solver/sections.ts";
import { toDecimal } from "../../shared-model/units/volume.ts";
import { boxId, cableId, deviceId } from "../builders/drawing.ts";
import { down, intent, workedBox } from "./worked-boxes.ts";

/** "direct", or the numbers of conductors in the joints. */
type Landings = Readonly<Record<string, "direct" | readonly number[]>>;

interface Worked {
  readonly name: string;
  readonly drawn: () => Project;
  readonly intent: MakeUpIntent;
  readonly landings: Landings;
  readonly fill: readonly [total: number, volume: number];
  readonly protects: readonly string[];
  /** Labels that come with it. */
  readonly labels?: number;
}

const GFCI = { GD: "gfci-receptacle-15" };
const switched = (cable: string, protect: boolean) => [{ cable: cableId(cable), switch: deviceId("SW"), protect }];

const WORKED: readonly Worked[] = [
  {
    name: "MB1 switch box: supply and a luminaire leg",
    drawn: () =>
      workedBox({ in3: 18, supply: "nm-12-2-g", legs: { V2: { to: "light" } }, devices: { SW: "switch-single-pole" } }),
    intent: intent("V1", { switched: switched("V2", false) }),
    landings: { HL: "direct", NL: [2], SW_SW: "direct", E: [4] },
    fill: [15.75, 18],
    protects: [],
  },
  {
    name: "MB2 end of run, face only",
    drawn: () => workedBox({ in3: 18, supply: "nm-12-2-g", legs: {}, devices: GFCI }),
    intent: intent("V1"),
    landings: { HL: "direct", NL: "direct", E: [3] },
    fill: [11.25, 18],
    protects: ["GD"],
  },
  {
    name: "MB3 an outlet run and a leg switched here, all protected",
    drawn: () =>
      workedBox({
        in3: 30.3,
        supply: "nm-14-2-g",
        legs: { V2: {}, V3: { to: "light" } },
        ratingA: 15,
        devices: { ...GFCI, SW: "switch-single-pole" },
      }),
    intent: intent("V1", { downstream: [down("V2", true)], switched: switched("V3", true) }),
    landings: { HL: "direct", NL: "direct", HD: [3], ND: [3], SW_SW: "direct", E: [6] },
    fill: [22, 30.3],
    protects: ["GD", "oV2", "oV3"],
  },
  {
    name: "MB4 the same, light on LINE",
    drawn: () =>
      workedBox({
        in3: 30.3,
        supply: "nm-14-2-g",
        legs: { V2: {}, V3: { to: "light" } },
        ratingA: 15,
        devices: { ...GFCI, SW: "switch-single-pole" },
      }),
    intent: intent("V1", { downstream: [down("V2", true)], switched: switched("V3", false) }),
    landings: { HL: [3], NL: [3], HD: "direct", ND: "direct", SW_SW: "direct", E: [6] },
    fill: [22, 30.3],
    protects: ["GD", "oV2"],
  },
  {
    name: "MB5 five two-wire cables without ground, blank face, alarm on LINE",
    drawn: () =>
      workedBox({
        in3: 42,
        supply: "nm-14-2",
        legs: { V2: {}, V3: { to: "alarm" }, V4: {}, V5: {} },
        ratingA: 15,
        devices: { GD: "gfci-blank" },
        clamps: true,
      }),
    intent: intent("V1", { downstream: [down("V2", true), down("V3", false), down("V4", true), down("V5", true)] }),
    landings: { HL: [3], NL: [3], HD: [4], ND: [4] },
    fill: [26, 42],
    protects: ["oV2", "oV4", "oV5"],
  },
  {
    name: "MB6 12 AWG supply, two 14 AWG runs, 15 A, one protected",
    drawn: () =>
      workedBox({
        in3: 36,
        supply: "nm-12-2-g",
        legs: { V2: { item: "nm-14-2-g" }, V3: { item: "nm-14-2-g" } },
        ratingA: 15,
        devices: GFCI,
      }),
    intent: intent("V1", { downstream: [down("V2", true), down("V3", false)] }),
    landings: { HL: [3], NL: [3], HD: "direct", ND: "direct", E: [5] },
    fill: [19.25, 36],
    protects: ["GD", "oV2"],
  },
  {
    name: "MB7 multiwire supply: run on leg A protected, run on leg B not",
    drawn: () =>
      workedBox({
        in3: 30.3,
        supply: "nm-12-3-g",
        legs: { V2: { item: "nm-12-2-g" }, V3: { item: "nm-12-2-g" } },
        devices: GFCI,
        twoHots: true,
      }),
    intent: intent("V1", { leg: "bk", downstream: [down("V2", true), down("V3", false, "rd")] }),
    landings: { HL: "direct", NL: [3], HD: "direct", ND: "direct", H_rd: [2], E: [5] },
    fill: [22.5, 30.3],
    protects: ["GD", "oV2"],
  },
  {
    name: "MB9 six 12/2 cables, all protected",
    drawn: () =>
      workedBox({ in3: 42, supply: "nm-12-2-g", legs: { V2: {}, V3: {}, V4: {}, V5: {}, V6: {} }, devices: GFCI }),
    intent: intent("V1", { downstream: ["V2", "V3", "V4", "V5", "V6"].map((cable) => down(cable, true)) }),
    landings: { HL: "direct", NL: "direct", HD: [5, 3], ND: [5, 3], E: [5, 5] },
    fill: [34.875, 42],
    protects: ["GD", "oV2", "oV3", "oV4", "oV5", "oV6"],
  },
  {
    name: "MB10 two-wire without ground: ground-fault face, then one outlet",
    drawn: () =>
      workedBox({ in3: 18, supply: "nm-14-2", legs: { V2: {} }, ratingA: 15, devices: GFCI, nonmetallic: true }),
    intent: intent("V1", { downstream: [down("V2", true)] }),
    landings: { HL: "direct", NL: "direct", HD: "direct", ND: "direct" },
    fill: [12, 18],
    protects: ["GD", "oV2"],
    labels: 1,
  },
];

const landingsOf = ({ plan }: MakeUpProposal): Landings =>
  Object.fromEntries(
    plan.landings
      .filter(({ landing }) => landing.kind !== "none" && landing.kind !== "cap")
      .map(({ group, landing, splices }) => [
        group.name,
        landing.kind === "splice" ? splices.map((number) => plan.splices[number]?.count ?? 0) : "direct",
      ]),
  );

const protectedNames = (project: Project): readonly string[] => {
  const section = sectionOf(project.asFound, boxId("BX"));
  if (section === undefined) throw new Error("No section.");
  return sectionProof(section)
    .outlets.filter(({ protectedBy }) => protectedBy.length > 0)
    .map(({ standing }) => standing.outlet.name)
    .sort();
};

describe("worked boxes", () => {
  test.each(WORKED)("$name", ({ drawn, intent: asked, landings, fill, protects, labels = 0 }) => {
    const made = makeUp(drawn(), "as-found", boxId("BX"), asked);
    if (!made.ok) throw new Error(made.refusal.message);
    const { project } = made.value;
    expect(landingsOf(made.value)).toEqual(landings);
    expect(invariantProblems(project)).toEqual([]);
    expect(protectedNames(project)).toEqual(protects);
    const box = project.asFound.enclosures[boxId("BX")];
    if (box === undefined) throw new Error("No box.");
    const { total, available = 0 } = fillLedger(project.asFound, box, fillEdition(project));
    expect([toDecimal(total), toDecimal(available as typeof total)]).toEqual(fill);
    expect(Object.keys(project.asFound.labels)).toHaveLength(labels);
    expect(Object.values(box.splices).map(({ connector }) => connector)).not.toContain("unknown");
  });

  test("MB8 a run that carries both legs on one neutral is refused, with the reason and the remedy", () => {
    const drawn = workedBox({
      in3: 30.3,
      supply: "nm-12-3-g",
      legs: { V2: { item: "nm-12-3-g" } },
      devices: GFCI,
      twoHots: true,
    });
    const made = makeUp(drawn, "as-found", boxId("BX"), intent("V1", { downstream: [down("V2", true)] }));
    expect(made.ok ? undefined : made.refusal).toMatchObject({ code: "both-legs", path: "/downstream/0/protect" });
    expect(made.ok ? "" : made.refusal.message).toMatch(
      /V2 carries both legs on one neutral.*Leave it on LINE.*two-pole/,
    );
  });
});
