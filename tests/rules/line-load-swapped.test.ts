import { expect, test } from "vitest";
import { lineLoadSwapped } from "../../shared-model/rules/checks/line-load-swapped.ts";
import { checkDocument, inShort, ofWiring } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

const swapped = (): Drawing =>
  laundryProposed().exchange("R1b", "LINE_H", "LOAD_H").exchange("R1b", "LINE_N", "LOAD_N");

/** The supply in the joints of LOAD, and the rest of the circuit left out. */
const beside = (): Drawing =>
  laundryProposed()
    .removeJumper("a")
    .removeJumper("b")
    .put({ "C1.bk@B1": "HD", "C3.bk@B1": "cap", "C4.bk@B1": "cap" })
    .put({ "C1.wh@B1": "ND", "C3.wh@B1": "cap", "C4.wh@B1": "cap" });

ruleTester(lineLoadSwapped, {
  passes: [
    { name: "supply on LINE", drawing: () => laundryProposed() },
    {
      name: "only the neutrals exchanged is another matter",
      drawing: () => laundryProposed().exchange("R1b", "LINE_N", "LOAD_N"),
    },
    {
      name: "only the hots exchanged is another matter",
      drawing: () => laundryProposed().exchange("R1b", "LINE_H", "LOAD_H"),
    },
    {
      name: "supply on both sides is another matter",
      drawing: () => laundryProposed().jumper("y", "B1", "HL", "HD").jumper("z", "B1", "NL", "ND"),
    },
    { name: "a device without supply", drawing: () => swapped().put({ "C1.bk@P": "cap" }) },
    {
      name: "exchanged twice",
      drawing: () => swapped().exchange("R1b", "LINE_H", "LOAD_H").exchange("R1b", "LINE_N", "LOAD_N"),
    },
    {
      name: "a hot on LOAD and no neutral anywhere: another matter",
      drawing: () => swapped().put({ "C1.wh@B1": "cap" }),
    },
  ],
  finds: [
    {
      name: "it rests on who says where the supply is",
      drawing: () => swapped().knownBy("C1.bk@B1", "assumed"),
      findings: [{ on: "R1b", basis: "assumed" }],
    },
    {
      name: "supply on LOAD",
      drawing: swapped,
      findings: [{ on: "R1b", severity: "danger", says: ["The supply C1 is on LOAD of R1b in B1"] }],
    },
    {
      name: "a device at the end of a run, fed on LOAD",
      drawing: () => laundryProposed().exchange("R4b", "LINE_H", "LOAD_H").exchange("R4b", "LINE_N", "LOAD_N"),
      findings: [{ on: "R4b", says: ["The supply C3", "LINE is empty", "Move both conductors of the supply to LINE"] }],
    },
    {
      name: "the supply on LOAD with what is fed, LINE empty",
      drawing: beside,
      findings: [
        {
          on: "R1b",
          says: ["together with what is fed (C2 BK, C5 BK, C2 WH and C5 WH)", "leave what is fed on LOAD"],
        },
      ],
    },
    {
      name: "a blank-face device",
      drawing: () => swapped().setDevice("R1b", { type: "gfci-blank" }),
      findings: [{ on: "R1b" }],
    },
  ],
  cannotTell: { never: "terminals and conductors are drawn or they are not" },
});

test("what follows from it is folded under it: its face and what its contacts cut off", () => {
  const findings = ofWiring(checkDocument(swapped().project()).findings);
  expect(inShort(findings)).toEqual(["line-load-swapped R1b"]);
  expect(findings[0]?.folded).toBe(3);
  expect(findings[0]?.foldedSubjects.map(({ name }) => name)).toEqual(["R1b", "R2", "R3"]);
});

test.each([["R1b", ["R1b", "R2", "R3", "R5"], swapped]] as const)(
  "all conductors of LINE and LOAD of %s are exchanged as one step",
  (on, gained, drawing) => {
    const tried = trySectionFix(drawing(), "line-load-swapped", on);
    expect(tried.title).toBe(`Exchange the conductors of LINE and LOAD at ${on}`);
    expect(tried.gained).toEqual(gained);
  },
);

test("where LINE is empty the supply goes to it, and what is fed stays on LOAD", () => {
  const atEnd = laundryProposed().exchange("R4b", "LINE_H", "LOAD_H").exchange("R4b", "LINE_N", "LOAD_N");
  const alone = trySectionFix(atEnd, "line-load-swapped", "R4b");
  expect(alone.title).toBe("Move what is on the LOAD hot and neutral of R4b to LINE");
  expect(alone.gained).toEqual(["R4b"]);
  const findings = ofWiring(checkDocument(beside().project()).findings);
  expect(findings.filter(({ rule }) => rule === "outlet-not-protected")).toEqual([]);
  const { title, gained } = trySectionFix(beside(), "line-load-swapped", "R1b");
  expect(title).toContain("Move C1 BK and C1 WH to LINE of R1b, what it feeds stays on LOAD");
  expect(gained).toEqual(["R1b", "R2", "R3", "R5"]);
});

test("conductors that share a pair of holes are exchanged with their holes", () => {
  const drawing = swapped().removeJumper("c").removeJumper("d");
  drawing.put({
    "C2.bk@B1": "R1b.LINE_H#1",
    "C5.bk@B1": "R1b.LINE_H#2",
    "C2.wh@B1": "R1b.LINE_N#1",
    "C5.wh@B1": "R1b.LINE_N#2",
  });
  const { project } = trySectionFix(drawing, "line-load-swapped", "R1b");
  const places = project.proposed?.enclosures["B1" as never]?.places ?? {};
  expect(places["C5.bk.a" as never]).toEqual({ at: { kind: "terminal", device: "R1b", terminal: "LOAD_H", hole: 2 } });
  expect(places["C2.wh.a" as never]).toEqual({ at: { kind: "terminal", device: "R1b", terminal: "LOAD_N", hole: 1 } });
});
