import { describe, expect, test } from "vitest";
import { standardBoxes } from "../../shared-model/catalog/standard-boxes.ts";
import type { Device } from "../../shared-model/model/device.ts";
import type { Box, VolumeFact } from "../../shared-model/model/enclosure.ts";
import { asId, type DeviceId, type RingId, type TerminalName } from "../../shared-model/model/ids.ts";
import { creditedVolume, volumeOf } from "../../shared-model/queries/box-volume.ts";
import { findOutlet, outletsOf, roomKindsOf } from "../../shared-model/queries/outlets-of.ts";
import { findTerminal, nameOfTerminal, terminalsOf } from "../../shared-model/queries/terminals-of.ts";
import { cubicInches, toDecimal } from "../../shared-model/units/volume.ts";
import { boxId, deviceId, drawing, laundryAsFound, outlet } from "../builders/drawing.ts";
import { enclosureIn } from "../commands/asking.ts";

const device = (type: string, more: Partial<Device> = {}): Device => ({
  id: asId<DeviceId>("d1"),
  name: "R5",
  type,
  order: 0,
  ...more,
});
const holes = (one: Device) => terminalsOf(one).map((terminal) => [terminal.name, terminal.entryKind, terminal.holes]);
const outletNames = (one: Device) => outletsOf(one).map((placed) => placed.name);

describe("terminals", () => {
  test("a duplex has two hot screws, two neutral screws and a ground, one hole each", () => {
    expect(holes(device("receptacle-15"))).toEqual([
      ["H1", "side-screw", 1],
      ["H2", "side-screw", 1],
      ["N1", "side-screw", 1],
      ["N2", "side-screw", 1],
      ["G", "green-screw", 1],
    ]);
  });

  test("clamp plates have two holes a screw, and never replace the green screw", () => {
    expect(holes(device("receptacle-15", { entryKind: "clamp-plate" }))).toEqual([
      ["H1", "clamp-plate", 2],
      ["H2", "clamp-plate", 2],
      ["N1", "clamp-plate", 2],
      ["N2", "clamp-plate", 2],
      ["G", "green-screw", 1],
    ]);
    expect(holes(device("gfci-receptacle-20")).slice(0, 2)).toEqual([
      ["LINE_H", "clamp-plate", 2],
      ["LINE_N", "clamp-plate", 2],
    ]);
    expect(holes(device("gfci-receptacle-20", { entryKind: "side-screw" }))[0]).toEqual(["LINE_H", "side-screw", 1]);
  });

  test("leads stay leads", () => {
    expect(holes(device("dimmer", { entryKind: "clamp-plate" }))[0]).toEqual(["C", "lead", 1]);
  });

  test("a terminal is called by its device, side and letter", () => {
    const name = (one: Device, terminal: string) => nameOfTerminal(one, terminal as TerminalName);
    expect(name(device("gfci-receptacle-20", { name: "R1b" }), "LINE_H")).toBe("R1b LINE H");
    expect(name(device("receptacle-15"), "H1")).toBe("R5 H");
    expect(name(device("receptacle-15"), "Q")).toBe("R5 Q");
    expect(findTerminal(device("receptacle-15"), "Q" as TerminalName)).toBeUndefined();
  });
});

describe("outlets", () => {
  test("a duplex is one outlet until a tab is off", () => {
    expect(outletNames(device("receptacle-15"))).toEqual(["R5"]);
    expect(outletNames(device("receptacle-15", { hotTab: "removed" }))).toEqual(["R5/upper", "R5/lower"]);
    expect(outletNames(device("receptacle-15", { neutralTab: "removed" }))).toEqual(["R5/upper", "R5/lower"]);
    expect(outletNames(device("receptacle-15", { hotTab: "intact" }))).toEqual(["R5"]);
    const [upper, lower] = outletsOf(device("receptacle-15", { hotTab: "removed" }));
    expect([upper?.hot, upper?.neutral, lower?.hot, lower?.neutral]).toEqual(["UH", "UN", "LH", "LN"]);
  });

  test("the face of a ground-fault receptacle is one outlet, a blank face and a switch have none", () => {
    expect(outletsOf(device("gfci-receptacle-20"))).toMatchObject([
      { name: "R5", hot: "UH", neutral: "UN", receptacle: true },
    ]);
    expect(outletsOf(device("gfci-blank"))).toEqual([]);
    expect(outletsOf(device("switch-single-pole"))).toEqual([]);
  });

  test("a two-slot receptacle has no ground", () => {
    expect(outletsOf(device("receptacle-two-slot"))[0]).not.toHaveProperty("ground");
  });

  test("a luminaire uses its own outlet, and nobody plugs into it", () => {
    expect(outletsOf(device("luminaire-60"))).toMatchObject([{ hot: "H", neutral: "N", receptacle: false }]);
    expect(outletNames(device("fan-light"))).toEqual(["R5/upper", "R5/lower"]);
  });

  test("an outlet is found by its key as the device is now", () => {
    const b6 = enclosureIn(laundryAsFound(), "B6");
    expect(findOutlet(b6, outlet("R5"))?.name).toBe("R5");
    expect(findOutlet(b6, outlet("R5", "upper"))).toBeUndefined();
    expect(findOutlet(b6, outlet("R9"))).toBeUndefined();
  });

  test("the sink receptacle of the laundry is in three kinds of place: the room's two and its own zone", () => {
    const project = laundryAsFound();
    const kinds = (box: string, name: string) => {
      const placed = enclosureIn(project, box).devices[deviceId(name)];
      return placed === undefined ? [] : [...roomKindsOf(project, enclosureIn(project, box), placed)].sort();
    };
    expect(kinds("B2", "R2")).toEqual(["basement-unfinished", "laundry", "sink-zone"]);
    expect(kinds("B3", "R3")).toEqual(["outdoor"]);
    expect(kinds("P", "Q14")).toEqual([]);
  });
});

describe("volume that a box is credited with", () => {
  const box = (more: Partial<Box>): Box => ({ ...(enclosureIn(drawing().box("B1").project, "B1") as Box), ...more });
  const credited = (one: Box) => {
    const volume = creditedVolume(one);
    return volume === undefined ? undefined : toDecimal(volume);
  };
  const rings = (...facts: readonly VolumeFact[]): Box["rings"] =>
    Object.fromEntries(
      facts.map((volume, order) => {
        const id = asId<RingId>(`ring${order}`);
        return [id, { id, kind: "plaster-ring", volume, order }];
      }),
    );

  test.each([
    // NFPA 70 Table 314.16(A), least volumes; the sizes that published worked examples also use.
    ["4x1-1/2 round/octagonal", 15.5],
    ["4x2-1/8 round/octagonal", 21.5],
    ["4x1-1/4 square", 18.0],
    ["4x1-1/2 square", 21.0],
    ["4x2-1/8 square", 30.3],
    ["4-11/16x2-1/8 square", 42.0],
    ["3x2x3-1/2 device", 18.0],
  ])("%s is credited with %d in³", (size, in3) => {
    expect(credited(box({ volume: { kind: "table", size } }))).toBe(in3);
  });

  test("a marked box with what is marked on it", () => {
    expect(credited(box({ volume: { kind: "marked", volumeIn3: cubicInches(22.5) } }))).toBe(22.5);
  });

  test("a ring without a marking adds nothing; a marked one and a standard extension add theirs", () => {
    expect(credited(box({ rings: rings({ kind: "unknown" }) }))).toBe(30.3);
    expect(credited(box({ rings: rings({ kind: "marked", volumeIn3: cubicInches(1.8) }) }))).toBe(32.1);
    // A 1-1/2 in. extension of a 4 in. square box adds 21.0.
    expect(credited(box({ rings: rings({ kind: "table", size: "4x1-1/2 square" }, { kind: "unknown" }) }))).toBe(51.3);
  });

  test("sizes listed per gang count once a gang, others once", () => {
    const perGang: VolumeFact = { kind: "table", size: "3-3/4x2x3-1/2 masonry, per gang" };
    expect(credited(box({ volume: perGang, gangs: 3 }))).toBe(63);
    expect(credited(box({ gangs: 2 }))).toBe(30.3);
    expect(credited(box({ volume: { kind: "marked", volumeIn3: cubicInches(34) }, gangs: 2 }))).toBe(34);
  });

  test("an unknown volume stays unknown, whatever is put on the box", () => {
    const marked: VolumeFact = { kind: "marked", volumeIn3: cubicInches(3) };
    expect(credited(box({ volume: { kind: "unknown" }, rings: rings(marked) }))).toBeUndefined();
    expect(volumeOf({ kind: "table", size: "bathtub" })).toBeUndefined();
  });

  test("every standard size is an exact volume", () => {
    for (const { size, volumeIn3 } of standardBoxes)
      expect(volumeOf({ kind: "table", size })).toBe(cubicInches(volumeIn3));
  });

  test("the boxes of the laundry job", () => {
    const project = laundryAsFound();
    const volumes = ["B1", "B2", "B3", "B4", "B5", "B6", "B7"].map((name) =>
      credited(enclosureIn(project, name) as Box),
    );
    expect(volumes).toEqual([30.3, 18, 18, 18, 18, 14, 15.5]);
  });
});

test("ids of the test drawings are made from kind and name", () => {
  expect([boxId("B1"), deviceId("P neutral"), outlet("R5", "lower")]).toEqual([
    "box-B1",
    "device-P_neutral",
    "device-R5/lower",
  ]);
});
