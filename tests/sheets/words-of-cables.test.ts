/** Words of cables and boxes on the printed drawing: paper cannot be looked at closer. */
import { describe, expect, test } from "vitest";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import type { Point, Project } from "../../shared-model/model/project.ts";
import { getInstallation } from "../../shared-model/queries/installation-of.ts";
import type { Mark, Page, TextMark } from "../../shared-model/sheets/display-list.ts";
import { drawingSheet } from "../../shared-model/sheets/drawing/drawing-sheet.ts";
import { houseScene, sceneRoads } from "../../shared-model/sheets/drawing/house-scene.ts";
import { textsOf } from "../../shared-model/sheets/text-boxes.ts";
import { inputOf, SAMPLE_FILES, sampleProject, statesOf } from "./sheet-inputs.ts";

/** Letters of cables on paper, in pixels: what a page is drawn at is read off them. */
const LETTERS = 12;

interface Drawn {
  readonly texts: readonly TextMark[];
  readonly all: readonly string[];
}

/** What stands in the part of a page that shows boxes, in the units of the drawing; none on a plan of symbols. */
function drawnOn({ marks }: Page): Drawn {
  const clipped = marks.find((mark) => mark.kind === "group" && mark.clip !== undefined);
  const inside = clipped?.kind === "group" ? clipped.marks : [];
  return {
    texts: inside.flatMap((mark) => (mark.kind === "text" ? [mark] : [])),
    all: textsOf(inside).map(({ text }) => text),
  };
}

const states = SAMPLE_FILES.flatMap((name) => statesOf(sampleProject(name)).map((state) => [name, state] as const));

const isUpright = (a: Point, b: Point): boolean => a.x === b.x;

/** Whether a leg lies over words that run the other way. */
function crosses(a: Point, b: Point, { x, y, width, height }: Rect, wordsUpright: boolean): boolean {
  if (isUpright(a, b) === wordsUpright) return false;
  const [at, from, to, first, last] = wordsUpright
    ? [a.y, y, y + height, Math.max(x, Math.min(a.x, b.x)), Math.min(x + width, Math.max(a.x, b.x))]
    : [a.x, x, x + width, Math.max(y, Math.min(a.y, b.y)), Math.min(y + height, Math.max(a.y, b.y))];
  // What leads past by less than the white around letters lies beside them.
  return at > from && at < to && last - first > Math.min(width, height) / 4;
}

function sizesUnderCables(project: Project, state: "as-found" | "proposed"): readonly string[] {
  const input = inputOf(project, { state });
  const scene = houseScene(input);
  const cables = new Map(Object.values(getInstallation(project, state).cables).map((cable) => [cable.name, cable.id]));
  return drawingSheet(input).flatMap((page) => {
    const { texts } = drawnOn(page);
    const name = texts.find(({ text, weight }) => weight === 700 && cables.has(text));
    if (name === undefined) return [];
    const { roads } = sceneRoads(scene, "middle", name.size / LETTERS);
    // Sizes and lengths, as "12/2  20 ft": the name before them may stand on paper of its own.
    return texts
      .filter(({ text, size }) => size === name.size && /^\d+\/\d/.test(text))
      .flatMap(({ text, box, turn }) =>
        roads
          .filter(({ points }) =>
            points.some((b, i) => i > 0 && crosses(points[i - 1] ?? b, b, box, turn !== undefined)),
          )
          .map(({ sheath }) => `${text} under ${sheath.name}`),
      );
  });
}

describe.each(states)("%s, %s", (file, state) => {
  const project = sampleProject(file);

  test("no size or length of a cable stands under another cable", () => {
    expect(sizesUnderCables(project, state)).toEqual([]);
  });

  test("every cable between two boxes of a page is named on it", () => {
    const { cables, enclosures } = getInstallation(project, state);
    const nameOf = (side: (typeof cables)[keyof typeof cables]["sides"]["a"]): string =>
      "enclosure" in side ? (enclosures[side.enclosure]?.name ?? "") : "";
    for (const page of drawingSheet(inputOf(project, { state }))) {
      const { all } = drawnOn(page);
      const here = new Set(all);
      if (!Object.values(cables).some(({ name }) => here.has(name))) continue;
      for (const { name, sides } of Object.values(cables))
        if (here.has(nameOf(sides.a)) && here.has(nameOf(sides.b))) expect([...here], name).toContain(name);
    }
  });
});

const wordsOn = (project: Project, state: "as-found" | "proposed"): readonly string[] =>
  drawingSheet(inputOf(project, { state })).flatMap((page) => drawnOn(page).all);

test("words at a box run on beyond its wall where nothing stands there", () => {
  const kitchen = wordsOn(sampleProject("kitchen-multiwire.loadside"), "proposed");
  expect(kitchen).toContain("counter, right");
  expect(kitchen.filter((words) => words.endsWith("…"))).toEqual([]);
});

test("words that the sign of a finding leaves no room stand past it, unless a cable lies there", () => {
  const bedroom = wordsOn(sampleProject("two-wire-bedroom.loadside"), "proposed");
  for (const words of ["at the door", "bed wall", "window"]) expect(bedroom).toContain(words);
  // The cable of 20E runs over 20B to 20D: what it would strike through is left out.
  const wrong = drawingSheet(inputOf(sampleProject("wrong-on-purpose.loadside")));
  const last = wrong[wrong.length - 1];
  if (last === undefined) throw new Error("No page.");
  expect(drawnOn(last).all).not.toContain("station 20");
});

test("how full a box is has its unit", () => {
  const figures = wordsOn(sampleProject("wrong-on-purpose.loadside"), "as-found").filter((words) =>
    /^[\d.]+ of [\d.]+/.test(words),
  );
  expect(figures.length).toBeGreaterThan(30);
  // Two boxes have a cable right beside them.
  expect(figures.filter((words) => !words.endsWith(" in³"))).toEqual(["25.3125 of 34", "11.25 of 20"]);
});

/** Marks in the order in which they are drawn, with those of groups that are only shifted in their place. */
function flat(marks: readonly Mark[], dx = 0, dy = 0): readonly (readonly [mark: Mark, dx: number, dy: number])[] {
  return marks.flatMap((mark) => {
    if (mark.kind !== "group") return [[mark, dx, dy] as const];
    const { x, y } = mark.shift ?? { x: 0, y: 0 };
    return mark.scale === undefined ? flat(mark.marks, dx + x, dy + y) : [];
  });
}

test("a name that a cable runs through has paper under it, over the cable", () => {
  const pages = drawingSheet(inputOf(sampleProject("wrong-on-purpose.loadside")));
  const page = pages[pages.length - 1];
  const clipped = page?.marks.find((mark) => mark.kind === "group" && mark.clip !== undefined);
  const marks = flat(clipped?.kind === "group" ? clipped.marks : []);
  const ways = marks.findLastIndex(([mark]) => mark.kind === "path" && (mark.stroke?.width ?? 0) > 20);
  for (const name of ["20C", "20D", "30C"]) {
    const [found, dx = 0, dy = 0] = marks.find(([mark]) => mark.kind === "text" && mark.text === name) ?? [];
    if (found?.kind !== "text") throw new Error(`No ${name}.`);
    const { x, y, width, height } = found.box;
    const isUnder = ([mark]: (typeof marks)[number]): boolean =>
      mark.kind === "rect" &&
      mark.x <= x + dx &&
      mark.y <= y + dy &&
      mark.x + mark.width >= x + dx + width &&
      mark.y + mark.height >= y + dy + height;
    expect(
      marks.slice(ways).some((each) => isUnder(each)),
      name,
    ).toBe(true);
  }
});
