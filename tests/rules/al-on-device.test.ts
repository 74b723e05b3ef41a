import { describe, expect, test } from "vitest";
import type { Device } from "../../shared-model/model/device.ts";
import { alOnDevice } from "../../shared-model/rules/checks/al-on-device.ts";
import { amps } from "../../shared-model/units/quantity.ts";
import { checkDocument, inShort } from "./check-drawing.ts";
import { Drawing } from "./drawing.ts";
import { findingOn, proposing, tryFix } from "./fix-tester.ts";
import { laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

const on = (type: string, hot: string, more: Partial<Device> = {}, neutral?: string): Drawing =>
  new Drawing()
    .box("B", 60, { internalClamps: "none" })
    .cable("A", "al-12-2-g", "country", "B")
    .device("R", type, "B", more)
    .put({ "A.bk@B": `R.${hot}`, ...(neutral !== undefined && { "A.wh@B": `R.${neutral}` }) });

ruleTester(alOnDevice, {
  passes: [
    { name: "copper", drawing: () => laundryProposed() },
    { name: "marked CO/ALR", drawing: () => on("receptacle-15", "H1", { markedForAluminium: true }) },
    { name: "a switch marked CO/ALR", drawing: () => on("switch-single-pole", "C", { markedForAluminium: true }) },
    {
      name: "copper-clad aluminium under a screw",
      drawing: () => on("receptacle-15", "H1").setConductors("A", { material: "copper-clad-aluminium" }),
    },
    { name: "the lead of a luminaire", drawing: () => on("luminaire-60", "H") },
    { name: "the lead of a dimmer", drawing: () => on("dimmer", "C") },
    { name: "30 A, past what the mark is about", drawing: () => on("receptacle-15", "H1", { ratingA: amps(30) }) },
  ],
  finds: [
    {
      name: "recorded as not marked",
      drawing: () => on("receptacle-15", "H1", { markedForAluminium: false }, "N1"),
      findings: [
        {
          on: "R",
          severity: "danger",
          data: { conductors: 2 },
          says: ["A BK and A WH of aluminium are on R in B", "not marked"],
        },
      ],
    },
    {
      name: "no mark recorded: taken to have none, and said so",
      drawing: () => on("receptacle-15", "H1"),
      findings: [{ on: "R", basis: "assumed", says: ["no CO/ALR mark is recorded"] }],
    },
    {
      name: "exactly 20 A",
      drawing: () => on("receptacle-20", "H1", { ratingA: amps(20), markedForAluminium: false }),
      findings: [{ on: "R" }],
    },
    {
      name: "a ground-fault receptacle, of which none is so marked",
      drawing: () => on("gfci-receptacle-15", "LINE_H", { markedForAluminium: true }),
      findings: [{ on: "R", says: ["is not marked CO/ALR"] }],
    },
    {
      name: "a push-in entry of a marked device",
      drawing: () => on("receptacle-15", "H1", { markedForAluminium: true, entryKind: "push-in" }),
      findings: [{ on: "R", says: ["no mark allows that"] }],
    },
    {
      name: "one aluminium cable in the laundry circuit",
      drawing: () => laundryProposed().setConductors("C5", { material: "aluminium" }),
      findings: [{ on: "R5" }],
    },
  ],
  cannotTell: { never: "a mark that is not recorded is taken to be missing, and the finding says so" },
});

test("in a push-in entry the size is not told beside it", () => {
  const said = inShort(checkDocument(on("receptacle-15", "H1", { entryKind: "push-in" }).project()).findings);
  expect(said).toContain("al-on-device R");
  expect(said).not.toContain("push-in-gauge R");
});

describe("what it offers", () => {
  test("copper pigtails from connectors for both metals", () => {
    const drawing = on("receptacle-15", "H1", { markedForAluminium: false }, "N1");
    const { title, project, left } = tryFix(drawing, "al-on-device", "R", { offer: "copper pigtails" });
    expect(title).toBe("Bring copper pigtails to R H and R N from connectors listed for both metals");
    const box = project.proposed?.enclosures["B" as never];
    expect(Object.values(box?.splices ?? {}).map(({ connector }) => connector)).toEqual([
      "al-cu-listed",
      "al-cu-listed",
    ]);
    expect(Object.values(box?.jumpers ?? {}).map(({ material, awg }) => `${awg} ${material}`)).toEqual([
      "12 copper",
      "12 copper",
    ]);
    const ofMetals = left.filter((one) => one.startsWith("al-") || one.startsWith("splice-"));
    expect(ofMetals).toEqual([]);
  });

  test("nothing where a white and a bare wire are on one terminal", () => {
    const drawing = on("receptacle-15", "H1", { markedForAluminium: false }, "N1").jumper("y", "B", "R.N1", "R.G", {
      colour: "bare",
    });
    expect(findingOn(proposing(drawing), "al-on-device", "R").offers ?? []).toEqual([]);
  });
});
