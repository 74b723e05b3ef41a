/** What would follow if what is in the hand were put down: the same as what follows. */
import { beforeEach, describe, expect, test } from "vitest";
import { drawingOf } from "../../renderer/sheet/drawings.ts";
import type { Aim } from "../../renderer/sheet/placing/aim.ts";
import { inLines } from "../../renderer/sheet/placing/in-lines.ts";
import { aimOfListed, outlookOf } from "../../renderer/sheet/placing/outlook.ts";
import { spotOf } from "../../renderer/sheet/placing/spot.ts";
import { documentStore, openDocument } from "../../renderer/state/document-store.ts";
import { placeTool } from "../../renderer/state/item-actions/place-tool.ts";
import { type PickLine, pickStore } from "../../renderer/state/pick-store.ts";
import { placeDevice, placeEnclosure } from "../../renderer/state/placing.ts";
import type { Tool } from "../../renderer/state/selection.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { boxId, laundryDrawing } from "../builders/drawing.ts";

beforeEach(() => openDocument({ project: laundryDrawing().project }));

const SQUARE = "square-4-2-1/8";
const aim = (tool: Tool, at: Point, on: Partial<Pick<Aim, "enclosure" | "device">> = {}): Aim => ({
  tool,
  at,
  enclosure: on.enclosure,
  device: on.device,
  by: "pointer",
});
const outlook = (...args: Parameters<typeof aim>) => {
  const found = outlookOf(documentStore.get(), aim(...args));
  if (found === undefined) throw new Error("There is no outlook.");
  return found;
};
const boxes = () => documentStore.get().project.asFound.enclosures;

describe("a box", () => {
  const tool = (): Tool => ({
    kind: "enclosure",
    id: Object.values(boxes()).find(({ name }) => name === "B1")?.item ?? SQUARE,
  });

  test("lies where it is put then, under the name that it gets", () => {
    for (const at of [
      { x: 9000, y: 9000 },
      { x: 0, y: 0 },
      { x: 1200, y: 400 },
    ]) {
      openDocument({ project: laundryDrawing().project });
      const { part, words, legal } = outlook(tool(), at);
      const spot = spotOf(documentStore.get(), tool().id, at);
      expect(legal).toBe(true);
      expect(placeEnclosure(tool().id, spot.at).ok).toBe(true);
      const placed = Object.values(boxes()).at(-1);
      if (placed === undefined) throw new Error("Nothing was placed.");
      expect(documentStore.get().project.layout.enclosures[placed.id]).toEqual({ x: part?.x, y: part?.y });
      expect(words.startsWith(placed.name)).toBe(true);
      const drawing = drawingOf(documentStore.get(), placed.id);
      expect({ width: part?.width, height: part?.height }).toEqual({ width: drawing?.width, height: drawing?.height });
    }
  });

  test("goes beside what stands where it is held, and says so", () => {
    const at = documentStore.get().project.layout.enclosures[boxId("B1")];
    if (at === undefined) throw new Error("B1 has no place.");
    const { words, part, guides } = outlook(tool(), at);
    expect(words).toContain("beside");
    expect({ x: part?.x, y: part?.y }).not.toEqual(at);
    expect(guides).toEqual([]);
  });

  test("clicks onto the line of a neighbour and shows it", () => {
    const [first] = Object.values(boxes()).filter(({ kind }) => kind === "box");
    const at = first && documentStore.get().project.layout.enclosures[first.id];
    if (at === undefined) throw new Error("There is no box.");
    const far = { x: at.x + 3, y: at.y - 2000 };
    const spot = spotOf(documentStore.get(), tool().id, far);
    expect(spot.at.x).toBe(at.x);
    expect(spot.guides.some(({ axis, at: line }) => axis === "x" && line === at.x)).toBe(true);
  });
});

describe("a device", () => {
  const tool: Tool = { kind: "device", id: "receptacle-15" };

  test("needs a box under it", () => {
    expect(outlook(tool, { x: 9000, y: 9000 })).toMatchObject({ legal: false, words: "A device goes into a box" });
  });

  test("goes into a box, and not into a panel: as the command has it", () => {
    for (const { id, name } of Object.values(boxes())) {
      openDocument({ project: laundryDrawing().project });
      const { legal, words, part } = outlook(tool, { x: 0, y: 0 }, { enclosure: id });
      const done = placeDevice(tool.id, id);
      expect([name, legal]).toEqual([name, done.ok]);
      expect(part === undefined).toBe(!legal);
      if (!done.ok) expect(words).toBe(done.refusal.message);
    }
  });
});

test("a load goes into a receptacle and nothing else", () => {
  const tool: Tool = { kind: "load", id: "lamp-60" };
  expect(outlook(tool, { x: 0, y: 0 })).toMatchObject({ legal: false });
  for (const { id, devices } of Object.values(boxes()))
    for (const device of Object.values(devices)) {
      openDocument({ project: laundryDrawing().project });
      const { legal } = outlook(tool, { x: 0, y: 0 }, { enclosure: id, device: device.id });
      const isReceptacle = /^R\d/.test(device.name);
      expect([device.name, legal]).toEqual([device.name, isReceptacle]);
    }
});

test("a cable starts at a box", () => {
  const tool: Tool = { kind: "cable", id: "nm-12-2-g" };
  expect(outlook(tool, { x: 0, y: 0 }).legal).toBe(false);
  expect(outlook(tool, { x: 0, y: 0 }, { enclosure: boxId("B1") })).toMatchObject({ legal: true });
});

test("a long reason stands in lines", () => {
  const lines = inLines("Breaker, one-pole belongs in a panel, and B1 is a box. Pick a panel for it.", 200, 12);
  expect(lines.length).toBeGreaterThan(1);
  expect(lines.join(" ")).toBe("Breaker, one-pole belongs in a panel, and B1 is a box. Pick a panel for it.");
});

describe("a list of places", () => {
  const linesOf = (tool: Tool) => {
    placeTool(tool);
    return pickStore.get().pick?.lines() ?? [];
  };
  const drawing = () => documentStore.get();
  const outlookAt = (line: PickLine | undefined) => {
    const at = line?.aim && aimOfListed(drawing(), line.aim);
    const found = at && outlookOf(drawing(), at);
    if (found === undefined) throw new Error("The line shows nothing.");
    return found;
  };

  test("shows for each line what choosing it does", () => {
    const lines = linesOf({ kind: "device", id: "receptacle-15" });
    expect(lines.length).toBe(Object.values(boxes()).filter(({ kind }) => kind === "box").length);
    for (const line of lines) {
      openDocument({ project: laundryDrawing().project });
      const { words, legal } = outlookAt(line);
      expect([line.title, legal]).toEqual([line.title, true]);
      line.run();
      const names = Object.values(boxes()[line.key as EnclosureId]?.devices ?? {}).map(({ name }) => name);
      expect(words).toBe(`${names.at(-1)}, into ${line.title}`);
    }
  });

  test("shows the cable from its first box to each other", () => {
    const [first] = linesOf({ kind: "cable", id: "nm-12-2-g" });
    expect(outlookAt(first).words).toBe(`12/2 starts at ${first?.title}`);
    first?.run();
    const far = (pickStore.get().pick?.lines() ?? []).find(({ title }) => title === "B1");
    const { words, line, into } = outlookAt(far);
    expect(words).toBe(`12/2 from ${first?.title} to B1`);
    expect(line?.to).toEqual({
      x: (into?.x ?? 0) + (into?.width ?? 0) / 2,
      y: (into?.y ?? 0) + (into?.height ?? 0) / 2,
    });
    expect(line?.from).not.toEqual(line?.to);
  });
});
