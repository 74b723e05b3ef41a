import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import type { BoxMove } from "../../shared-model/geometry/arrange.ts";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { circuitOf } from "../../shared-model/geometry/circuit/sections.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import * as inSteps from "../../shared-model/geometry/lay-out.ts";
import { allAtOnce } from "../../shared-model/lib/in-slices.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point, Project } from "../../shared-model/model/project.ts";
import { bigHouse } from "../bench/big-house.ts";

const SAMPLES = new URL("../../assets/samples/", import.meta.url);

/** All boxes named in the layout, as the sheet has them; a box without a place is far away from everything. */
function sample(name: string): Project {
  const parsed = parseProject(readFileSync(new URL(name, SAMPLES), "utf8"));
  if (!parsed.ok) throw new Error(parsed.problems.map((one) => one.message).join("\n"));
  return parsed.value.project;
}

const moved = (project: Project, moves: readonly BoxMove[]): Project => ({
  ...project,
  layout: {
    ...project.layout,
    enclosures: { ...project.layout.enclosures, ...Object.fromEntries(moves.map(({ id, to }) => [id, to])) },
  },
});

const boxIds = ({ asFound }: Project) => Object.keys(asFound.enclosures) as EnclosureId[];

/** Everything drawn of a box, where it stands. */
function areaOf(project: Project, id: EnclosureId): Rect {
  const at = project.layout.enclosures[id] ?? { x: 0, y: 0 };
  const { bounds } = boxDrawing(project, project.asFound, id);
  return { ...bounds, x: bounds.x + at.x, y: bounds.y + at.y };
}

/** Pairs of boxes whose drawings lie on each other, one of them of the circuit. */
function overlaps(project: Project, ids: readonly EnclosureId[]): readonly string[] {
  const areas = boxIds(project).map((id) => ({ id, rect: areaOf(project, id) }));
  return ids.flatMap((id) => {
    const one = areaOf(project, id);
    return areas.flatMap(({ id: other, rect }) =>
      id !== other &&
      one.x < rect.x + rect.width &&
      rect.x < one.x + one.width &&
      one.y < rect.y + rect.height &&
      rect.y < one.y + one.height
        ? [`${id} on ${other}`]
        : [],
    );
  });
}

/** Boxes thrown about, on top of each other too. */
const scattered = (project: Project, places: readonly Point[]): Project =>
  moved(
    project,
    boxIds(project).map((id, index) => ({ id, to: places[index % places.length] ?? { x: 0, y: 0 } })),
  );

const layOutCircuit = (...args: Parameters<typeof inSteps.layOutCircuit>) => allAtOnce(inSteps.layOutCircuit(...args));

const names = readdirSync(SAMPLES).filter((name) => name.endsWith(".loadside"));

describe.each(names)("%s", (name) => {
  const project = sample(name);

  test("each circuit is laid out clear of everything, and nothing else moves", () => {
    const done = new Set<string>();
    for (const start of boxIds(project)) {
      const { boxes, panels } = circuitOf(project.asFound, start);
      const circuit = [start === panels[0], ...boxes].join(" ");
      if (done.has(circuit)) continue;
      done.add(circuit);
      const moves = layOutCircuit(project, project.asFound, start);
      expect(moves.filter(({ id }) => !boxes.includes(id))).toEqual([]);
      const after = moved(project, moves);
      expect(overlaps(after, boxes)).toEqual([]);
      expect(layOutCircuit(after, project.asFound, start)).toEqual([]);
    }
  });
});

describe("a building of two panels", () => {
  const house = bigHouse(42, 1);

  test("a panel keeps its place, and what it feeds stands to the right of it", () => {
    const panel = "p0" as EnclosureId;
    const start = scattered(house, [
      { x: 0, y: 0 },
      { x: 704, y: -304 },
      { x: -896, y: 64 },
    ]);
    const moves = layOutCircuit(start, start.asFound, panel);
    expect(moves.map(({ id }) => id)).not.toContain(panel);
    const after = moved(start, moves);
    const edge = areaOf(after, panel);
    for (const { id } of moves) expect(areaOf(after, id).x).toBeGreaterThan(edge.x + edge.width);
    expect(moves.every(({ to }) => Number.isInteger(to.x / 16) && Number.isInteger(to.y / 16))).toBe(true);
  });

  test("boxes that hang on one panel stand in the order of its cables, a room together", () => {
    const panel = "p1" as EnclosureId;
    const { boxes } = circuitOf(house.asFound, panel);
    expect(boxes).toHaveLength(2);
    const three = bigHouse(4, 1);
    const [a, b, c, d] = ["b0", "b1", "b2", "b3"];
    const roomOf: Record<string, string> = { b0: "r1", b1: "r2", b2: "r1", b3: "r2" };
    const enclosures = Object.fromEntries(
      Object.entries(three.asFound.enclosures).map(([id, box]) => [id, { ...box, roomId: roomOf[id] }]),
    );
    const project = { ...three, asFound: { ...three.asFound, enclosures } } as Project;
    const after = moved(project, layOutCircuit(project, project.asFound, "p0" as EnclosureId));
    const order = [a, b, c, d].sort(
      (p, q) =>
        (after.layout.enclosures[p as EnclosureId]?.y ?? 0) - (after.layout.enclosures[q as EnclosureId]?.y ?? 0),
    );
    expect(order).toEqual([a, c, b, d]);
  });

  test("pinned boxes of a circuit stay where they are", () => {
    const pinned = { ...house, layout: { ...house.layout, pinned: { ["b3" as EnclosureId]: true as const } } };
    const moves = layOutCircuit(pinned, pinned.asFound, "p0" as EnclosureId).map(({ id }) => id);
    expect(moves).not.toContain("b3");
    expect(layOutCircuit(house, house.asFound, "p0" as EnclosureId).map(({ id }) => id)).toContain("b3");
  });
});
