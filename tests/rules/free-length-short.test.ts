import { expect, test } from "vitest";
import type { Place } from "../../shared-model/model/place.ts";
import { freeLengthShort } from "../../shared-model/rules/checks/free-length-short.ts";
import { inches } from "../../shared-model/units/quantity.ts";
import { Drawing } from "./drawing.ts";
import { findingOn, proposing, tryFix } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** What was measured at one end, "C5.bk@B1". */
function measured(drawing: Drawing, text: string, free?: number, outside?: number, more: Partial<Place> = {}): Drawing {
  const [what = "", box = ""] = text.split("@");
  const [cable = "", conductor = ""] = what.split(".");
  const { places } = drawing.at(box);
  const end = Object.keys(places).find((one) => one.startsWith(`${cable}.${conductor}.`)) as keyof typeof places;
  const place = places[end];
  if (place === undefined) throw new Error(`No ${text}: ${Object.keys(places).join(" ")}`);
  places[end] = {
    ...place,
    ...(free !== undefined && { freeLengthIn: inches(free) }),
    ...(outside !== undefined && { outsideOpeningIn: inches(outside) }),
    ...more,
  };
  return drawing;
}

const laundry = (text: string, free?: number, outside?: number, more: Partial<Place> = {}) =>
  measured(laundryProposed(), text, free, outside, more);

ruleTester(freeLengthShort, {
  passes: [
    { name: "nothing measured", drawing: () => laundryProposed() },
    { name: "X10: 7 in. free, 3-1/2 in. past the opening", drawing: () => laundry("C5.bk@B1", 7, 3.5) },
    { name: "6 and 3 in. exactly", drawing: () => laundry("C5.bk@B1", 6, 3) },
    { name: "capped: nothing is made up there", drawing: () => laundry("C5.bk@B1", 2, 0, { at: { kind: "capped" } }) },
    {
      name: "a large opening asks for nothing past it",
      drawing: () => laundry("C5.bk@B1", 6, 1).setBox("B1", { openingMinIn: inches(8) }),
    },
    {
      name: "a longer piece spliced on",
      drawing: () =>
        measured(
          new Drawing().box("B", 20).cable("C", "nm-12-2-g", "country", "B").device("R", "receptacle-15", "B"),
          "C.bk@B",
          2,
        )
          .splice("X", "B", "twist-medium")
          .jumper("p", "B", "X", "R.H1")
          .put({ "C.bk@B": "X" }),
    },
    { name: "in a panel", drawing: () => laundry("C1.bk@P", 2) },
  ],
  finds: [
    {
      name: "X9: 4 in. free",
      drawing: () => laundry("C5.bk@B1", 4),
      findings: [
        {
          on: "C5 BK",
          severity: "violation",
          says: [
            "Too little free length in B1: C5 BK has 4 in. free. At least 6 in. must be free of the sheath, and 3 in. reach past the opening.",
          ],
        },
      ],
    },
    {
      name: "just short of 6 in.",
      drawing: () => laundry("C5.bk@B1", 5.875),
      findings: [{ on: "C5 BK", says: ["5-7/8 in. free"] }],
    },
    {
      name: "just short of 3 in. past an opening",
      drawing: () => laundry("C5.bk@B1", 6, 2.875).setBox("B1", { openingMinIn: inches(7.875) }),
      findings: [{ on: "C5 BK", says: ["2-7/8 in. past the opening"] }],
    },
    {
      name: "a large opening: 6 in. all the same",
      drawing: () => laundry("C5.bk@B1", 5).setBox("B1", { openingMinIn: inches(8) }),
      findings: [{ on: "C5 BK", says: ["At least 6 in. must be free of the sheath. A piece"] }],
    },
    {
      name: "a ground on the screw of the box, told by somebody",
      drawing: () => laundry("C5.cu@B1", 3, undefined, { at: { kind: "bond" }, evidence: { freeLengthIn: "told" } }),
      findings: [{ on: "C5 bare", basis: "told" }],
    },
    {
      name: "once for a cable, with all of its short ends",
      drawing: () => measured(measured(laundry("C5.bk@B1", 4), "C5.wh@B1", 3, 2), "C2.bk@B1", 5),
      findings: [
        {
          on: "C5 BK C5 WH",
          data: { conductors: 2 },
          says: ["C5 BK has 4 in. free and C5 WH has 3 in. free and 2 in. past"],
        },
        { on: "C2 BK", data: { conductors: 1 } },
      ],
    },
  ],
  cannotTell: { never: "an end that nobody measured is not asked about: there are hundreds of them" },
});

test("its offer splices a pigtail on, where each end has a terminal to itself", () => {
  const drawing = measured(laundry("C5.bk@B6", 4), "C5.wh@B6", 4);
  const { title, left } = tryFix(drawing, "free-length-short", "C5 BK", { offer: "Splice longer pieces" });
  expect(title).toBe("Splice longer pieces onto C5 BK and C5 WH in B6");
  expect(left).not.toContain("free-length-short C5 WH");
});

test("in a joint, which piece goes where is not ours to say", () => {
  expect(findingOn(proposing(laundry("C5.bk@B1", 4)), "free-length-short", "C5 BK").offers).toBeUndefined();
});
