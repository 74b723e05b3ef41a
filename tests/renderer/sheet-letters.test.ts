/** Letters that are drawn larger in a box that is seen from further away, as far as there is room for them. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { boxItems, terminalAt } from "../../renderer/sheet/box-items.ts";
import { drawingOf } from "../../renderer/sheet/drawings.ts";
import { grow, letterSizes, wantedGrowth } from "../../renderer/sheet/letter-sizes.ts";
import { letterings } from "../../renderer/sheet/letterings.ts";
import { documentStore, openDocument, shownInstallation } from "../../renderer/state/document-store.ts";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import type { BoxDrawing, Rect } from "../../shared-model/geometry/box-drawing.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { boxId, laundryAsFound } from "../builders/drawing.ts";

const SAMPLES = new URL("../../assets/samples/", import.meta.url);
const names = readdirSync(SAMPLES).filter((name) => name.endsWith(".loadside"));

function drawingsOf(name: string): readonly BoxDrawing[] {
  const parsed = parseProject(readFileSync(new URL(name, SAMPLES), "utf8"));
  if (!parsed.ok) throw new Error(parsed.problems.map((one) => one.message).join("\n"));
  openDocument({ project: parsed.value.project });
  return (Object.keys(shownInstallation().enclosures) as EnclosureId[]).flatMap((id) => {
    const drawing = drawingOf(documentStore.get(), id);
    return drawing === undefined ? [] : [drawing];
  });
}

/** Area that two rectangles share. */
const shared = (a: Rect, b: Rect): number =>
  Math.max(0, Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x)) *
  Math.max(0, Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y));

test("letters grow where 9 pixels would need it, by half at most, and not at a size at which they can be read", () => {
  expect(wantedGrowth(1)).toBe(1);
  expect(wantedGrowth(9 / 11)).toBe(1);
  // 11 units at 0.6 are 6.6 pixels, times 1.3636 are 9: the next step above.
  expect(wantedGrowth(0.6) * 0.6 * 11).toBeGreaterThanOrEqual(9);
  expect(wantedGrowth(0.6)).toBeLessThanOrEqual(1.5);
  expect(wantedGrowth(0.45)).toBe(1.5);
});

describe.each(names)("in %s", (name) => {
  test("no word that has grown lies on another, on a device body or on a splice that it did not lie on before", () => {
    let grown = 0;
    let all = 0;
    for (const drawing of drawingsOf(name)) {
      const sizes = letterSizes(drawing, 1.5);
      const words = letterings(drawing).map((each) => ({ ...each, now: grow(each, sizes.get(each.key) ?? 1) }));
      all += words.length;
      grown += sizes.size;
      const bodies = [
        ...drawing.devices.flatMap(({ body, terminals }) => [
          body,
          ...terminals.map(({ screw }) => ({ x: screw.x - 7.5, y: screw.y - 7.5, width: 15, height: 15 })),
        ]),
        ...drawing.splices.flatMap(({ x, rows }) =>
          rows.map(({ y }) => ({ x: x - 11, y: y - 8, width: 22, height: 16 })),
        ),
      ];
      const faults = words.flatMap((word, i) => [
        ...words
          .slice(i + 1)
          .filter((other) => shared(word.now, other.now) > 0.01 && shared(word.area, other.area) === 0)
          .map((other) => `${word.key} on ${other.key}`),
        ...bodies
          .filter((body) => shared(word.now, body) > 0.01 && shared(word.area, body) === 0)
          .map((body) => `${word.key} on the body at ${body.x} ${body.y}`),
      ]);
      expect(faults, drawing.header.name).toEqual([]);
    }
    // Most have room to grow somewhat.
    expect(grown / all).toBeGreaterThan(0.5);
  });
});

test("a device is pressed on its screws too, out to their rims, and a press on one means its free hole", () => {
  openDocument({ project: laundryAsFound() });
  const id = boxId("B1");
  const enclosure = shownInstallation().enclosures[id];
  const drawing = drawingOf(documentStore.get(), id);
  const device = drawing?.devices[0];
  if (enclosure === undefined || drawing === undefined || device === undefined) throw new Error("B1 has a receptacle.");
  const item = boxItems(shownInstallation(), enclosure, drawing).find(({ subject }) => subject.kind === "device");
  const green = device.terminals.find(({ finish }) => finish === "green");
  if (item === undefined || green === undefined) throw new Error("A grounding receptacle has a green screw.");
  const rim = { x: green.screw.x, y: green.screw.y + 8 };
  expect(rim.y).toBeGreaterThan(device.body.y + device.body.height);
  expect(rim.y).toBeLessThan(item.area.y + item.area.height);
  expect(terminalAt(device, rim)).toMatchObject({ kind: "terminal", device: device.device, terminal: green.terminal });
  const { x, y, width, height } = device.body;
  expect(terminalAt(device, { x: x + width / 2, y: y + height / 2 })).toBeUndefined();
});
