import { describe, expect, test } from "vitest";
import { isFreePlace, likelyEnds, usualMake, usualSpan } from "../../renderer/state/jumper-make.ts";
import { placesIn } from "../../renderer/state/places-in.ts";
import { Drawing } from "../rules/drawing.ts";

/** A nonmetallic box as an electrician makes it up: two 14/2 cables, grounds, whites and blacks each in a splice. */
const box = (item = "nm-14-2-g", material: "nonmetallic" | "metal" = "nonmetallic") => {
  const drawing = new Drawing()
    .box("B", 20, { material })
    .cable("C1", item, "country", "B")
    .cable("C2", item, "B", "country")
    .device("R1", "receptacle-15", "B")
    .splice("E", "B", "twist-medium")
    .splice("N", "B", "twist-medium")
    .splice("H", "B", "twist-medium");
  drawing.put({ "C1.cu@B": "E", "C2.cu@B": "E", "C1.wh@B": "N", "C2.wh@B": "N", "C1.bk@B": "H", "C2.bk@B": "H" });
  return drawing;
};

function look(drawing: Drawing) {
  const { asFound } = drawing.project();
  const enclosure = Object.values(asFound.enclosures).find(({ name }) => name === "B");
  if (enclosure === undefined) throw new Error("No box B.");
  const places = placesIn(enclosure);
  const at = (name: string) => {
    const found = places.find((place) => place.name === name);
    if (found === undefined) throw new Error(`No place ${name} among ${places.map((one) => one.name).join(", ")}.`);
    return found;
  };
  return {
    places,
    free: (name: string) => isFreePlace(enclosure, at(name)),
    make: (from: string, to: string) => usualMake(asFound, enclosure, at(from).at, at(to).at),
    ends: (from: string) => likelyEnds(asFound, enclosure, at(from), places).map(({ name }) => name),
    span: () => usualSpan(asFound, enclosure, places)?.map(({ name }) => name),
  };
}

// Common practice: a pigtail is of the colour and size of what it joins, a ground pigtail is bare or green.
describe("what a pigtail is made of", () => {
  test.each([
    ["E", "R1 G", "14", "bare"],
    ["N", "R1 N, upper", "14", "white"],
    ["H", "R1 H, upper", "14", "black"],
  ])("from %s to %s: %s AWG %s", (from, to, awg, colour) => {
    expect(look(box()).make(from, to)).toEqual({ awg, colour });
  });

  test("as thick as the thickest that it joins, whichever end that is at", () => {
    const mixed = box().cable("C3", "nm-12-2-g", "country", "B").put({ "C3.wh@B": "N" });
    expect(look(mixed).make("N", "R1 N, upper").awg).toBe("12");
    expect(look(mixed).make("R1 N, upper", "N").awg).toBe("12");
    expect(look(mixed).make("H", "R1 H, upper").awg).toBe("14");
  });

  test("a white that was marked black is no neutral", () => {
    const drawing = new Drawing()
      .box("B", 20, { material: "metal" })
      .cable("C1", "nm-12-2-g", "country", "B")
      .device("R1", "receptacle-15", "B")
      .splice("H", "B", "twist-medium")
      .put({ "C1.wh@B": "H" });
    const marked = drawing.at("B").places;
    for (const [end, place] of Object.entries(marked))
      if (end.includes("wh")) marked[end as keyof typeof marked] = { ...place, markedAs: "black" };
    expect(look(drawing).make("H", "R1 H, upper").colour).toBe("black");
  });

  test("where nobody is yet, as most conductors of the box, and as the screw is meant", () => {
    expect(look(box()).make("R1 N, upper", "R1 N, lower")).toEqual({ awg: "14", colour: "white" });
    expect(look(box("nm-12-2-g")).make("R1 H, upper", "R1 H, lower")).toEqual({ awg: "12", colour: "black" });
  });
});

describe("where a pigtail goes", () => {
  test("first to a free screw of the same part", () => {
    expect(look(box()).ends("E")[0]).toBe("R1 G");
    expect(look(box()).ends("N").slice(0, 2)).toEqual(["R1 N, upper", "R1 N, lower"]);
    expect(look(box()).ends("H").slice(0, 2)).toEqual(["R1 H, upper", "R1 H, lower"]);
    expect(look(box()).ends("H")).not.toContain("H");
  });

  test("a screw that is taken comes after one that is free", () => {
    const ends = look(box().jumper("a", "B", "H", "R1.H1")).ends("H");
    expect(ends.indexOf("R1 H, lower")).toBeLessThan(ends.indexOf("R1 H, upper"));
  });

  test("what is offered unasked goes from part to part, until each screw has its own", () => {
    const drawing = box();
    expect(look(drawing).span()).toEqual(["E", "R1 G"]);
    drawing.jumper("a", "B", "E", "R1.G", { colour: "bare" });
    expect(look(drawing).span()).toEqual(["N", "R1 N, upper"]);
    drawing.jumper("b", "B", "N", "R1.N1", { colour: "white" });
    expect(look(drawing).span()).toEqual(["H", "R1 H, upper"]);
    expect(look(drawing).free("R1 G")).toBe(false);
    expect(look(drawing).free("R1 N, lower")).toBe(true);
  });

  test("a nonmetallic box has no bond, a metal one has", () => {
    expect(look(box()).places.map(({ name }) => name)).not.toContain("box ground screw");
    expect(look(box("nm-14-2-g", "metal")).places.map(({ name }) => name)).toContain("box ground screw");
  });

  test("no two places are called the same", () => {
    const names = look(box().device("R2", "gfci-receptacle-15", "B")).places.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
  });
});
