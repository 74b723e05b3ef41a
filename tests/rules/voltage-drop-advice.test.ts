import { describe, expect, test } from "vitest";
import type { Edition } from "../../shared-model/model/project.ts";
import { voltageDropAdvice } from "../../shared-model/rules/checks/voltage-drop-advice.ts";
import { feet, inches, ohms } from "../../shared-model/units/quantity.ts";
import { rawAnswers } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { ruleTester } from "./rule-tester.ts";

/*
 * Limits of 3 % and 5 %: an informational note of NFPA 70 at 210.19 and 215.2, as quoted at
 * https://tradelicenseprep.com/nc-sp-ph-prep/calc-voltage-drop . What is lost, by hand: amperes times 2 x feet x 2.5254 ohm
 * in 1000 ft of 14 AWG copper at 20 degrees C (wire formula), and 1 milliohm of the contact of the breaker.
 */
const lost = (amps: number, ft: number): number => amps * (2 * ft * 0.0025254 + 0.001);

const lengths = (drawing: Drawing, known: Readonly<Record<string, number>>): Drawing => {
  for (const [name, ft] of Object.entries(known)) {
    const cable = drawing.cables[name];
    if (cable === undefined) throw new Error(`No cable ${name}.`);
    cable.lengthFt = feet(ft);
  }
  return drawing;
};

/** 14 AWG from a breaker to one receptacle. */
const run = (ft: number | undefined, ratingA: number | "unrated" = 15, edition: Edition = 2020): Drawing => {
  const drawing = new Drawing(edition)
    .panel("P")
    .breaker("Q1", ratingA === "unrated" ? undefined : ratingA)
    .box("A", 30)
    .cable("C1", "nm-14-2-g", "P", "A")
    .device("R1", "receptacle-15", "A")
    .put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": "P-NB.BAR", "C1.bk@A": "R1.H1", "C1.wh@A": "R1.N1" });
  return ft === undefined ? drawing : lengths(drawing, { C1: ft });
};

/** A second receptacle behind it. */
const chain = (first: number | undefined, second: number | undefined): Drawing => {
  const drawing = run(first)
    .box("B", 30)
    .cable("C2", "nm-14-2-g", "A", "B")
    .device("R2", "receptacle-15", "B")
    .put({ "C2.bk@A": "R1.H2", "C2.wh@A": "R1.N2", "C2.bk@B": "R2.H1", "C2.wh@B": "R2.N1" });
  return second === undefined ? drawing : lengths(drawing, { C2: second });
};

/** A luminaire behind a switch, with what it uses. */
const light = (ft: number, loadW: number): Drawing =>
  lengths(
    new Drawing()
      .panel("P")
      .breaker("Q1", 15)
      .box("A", 30)
      .cable("C1", "nm-14-2-g", "P", "A")
      .device("S1", "switch-single-pole", "A")
      .device("L1", "luminaire-60", "A", { loadOhm: ohms(120 ** 2 / loadW) })
      .splice("W", "A", "twist-small")
      .put({ "C1.bk@P": "Q1.OUT", "C1.wh@P": "P-NB.BAR", "C1.bk@A": "S1.C", "C1.wh@A": "W" })
      .jumper("s", "A", "S1.L", "L1.H", { lengthIn: inches(1) })
      .jumper("n", "A", "W", "L1.N", { lengthIn: inches(1) }),
    { C1: ft },
  );

/** A feeder of 10 AWG to a second panel, and 14 AWG from there. */
const behindFeeder = (feederFt: number, ft: number): Drawing => {
  const drawing = new Drawing()
    .panel("P")
    .panel("P2")
    .breaker("Q30", 30, { legs: ["A", "B"] }, "breaker-2")
    .device("L2", "main-lugs", "P2")
    .breaker("Q1", 15, {}, "breaker-1", "P2")
    .box("A", 30)
    .cable("F1", "nm-10-3-g", "P", "P2")
    .cable("C1", "nm-14-2-g", "P2", "A")
    .device("R1", "receptacle-15", "A")
    .put({ "F1.bk@P": "Q30.OUT1", "F1.rd@P": "Q30.OUT2", "F1.wh@P": "P-NB.BAR", "F1.cu@P": "P-GB.BAR" })
    .put({ "F1.bk@P2": "L2.L1", "F1.rd@P2": "L2.L2", "F1.wh@P2": "L2.N", "F1.cu@P2": "P2-GB.BAR#1" })
    .put({ "C1.bk@P2": "Q1.OUT", "C1.wh@P2": "P2-NB.BAR#1", "C1.cu@P2": "P2-GB.BAR#2" })
    .put({ "C1.bk@A": "R1.H1", "C1.wh@A": "R1.N1", "C1.cu@A": "R1.G" });
  Object.assign(drawing.at("P2"), { supply: "feeder", mainBond: "elsewhere" });
  return lengths(drawing, { F1: feederFt, C1: ft });
};

const withTerms = (drawing: Drawing, terms: Drawing["extra"]): Drawing => {
  Object.assign(drawing.extra, terms);
  return drawing;
};

ruleTester(voltageDropAdvice, {
  passes: [
    { name: "59 ft of 14 AWG at 12 A: 2.99 %", drawing: () => run(59) },
    { name: "a length that is not recorded: silent, not asked", drawing: () => run(undefined) },
    { name: "a length that is not recorded behind a long one", drawing: () => chain(50, undefined) },
    { name: "a breaker without a rating", drawing: () => run(300, "unrated") },
    { name: "nothing feeds it", drawing: () => run(300).put({ "C1.bk@P": "cap" }) },
    { name: "an open neutral is another fault", drawing: () => run(300).put({ "C1.wh@P": "cap" }) },
    { name: "60 W far away", drawing: () => light(500, 60) },
    { name: "a feeder that stays within 5 % with its branch circuit", drawing: () => behindFeeder(90, 55) },
    { name: "past 3 % where 4 % is set", drawing: () => withTerms(run(75), { branchDropPercent: 4 }) },
    {
      name: "past 3 % at 12 A where half of the rating is set",
      drawing: () => withTerms(run(90), { statedLoadPercent: 50 }),
    },
    {
      name: "switched off by an amendment",
      drawing: () =>
        withTerms(run(300), {
          amendments: [{ rule: "voltage-drop-advice", change: { kind: "off" }, reason: "not wanted" }],
        }),
    },
  ],
  finds: [
    {
      name: "60 ft of 14 AWG at 12 A: 3.04 %",
      drawing: () => run(60),
      findings: [
        {
          on: "R1 Q1",
          severity: "advice",
          data: { dropV: 3.6, percent: 3, limitPercent: 3, outlets: 1 },
          says: [
            "3.6 V, 3.0 %",
            "from P with 12 A (80 % of the 15 A of Q1) and nothing else on",
            "C1, 60 ft of 14 AWG",
          ],
        },
      ],
    },
    {
      name: "one finding a breaker, at the worst outlet",
      drawing: () => chain(70, 30),
      findings: [
        {
          on: "R2 Q1",
          data: { dropV: 6.1, percent: 5.1, limitPercent: 3, outlets: 2 },
          says: ["1 more outlet", "C1, 70 ft"],
        },
      ],
    },
    {
      name: "the outlet before a cable of unknown length is told all the same",
      drawing: () => chain(70, undefined),
      findings: [{ on: "R1 Q1" }],
    },
    {
      name: "900 W of light on 100 ft: everything behind the breaker",
      drawing: () => light(100, 900),
      findings: [{ on: "L1 Q1", says: ["everything drawn behind Q1 on: L1 900 W"] }],
    },
    {
      name: "a bad joint is named before the wire",
      drawing: () => {
        const drawing = run(20);
        const box = drawing.at("A");
        for (const [end, place] of Object.entries(box.places))
          if (end.includes("bk")) Object.assign(place, { jointOhm: ohms(2) });
        return drawing;
      },
      findings: [{ on: "R1 Q1", says: ["the joint of C1 BK in A, 2 Ω"] }],
    },
    {
      name: "within 3 % of its panel, past 5 % from the service",
      drawing: () => behindFeeder(130, 55),
      findings: [
        {
          on: "R1 Q1",
          data: { dropV: 6.5, percent: 5.4, limitPercent: 5, outlets: 1 },
          says: ["from the service", "feeder and branch circuit together"],
        },
      ],
    },
    {
      name: "a limit of the drawing's own",
      drawing: () => withTerms(run(59), { branchDropPercent: 2.5 }),
      findings: [{ on: "R1 Q1", says: ["more than the 2.5 % set for this drawing"] }],
    },
    {
      name: "a limit by amendment",
      drawing: () =>
        withTerms(run(59), {
          amendments: [
            {
              rule: "voltage-drop-advice",
              change: { kind: "value", name: "branchDropPercent", value: 2 },
              reason: "house rule",
            },
          ],
        }),
      findings: [{ on: "R1 Q1", data: { dropV: 3.6, percent: 3, limitPercent: 2, outlets: 1 } }],
    },
    {
      name: "the whole rating as the load",
      drawing: () => withTerms(run(48), { statedLoadPercent: 100 }),
      findings: [{ on: "R1 Q1", says: ["15 A (100 % of the 15 A of Q1)"] }],
    },
    {
      name: "it rests on an assumed length",
      drawing: () => {
        const drawing = run(80);
        Object.assign(drawing.cables.C1 ?? {}, { evidence: { lengthFt: "assumed" } });
        return drawing;
      },
      findings: [{ on: "R1 Q1", basis: "assumed" }],
    },
  ],
  cannotTell: { never: "a length is mostly not recorded, so it is named at the outlet and not asked for here" },
});

const found = (drawing: Drawing) =>
  rawAnswers(drawing.project())
    .flat()
    .flatMap(({ reports }) => reports.flatMap(({ rule, report }) => (rule === voltageDropAdvice ? report : [])));

describe("volts by hand", () => {
  test.each([60, 75, 150])("%d ft", (ft) => {
    const [report] = found(run(ft));
    expect(report?.data?.dropV).toBe(Math.round(lost(12, ft) * 10) / 10);
    expect(report?.data?.percent).toBe(Math.round((lost(12, ft) / 1.2) * 10) / 10);
  });

  test.each([2017, 2020, 2023, 2026] as const)("edition %i: the same limit", (edition) => {
    expect(found(run(59, 15, edition))).toEqual([]);
    expect(found(run(60, 15, edition))).toHaveLength(1);
  });
});
