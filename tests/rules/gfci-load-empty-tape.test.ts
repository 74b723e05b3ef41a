import { expect, test } from "vitest";
import { gfciLoadEmptyTape } from "../../shared-model/rules/checks/gfci-load-empty-tape.ts";
import type { Drawing } from "./drawing.ts";
import { findingOn, proposing } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

/** All cables of B1 in the LINE joints: X61 of our list of slips. */
const allOnLine = (): Drawing =>
  laundryProposed()
    .put({ "C2.bk@B1": "HL", "C2.wh@B1": "NL", "C5.bk@B1": "HL", "C5.wh@B1": "NL" })
    .removeJumper("c")
    .removeJumper("d");

/** A second device on the way, at the sink, with an empty LOAD too. */
const twoEmpty = (): Drawing =>
  allOnLine()
    .device("R2b", "gfci-receptacle-15", "B2")
    .jumper("y", "B2", "R2.H1", "R2b.LINE_H")
    .jumper("z", "B2", "R2.N1", "R2b.LINE_N", { colour: "white" });

ruleTester(gfciLoadEmptyTape, {
  passes: [
    { name: "LOAD is used, and R4b has nothing beyond it", drawing: () => laundryProposed() },
    {
      name: "one cable of two is on LOAD: another matter",
      drawing: () => laundryProposed().put({ "C5.bk@B1": "HL", "C5.wh@B1": "NL" }),
    },
    {
      name: "somebody decided against all of them",
      drawing: () => allOnLine().wish({ R2: "decided-not", R3: "decided-not", R5: "decided-not" }),
    },
    {
      name: "their cables are meant to stay on LINE",
      drawing: () => allOnLine().meant("B1", { C2: false, C5: false }),
    },
    {
      name: "there are freezers and the like at all of them",
      drawing: () =>
        allOnLine()
          .load("F", "freezer-180", "R2")
          .load("P", "sump-pump-800", "R3")
          .load("M", "appliance-600", "R5", { priority: "medical" }),
    },
    {
      name: "something else protects them",
      drawing: () =>
        allOnLine().breaker("QG", 20, {}, "breaker-gfci-1").put({ "C1.bk@P": "QG.OUT", "C1.wh@P": "QG.LOAD_N" }),
    },
    {
      name: "what it feeds past has a device of its own, which is fed on LOAD: another matter",
      drawing: () => laundryProposed().exchange("R4b", "LINE_H", "LOAD_H").exchange("R4b", "LINE_N", "LOAD_N"),
    },
    {
      name: "the same with nothing on LOAD of R1b",
      drawing: () =>
        allOnLine()
          .meant("B1", { C2: false, C5: false })
          .exchange("R4b", "LINE_H", "LOAD_H")
          .exchange("R4b", "LINE_N", "LOAD_N"),
    },
    {
      name: "LINE is dead: another matter",
      drawing: () => allOnLine().put({ "C1.bk@P": "cap" }),
    },
  ],
  finds: [
    {
      name: "the tape is still on",
      drawing: allOnLine,
      findings: [
        {
          on: "R1b",
          severity: "advice",
          data: { outlets: 3 },
          says: ["Only R1b itself", "R2, R3 and R5 beyond B1 are fed past it by C2 and C5"],
        },
      ],
    },
    {
      name: "one cable is meant to stay, and who says where the other is",
      drawing: () => allOnLine().meant("B1", { C2: false }).knownBy("C5.wh@B1", "assumed"),
      findings: [{ on: "R1b", basis: "assumed", data: { outlets: 1 }, says: ["R5 beyond B1 is fed past it by C5"] }],
    },
    {
      name: "of two on the way the nearest one tells it",
      drawing: twoEmpty,
      findings: [
        { on: "R1b", data: { outlets: 2 }, says: ["R2 and R5"] },
        { on: "R2b", data: { outlets: 1 }, says: ["R3 beyond B2 is fed past it by C6"] },
      ],
    },
  ],
  cannotTell: { never: "terminals and conductors are drawn or they are not" },
});

test("both cables are brought to LOAD together, each in a joint with one pigtail", () => {
  const { title, gained, left } = trySectionFix(allOnLine(), "gfci-load-empty-tape", "R1b", "Bring C2 and C5");
  expect(title).toMatch(/^Bring C2 and C5 from the LOAD side of R1b/);
  expect(gained).toEqual(["R2", "R3", "R5"]);
  expect(left.filter((one) => one.startsWith("outlet-not-protected"))).toEqual([]);
});

test("one cable goes on the terminals, and a freezer that would go off with the rest is named", () => {
  const hall = (drawing: Drawing, box: string, name: string) =>
    drawing.setBox(box, { roomId: "Hall" as never }).setDevice(name, { zones: [] });
  // Where an edition asks for the protection of R2 that is told, and this is folded under it.
  const drawing = hall(hall(allOnLine(), "B2", "R2"), "B3", "R3")
    .meant("B1", { C5: false })
    .load("F", "freezer-180", "R3");
  const { offers } = findingOn(proposing(drawing), "gfci-load-empty-tape", "R1b");
  expect(offers?.map(({ title }) => title)).toEqual([
    "Bring C2 from the LOAD side of R1b; the freezer at R3 then goes off with the rest on a trip",
  ]);
});
