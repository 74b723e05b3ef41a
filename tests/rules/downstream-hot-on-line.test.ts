import { expect, test } from "vitest";
import type { Intent } from "../../shared-model/model/project.ts";
import { downstreamHotOnLine } from "../../shared-model/rules/checks/downstream-hot-on-line.ts";
import { checkDocument, inShort, ofWiring } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { findingOn, proposing } from "./fix-tester.ts";
import { laundryProposed, multiwire } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

/** A one-pole device before the neutral of two legs is split. */
const beforeTheSplit = (): Drawing =>
  multiwire()
    .device("G1", "gfci-receptacle-20", "JB")
    .put({ "M3.bk@JB": "G1.LINE_H", "M3.wh@JB": "G1.LINE_N" })
    .jumper("y", "JB", "G1.LOAD_H", "jA")
    .jumper("z", "JB", "G1.LOAD_N", "jN", { colour: "white" });

ruleTester(downstreamHotOnLine, {
  passes: [
    { name: "both conductors behind or neither", drawing: () => laundryProposed() },
    { name: "the neutral on LINE: another matter", drawing: () => laundryProposed().put({ "C5.wh@B1": "NL" }) },
    {
      name: "both conductors on LINE: another matter",
      drawing: () => laundryProposed().put({ "C5.bk@B1": "HL", "C5.wh@B1": "NL" }),
    },
    {
      name: "neutrals of both sides joined: another matter",
      drawing: () => laundryProposed().put({ "C4.wh@B1": "ND" }).jumper("y", "B1", "NL", "ND"),
    },
    {
      name: "supply exchanged: another matter",
      drawing: () => laundryProposed().exchange("R1b", "LINE_N", "LOAD_N"),
    },
    { name: "no neutral at all", drawing: () => laundryProposed().put({ "C4.wh@B1": "cap" }) },
  ],
  finds: [
    {
      name: "it rests on who says where the black is",
      drawing: () => laundryProposed().put({ "C4.wh@B1": "ND" }).knownBy("C4.bk@B1", "assumed"),
      findings: [{ on: "L1", basis: "assumed" }],
    },
    {
      name: "one white in the joint of LOAD",
      drawing: () => laundryProposed().put({ "C4.wh@B1": "ND" }),
      findings: [
        { on: "L1", severity: "danger", data: { device: "R1b" }, says: ["Bring C4 BK and C4 WH from the same side"] },
      ],
    },
    {
      name: "one black left in the joint of LINE: every outlet of the cable",
      drawing: () => laundryProposed().put({ "C2.bk@B1": "HL" }),
      findings: [{ on: "R2" }, { on: "R3" }],
    },
    {
      name: "the other leg of two that share a neutral",
      drawing: beforeTheSplit,
      findings: [{ on: "RB", says: ["its hot from another circuit (QB)"] }],
    },
    {
      name: "in one position of a switch",
      drawing: () =>
        laundryProposed()
          .device("S9", "switch-3way", "B6")
          .put({ "C5.bk@B6": "S9.T1" })
          .jumper("x", "B6", "S9.C", "R5.H1")
          .cable("C8", "nm-12-2-g", "B1", "B6")
          .put({ "C8.bk@B1": "HL", "C8.bk@B6": "S9.T2" }),
      findings: [{ on: "R5" }],
    },
  ],
  cannotTell: { never: "terminals and conductors are drawn or they are not" },
});

test("that a load brings the hot round the device follows from it", () => {
  const findings = ofWiring(checkDocument(laundryProposed().put({ "C4.wh@B1": "ND" }).project()).findings);
  expect(inShort(findings)).toEqual(["downstream-hot-on-line L1"]);
});

test("where protection is asked for the hot comes behind the device", () => {
  const { title, gained } = trySectionFix(laundryProposed().put({ "C2.bk@B1": "HL" }), "downstream-hot-on-line", "R2");
  expect(title).toBe("Move C2 BK to the LOAD hot of R1b");
  expect(gained).toEqual(["R2", "R3"]);
});

const lampSplit = (): Drawing => laundryProposed().put({ "C4.wh@B1": "ND" });
const TO_LOAD = "Move C4 BK to the LOAD hot of R1b; HD gets “Twist-on, large”";
const TO_LINE = "Move C4 WH to the LINE neutral of R1b";

/** Titles of the plain fix and of the offers, as the drawing's intent has it. */
function cures(intent: Partial<Intent>) {
  const project = proposing(lampSplit());
  const proposed = { ...project.asFound, intent: { ...project.asFound.intent, ...intent } };
  const { fix, offers } = findingOn({ ...project, proposed }, "downstream-hot-on-line", "L1");
  return { fix: fix?.title, offers: offers?.map(({ title }) => title) };
}

test("where nobody has decided, a person chooses: behind the device first, or past it", () => {
  expect(cures({})).toEqual({ fix: undefined, offers: [TO_LOAD, TO_LINE] });
  expect(trySectionFix(lampSplit(), "downstream-hot-on-line", "L1", TO_LOAD).gained).toContain("L1");
  expect(trySectionFix(lampSplit(), "downstream-hot-on-line", "L1", TO_LINE).gained).not.toContain("L1");
});

test("where a person has decided, that is the plain repair", () => {
  expect(cures({ outlets: { L1: { wish: "protect" } } as never })).toEqual({ fix: TO_LOAD, offers: undefined });
  expect(cures({ outlets: { L1: { wish: "decided-not" } } as never })).toEqual({ fix: TO_LINE, offers: undefined });
  const protect = (is: boolean) => ({ boxes: { B1: { protect: { C4: is } } } as never });
  expect(cures(protect(false))).toEqual({ fix: TO_LINE, offers: undefined });
  expect(cures(protect(true))).toEqual({ fix: TO_LOAD, offers: undefined });
});

test("what must be protected is, whatever a person has decided", () => {
  const project = proposing(laundryProposed().put({ "C2.bk@B1": "HL" }));
  const intent = { boxes: { B1: { protect: { C2: false } } }, outlets: { R2: { wish: "decided-not" } } } as never;
  const proposed = { ...project.asFound, intent };
  const { fix, offers } = findingOn({ ...project, proposed }, "downstream-hot-on-line", "R2");
  expect([fix?.title, offers]).toEqual(["Move C2 BK to the LOAD hot of R1b", undefined]);
});

test("a neutral shared by two circuits is one fault of the device, told there", () => {
  const { findings } = checkDocument(beforeTheSplit().project());
  expect(inShort(findings)).toContain("shared-neutral-upstream-gfci G1");
  expect(inShort(findings)).not.toContain("downstream-hot-on-line RB");
});
