import { expect, test } from "vitest";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import { isSheathBehind, protectedLimits } from "../../shared-model/geometry/protected-limit.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { boxId, deviceId } from "../builders/drawing.ts";
import { laundryProposed } from "./laundry-sheet.ts";

const planned = laundryProposed();
const drawing = boxDrawing(planned, planned.proposed as Installation, boxId("B1"));
const R1b = deviceId("R1b");
const behind = (...joints: string[]) => {
  const ends = drawing.splices
    .filter(({ name }) => joints.includes(name))
    .flatMap(({ rows }) => rows.map(({ end }) => end));
  return Object.fromEntries(ends.map((end) => [end, [R1b]])) as Record<EndKey, (typeof R1b)[]>;
};
const splice = (name: string) => {
  const found = drawing.splices.find((each) => each.name === name);
  if (found === undefined) throw new Error(`${name} is not drawn.`);
  return found;
};
const holds = ({ x, y, width, height }: Rect, name: string): boolean => {
  const { x: at, rows } = splice(name);
  return rows.every((row) => at > x && at < x + width && row.y > y && row.y < y + height);
};

test("one limit goes round the joints on LOAD and is open where their cables leave", () => {
  const limits = protectedLimits(drawing, behind("HD", "ND"));
  expect(limits).toHaveLength(1);
  const [limit] = limits;
  if (limit === undefined) throw new Error("No limit.");
  expect(limit).toMatchObject({ device: R1b, open: "right" });
  const inside = drawing.splices.filter(({ name }) => holds(limit.area, name)).map(({ name }) => name);
  expect(inside.sort()).toEqual(["HD", "ND"]);
  expect(limit.area.x + limit.area.width).toBe(drawing.width);
});

test("where a joint on LINE stands among them, each has a limit of its own", () => {
  const limits = protectedLimits(drawing, behind("HD", "ND", "HL"));
  expect(limits).toHaveLength(3);
  for (const name of ["HD", "ND", "HL"]) expect(limits.filter(({ area }) => holds(area, name))).toHaveLength(1);
  for (const { area } of limits) for (const name of ["NL", "E1", "E2"]) expect(holds(area, name)).toBe(false);
});

test("a joint of which one end is not behind the device has no limit", () => {
  const all = behind("HD", "ND");
  const [end] = splice("HD").rows.map((row) => row.end);
  const { [end as EndKey]: _left, ...rest } = all;
  const limits = protectedLimits(drawing, rest);
  expect(limits).toHaveLength(1);
  expect(limits.some(({ area }) => holds(area, "HD"))).toBe(false);
  expect(protectedLimits(drawing, {})).toEqual([]);
});

test("a cable is behind a device when all its insulated conductors are", () => {
  const on = behind("HD", "ND");
  const ask = (name: string, known: Record<EndKey, unknown> = on) => {
    const sheath = drawing.sheaths.find((each) => each.name === name);
    return sheath && isSheathBehind(drawing, sheath, (end) => end in known);
  };
  expect([ask("C2"), ask("C5"), ask("C1"), ask("C3")]).toEqual([true, true, false, false]);
  expect(ask("C2", behind("HD"))).toBe(false);
});
