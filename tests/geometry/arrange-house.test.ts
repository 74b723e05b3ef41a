/** Whole houses arranged: what is drawn then is measured by walking it, not by what the arrangement thought of it. */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import type { BoxMove } from "../../shared-model/geometry/arrange.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import { type ArrangeAsk, arrangeHouse, type HouseOrder } from "../../shared-model/geometry/house/arrange-house.ts";
import { allAtOnce } from "../../shared-model/lib/in-slices.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { bigHouse } from "../bench/big-house.ts";
import { buildHouse, houseSpec } from "./random-house.ts";
import { measureSheet } from "./road-measure.ts";

const SAMPLES = new URL("../../assets/samples/", import.meta.url);
const ORDERS: readonly HouseOrder[] = ["by-circuit", "by-room"];

const moved = (project: Project, moves: readonly BoxMove[]): Project => ({
  ...project,
  layout: {
    ...project.layout,
    enclosures: { ...project.layout.enclosures, ...Object.fromEntries(moves.map(({ id, to }) => [id, to])) },
  },
});
const movesOf = (project: Project, ask: ArrangeAsk) => allAtOnce(arrangeHouse(project, project.asFound, ask));
const arranged = (project: Project, ask: ArrangeAsk): Project => moved(project, movesOf(project, ask));
const idsOf = ({ asFound }: Project) => Object.keys(asFound.enclosures) as EnclosureId[];

/** What is drawn of boxes as they stand, as the window sends it along. */
const sizesOf = (project: Project) =>
  new Map(idsOf(project).map((id) => [id, boxDrawing(project, project.asFound, id).bounds]));

function sample(name: string): Project {
  const parsed = parseProject(readFileSync(new URL(name, SAMPLES), "utf8"));
  if (!parsed.ok) throw new Error(parsed.problems.map((one) => one.message).join("\n"));
  return parsed.value.project;
}

/**
 * Crossings of cables, at most: near, from the middle. Where nothing is said there are none. By room cables go from room
 * to room, and "wrong on purpose" has rings and 30 circuits on one panel; the layout before this one had 22 and 16 there.
 */
const CROSSINGS: Readonly<Record<string, readonly [near: number, middle: number]>> = {
  "house-twelve-circuits by-room": [36, 42],
  "kitchen-multiwire by-room": [2, 2],
  "wrong-on-purpose by-circuit": [11, 2],
  "wrong-on-purpose by-room": [36, 28],
};

describe.each(readdirSync(SAMPLES).filter((name) => name.endsWith(".loadside")))("%s", (name) => {
  const project = sample(name);

  test.each(ORDERS)("%s: no box on another, no cable through a box, few crossings, and all on the pitch", (order) => {
    const after = arranged(project, { order });
    const most = CROSSINGS[`${name.replace(".loadside", "")} ${order}`] ?? [0, 0];
    (["near", "middle"] as const).forEach((level, i) => {
      const { overlaps, through, shared, crossings } = measureSheet(after, after.asFound, level);
      expect({ overlaps, through, shared }).toEqual({ overlaps: [], through: [], shared: 0 });
      expect(crossings).toBeLessThanOrEqual(most[i] ?? 0);
    });
    for (const { x, y } of Object.values(after.layout.enclosures))
      expect([Math.abs(x % 16), Math.abs(y % 16)]).toEqual([0, 0]);
    expect(movesOf(after, { order })).toEqual([]);
  });
});

const spots = (project: Project) => idsOf(project).map((id) => project.layout.enclosures[id]);

/** Boxes in order: what feeds each, how many devices it holds, its room and the kind of its cable. */
const treeOf = (
  panels: number,
  boxes: readonly (readonly [from: number, devices?: number, room?: number, item?: number])[],
) => ({
  panels,
  boxes: boxes.map(([from, devices = 0, room = 0, item = 0]) => ({ from, item, devices, room, at: { x: 0, y: 0 } })),
  rings: [],
});
const BEFORE = -1;
/** Found by longer runs with other seeds, and made as small as they get. */
const CROSSED_ONCE = {
  "laid back and forth, the first row shorter than the second": treeOf(0, [
    ...Array.from({ length: 8 }, () => [BEFORE] as const),
    [4],
    [4],
    [6],
    [7],
    [0],
  ]),
  "a cable from the panel that ends between two others": treeOf(1, [
    [BEFORE, 0, 2],
    [0, 1, 0, 2],
    [0],
    [BEFORE],
    [BEFORE],
    [BEFORE, 1],
    [0, 2, 2],
    [4],
    [BEFORE, 2],
  ]),
};

describe("any house", () => {
  test("lies clear, whatever is joined to what; a second time nothing moves", () => {
    fc.assert(
      fc.property(houseSpec(24), fc.constantFrom(...ORDERS), (spec, order) => {
        const after = arranged(buildHouse(spec), { order });
        expect(measureSheet(after, after.asFound, "near").overlaps).toEqual([]);
        expect(movesOf(after, { order })).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  test("by circuit, trees have no crossing and no cable runs through a box; rings few", () => {
    let [cables, crossings, through] = [0, 0, 0];
    fc.assert(
      fc.property(houseSpec(20, 2), (spec) => {
        const tree = arranged(buildHouse({ ...spec, panels: Math.min(1, spec.panels), rings: [] }), {
          order: "by-circuit",
        });
        const plain = measureSheet(tree, tree.asFound, "near");
        expect([plain.crossings, plain.through]).toEqual([0, []]);
        const ring = arranged(buildHouse(spec), { order: "by-circuit" });
        const measure = measureSheet(ring, ring.asFound, "near");
        cables += measure.cables;
        crossings += measure.crossings;
        through += measure.through.length;
      }),
      { numRuns: 60 },
    );
    expect(through / cables).toBeLessThan(0.002);
    expect(crossings / cables).toBeLessThan(0.2);
  });

  test.each(Object.entries(CROSSED_ONCE))("a tree that had a crossing once has none: %s", (_, spec) => {
    const tree = arranged(buildHouse(spec), { order: "by-circuit" });
    const { crossings, through } = measureSheet(tree, tree.asFound, "near");
    expect([crossings, through]).toEqual([0, []]);
  });

  test("where its boxes stood has no say", () => {
    fc.assert(
      fc.property(houseSpec(12), houseSpec(12), fc.constantFrom(...ORDERS), (spec, other, order) => {
        const boxes = spec.boxes.map((box, i) => ({ ...box, at: other.boxes[i % other.boxes.length]?.at ?? box.at }));
        const one = arranged(buildHouse(spec), { order });
        const two = arranged(buildHouse({ ...spec, boxes }), { order });
        expect(spots(two)).toEqual(spots(one));
      }),
      { numRuns: 30 },
    );
  });

  test("a pinned box that grows, since its cables come from elsewhere now, is not covered either", () => {
    const spec = treeOf(1, [[BEFORE], [BEFORE], [BEFORE, 1]]);
    const house = buildHouse({
      ...spec,
      rings: [
        { one: 3, other: 1 },
        { one: 2, other: 3 },
      ],
    });
    const [panel, , , b2] = idsOf(house) as [EnclosureId, EnclosureId, EnclosureId, EnclosureId];
    const enclosures = { ...house.layout.enclosures, [b2]: { x: 1489, y: 0 } };
    const pinned = { [panel]: true, [b2]: true } as const;
    const held: Project = { ...house, layout: { ...house.layout, enclosures, pinned } };
    const after = arranged(held, { order: "by-circuit", sizes: sizesOf(held) });
    const grown = sizesOf(after).get(b2)?.height ?? 0;
    expect(grown).toBeGreaterThan(sizesOf(held).get(b2)?.height ?? grown);
    expect(measureSheet(after, after.asFound, "near").overlaps).toEqual([]);
  });

  test("what is pinned stays, and so does what was not asked for; neither is covered", () => {
    fc.assert(
      fc.property(houseSpec(14), fc.constantFrom(...ORDERS), fc.nat(), fc.nat(), (spec, order, pin, part) => {
        const house = buildHouse(spec);
        const ids = idsOf(house);
        const pinned = ids[pin % ids.length] as EnclosureId;
        const held: Project = { ...house, layout: { ...house.layout, pinned: { [pinned]: true } } };
        const only = ids.filter((_, i) => i % 2 === part % 2);
        for (const ask of [{ order }, { order, only }, { order, only, sizes: sizesOf(held) }]) {
          const moves = movesOf(held, ask);
          expect(moves.map(({ id }) => id)).not.toContain(pinned);
          if ("only" in ask) for (const { id } of moves) expect(only).toContain(id);
        }
        const two: Record<EnclosureId, true> = { [pinned]: true, [ids[part % ids.length] as EnclosureId]: true };
        const twice: Project = { ...house, layout: { ...house.layout, pinned: two } };
        for (const [project, ask] of [
          [held, { order }],
          [twice, { order, sizes: sizesOf(twice) }],
          [house, { order, only, sizes: sizesOf(house) }],
        ] as const) {
          const moves = movesOf(project, ask);
          const after = moved(project, moves);
          const gone = new Set(moves.map(({ id }) => id));
          const { overlaps } = measureSheet(after, after.asFound, "near");
          // What stays may have lain on each other before.
          const made = overlaps.filter((pair) => pair.split(" on ").some((id) => gone.has(id as EnclosureId)));
          expect(made).toEqual([]);
        }
      }),
      { numRuns: 40 },
    );
  });
});

test("a panel stands to the left of its circuits, each in a band of its own and in order along the circuit", () => {
  const after = arranged(bigHouse(15, 5), { order: "by-circuit" });
  const at = (id: string) => after.layout.enclosures[id as EnclosureId] ?? { x: Number.NaN, y: Number.NaN };
  const bands = [0, 1, 2].map((circuit) => [0, 1, 2, 3, 4].map((step) => at(`b${5 * circuit + step}`)));
  bands.forEach((band, i) => {
    for (const [step, { x }] of band.entries())
      expect(x).toBeGreaterThan(step === 0 ? at("p0").x : (band[step - 1]?.x ?? x));
    const next = bands[i + 1];
    if (next !== undefined)
      expect(Math.max(...band.map(({ y }) => y)) + 600).toBeLessThan(Math.min(...next.map(({ y }) => y)));
  });
});

test("a room has its boxes to itself, with room for its name over them", () => {
  const project = sample("house-twelve-circuits.loadside");
  const after = arranged(project, { order: "by-room" });
  const areas = new Map<string, { x: number; y: number; right: number; bottom: number }>();
  for (const { id, roomId = id } of Object.values(after.asFound.enclosures)) {
    const { bounds } = boxDrawing(after, after.asFound, id);
    const at = after.layout.enclosures[id] ?? { x: 0, y: 0 };
    const [x, y] = [at.x + bounds.x, at.y + bounds.y];
    const known = areas.get(roomId) ?? { x, y, right: x, bottom: y };
    areas.set(roomId, {
      x: Math.min(known.x, x),
      y: Math.min(known.y, y),
      right: Math.max(known.right, x + bounds.width),
      bottom: Math.max(known.bottom, y + bounds.height),
    });
  }
  expect(areas.size).toBeGreaterThan(5);
  const all = [...areas.values()];
  all.forEach((one, i) => {
    for (const other of all.slice(i + 1)) {
      const across = Math.max(one.x - other.right, other.x - one.right);
      const down = Math.max(one.y - other.bottom, other.y - one.bottom);
      expect(across >= 480 || down >= 600).toBe(true);
    }
  });
});

test.each([
  { boxes: 150, perCircuit: 6, most: 10 },
  { boxes: 130, perCircuit: 2, most: 40 },
])("a house of $boxes boxes is arranged from what was drawn before, and lies clear as well", (house) => {
  const { boxes, perCircuit, most } = house;
  const project = bigHouse(boxes, perCircuit);
  for (const order of ORDERS) {
    for (const sizes of [sizesOf(project), undefined]) {
      const after = arranged(project, { order, ...(sizes && { sizes }) });
      const { overlaps, through, crossings } = measureSheet(after, after.asFound, "near");
      expect(overlaps).toEqual([]);
      if (order === "by-room") continue;
      expect(through).toEqual([]);
      expect(crossings).toBeLessThanOrEqual(most);
    }
  }
});
