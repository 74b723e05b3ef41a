import { expect, test } from "vitest";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import type { Installation, Project } from "../../shared-model/model/project.ts";
import { getEnclosure } from "../../shared-model/queries/find-item.ts";
import { boxId } from "../builders/drawing.ts";
import { faultsOf } from "./drawing-faults.ts";
import { laundryFound, laundryProposed } from "./laundry-sheet.ts";

const B1 = boxId("B1");
const found = laundryFound();
const planned = laundryProposed();
const proposed = planned.proposed as Installation;
const draw = (project: Project, installation: Installation, name = "B1"): BoxDrawing =>
  boxDrawing(project, installation, boxId(name));

test("the proposed laundry box is as clean as the one laid out by hand: 31 bends, 13 crossings, 4 of insulated wires", () => {
  const { measure } = draw(planned, proposed);
  expect(measure.bends).toBeLessThanOrEqual(31);
  expect(measure.crossings).toBeLessThanOrEqual(13);
  expect(measure.insulatedCrossings).toBeLessThanOrEqual(4);
  expect([measure.bodyHits, measure.sharedSegments]).toEqual([0, 0]);
});

test("the laundry box as found stays as clean as measured when it was last looked at", () => {
  const { measure } = draw(found, found.asFound);
  expect(measure.bends).toBeLessThanOrEqual(33);
  expect(measure.crossings).toBeLessThanOrEqual(14);
  expect(measure.insulatedCrossings).toBeLessThanOrEqual(4);
  expect([measure.bodyHits, measure.sharedSegments]).toEqual([0, 0]);
});

test("no box of the laundry circuit has a fault in its drawing", () => {
  for (const [project, installation] of [
    [found, found.asFound],
    [planned, proposed],
  ] as const)
    for (const enclosure of Object.values(installation.enclosures))
      expect(faultsOf(boxDrawing(project, installation, enclosure.id), enclosure)).toEqual([]);
});

test("sheaths stand on the wall that faces the other box, in the order of the boxes along it", () => {
  const { sheaths } = draw(found, found.asFound);
  const on = (wall: string) => sheaths.filter((sheath) => sheath.wall === wall).sort((a, b) => a.at.y - b.at.y);
  expect(on("left").map(({ name }) => name)).toEqual(["C3", "C1", "C4"]);
  expect(on("right").map(({ name }) => name)).toEqual(["C5", "C2"]);
  expect(sheaths.find(({ name }) => name === "C1")).toMatchObject({
    captionTitle: "from P",
    captionNote: "breaker 14, 20 A",
    sizeText: "12/2",
    lengthText: "55 ft",
  });
});

test("hots stand over neutrals, neutrals over grounds, and a joint before the wall where most of it enters", () => {
  const { splices } = draw(planned, proposed);
  const place = Object.fromEntries(splices.map(({ name, x, rows }) => [name, { x, y: rows[0]?.y ?? 0 }]));
  const at = (name: string) => place[name] ?? { x: Number.NaN, y: Number.NaN };
  expect(at("HL").x).toBe(at("NL").x);
  expect(at("NL").x).toBe(at("E1").x);
  expect(at("HD").x).toBe(at("ND").x);
  expect(at("HL").x).toBeLessThan(at("HD").x);
  expect(at("HL").y).toBeLessThan(at("NL").y);
  expect(at("NL").y).toBeLessThan(at("E1").y);
  expect(at("HD").y).toBeLessThan(at("ND").y);
  expect(splices.find(({ name }) => name === "HL")?.caption).toBe("4 × 12, large");
});

test("codes stand at both ends of a conductor: the colour at its sheath, cable and colour at its place", () => {
  const { conductors } = draw(planned, proposed);
  const platesOf = (end: string) =>
    conductors.find(({ ends }) => ends.some((each) => each === end))?.plates.map(({ text }) => text);
  expect(platesOf("cable-C3.bk.a")).toEqual(["BK", "C3 BK"]);
  expect(platesOf("cable-C1.cu.b")).toEqual(["bare", "C1 bare"]);
  expect(platesOf("jumper-a.a")).toEqual(["a BK", "a BK"]);
});

test("an edit in another box, or a box moved without changing sides, gives the same drawing object", () => {
  const before = draw(found, found.asFound);
  const b6 = getEnclosure(found.asFound, boxId("B6"));
  const edited: Installation = {
    ...found.asFound,
    enclosures: { ...found.asFound.enclosures, [b6.id]: { ...b6, accessible: true } },
  };
  expect(boxDrawing({ ...found, asFound: edited }, edited, B1)).toBe(before);
  const layout = { ...found.layout, enclosures: { ...found.layout.enclosures, [b6.id]: { x: 4000, y: -100 } } };
  expect(boxDrawing({ ...found, layout }, found.asFound, B1)).toBe(before);
  const renamed: Installation = {
    ...found.asFound,
    enclosures: { ...found.asFound.enclosures, [b6.id]: { ...b6, name: "B66" } },
  };
  const after = boxDrawing({ ...found, asFound: renamed }, renamed, B1);
  expect(after.sheaths.find(({ name }) => name === "C5")?.captionTitle).toBe("to B66");
});

test("a dragged splice keeps its row and column while the rest is routed around it", () => {
  const before = draw(planned, proposed);
  const moved = before.splices.find(({ name }) => name === "ND");
  if (moved === undefined) throw new Error("ND is not drawn.");
  const to = { x: 200, y: (moved.rows[0]?.y ?? 0) + 48 };
  const layout = { ...planned.layout, splices: { [moved.splice]: to } };
  const after = boxDrawing({ ...planned, layout }, proposed, B1);
  const there = after.splices.find(({ name }) => name === "ND");
  expect(there?.x).toBe(after.splices.find(({ name }) => name === "HL")?.x);
  expect(Math.abs((there?.rows[0]?.y ?? 0) - to.y)).toBeLessThanOrEqual(8);
  expect(faultsOf(after, getEnclosure(proposed, B1))).toEqual([]);
});

test("a dragged splice stands where it was dropped, though the box grows upward for it", () => {
  const before = draw(found, found.asFound, "B7");
  const [splice] = before.splices;
  const from = splice?.rows[0]?.y;
  if (splice === undefined || from === undefined) throw new Error("B7 has lost its splice.");
  for (const by of [-192, -144, -96, -64, -32, 32, 96]) {
    const layout = { ...found.layout, splices: { [splice.splice]: { x: splice.x, y: from + by } } };
    const after = draw({ ...found, layout }, found.asFound, "B7");
    expect(Math.abs((after.splices[0]?.rows[0]?.y ?? 0) - (from + by))).toBeLessThanOrEqual(8);
  }
});

test("capping one end moves no sheath to another wall and no splice to another column", () => {
  const before = draw(planned, proposed);
  const box = getEnclosure(proposed, B1);
  const places = { ...box.places, ["cable-C4.wh.a" as keyof typeof box.places]: { at: { kind: "capped" as const } } };
  const edited: Installation = { ...proposed, enclosures: { ...proposed.enclosures, [B1]: { ...box, places } } };
  const after = boxDrawing({ ...planned, proposed: edited }, edited, B1);
  expect(after.sheaths.map(({ name, wall }) => [name, wall])).toEqual(
    before.sheaths.map(({ name, wall }) => [name, wall]),
  );
  const order = ({ splices }: BoxDrawing) =>
    [...splices].sort((a, b) => a.x - b.x || (a.rows[0]?.y ?? 0) - (b.rows[0]?.y ?? 0)).map(({ name }) => name);
  expect(order(after)).toEqual(order(before));
});
