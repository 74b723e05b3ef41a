import { expect, test } from "vitest";
import { hotBothSides } from "../../shared-model/rules/checks/hot-both-sides.ts";
import { checkDocument, inShort, ofWiring } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { findingOn, proposing } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

ruleTester(hotBothSides, {
  passes: [
    { name: "LOAD gets its hot through the device alone", drawing: () => laundryProposed() },
    { name: "the neutral goes around: another matter", drawing: () => laundryProposed().jumper("y", "B1", "NL", "ND") },
    {
      name: "a hot that leaves LOAD empty",
      drawing: () => laundryProposed().put({ "C2.bk@B1": "HL", "C5.bk@B1": "HL" }),
    },
    {
      name: "supply on LOAD alone: another matter",
      drawing: () => laundryProposed().exchange("R1b", "LINE_H", "LOAD_H"),
    },
    { name: "an open switch and no second way", drawing: () => laundryProposed().put({ "C7.bk@B5": "S1.C" }) },
  ],
  finds: [
    {
      name: "it rests on who says where the way round is",
      drawing: () => laundryProposed().jumper("y", "B1", "HL", "HD").knownBy("y.1", "assumed"),
      findings: [{ on: "R1b", basis: "assumed" }],
    },
    {
      name: "a jumper from LINE to LOAD",
      drawing: () => laundryProposed().jumper("y", "B1", "HL", "HD"),
      findings: [{ on: "R1b", severity: "danger", says: ["by jumper y", "R2, R3 and R5"] }],
    },
    {
      name: "one black of a cable in the wrong joint, joined to the other by a second cable",
      drawing: () =>
        laundryProposed().cable("C8", "nm-12-2-g", "B1", "B3").put({ "C8.bk@B1": "HL", "C8.bk@B3": "R3.H2" }),
      findings: [{ on: "R1b", says: ["C8 BK"] }],
    },
    {
      name: "around by a switch, in one of its positions",
      drawing: () =>
        laundryProposed()
          .device("S9", "switch-single-pole", "B1")
          .jumper("y", "B1", "HL", "S9.C")
          .jumper("z", "B1", "S9.L", "HD"),
      findings: [{ on: "R1b", says: ["by jumper y, S9 and jumper z."] }],
    },
  ],
  cannotTell: { never: "terminals and conductors are drawn or they are not" },
});

test("only what goes round is named, not the pigtail that LOAD has by right, and one jumper can be taken out", () => {
  const offersAt = (drawing: Drawing) => findingOn(proposing(drawing), "hot-both-sides", "R1b").offers ?? [];
  const one = laundryProposed().jumper("y", "B1", "HL", "HD");
  expect(findingOn(proposing(one), "hot-both-sides", "R1b").message).toContain(" by jumper y. R1b can trip");
  expect(offersAt(one).map(({ title }) => title)).toEqual(["Remove jumper y between splice HL and splice HD"]);
  expect(trySectionFix(one, "hot-both-sides", "R1b", "Remove jumper y").gained).toEqual(["R1b", "R2", "R3", "R5"]);
  expect(offersAt(laundryProposed().jumper("y", "B1", "HL", "HD").jumper("z", "B1", "HL", "HD"))).toEqual([]);
  const byCable = laundryProposed().cable("C8", "nm-12-2-g", "B1", "B3").put({ "C8.bk@B1": "HL", "C8.bk@B3": "R3.H2" });
  expect(findingOn(proposing(byCable), "hot-both-sides", "R1b").message).toContain(" by C8 BK. R1b can trip");
  expect(offersAt(byCable)).toEqual([]);
});

test("the outlets that it takes the protection from are folded under it, what is on LINE is not", () => {
  const drawing = laundryProposed().jumper("y", "B1", "HL", "HD").setSplice("HD", { connector: "twist-large" });
  const inLaundry = drawing.setDevice("R5", { zones: ["bathroom"] });
  const findings = ofWiring(checkDocument(inLaundry.project()).findings);
  expect(inShort(findings)).toEqual(["hot-both-sides R1b"]);
  expect(findings[0]?.foldedSubjects.map(({ name }) => name)).toEqual(["R1b", "R2", "R3", "R5"]);

  const plain = laundryProposed().jumper("y", "B1", "HL", "HD").setSplice("HD", { connector: "twist-large" });
  plain.setDevice("R4b", { type: "receptacle-15" }).put({ "C3.bk@B4": "R4b.H1", "C3.wh@B4": "R4b.N1" });
  expect(inShort(ofWiring(checkDocument(plain.project()).findings))).toEqual([
    "hot-both-sides R1b",
    "outlet-not-protected R4b",
  ]);
});
