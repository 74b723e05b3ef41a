import { expect, test } from "vitest";
import { whiteHotUnmarked } from "../../shared-model/rules/checks/white-hot-unmarked.ts";
import type { Colour } from "../../shared-model/units/colour.ts";
import { checkDocument } from "./check-drawing.ts";
import { ofConductors } from "./conductor-findings.ts";
import { Drawing } from "./drawing.ts";
import { laundryProposed } from "./laundry.ts";
import { markEnd, switchLoop } from "./loop.ts";
import { ruleTester } from "./rule-tester.ts";
import { trySectionFix } from "./section-fix-tester.ts";

/** Black and white of C4 exchanged at both of its ends, so that everything works. */
const exchanged = (): Drawing => laundryProposed().swap("C4.bk@B1", "C4.wh@B1").swap("C4.bk@B5", "C4.wh@B5");

/** A receptacle on a cable that brings its supply from out of the drawing. */
const fromOutside = (ends: Readonly<Record<string, string>>): Drawing =>
  new Drawing()
    .box("B", 30)
    .device("R", "receptacle-15", "B")
    .cable("C2", "nm-12-2-g", "country", "B")
    .put({ "C2.bk@B": "R.H1", ...ends });

/** A light fed from out of the drawing, with a loop that leads on to a switch nobody has drawn. */
const loopFromOutside = (ends: Readonly<Record<string, string>> = {}): Drawing =>
  new Drawing()
    .box("B", 30)
    .device("L", "luminaire-60", "B")
    .cable("C2", "nm-12-2-g", "country", "B")
    .cable("LP", "nm-12-2-g", "B", "country")
    .splice("H", "B", "lever-3")
    .splice("N", "B", "lever-3")
    .put({ "C2.bk@B": "H", "LP.wh@B": "H", "LP.bk@B": "L.H", "C2.wh@B": "N", ...ends })
    .jumper("n", "B", "N", "L.N", { colour: "white" });

const marked = (drawing: Drawing, colour: Colour, ...ends: readonly string[]): Drawing => {
  for (const end of ends) markEnd(drawing, end, colour);
  return drawing;
};

ruleTester(whiteHotUnmarked, {
  passes: [
    { name: "no supply drawn: white on the silver screw", drawing: () => fromOutside({ "C2.wh@B": "R.N1" }) },
    {
      name: "no supply drawn: a loop whose white is marked where it meets the black",
      drawing: () => marked(loopFromOutside(), "black", "LP.wh@B"),
    },
    { name: "no supply drawn: whites joined with whites", drawing: () => loopFromOutside({ "LP.wh@B": "N" }) },
    {
      name: "no supply drawn: a box that is being surveyed",
      drawing: () => loopFromOutside().setBox("B", { beingSurveyed: true }),
    },
    { name: "whites are neutrals", drawing: () => laundryProposed() },
    { name: "marked at both ends", drawing: () => marked(exchanged(), "black", "C4.wh@B1", "C4.wh@B5") },
    { name: "a loop whose feed is marked", drawing: () => marked(switchLoop(), "red", "LP.wh@B1", "LP.wh@B2") },
    { name: "no source: nothing is known", drawing: () => exchanged().put({ "C1.bk@P": "cap" }) },
    {
      name: "on a neutral terminal it is on the wrong conductor",
      drawing: () => laundryProposed().put({ "C5.bk@B1": "ND", "C5.wh@B1": "HD" }),
    },
    {
      name: "a box that is being surveyed",
      drawing: () => marked(switchLoop(), "black", "LP.wh@B1").setBox("B2", { beingSurveyed: true }),
    },
  ],
  finds: [
    {
      name: "no supply drawn: a white joined with a black, and by whom it is known",
      drawing: () => loopFromOutside().knownBy("LP.wh@B", "told"),
      findings: [
        {
          on: "LP",
          severity: "caution",
          data: { ends: 1 },
          basis: "told",
          says: ["joined with C2 BK in B", "mark it"],
        },
      ],
    },
    {
      name: "no supply drawn: a white on the brass screw",
      drawing: () => fromOutside({ "C2.wh@B": "R.H1", "C2.bk@B": "R.N1" }),
      findings: [{ on: "C2", severity: "caution", says: ["on R H in B"] }],
    },
    {
      name: "both ends, and by whom it is known",
      drawing: () => exchanged().knownBy("C4.wh@B1", "told"),
      findings: [{ on: "C4", severity: "violation", data: { ends: 2 }, basis: "told", says: ["hot in B1 and B5"] }],
    },
    {
      name: "one end only",
      drawing: () => marked(exchanged(), "black", "C4.wh@B1"),
      findings: [{ on: "C4", data: { ends: 1 }, says: ["hot in B5"] }],
    },
    {
      name: "marked white is not marked",
      drawing: () => marked(exchanged(), "white", "C4.wh@B1", "C4.wh@B5"),
      findings: [{ on: "C4", data: { ends: 2 } }],
    },
    { name: "the feed of a loop", drawing: switchLoop, findings: [{ on: "LP" }] },
    {
      name: "a grey conductor too",
      drawing: () => {
        const drawing = exchanged();
        const cable = drawing.cables.C4;
        if (cable !== undefined)
          cable.conductors = {
            ...cable.conductors,
            wh: { ...cable.conductors["wh" as never], colour: "grey" },
          } as never;
        return drawing;
      },
      findings: [{ on: "C4", says: ["The grey of C4"] }],
    },
    {
      name: "at the panel: the second hot of a 240 V appliance",
      drawing: () =>
        laundryProposed()
          .breaker("Q2", 20, { legs: ["A", "B"] }, "breaker-2")
          .box("B9", 18)
          .cable("C9", "nm-12-2-g", "P", "B9")
          .device("W1", "appliance-240", "B9")
          .put({ "C9.bk@P": "Q2.OUT1", "C9.wh@P": "Q2.OUT2", "C9.cu@P": "P-GB.BAR" })
          .put({ "C9.bk@B9": "W1.L1", "C9.wh@B9": "W1.L2" }),
      findings: [{ on: "C9", says: ["hot in P and B9"] }],
    },
    {
      name: "a jumper",
      drawing: () => laundryProposed().setJumper("c", { colour: "white" }),
      findings: [{ on: "c", says: ["Jumper c in B1 is white and hot"] }],
    },
  ],
  cannotTell: { never: "a mark is recorded or it is not there" },
});

/** X40 of our fixtures takes a black that is marked white for a neutral; by 200.6(A) that is for thicker ones. */
test("exchanged at both ends it is told of both conductors", () => {
  const said = ofConductors(checkDocument(exchanged().project()).findings);
  expect(said).toEqual(["coloured-as-neutral C4", "white-hot-unmarked C4"]);
});

test("both ends are marked in one step", () => {
  const { title, project } = trySectionFix(switchLoop(), "white-hot-unmarked", "LP");
  expect(title).toBe("Mark the white of LP black at both ends");
  const places = [project.proposed?.enclosures["B1" as never], project.proposed?.enclosures["B2" as never]].flatMap(
    (box) => Object.entries(box?.places ?? {}).filter(([end]) => end.startsWith("LP.wh.")),
  );
  expect(places.map(([, place]) => place.markedAs)).toEqual(["black", "black"]);
});
