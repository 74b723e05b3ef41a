import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { frameOf, intoBox, magnification } from "../../renderer/sheet/box-frame.ts";
import { levelOf, MIDDLE_FROM, NEAR_FROM, stepAt, unitOf } from "../../renderer/sheet/detail.ts";
import { zoneAt } from "../../renderer/sheet/zones.ts";
import { roadLabel } from "../../shared-model/geometry/roads/road-label.ts";

describe("how far away the sheet is", () => {
  test("near, middle and far follow each other without a gap", () => {
    expect(levelOf(stepAt(NEAR_FROM))).toBe("near");
    expect(levelOf(stepAt(NEAR_FROM * 0.999))).toBe("middle");
    expect(levelOf(stepAt(MIDDLE_FROM * 1.001))).toBe("middle");
    expect(levelOf(stepAt(MIDDLE_FROM * 0.999))).toBe("far");
    expect(levelOf(stepAt(0.02))).toBe("far");
  });

  test("what keeps its size on the screen is at most an eighth off it", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.02, max: NEAR_FROM * 0.9999, noNaN: true }), (zoom) => {
        const pixel = unitOf(stepAt(zoom)) * zoom;
        expect(pixel).toBeGreaterThan(0.875);
        expect(pixel).toBeLessThan(1.125);
      }),
    );
  });
});

describe("an opened box", () => {
  const drawing = { width: 768, height: 640, bounds: { x: -140, y: -60, width: 1048, height: 720 } };

  test("is drawn at a readable size about its own middle, and no smaller than the sheet", () => {
    const view = { zoom: 0.14, width: 800, height: 740 };
    const scale = magnification(drawing, view);
    // 800 × 0.94 pixels for 1048 drawing units and the rim of its plate, 80: two thirds of full size.
    expect(scale * view.zoom).toBeCloseTo((800 * 0.94) / 1128, 6);
    const frame = frameOf(drawing, scale);
    expect(frame.x + (frame.width * (384 + 140)) / 1048).toBeCloseTo(384, 6);
    expect(frame.y + (frame.height * (320 + 60)) / 720).toBeCloseTo(320, 6);
    expect(magnification(drawing, { ...view, zoom: 1.4 })).toBe(1);
    expect(magnification(drawing, { zoom: 0.1, width: 4000, height: 4000 }) * 0.1).toBeCloseTo(9 / 11, 9);
    // Too narrow for all of it at a size at which it can be read: it is panned.
    expect(magnification(drawing, { zoom: 0.1, width: 354, height: 560 }) * 0.1 * 11).toBeCloseTo(9, 9);
  });

  test("a point of the sheet is found in it again", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (scale, share) => {
          const origin = { x: 3200, y: -1600 };
          const frame = frameOf(drawing, scale);
          const on = { x: origin.x + frame.x + share * frame.width, y: origin.y + frame.y + share * frame.height };
          const at = intoBox(on, origin, drawing, scale);
          expect(at.x).toBeCloseTo(-140 + share * 1048, 4);
          expect(at.y).toBeCloseTo(-60 + share * 720, 4);
        },
      ),
    );
  });
});

describe("words on a road", () => {
  const words = { name: "C1", sizeText: "12/2", lengthText: "55 ft" };
  const road = (level: number, upright: number) => [
    { x: 0, y: 0 },
    { x: level, y: 0 },
    { x: level, y: upright },
    { x: level + 20, y: upright },
  ];

  test("lie on the longest level leg that holds all of them, before any upright one", () => {
    const label = roadLabel(road(200, 900), words, 12, 1);
    expect(label).toMatchObject({ at: { x: 100, y: 0 }, upright: false, name: "C1", rest: "12/2  55 ft" });
  });

  test("stand upright where no level leg is long enough, and drop the length, then the size, where none is", () => {
    expect(roadLabel(road(30, 900), words, 12, 1)).toMatchObject({ at: { x: 30, y: 450 }, upright: true });
    expect(roadLabel(road(30, 70), words, 12, 1)).toMatchObject({ rest: "12/2", upright: true });
    expect(roadLabel(road(35, 20), words, 12, 1)).toMatchObject({ rest: "", upright: false });
    expect(roadLabel(road(10, 10), words, 12, 1)).toBeUndefined();
  });
});

test("zones are letters down and numbers across, and there are none outside the frame", () => {
  const sheet = { x: 100, y: 50, width: 800, height: 600 };
  expect(zoneAt({ x: 101, y: 51 }, sheet)).toBe("A1");
  expect(zoneAt({ x: 450, y: 350 }, sheet)).toBe("D4");
  expect(zoneAt({ x: 899, y: 649 }, sheet)).toBe("F8");
  expect(zoneAt({ x: 900, y: 300 }, sheet)).toBeUndefined();
  expect(zoneAt({ x: 300, y: 49 }, sheet)).toBeUndefined();
});
