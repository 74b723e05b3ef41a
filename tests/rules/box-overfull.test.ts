import { describe, expect, test } from "vitest";
import type { Box } from "../../shared-model/model/enclosure.ts";
import {
  asId,
  type CableId,
  type ConductorKey,
  type EntryId,
  type PassThroughId,
  type RingId,
} from "../../shared-model/model/ids.ts";
import { boxOverfull } from "../../shared-model/rules/checks/box-overfull.ts";
import { inches } from "../../shared-model/units/quantity.ts";
import { cubicInches } from "../../shared-model/units/volume.ts";
import { Drawing } from "./drawing.ts";
import { findingOn, proposing, tryFix } from "./fix-tester.ts";
import { laundryAsFound, laundryProposed } from "./laundry.ts";
import { ruleTester } from "./rule-tester.ts";

/** 12/2 with ground in and out, one receptacle, clamps: 4 × 2.25 + 2.25 + 2 × 2.25 + 2.25 = 18.00 in³, by hand. */
const inAndOut = (
  volumeIn3: number | undefined,
  more: Partial<Box> = {},
  edition: 2017 | 2020 | "CSA-C22.1" = 2020,
): Drawing =>
  new Drawing(edition)
    .box("B2", volumeIn3, more)
    .cable("C2", "nm-12-2-g", "country", "B2")
    .cable("C6", "nm-12-2-g", "B2", "porch")
    .device("R2", "receptacle-15", "B2")
    .put({ "C2.bk@B2": "R2.H1", "C2.wh@B2": "R2.N1", "C6.bk@B2": "R2.H2", "C6.wh@B2": "R2.N2" });

/** Two conductors of 12 AWG that pass unbroken: 4.50 in³ straight, 9.00 with a loop of twice the free length. */
const passing = (volumeIn3: number, loopIn: number | undefined): Drawing => {
  const drawing = new Drawing()
    .box("A", 30)
    .box("M", volumeIn3, { internalClamps: "none" })
    .box("Z", 30)
    .cable("C9", "nm-12-2", "A", "Z");
  const pass = {
    id: asId<PassThroughId>("pass"),
    cable: asId<CableId>("C9"),
    conductors: [asId<ConductorKey>("bk"), asId<ConductorKey>("wh")],
    entryIn: asId<EntryId>("in"),
    entryOut: asId<EntryId>("out"),
    ...(loopIn !== undefined && { loopLengthIn: inches(loopIn) }),
  };
  return drawing.setBox("M", { passThroughs: { [pass.id]: pass } });
};

const ring = (volume: Box["volume"]): Pick<Box, "rings"> => ({
  rings: { [asId<RingId>("ring")]: { id: asId<RingId>("ring"), kind: "raised-cover", volume, order: 0 } },
});

ruleTester(boxOverfull, {
  passes: [
    { name: "exactly full", drawing: () => inAndOut(18) },
    {
      // By CSA C22.1: four conductors and two for the device, the capped grounds a pair of connectors: 7 × 1.75.
      name: "exactly full by CSA C22.1",
      drawing: () => inAndOut(12.25, {}, "CSA-C22.1"),
    },
    { name: "the laundry box with its clamps taken out", drawing: () => laundryProposed() },
    {
      name: "a marked ring makes up what lacks",
      drawing: () => inAndOut(15, ring({ kind: "marked", volumeIn3: cubicInches(3) })),
    },
    {
      name: "retainers included in the marked volume",
      drawing: () => inAndOut(15.75, { internalClamps: "included-in-marked-volume" }),
    },
    { name: "conductors passing straight count once", drawing: () => passing(4.5, undefined) },
    { name: "a loop just short of twice the free length counts once", drawing: () => passing(4.5, 11.9) },
    { name: "a loop of twice the free length, and room for both", drawing: () => passing(9, 12) },
    { name: "clamps not recorded, and room for them", drawing: () => inAndOut(18, { internalClamps: "unknown" }) },
    {
      name: "a luminaire hangs outside and takes no allowance",
      drawing: () =>
        new Drawing().box("B7", 9).cable("C7", "nm-12-2-g", "country", "B7").device("L1", "luminaire-60", "B7"),
    },
    {
      name: "a panel is no box",
      drawing: () => new Drawing().panel("P").box("A", 30).cable("C1", "nm-12-2-g", "P", "A"),
    },
    { name: "an empty box of unknown volume", drawing: () => new Drawing().box("B9", undefined) },
    {
      name: "4 AWG is beyond counting",
      drawing: () =>
        new Drawing().box("B9", 5).cable("C9", "nm-12-2-g", "country", "B9").setConductors("C9", { awg: "4" }),
    },
  ],
  finds: [
    {
      name: "one ten-thousandth too much by CSA C22.1",
      drawing: () => inAndOut(12.2499, {}, "CSA-C22.1"),
      findings: [
        {
          on: "B2",
          data: { neededIn3: 12.25, volumeIn3: 12.2499, overIn3: 0.0001 },
          says: ["Conductors 7.00, devices 3.50, connectors 1.75."],
        },
      ],
    },
    {
      name: "a ten-thousandth too small",
      drawing: () => inAndOut(17.9999),
      findings: [{ on: "B2", data: { neededIn3: 18, volumeIn3: 17.9999, overIn3: 0.0001 } }],
    },
    {
      name: "the laundry box as found, five grounds in 2020",
      drawing: () => laundryAsFound(2020),
      findings: [
        {
          on: "B1",
          data: { neededIn3: 32.0625, volumeIn3: 30.3, overIn3: 1.7625 },
          says: [
            "Conductors 22.50, clamps 2.25, devices 4.50, grounds 2.8125.",
            "Or take the internal clamps out (saves 2.25 in³)",
          ],
        },
      ],
    },
    {
      name: "the laundry box as found, five grounds in 2017",
      drawing: () => laundryAsFound(2017),
      findings: [{ on: "B1", data: { neededIn3: 31.5, volumeIn3: 30.3, overIn3: 1.2 } }],
    },
    {
      name: "an unmarked ring adds nothing",
      drawing: () => inAndOut(15, ring({ kind: "unknown" })),
      findings: [{ on: "B2" }],
    },
    {
      name: "a loop of twice the free length counts twice",
      drawing: () => passing(8.9999, 12),
      findings: [{ on: "M", data: { neededIn3: 9, volumeIn3: 8.9999, overIn3: 0.0001 } }],
    },
    {
      name: "too small even without the clamps that are not recorded",
      drawing: () => inAndOut(15.7, { internalClamps: "unknown" }),
      findings: [{ on: "B2" }],
    },
    {
      name: "it rests on the weakest of what it counts",
      drawing: () => inAndOut(12, { evidence: { volume: "measured", internalClamps: "assumed" } }),
      findings: [{ on: "B2", basis: "assumed" }],
    },
    {
      name: "terminal blocks, stated apart",
      drawing: () => {
        const drawing = inAndOut(18, { terminalBlocks: ["10"] });
        drawing.edition = 2023;
        return drawing;
      },
      findings: [
        { on: "B2", data: { neededIn3: 20.5, volumeIn3: 18, overIn3: 2.5 }, says: [", terminal blocks 2.50."] },
      ],
    },
  ],
  cannotTell: [
    {
      name: "a size of the stock that Table 23 of CSA C22.1 does not have",
      drawing: () => inAndOut(undefined, { volume: { kind: "table", size: "4x1-1/4 square" } }, "CSA-C22.1"),
      on: ["B2"],
      missing: "the volume of B2",
    },
    { name: "volume not recorded", drawing: () => inAndOut(undefined), on: ["B2"], missing: "the volume of B2" },
    {
      name: "clamps not recorded, and they would decide",
      drawing: () => inAndOut(15.75, { internalClamps: "unknown" }),
      on: ["B2"],
      missing: "whether B2 has internal clamps",
    },
  ],
});

describe("what it offers", () => {
  const RULE = "box-overfull";
  const offers = (drawing: Drawing, on: string): readonly string[] =>
    (findingOn(proposing(drawing), RULE, on).offers ?? []).map(({ title }) => title);
  const boxIn = (drawing: Drawing, on: string, offer: string) => {
    const { project } = tryFix(drawing, RULE, on, { offer, changesFill: true });
    const box = project.proposed?.enclosures[on as never];
    if (box?.kind !== "box") throw new Error("No box.");
    return box;
  };
  const standard = (size: string): Partial<Box> => ({ volume: { kind: "table", size } });

  test("the laundry box: clamps out, an extension, the next square box", () => {
    const drawing = laundryAsFound().setBox("B1", standard("4x2-1/8 square")).setEntry("C1", "B1", {
      means: "internal-clamp",
    });
    expect(offers(drawing, "B1")).toEqual([
      "Take the internal clamps of B1 out and fit connectors outside",
      "Put an extension on B1, 1-1/2 in. deep, 21.0 in³",
      "Exchange B1 for 4-11/16 sq. × 2-1/8: 42.0 in³",
    ]);
    const out = boxIn(drawing, "B1", "clamps");
    expect(out.internalClamps).toBe("none");
    expect(Object.values(out.entries).every(({ means }) => means === "external-connector")).toBe(true);
    expect(Object.values(boxIn(drawing, "B1", "extension").rings)).toMatchObject([
      { kind: "extension", volume: { kind: "table", size: "4x1-1/2 square" } },
    ]);
    expect(boxIn(drawing, "B1", "Exchange")).toMatchObject({
      volume: { kind: "table", size: "4-11/16x2-1/8 square" },
      depthIn: 2.125,
    });
  });

  test("the smallest device box that holds it, as deep as its size says", () => {
    const shape = { shape: "device", depthIn: inches(2.5), ...standard("3x2x2-1/2 device") } as const;
    const drawing = inAndOut(undefined, shape);
    expect(offers(drawing, "B2")).toEqual(["Exchange B2 for Device 3 × 2 × 3-1/2: 18.0 in³"]);
    expect(boxIn(drawing, "B2", "Exchange").depthIn).toBe(3.5);
  });

  test("a nonmetallic box of as many gangs, its depth not known then", () => {
    const drawing = inAndOut(17, { material: "nonmetallic", shape: "device", depthIn: inches(2.75) });
    const box = boxIn(drawing, "B2", "Nonmetallic new-work, 1 gang");
    expect(box.depthIn).toBeUndefined();
    expect(box.volume).toEqual({ kind: "marked", volumeIn3: cubicInches(20) });
  });

  test("a box that is listed for a fan only by one that is too, and nothing where nothing suffices", () => {
    const fan = { shape: "octagon", material: "nonmetallic", listedFor: ["luminaire", "fan"] } as const;
    expect(offers(inAndOut(12, fan), "B2")).toEqual([]);
    expect(offers(inAndOut(17, { shape: "device" }), "B2")).toEqual([
      "Take the internal clamps of B2 out and fit connectors outside",
      "Exchange B2 for Device 3 × 2 × 3-1/2: 18.0 in³",
    ]);
  });

  test("no box of more gangs: its place in the wall is of one", () => {
    const plastic = { material: "nonmetallic", shape: "device", internalClamps: "included-in-marked-volume" } as const;
    const three = inAndOut(20, plastic).cable("C9", "nm-12-2-g", "B2", "garage");
    expect(offers(three, "B2")).toEqual([]);
  });

  test("clamps that are not recorded are not taken out", () => {
    expect(offers(inAndOut(15, { internalClamps: "unknown" }), "B2").join()).not.toContain("clamps");
  });

  test("a second extension has an id of its own", () => {
    const first = boxIn(inAndOut(1, { item: "square-4-1-1-4" }), "B2", "extension");
    const again = inAndOut(1, { item: "square-4-1-1-4", rings: unmarked(first.rings) });
    expect(Object.keys(boxIn(again, "B2", "extension").rings)).toEqual(["B2-r1", "B2-r2"]);
  });
});

/** The same rings without a marking: they add nothing. */
const unmarked = (rings: Box["rings"]): Box["rings"] =>
  Object.fromEntries(Object.entries(rings).map(([id, one]) => [id, { ...one, volume: { kind: "unknown" } }]));
