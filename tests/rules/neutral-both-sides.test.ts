import { expect, test } from "vitest";
import { neutralBothSides } from "../../shared-model/rules/checks/neutral-both-sides.ts";
import { checkDocument, inShort, ofWiring } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { fixOf } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

const joined = (): Drawing => laundryProposed().jumper("y", "B1", "NL", "ND", { colour: "white" });

/** A second cable to B6 whose white alone is used, landed on LINE in B1. */
const aroundByCable = (): Drawing =>
  laundryProposed().cable("C8", "nm-12-2-g", "B1", "B6").put({ "C8.wh@B1": "NL", "C8.wh@B6": "R5.N2" });

const inOneJoint = (): Drawing => laundryProposed().put({ "C2.wh@B1": "NL", "C5.wh@B1": "NL", "d.1": "NL" });

ruleTester(neutralBothSides, {
  passes: [
    { name: "LOAD gets its neutral through the device alone", drawing: () => laundryProposed() },
    { name: "the hot goes around: another matter", drawing: () => laundryProposed().jumper("y", "B1", "HL", "HD") },
    {
      name: "one white of a cable on LINE: another matter",
      drawing: () => laundryProposed().put({ "C2.wh@B1": "NL" }),
    },
    {
      name: "exchanged neutrals: another matter",
      drawing: () => laundryProposed().exchange("R1b", "LINE_N", "LOAD_N"),
    },
    {
      name: "a contact between white and ground: the main bond is no way round",
      drawing: () => laundryProposed().jumper("y", "B3", "R3.N2", "bond"),
    },
  ],
  finds: [
    {
      name: "it rests on who says where the jumper is",
      drawing: () => joined().knownBy("y.1", "assumed"),
      findings: [{ on: "R1b", basis: "assumed" }],
    },
    {
      name: "a jumper between the two joints",
      drawing: joined,
      findings: [{ on: "R1b", severity: "danger", says: ["by jumper y (splice NL to splice ND) in B1"] }],
    },
    {
      name: "the pigtail of LOAD in the joint of LINE",
      drawing: () => laundryProposed().put({ "d.1": "NL" }),
      findings: [{ on: "R1b", says: ["by jumper d (splice NL to R1b LOAD N) in B1"] }],
    },
    {
      name: "a second cable to the last box",
      drawing: aroundByCable,
      findings: [{ on: "R1b", says: ["by C8 WH (splice NL to R5 N) between B1 and B6"] }],
    },
    {
      name: "all whites of the box in one joint, out of habit: the pigtail of LOAD, not the supply's own white",
      drawing: () => inOneJoint(),
      findings: [{ on: "R1b", says: ["by jumper d (splice NL to R1b LOAD N) in B1"] }],
    },
    {
      name: "the same with one outlet behind it",
      drawing: () => inOneJoint().put({ "C2.bk@B1": "HL" }),
      findings: [{ on: "R1b", says: ["by jumper d (splice NL to R1b LOAD N) in B1"] }],
    },
    {
      name: "the white of the supply on the LOAD screw, and from there to LINE",
      drawing: () =>
        inOneJoint()
          .removeJumper("d")
          .put({ "C1.wh@B1": "R1b.LOAD_N" })
          .jumper("y", "B1", "R1b.LOAD_N#2", "R1b.LINE_N#2"),
      findings: [{ on: "R1b", says: ["by C1 WH (P-NB N to R1b LOAD N) between P and B1"] }],
    },
    {
      name: "by a second circuit",
      drawing: () =>
        laundryProposed().cable("C9", "nm-12-2-g", "P", "B3").put({ "C9.wh@P": "P-NB.BAR", "C9.wh@B3": "R3.N2" }),
      findings: [{ on: "R1b", says: ["by C9 WH (P-NB N to R3 N) between P and B3"] }],
    },
  ],
  cannotTell: { never: "terminals and conductors are drawn or they are not" },
});

test("what follows from it is folded under it", () => {
  const findings = ofWiring(checkDocument(joined().project()).findings);
  expect(inShort(findings)).toEqual(["neutral-both-sides R1b"]);
  expect(findings[0]?.foldedSubjects.map(({ name }) => name)).toEqual(["R1b", "R2", "R3"]);
});

test("a jumper that should not be there is taken out", () => {
  const { title, gained } = trySectionFix(joined(), "neutral-both-sides", "R1b");
  expect(title).toBe("Remove jumper y between splice NL and splice ND");
  expect(gained).toEqual(["R1b", "R2", "R3", "R5"]);
});

test("a pigtail in the wrong joint goes to the right one", () => {
  const { title, gained, left } = trySectionFix(laundryProposed().put({ "d.1": "NL" }), "neutral-both-sides", "R1b");
  expect(title).toBe("Move d WH to splice ND");
  // The others had no neutral at all.
  expect(gained).toEqual(["R1b", "R2", "R3", "R5"]);
  expect(left.filter((one) => one.startsWith("open-neutral"))).toEqual([]);
});

test("two ways round are no plain repair", () => {
  const drawing = joined().jumper("z", "B1", "NL", "ND", { colour: "white" });
  expect(fixOf(drawing, "neutral-both-sides", "R1b")).toBeUndefined();
});
