import { describe, expect, test } from "vitest";
import type { EndKey } from "../../shared-model/model/ids.ts";
import type { PathStep, Section } from "../../shared-model/solver/section.ts";
import { Drawing } from "../rules/drawing.ts";
import { laundryAsFound, laundryProposed, multiwire } from "../rules/laundry.ts";
import { deviceId, node, onlySection, outletKey } from "./look-at.ts";

/** A way in short: "C1.bk P>B1", "a B1", "R1b LINE_H>LOAD_H". */
const inShort = (way: readonly PathStep[] | undefined): readonly string[] | undefined =>
  way?.map((step) => {
    if (step.kind === "cable") return `${step.cable}.${step.conductor} ${step.fromEnclosure}>${step.toEnclosure}`;
    return step.kind === "jumper" ? `${step.jumper} ${step.enclosure}` : `${step.device} ${step.from}>${step.to}`;
  });

describe("ways from a source", () => {
  test("the hot of the porch comes through the device, the sink and its terminals", () => {
    const section = onlySection(laundryProposed());
    expect(inShort(section.wayFrom("ungrounded", node("R3.UH")))).toEqual([
      "Q14 @busA>OUT",
      "C1.bk P>B1",
      "a B1",
      "R1b LINE_H>LOAD_H",
      "c B1",
      "C2.bk B1>B2",
      "R2 H1>H2",
      "C6.bk B2>B3",
      "R3 H1>UH",
    ]);
    expect(inShort(section.wayFrom("grounded", node("R1b.LINE_N")))).toEqual(["C1.wh P>B1", "b B1"]);
  });

  test("with the sensor of a device taken out, the way goes round it or there is none", () => {
    expect(onlySection(laundryProposed()).wayFrom("ungrounded", node("R2.UH"), deviceId("R1b"))).toBeUndefined();
    const round = onlySection(laundryProposed().jumper("y", "B1", "HL", "HD"));
    expect(inShort(round.wayFrom("ungrounded", node("R1b.LOAD_H"), deviceId("R1b")))).toEqual([
      "Q14 @busA>OUT",
      "C1.bk P>B1",
      "y B1",
      "c B1",
    ]);
  });

  test("a way through a switch uses it in one position", () => {
    const drawing = new Drawing()
      .panel("P")
      .breaker("Q", 20)
      .box("B", 30.3)
      .cable("C", "nm-12-2-g", "P", "B")
      .device("S", "switch-3way", "B")
      .device("L", "luminaire-60", "B")
      .put({ "C.bk@P": "Q.OUT", "C.wh@P": "P-NB.BAR", "C.bk@B": "S.C", "C.wh@B": "L.N" })
      .jumper("x", "B", "S.T2", "L.H");
    expect(inShort(onlySection(drawing).wayFrom("ungrounded", node("L.H")))).toEqual([
      "Q @busA>OUT",
      "C.bk P>B",
      "S C>T2",
      "x B",
    ]);
  });
});

test("a way does not pass from one traveller to the other of one switch, however short that would be", () => {
  const drawing = laundryProposed()
    .device("SX", "switch-3way", "B1")
    .device("SY", "switch-single-pole", "B1")
    .device("L", "luminaire-60", "B1")
    .splice("M", "B1", "twist-medium")
    .jumper("x1", "B1", "HL", "SX.T1")
    .jumper("x2", "B1", "SX.T2", "L.H")
    .jumper("y1", "B1", "HL", "SY.C")
    .jumper("y2", "B1", "SY.L", "M")
    .jumper("y3", "B1", "M", "L.H");
  expect(inShort(onlySection(drawing).wayFrom("ungrounded", node("L.H")))).toEqual([
    "Q14 @busA>OUT",
    "C1.bk P>B1",
    "y1 B1",
    "SY C>L",
    "y2 B1",
    "y3 B1",
  ]);
});

describe("where a neutral stops", () => {
  const stops = (drawing: Drawing, outlet: string) => onlySection(drawing).whereNeutralStops(outletKey(outlet));

  test("at the loose end beside the receptacle", () => {
    expect(stops(laundryProposed().put({ "C6.wh@B3": "loose" }), "R3")).toEqual({
      enclosure: "B3",
      ends: ["C6.wh.b"],
      device: "R3",
      lastRight: "B3",
    });
  });

  test("at the capped end in the box before", () => {
    expect(stops(laundryProposed().put({ "C5.wh@B1": "cap" }), "R5")).toEqual({
      enclosure: "B1",
      ends: ["C5.wh.a"],
      lastRight: "B1",
    });
  });

  test("at the first outlet that has none, for all that hang on it", () => {
    const drawing = laundryProposed().put({ "C2.wh@B1": "loose" });
    for (const outlet of ["R2", "R3"])
      expect(stops(drawing, outlet)).toEqual({ enclosure: "B1", ends: ["C2.wh.a"], lastRight: "B1" });
  });

  test("at the device whose LINE has no neutral", () => {
    expect(stops(laundryProposed().put({ "b.2": "cap" }), "R2")).toEqual({
      enclosure: "B1",
      ends: ["b.b"],
      device: "R1b",
      lastRight: "B1",
    });
  });

  test("at the panel, when the supply has none", () => {
    expect(stops(laundryAsFound().put({ "C1.wh@P": "cap" }), "R3")).toEqual({ enclosure: "P", ends: ["C1.wh.a"] });
  });

  test("between the boxes, when the cable has no conductor for it", () => {
    const drawing = laundryAsFound()
      .box("B8", 18)
      .cable("K", "single-12-black", "B6", "B8")
      .device("R8", "receptacle-15", "B8")
      .put({ "K.bk@B6": "R5.H2", "K.bk@B8": "R8.H1" });
    expect(stops(drawing, "R8")).toEqual({ enclosure: "B8", ends: [], device: "R8", lastRight: "B6" });
  });

  test("nowhere, when the outlet has its neutral or is dead", () => {
    expect(stops(laundryProposed(), "R3")).toBeUndefined();
    expect(stops(laundryProposed().put({ "C6.wh@B3": "loose", "C6.bk@B3": "cap" }), "R3")).toBeUndefined();
  });
});

describe("where hot and neutral change places", () => {
  const crosses = (drawing: Drawing, outlet: string) => onlySection(drawing).wherePolarityCrosses(outletKey(outlet));

  test("at the terminals of the receptacle", () => {
    expect(crosses(laundryProposed().swap("C5.bk@B6", "C5.wh@B6"), "R5")).toEqual({
      enclosure: "B6",
      ends: ["C5.bk.b", "C5.wh.b"],
      device: "R5",
      lastRight: "B1",
    });
  });

  test("in the joints of the box before", () => {
    expect(crosses(laundryProposed().swap("C5.bk@B1", "C5.wh@B1"), "R5")).toEqual({
      enclosure: "B1",
      ends: ["C5.bk.a", "C5.wh.a", "c.a"],
      lastRight: "P",
    });
  });

  test("at the panel, for every outlet of the circuit", () => {
    const drawing = laundryAsFound().swap("C1.bk@P", "C1.wh@P");
    for (const outlet of ["R1", "R3", "R5"])
      expect(crosses(drawing, outlet)).toEqual({ enclosure: "P", ends: ["C1.bk.a", "C1.wh.a"] });
  });

  test("a white that is marked as a hot counts as one, so that the place is where it meets the wrong terminal", () => {
    const drawing = laundryProposed().swap("C5.bk@B1", "C5.wh@B1");
    for (const [box, end] of [
      ["B1", "C5.wh.a"],
      ["B6", "C5.wh.b"],
    ] as const) {
      const { places } = drawing.at(box);
      const place = places[end as EndKey];
      if (place === undefined) throw new Error(`${end} lies in ${box}.`);
      places[end as EndKey] = { ...place, markedAs: "black" };
    }
    expect(crosses(drawing, "R5")).toMatchObject({ enclosure: "B6", device: "R5", lastRight: "B1" });
  });

  test("at the second exchange nothing is exchanged any more; at the third it is again, and that place is named", () => {
    const twice = laundryAsFound().swap("C1.bk@P", "C1.wh@P").swap("C2.bk@B2", "C2.wh@B2");
    expect(onlySection(twice).roleOfNode(deviceId("R2"), "UH")).toBe("ungrounded");
    expect(crosses(twice, "R2")).toBeUndefined();
    expect(crosses(twice.swap("C6.bk@B3", "C6.wh@B3"), "R3")).toMatchObject({ enclosure: "B3", device: "R3" });
  });
});

describe("what a breaker feeds", () => {
  const cablesOn = (section: Section, breaker: string, side: "hotEnds" | "neutralEnds"): readonly string[] => [
    ...new Set(section.circuitOf(deviceId(breaker))[side].map((end) => end.split(".").slice(0, -1).join("."))),
  ];

  test("every hot and every neutral of the laundry circuit, switch leg and jumpers included, no ground", () => {
    const section = onlySection(laundryProposed());
    const hots = ["C1.bk", "C2.bk", "C3.bk", "C4.bk", "C5.bk", "C6.bk", "C7.bk", "a", "c"];
    const neutrals = ["C1.wh", "C2.wh", "C3.wh", "C4.wh", "C5.wh", "C6.wh", "C7.wh", "b", "d"];
    expect(cablesOn(section, "Q14", "hotEnds")).toEqual(hots);
    expect(cablesOn(section, "Q14", "neutralEnds")).toEqual(neutrals);
    expect(section.circuitOf(deviceId("Q14")).outlets).toEqual(["L1", "R1b", "R2", "R3", "R4b", "R5"]);
    expect(section.circuitOf(deviceId("Q14")).panel).toBe("P");
  });

  test("each leg of a multiwire circuit with the neutral that both share", () => {
    const section = onlySection(multiwire());
    expect(cablesOn(section, "QA", "hotEnds")).toEqual(["M3.bk", "MA.bk"]);
    expect(cablesOn(section, "QB", "hotEnds")).toEqual(["M3.rd", "MB.bk"]);
    expect(cablesOn(section, "QA", "neutralEnds")).toEqual(["M3.wh", "MA.wh", "MB.wh"]);
    expect(section.circuitOf(deviceId("QA")).outlets).toEqual(["RA"]);
  });

  test("the white of a ground-fault device belongs to it even where no outlet uses it", () => {
    const drawing = new Drawing()
      .panel("P")
      .breaker("Q", 20)
      .box("B", 30.3)
      .cable("C", "nm-12-2-g", "P", "B")
      .device("G", "gfci-blank", "B")
      .put({ "C.bk@P": "Q.OUT", "C.wh@P": "P-NB.BAR", "C.bk@B": "G.LINE_H", "C.wh@B": "G.LINE_N" });
    expect(cablesOn(onlySection(drawing), "Q", "neutralEnds")).toEqual(["C.wh"]);
  });

  test("a breaker that feeds another section is refused", () => {
    const drawing = laundryProposed().breaker("Q16", 15);
    expect(() => onlySection(drawing).circuitOf(deviceId("Q16"))).toThrow("Q16");
  });
});
