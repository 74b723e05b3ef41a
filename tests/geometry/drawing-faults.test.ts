import { expect, test } from "vitest";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import { getEnclosure } from "../../shared-model/queries/find-item.ts";
import { boxId } from "../builders/drawing.ts";
import { faultsOf } from "./drawing-faults.ts";
import { laundryFound } from "./laundry-sheet.ts";

const project = laundryFound();
const box = getEnclosure(project.asFound, boxId("B1"));
const drawing = boxDrawing(project, project.asFound, box.id);
const found = (planted: Partial<BoxDrawing>): string => faultsOf({ ...drawing, ...planted }, box).join("\n");
const conductorOf = (end: string) => {
  const conductor = drawing.conductors.find(({ ends }) => ends.some((each) => each === end));
  if (conductor === undefined) throw new Error(`${end} is not drawn.`);
  return conductor;
};
const instead = (end: string, change: Partial<BoxDrawing["conductors"][number]>) =>
  drawing.conductors.map((each) => (each === conductorOf(end) ? { ...each, ...change } : each));

test("the finder of faults finds nothing in a good drawing and each planted fault in a bad one", () => {
  const end = "cable-C3.bk.a";
  const { points, plates } = conductorOf(end);
  const device = drawing.devices[0];
  const splice = drawing.splices[0];
  if (device === undefined || splice === undefined) throw new Error("B1 has lost its device or splices.");
  const middle = { x: device.body.x + device.body.width / 2, y: device.body.y + 90 };
  const last = points[points.length - 1] ?? middle;
  expect(found({})).toBe("");
  expect(found({ conductors: drawing.conductors.slice(1) })).toContain("Drawn ends");
  expect(found({ conductors: instead(end, { points: points.slice(0, -1) }) })).toContain("stops off its place");
  expect(found({ conductors: instead(end, { points: [...points.slice(0, -1), middle, last] }) })).toContain(
    "passes through R1",
  );
  expect(found({ conductors: instead(end, { points: conductorOf("cable-C4.cu.a").points }) })).toContain(
    "lies on cable-C3.bk.a",
  );
  expect(found({ conductors: instead(end, { plates: conductorOf("cable-C1.bk.b").plates }) })).toContain(
    "lies on plate",
  );
  expect(
    found({ conductors: instead(end, { plates: plates.map((plate) => ({ ...plate, at: { x: 5, y: 5 } })) }) }),
  ).toContain("beside its conductor");
  const moved = { ...splice, labelAt: { x: last.x - 60, y: last.y + 4 } };
  expect(found({ splices: [moved, ...drawing.splices.slice(1)] })).toContain("runs over");
  expect(found({ width: 200 })).toContain("leaves the box");
  expect(found({ bounds: { x: 0, y: 0, width: 10, height: 10 } })).toContain("leaves the drawing");
  const sheath = drawing.sheaths[0];
  if (sheath === undefined) throw new Error("B1 has lost its cables.");
  const saying = (words: Partial<typeof sheath>) => found({ sheaths: [{ ...sheath, ...words }] });
  expect(saying({ captionNote: "R3b at the far end of the counter" })).toContain("reaches the wall");
  expect(saying({ captionTitle: "attic", captionNote: "attic" })).toContain("twice");
  expect(found({ freeSlots: [{ slot: 1, at: device.body }] })).toContain("Space 1 lies on R1");
  const close = { ...device, body: { ...device.body, x: device.body.x - 30, width: device.body.width + 60 } };
  expect(found({ devices: [close] })).toContain("stands before R1");
});
