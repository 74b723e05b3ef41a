import { expect, test } from "vitest";
import { wishNotProtected } from "../../shared-model/rules/checks/wish-not-protected.ts";
import { about, checkDocument, inShort } from "./check-drawing.ts";
import type { Drawing } from "./drawing.ts";
import { findingOn, proposing } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

/** Both conductors of the hall cable in the LINE joints: a slip that our list of slips calls X57. */
const hallOnLine = (edition: 2017 | 2020 = 2020): Drawing =>
  laundryProposed(edition).put({ "C5.bk@B1": "HL", "C5.wh@B1": "NL" });

/** The hall behind more switches in a row. */
const behindSwitches = (count: number): Drawing => {
  const drawing = laundryProposed().setBox("B6", { internalClamps: "none" }).wish({ R5: "protect" });
  for (let index = 0; index < count; index += 1) drawing.device(`S${index}x`, "switch-single-pole", "B6");
  for (let index = 1; index < count; index += 1) drawing.jumper(`x${index}`, "B6", `S${index - 1}x.L`, `S${index}x.C`);
  return drawing.put({ "C5.bk@B6": "S0x.C" }).jumper("last", "B6", `S${count - 1}x.L`, "R5.H1");
};

ruleTester(wishNotProtected, {
  passes: [
    { name: "the hall is behind R1b", drawing: () => laundryProposed().wish({ R5: "protect" }) },
    { name: "and behind switches there", drawing: () => behindSwitches(3) },
    { name: "nobody asked for it", drawing: () => hallOnLine() },
    {
      name: "somebody decided against it, whatever is said of the cable",
      drawing: () => hallOnLine().meant("B1", { C5: true }).wish({ R5: "decided-not" }),
    },
    {
      name: "it is required: another matter",
      drawing: () =>
        hallOnLine()
          .setDevice("R5", { zones: ["sink-zone"] })
          .wish({ R5: "protect" }),
    },
    {
      name: "a cable that is meant to stay on LINE",
      drawing: () => laundryProposed().meant("B1", { C4: false }),
    },
    {
      name: "no neutral at all: another matter",
      drawing: () => laundryProposed().put({ "C5.wh@B1": "cap" }).wish({ R5: "protect" }),
    },
  ],
  finds: [
    {
      name: "the wish of the outlet, both conductors on LINE",
      drawing: () => hallOnLine().wish({ R5: "protect" }),
      findings: [{ on: "R5", severity: "caution", says: ["a wish, not a requirement", "R1b", "C5 BK"] }],
    },
    {
      name: "whose wish it is",
      drawing: () => hallOnLine().wish({ R5: "protect" }, "the customer"),
      findings: [{ on: "R5", says: ["(asked for by the customer)"] }],
    },
    {
      name: "the cable was meant to be behind R1b",
      drawing: () => hallOnLine().meant("B1", { C5: true, C4: false }),
      findings: [{ on: "R5", says: ["with what C5 feeds from B1"] }],
    },
    {
      name: "one white on LINE, and who says so",
      drawing: () => laundryProposed().put({ "C5.wh@B1": "NL" }).knownBy("C5.bk@B1", "assumed").wish({ R5: "protect" }),
      findings: [{ on: "R5", basis: "assumed", says: ["its neutral goes round R1b"] }],
    },
    {
      name: "hot and neutral exchanged",
      drawing: () => hallOnLine().swap("C5.bk@B6", "C5.wh@B6").wish({ R5: "protect" }),
      findings: [{ on: "R5", says: ["its hot and neutral are exchanged"] }],
    },
    {
      name: "an edition that does not list the place: there it is a wish",
      drawing: () =>
        hallOnLine(2017)
          .setDevice("R5", { zones: ["damp-wet-indoor"] })
          .wish({ R5: "protect" }),
      findings: [{ on: "R5" }],
    },
  ],
  cannotTell: [
    {
      name: "no source in the drawing",
      drawing: () => laundryProposed().put({ "C1.bk@P": "cap", "C1.wh@P": "cap" }).wish({ R5: "protect" }),
      on: ["R5"],
      missing: "the supply of R5",
    },
    {
      name: "more switches bear on it than are tried",
      drawing: () => behindSwitches(20),
      on: ["R5", "B1"],
      missing: "switch",
    },
  ],
});

test("with the edition that lists the place it is told as required", () => {
  const drawing = hallOnLine()
    .setDevice("R5", { zones: ["damp-wet-indoor"] })
    .wish({ R5: "protect" });
  expect(inShort(about(/protected/, checkDocument(drawing.project()).findings))).toEqual(["outlet-not-protected R5"]);
});

test("that one white is on LINE is the cause, the wish follows from it", () => {
  const drawing = laundryProposed().put({ "C5.wh@B1": "NL" }).wish({ R5: "protect" });
  const [finding, ...more] = about(/protected|on-line/, checkDocument(drawing.project()).findings);
  expect([finding?.rule, finding?.folded, more]).toEqual(["downstream-neutral-on-line", 1, []]);
});

test("the cable is brought to LOAD, or the receptacle replaced", () => {
  const drawing = hallOnLine().wish({ R5: "protect" });
  const offers = findingOn(proposing(drawing), "wish-not-protected", "R5").offers?.map(({ title }) => title);
  expect(offers).toEqual([
    expect.stringMatching(/receptacle at R5, LOAD left empty: protects R5 only$/),
    "Bring C5 from the LOAD side of R1b",
  ]);
  expect(trySectionFix(drawing, "wish-not-protected", "R5", "Bring C5").gained).toEqual(["R5"]);
});
