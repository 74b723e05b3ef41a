import { expect, test } from "vitest";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import { getEnclosure } from "../../shared-model/queries/find-item.ts";
import { boxId, cableId, deviceId, drawing } from "../builders/drawing.ts";
import { faultsOf } from "./drawing-faults.ts";

type House = ReturnType<typeof drawing>;

function drawn(house: House, name = "B1"): BoxDrawing {
  const { project } = house;
  const made = boxDrawing(project, project.asFound, boxId(name));
  expect(faultsOf(made, getEnclosure(project.asFound, boxId(name)))).toEqual([]);
  return made;
}

test("an empty box is drawn as its walls, its name and its volume", () => {
  const made = drawn(drawing().box("B1", "square-4-2-1-8", { note: "laundry" }));
  expect([made.sheaths, made.conductors, made.splices, made.devices, made.caps]).toEqual([[], [], [], [], []]);
  expect(made.header).toMatchObject({ name: "B1", note: "laundry, 4 in. square × 2-1/8, metal, 30.3 in³" });
  expect(made.width).toBeGreaterThanOrEqual(300);
});

test("a fresh cable lies tidy: rows one pitch apart, hot over neutral over ground, caps in one line", () => {
  const made = drawn(drawing().box("B1").outside("C1", "B1", { item: "nm-12-3-g" }));
  expect(made.conductors.map(({ colour }) => colour)).toEqual(["black", "red", "white", "bare"]);
  const caps = made.caps.map(({ at }) => at);
  expect(new Set(caps.map(({ x }) => x)).size).toBe(1);
  expect(caps.slice(1).map(({ y }, index) => y - (caps[index]?.y ?? 0))).toEqual([16, 16, 16]);
  expect(made.conductors.map(({ plates }) => plates.map(({ text }) => text))).toEqual([
    ["BK"],
    ["RD"],
    ["WH"],
    ["bare"],
  ]);
});

test("a further cable moves no sheath to the other wall", () => {
  const house = drawing().box("B1");
  const walls = (): string[] => drawn(house).sheaths.map(({ name, wall }) => `${name} ${wall}`);
  let before: string[] = [];
  for (let count = 1; count <= 8; count += 1) {
    house.outside(`C${count}`, "B1");
    const now = walls();
    for (const each of before) expect(now).toContain(each);
    before = now;
  }
});

test("devices stand from left to right in their gangs, upright, tops level", () => {
  const house = drawing().box("B1", "plastic-new-2");
  const { devices } = drawn(
    house.device("S1", "switch-3way", "B1").device("R1", "gfci-receptacle-15", "B1").device("S2", "dimmer", "B1"),
  );
  expect(devices.map(({ name }) => name)).toEqual(["S1", "R1", "S2"]);
  const xs = devices.map(({ body }) => body.x);
  expect(xs).toEqual([...xs].sort((a, b) => a - b));
  expect(new Set(devices.map(({ body }) => body.y)).size).toBe(1);
});

test("silver is left, brass right, green below; LINE stands over LOAD", () => {
  const [device] = drawn(drawing().box("B1").device("R1", "gfci-receptacle-15", "B1")).devices;
  const screw = (name: string) =>
    device?.terminals.find(({ terminal }) => terminal === name)?.screw ?? { x: Number.NaN, y: Number.NaN };
  expect(screw("LINE_N").x).toBeLessThan(screw("LINE_H").x);
  expect(screw("LINE_N").y).toBe(screw("LINE_H").y);
  expect(screw("LOAD_N").y).toBeGreaterThan(screw("LINE_N").y);
  expect(screw("G").y).toBeGreaterThan(screw("LOAD_H").y);
  expect(device?.terminals.find(({ terminal }) => terminal === "LINE_H")?.holes).toHaveLength(2);
});

test("breakers stand in two columns by slot, odd left, even right; the other spaces are numbered", () => {
  const house = drawing().panel("P").breaker("Q3", "P").breaker("Q4", "P").breaker("Q7", "P");
  for (const [name, slot] of [
    ["Q3", 3],
    ["Q4", 4],
    ["Q7", 7],
  ] as const)
    house.set({ kind: "device", id: deviceId(name) }, "slot", slot);
  const made = drawn(
    house.outside("C1", "P").land("C1.bk@P", "Q3.OUT").land("C1.wh@P", "P neutral.BAR").land("C1.cu@P", "P ground.BAR"),
    "P",
  );
  const body = (name: string) =>
    made.devices.find((device) => device.name === name)?.body ?? { x: Number.NaN, y: Number.NaN };
  expect(body("Q3").x).toBe(body("Q7").x);
  expect(body("Q4").x).toBeGreaterThan(body("Q3").x);
  expect(body("Q4").y).toBe(body("Q3").y);
  expect(body("Q7").y).toBeGreaterThan(body("Q3").y);
  expect(made.freeSlots?.map(({ slot }) => slot)).toEqual([1, 2, 5, 6, 8, 9, 10, 11, 12, 13, 14, 15, 16]);
});

test("each pole of a two-pole breaker stands level with its own space", () => {
  const house = drawing().panel("P").breaker("Q1", "P", { type: "breaker-2" }).breaker("Q2", "P").breaker("Q4", "P");
  for (const [name, slot] of [
    ["Q1", 1],
    ["Q2", 2],
    ["Q4", 4],
  ] as const)
    house.set({ kind: "device", id: deviceId(name) }, "slot", slot);
  const made = drawn(house, "P");
  const holesOf = (name: string) =>
    made.devices.find((device) => device.name === name)?.terminals.flatMap(({ holes }) => holes.map(({ at }) => at.y));
  expect(holesOf("Q1")).toEqual([...(holesOf("Q2") ?? []), ...(holesOf("Q4") ?? [])]);
});

test("a cable into open country says once where it goes", () => {
  const captions = (to: string, supply = false) => {
    const house = drawing().box("B1").outside("C1", "B1");
    if (supply) house.run("set-box-intent", { enclosure: boxId("B1"), intent: { supply: cableId("C1") } });
    const { project } = house;
    const [id] = Object.keys(project.asFound.cables) as (keyof typeof project.asFound.cables)[];
    const cable = id && project.asFound.cables[id];
    if (cable === undefined) throw new Error("C1 is gone.");
    const asFound = {
      ...project.asFound,
      cables: { [cable.id]: { ...cable, sides: { ...cable.sides, b: { outside: to } } } },
    };
    const [sheath] = boxDrawing({ ...project, asFound }, asFound, boxId("B1")).sheaths;
    return [sheath?.captionTitle, sheath?.captionNote];
  };
  expect(captions("not drawn")).toEqual(["not drawn", ""]);
  expect(captions("")).toEqual(["not drawn", ""]);
  expect(captions("attic")).toEqual(["to attic", "not drawn"]);
  expect(captions("attic", true)).toEqual(["from attic", "not drawn"]);
});

test("two ends in one hole are both drawn, side by side until they meet", () => {
  const house = drawing().box("B1").device("R1", "receptacle-15", "B1").outside("C1", "B1").outside("C2", "B1");
  const made = drawn(house.land("C1.bk@B1", "R1.H1").land("C2.bk@B1", "R1.H1"));
  const hole = made.devices[0]?.terminals.find(({ terminal }) => terminal === "H1")?.holes[0];
  const ends = made.conductors
    .filter(({ colour }) => colour === "black")
    .map(({ points }) => points[points.length - 1]);
  expect(ends).toEqual([hole?.at, hole?.at]);
  expect(hole?.taken).toBe(true);
});

test("a jumper with both ends under caps lies level between them, under the device", () => {
  const house = drawing().box("B1").device("R1", "receptacle-15", "B1").jumper("a", "B1", "capped", "capped");
  const made = drawn(house);
  const [a, b] = made.conductors[0]?.points ?? [];
  expect(made.conductors[0]?.points).toHaveLength(2);
  expect(a?.y).toBe(b?.y);
  const body = made.devices[0]?.body;
  expect(a?.y).toBeGreaterThan((body?.y ?? 0) + (body?.height ?? 0));
  expect(made.caps).toHaveLength(2);
});

test("a ring says what it adds", () => {
  const rings = drawn(drawing().box("B1").ring("B1")).rings;
  expect(rings.map(({ text }) => text)).toEqual(["plaster ring, not marked, adds 0"]);
});

test("a long cable name takes the place of the length in its sheath, then is cut", () => {
  const house = drawing().box("B1").outside("Kitchen", "B1", { ft: 40 }).outside("C1", "B1", { ft: 40 });
  const { sheaths } = drawn(house.outside("The-long-way-round-the-attic", "B1", { ft: 40 }));
  expect(sheaths.find(({ name }) => name === "C1")).toMatchObject({ sizeText: "12/2", lengthText: "40 ft" });
  const long = sheaths.find(({ name }) => name.startsWith("The"));
  expect(long?.name.endsWith("…")).toBe(true);
  expect(long).toMatchObject({ sizeText: "12/2", lengthText: "" });
});
