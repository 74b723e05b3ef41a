import { expect, test } from "vitest";
import { polaritySwapped } from "../../shared-model/rules/checks/polarity-swapped.ts";
import { Drawing } from "./drawing.ts";
import { fixOf } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

ruleTester(polaritySwapped, {
  passes: [
    { name: "every receptacle the right way round", drawing: () => laundryProposed() },
    {
      name: "exchanged twice is right again at the receptacle",
      drawing: () => laundryProposed().swap("C5.bk@B1", "C5.wh@B1").swap("C5.bk@B6", "C5.wh@B6"),
    },
    { name: "no hot at all is another matter", drawing: () => laundryProposed().put({ "C5.bk@B1": "cap" }) },
    {
      name: "hot and neutral joined is another matter",
      drawing: () => laundryProposed().jumper("y", "B6", "R5.H2", "R5.N2"),
    },
    {
      name: "joined behind a switch that opens both: another matter",
      drawing: () =>
        laundryProposed()
          .device("S2", "switch-double-pole", "B6")
          .put({ "C5.bk@B6": "S2.L1", "C5.wh@B6": "S2.L2" })
          .jumper("u", "B6", "S2.T1", "R5.H1")
          .jumper("v", "B6", "S2.T2", "R5.N1")
          .jumper("y", "B6", "R5.H2", "R5.N2"),
    },
    { name: "a luminaire is no receptacle", drawing: () => laundryProposed().swap("C7.bk@B7", "C7.wh@B7") },
    {
      name: "a receptacle that is not wired",
      drawing: () => new Drawing().box("A", 30).device("R1", "receptacle-15", "A"),
    },
  ],
  finds: [
    {
      name: "it rests on who says where the ends are",
      drawing: () => laundryProposed().swap("C5.bk@B6", "C5.wh@B6").knownBy("C5.bk@B6", "told"),
      findings: [{ on: "R5", basis: "told" }],
    },
    {
      name: "exchanged at one receptacle",
      drawing: () => laundryProposed().swap("C5.bk@B6", "C5.wh@B6"),
      findings: [{ on: "R5", severity: "danger", says: ["They first cross in B6"] }],
    },
    {
      name: "exchanged where the cable leaves: found at the receptacle, placed in the first box",
      drawing: () => laundryProposed().swap("C5.bk@B1", "C5.wh@B1"),
      findings: [{ on: "R5", says: ["They first cross in B1"] }],
    },
    {
      name: "exchanged on the way: the two receptacles behind it",
      drawing: () => laundryProposed().swap("C2.bk@B2", "C2.wh@B2"),
      findings: [{ on: "R2" }, { on: "R3" }],
    },
    {
      name: "exchanged in the supply: every receptacle, as the slots of a device go with it",
      drawing: () => laundryProposed().swap("C1.bk@B1", "C1.wh@B1"),
      findings: ["R1b", "R2", "R3", "R4b", "R5"].map((on) => ({ on, says: ["They first cross in B1 at C1 BK"] })),
    },
  ],
  cannotTell: [
    {
      name: "the supply comes from country that is not drawn: one question for all of them",
      drawing: () =>
        new Drawing()
          .box("A", 30)
          .box("B", 30)
          .cable("C1", "nm-12-2-g", "country", "A")
          .cable("C2", "nm-12-2-g", "A", "B")
          .device("R1", "receptacle-15", "A")
          .device("R2", "receptacle-15", "B")
          .put({ "C1.bk@A": "R1.H1", "C1.wh@A": "R1.N1", "C2.bk@A": "R1.H2", "C2.wh@A": "R1.N2" })
          .put({ "C2.bk@B": "R2.H1", "C2.wh@B": "R2.N1" }),
      on: ["C1"],
      missing: "what is at the other end of C1",
    },
  ],
});

test("where both ends are on one device they take each other's place", () => {
  const { title, gained } = trySectionFix(laundryProposed().swap("C5.bk@B6", "C5.wh@B6"), "polarity-swapped", "R5");
  expect(title).toBe("Exchange C5 BK and C5 WH at R5");
  expect(gained).toEqual(["R5"]);
});

test("the repair is at the first device, for all that hang on it", () => {
  const drawing = laundryProposed().swap("C6.bk@B3", "C6.wh@B3");
  expect(trySectionFix(drawing, "polarity-swapped", "R3").left).not.toContain("polarity-swapped R3");
});

test("where they cross in joints there is no plain repair", () => {
  expect(fixOf(laundryProposed().swap("C5.bk@B1", "C5.wh@B1"), "polarity-swapped", "R5")).toBeUndefined();
});
