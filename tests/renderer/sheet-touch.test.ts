import { describe, expect, test } from "vitest";
import type { BoxItem } from "../../renderer/sheet/box-items.ts";
import { FINGER, nearGrip } from "../../renderer/sheet/touch/near-grip.ts";
import { isPalm, notePen } from "../../renderer/sheet/touch/pen.ts";
import { graspOf, viewAfter } from "../../renderer/sheet/touch/pinch.ts";

const LIMITS = { least: 0.02, most: 4 };
const at = (x: number, y: number) => ({ x, y });

describe("fingers on the sheet", () => {
  /** Where a point of the view lies on the sheet. */
  const onSheet = (view: { x: number; y: number; zoom: number }, point: { x: number; y: number }) =>
    at((point.x - view.x) / view.zoom, (point.y - view.y) / view.zoom);

  test("what lay under each finger still does, whichever way they go without turning", () => {
    const view = { x: -40, y: 25, zoom: 0.5 };
    const from = [at(100, 100), at(200, 100)];
    const to = [at(50, 130), at(350, 130)];
    const after = viewAfter(view, graspOf(from), graspOf(to), LIMITS);
    expect(after.zoom).toBeCloseTo(1.5);
    for (const [index, before] of from.entries()) {
      const now = onSheet(after, to[index] ?? at(0, 0));
      const was = onSheet(view, before);
      expect(now.x).toBeCloseTo(was.x);
      expect(now.y).toBeCloseTo(was.y);
    }
  });

  test("one finger moves the sheet and leaves its size; three are as good as two", () => {
    const view = { x: 10, y: 10, zoom: 1 };
    expect(viewAfter(view, graspOf([at(5, 5)]), graspOf([at(25, -5)]), LIMITS)).toEqual({ x: 30, y: 0, zoom: 1 });
    const three = [at(0, 0), at(100, 0), at(50, 90)];
    const wider = three.map(({ x, y }) => at(x * 2, y * 2));
    expect(viewAfter(view, graspOf(three), graspOf(wider), LIMITS).zoom).toBeCloseTo(2);
  });

  test("the size stays within its limits, and fingers upon each other say nothing of it", () => {
    const view = { x: 0, y: 0, zoom: 1 };
    const near = graspOf([at(50, 50), at(70, 50)]);
    const far = graspOf([at(-500, 50), at(620, 50)]);
    expect(viewAfter(view, near, far, LIMITS).zoom).toBe(4);
    expect(viewAfter({ ...view, zoom: 0.03 }, far, near, LIMITS).zoom).toBe(0.02);
    const none = graspOf([at(60, 50), at(61, 50)]);
    expect(viewAfter(view, none, far, LIMITS).zoom).toBe(1);
    expect(viewAfter(view, far, none, LIMITS).zoom).toBe(1);
  });
});

describe("what a finger means", () => {
  const item = (kind: "end" | "cable" | "device" | "splice", x: number, y: number): BoxItem =>
    ({
      key: `${kind} ${x}`,
      subject: { kind, enclosure: "b", id: `${kind} ${x}` },
      at: at(x, y),
    }) as unknown as BoxItem;
  const [near, far] = [item("end", 0, 0), item("end", 16, 0)];

  test("the nearest end within its reach, which is the same on the screen at every size", () => {
    expect(nearGrip(undefined, [far, near], at(6, 0), 1)).toBe(near);
    expect(nearGrip(undefined, [far, near], at(10, 0), 1)).toBe(far);
    expect(nearGrip(undefined, [near], at(FINGER - 1, 0), 1)).toBe(near);
    expect(nearGrip(undefined, [near], at(FINGER + 1, 0), 1)).toBeUndefined();
    expect(nearGrip(undefined, [near], at(FINGER + 1, 0), 2)).toBe(near);
    expect(nearGrip(undefined, [near], at(FINGER - 1, 0), 0.5)).toBeUndefined();
  });

  test("a splice or a device under the finger is meant itself; of a cable its ends are", () => {
    const splice = item("splice", 4, 0);
    const device = item("device", 4, 0);
    const cable = item("cable", 4, 0);
    expect(nearGrip(splice, [near], at(4, 0), 1)).toBe(splice);
    expect(nearGrip(device, [near], at(4, 0), 1)).toBe(device);
    expect(nearGrip(cable, [near], at(4, 0), 1)).toBe(near);
    expect(nearGrip(cable, [near], at(90, 0), 1)).toBe(cable);
  });
});

test("a touch is a palm while a pen is down or hovers, and half a second after", () => {
  const pen = (type: string, buttons: number, timeStamp: number) =>
    notePen({ type, buttons, timeStamp, pointerType: "pen" } as PointerEvent);
  const touch = (timeStamp: number) => isPalm({ timeStamp } as Event);
  notePen({ type: "pointerdown", buttons: 1, timeStamp: 0, pointerType: "mouse" } as PointerEvent);
  expect(touch(10)).toBe(false);
  pen("pointerdown", 1, 1000);
  expect(touch(9000)).toBe(true);
  pen("pointerup", 0, 9000);
  expect(touch(9499)).toBe(true);
  expect(touch(9501)).toBe(false);
  pen("pointermove", 0, 10_000);
  expect(touch(10_100)).toBe(true);
  expect(touch(10_600)).toBe(false);
});
