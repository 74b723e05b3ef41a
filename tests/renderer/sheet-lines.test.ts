/** Conductors that are pressed anywhere along their line, and places for what is held that cover nothing. */
import { readdirSync, readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { drawingOf } from "../../renderer/sheet/drawings.ts";
import { type LandingTarget, RADIUS, targetsOfEnd, UNDRAWN_RADIUS } from "../../renderer/sheet/landing-targets.ts";
import { LINE_REACH, lineAt } from "../../renderer/sheet/line-at.ts";
import { documentStore, openDocument, shownInstallation } from "../../renderer/state/document-store.ts";
import { landingChoices } from "../../renderer/state/landing-choices.ts";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import type { BoxDrawing, ConductorDrawing } from "../../shared-model/geometry/box-drawing.ts";
import type { EnclosureId, EndKey } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";

const SAMPLES = new URL("../../assets/samples/", import.meta.url);
const names = readdirSync(SAMPLES).filter((name) => name.endsWith(".loadside"));

function open(name: string): void {
  const parsed = parseProject(readFileSync(new URL(name, SAMPLES), "utf8"));
  if (!parsed.ok) throw new Error(parsed.problems.map((one) => one.message).join("\n"));
  openDocument({ project: parsed.value.project });
}

const drawings = (): readonly BoxDrawing[] =>
  (Object.keys(shownInstallation().enclosures) as EnclosureId[]).flatMap((id) => {
    const drawing = drawingOf(documentStore.get(), id);
    return drawing === undefined ? [] : [drawing];
  });

/** Points along a line, one drawing unit apart. */
function along({ points }: ConductorDrawing): readonly Point[] {
  return points.slice(1).flatMap((b, i) => {
    const a = points[i] ?? b;
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    return Array.from({ length: Math.ceil(long) }, (_, step) => ({
      x: a.x + ((b.x - a.x) * step) / long,
      y: a.y + ((b.y - a.y) * step) / long,
    }));
  });
}

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

describe.each(names)("%s", (name) => {
  beforeAll(() => open(name));

  test("a press beside a line is on that line wherever no other, and no code, is as near", () => {
    const wrong: string[] = [];
    let pressed = 0;
    for (const drawing of drawings().slice(0, 6)) {
      const lines = drawing.conductors.map((conductor) => ({ conductor, points: along(conductor) }));
      for (const { conductor, points } of lines) {
        const others = lines.flatMap((line) => (line.conductor === conductor ? [] : line.points));
        const plates = drawing.conductors.flatMap((each) => (each === conductor ? [] : each.plates));
        for (let i = 20; i < points.length; i += 61) {
          const at = points[i];
          if (at === undefined) continue;
          const press = { x: at.x + 3, y: at.y + 3 };
          const own = Math.min(...points.map((point) => apart(point, press)));
          if (others.some((point) => apart(point, press) < own + 1.5)) continue;
          if (plates.some((plate) => apart(plate.at, press) < 60)) continue;
          pressed += 1;
          if (lineAt(drawing, press)?.conductor !== conductor) wrong.push(`${conductor.ends[0]} at ${at.x} ${at.y}`);
        }
      }
    }
    expect(wrong).toEqual([]);
    expect(pressed).toBeGreaterThan(20);
  });

  test("a code plate belongs to its conductor, also where another runs beside it", () => {
    for (const drawing of drawings())
      for (const conductor of drawing.conductors)
        for (const plate of conductor.plates) expect(lineAt(drawing, plate.at)?.conductor).toBe(conductor);
  });

  test("signs at the places for any held end cover no other sign, hole, row or end", () => {
    const found: string[] = [];
    for (const drawing of drawings()) {
      const box = shownInstallation().enclosures[drawing.enclosure];
      for (const end of Object.keys(box?.places ?? {}) as EndKey[]) {
        const held = { enclosure: drawing.enclosure, end };
        const choices = landingChoices(shownInstallation(), documentStore.get().state, held);
        const targets = targetsOfEnd(drawing, { kind: "end", ...held }, choices, new Map(), "C1 BK");
        found.push(...touching(targets), ...covered(drawing, targets));
      }
    }
    expect([...new Set(found)]).toEqual([]);
  });
});

const radiusOf = ({ kind, undrawn }: LandingTarget): number => (undrawn ? UNDRAWN_RADIUS : RADIUS[kind]);

const touching = (targets: readonly LandingTarget[]): readonly string[] =>
  targets.flatMap((a, i) =>
    targets
      .slice(i + 1)
      .flatMap((b) => (apart(a.at, b.at) < radiusOf(a) + radiusOf(b) - 0.01 ? [`${a.key} on ${b.key}`] : [])),
  );

/** Things with a middle of their own that a sign lies on without being about them; half of a pitch is theirs. */
function covered(drawing: BoxDrawing, targets: readonly LandingTarget[]): readonly string[] {
  const things: readonly Point[] = [
    ...drawing.devices.flatMap(({ terminals }) => terminals.flatMap(({ holes }) => holes.map(({ at }) => at))),
    ...drawing.splices.flatMap(({ x, rows }) => rows.map(({ y }) => ({ x, y }))),
    ...drawing.caps.map(({ at }) => at),
  ];
  return targets.flatMap((target) =>
    things.flatMap((thing) => {
      const away = apart(target.at, thing);
      return away > 0.01 && away < radiusOf(target) + 3.9 ? [`${target.key} over ${thing.x} ${thing.y}`] : [];
    }),
  );
}

describe("the end that is meant", () => {
  const jumper = {
    kind: "jumper",
    ends: ["j.a", "j.b"],
    points: [
      { x: 0, y: 0 },
      { x: 100, y: 0 },
      { x: 100, y: 300 },
    ],
    plates: [],
  } as unknown as ConductorDrawing;
  const box = { conductors: [jumper] };

  test("of a jumper it is the nearer one along the way, not through the air", () => {
    expect(lineAt(box, { x: 100, y: 40 })?.end).toBe("j.a");
    expect(lineAt(box, { x: 100, y: 110 })?.end).toBe("j.b");
  });

  test("beyond its reach there is none", () => {
    expect(lineAt(box, { x: 50, y: LINE_REACH - 0.1 })?.conductor).toBe(jumper);
    expect(lineAt(box, { x: 50, y: LINE_REACH + 0.1 })).toBeUndefined();
    expect(lineAt(box, { x: -LINE_REACH - 0.1, y: 0 })).toBeUndefined();
  });
});
