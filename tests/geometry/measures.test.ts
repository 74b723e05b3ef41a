/**
 * How well boxes are drawn inside, as figures over everything that is drawn by somebody: samples, golden jobs, and random
 * boxes that nobody would wire so. Faults are counted by a finder that walks the lines, crossings by the walker below; the
 * bounds stand a little over what was measured, so that a change for the worse shows.
 */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { Point, Project } from "../../shared-model/model/project.ts";
import { goldenDrawings } from "../golden/index.ts";
import { faultsOf } from "./drawing-faults.ts";
import { boxSpec, buildBox, HERE } from "./random-box.ts";

interface Drawn {
  readonly name: string;
  readonly box: Enclosure;
  readonly drawing: BoxDrawing;
}

const drawnIn = (name: string, project: Project): readonly Drawn[] =>
  [project.asFound, project.proposed].flatMap((installation) =>
    Object.values(installation?.enclosures ?? {}).map((box) => ({
      name: `${name} ${box.name}`,
      box,
      drawing: boxDrawing(project, installation ?? project.asFound, box.id),
    })),
  );

const SAMPLES = new URL("../../assets/samples/", import.meta.url);

function samples(): readonly Drawn[] {
  const names = readdirSync(SAMPLES).filter((name) => name.endsWith(".loadside"));
  return names.flatMap((name) => {
    const parsed = parseProject(readFileSync(new URL(name, SAMPLES), "utf8"));
    if (!parsed.ok) throw new Error(parsed.problems.map((one) => one.message).join("\n"));
    return drawnIn(name, parsed.value.project);
  });
}

const golden = (): readonly Drawn[] => [...goldenDrawings].flatMap(([name, draw]) => drawnIn(name, draw()));

/** The same three hundred, whatever the run explores. */
const random = (): readonly Drawn[] =>
  fc
    .sample(boxSpec({ cables: 6, devices: 3 }), { numRuns: 300, seed: 7 })
    .flatMap((spec, i) => drawnIn(`random ${i}`, buildBox(spec)).filter(({ box }) => box.id === HERE));

/** Where level and upright stretches of two conductors cross; of two grounds nobody minds. */
function crossingsOf({ conductors }: BoxDrawing): { readonly all: number; readonly insulated: number } {
  const legs = conductors.flatMap((conductor) =>
    conductor.points.slice(1).map((b, i) => ({ conductor, a: conductor.points[i] ?? b, b })),
  );
  let [all, insulated] = [0, 0];
  const within = (value: number, p: number, q: number): boolean => value > Math.min(p, q) && value < Math.max(p, q);
  for (const level of legs) {
    if (level.a.y !== level.b.y || level.a.x === level.b.x) continue;
    for (const upright of legs) {
      if (upright.a.x !== upright.b.x || upright.conductor === level.conductor) continue;
      if (!within(upright.a.x, level.a.x, level.b.x) || !within(level.a.y, upright.a.y, upright.b.y)) continue;
      all += 1;
      if (!level.conductor.grounding && !upright.conductor.grounding) insulated += 1;
    }
  }
  return { all, insulated };
}

const bendsOf = (points: readonly Point[]): number => Math.max(0, points.length - 2);

function measure(all: readonly Drawn[]) {
  let [conductors, bends, crossings, insulated] = [0, 0, 0, 0];
  let worst = { name: "", insulated: 0, conductors: 0 };
  for (const { name, drawing } of all) {
    const here = crossingsOf(drawing);
    const count = drawing.conductors.length;
    conductors += count;
    crossings += here.all;
    insulated += here.insulated;
    for (const { points } of drawing.conductors) bends += bendsOf(points);
    if (here.insulated > worst.insulated) worst = { name, insulated: here.insulated, conductors: count };
  }
  return {
    boxes: all.length,
    conductors,
    faults: all.flatMap(({ name, box, drawing }) => faultsOf(drawing, box).map((fault) => `${name}: ${fault}`)),
    crossings: crossings / conductors,
    insulated: insulated / conductors,
    bends: bends / conductors,
    worst,
  };
}

describe.each([
  // The worst is the panel of thirty circuits of "wrong on purpose": its hots, neutrals and grounds each cross the others'.
  { kind: "samples", make: samples, least: 150, crossings: 1.02, insulated: 0.45, bends: 3.4, worst: 300 },
  { kind: "golden jobs", make: golden, least: 400, crossings: 0.32, insulated: 0.15, bends: 3.4, worst: 10 },
  { kind: "random boxes", make: random, least: 300, crossings: 1.42, insulated: 0.79, bends: 3.95, worst: 92 },
])("$kind", ({ make, least, ...most }) => {
  test("nothing runs through a body, lies on words or on something else, and conductors seldom cross", () => {
    const found = measure(make());
    expect(found.boxes).toBeGreaterThanOrEqual(least);
    expect(found.faults).toEqual([]);
    expect(found.crossings).toBeLessThan(most.crossings);
    expect(found.insulated).toBeLessThan(most.insulated);
    expect(found.bends).toBeLessThan(most.bends);
    expect(found.worst.insulated).toBeLessThanOrEqual(most.worst);
  });
});
