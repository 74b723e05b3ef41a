/** Walls of plastic boxes are dotted: many dots, few marks. */
import { expect, test } from "vitest";
import { pdfOf } from "../shared-model/hosts/paper.ts";
import type { Installation, Project } from "../shared-model/model/project.ts";
import { makeUpCards } from "../shared-model/sheets/cards/make-up-card.ts";
import type { Hatch, Page } from "../shared-model/sheets/display-list.ts";
import { hatchStrokes } from "../shared-model/sheets/hatch-lines.ts";
import { rect } from "../shared-model/sheets/marks.ts";
import { readPath } from "../shared-model/sheets/path-data.ts";
import { svgOf } from "../shared-model/sheets/svg-writer.ts";
import { FACE } from "./sheets/face-files.ts";
import { HAS_POPPLER, pictureOfPdf } from "./sheets/read-pdf.ts";
import { inputOf, sampleProject } from "./sheets/sheet-inputs.ts";

const kitchen = sampleProject("kitchen-multiwire.loadside");

function cardOf(material: "metal" | "nonmetallic"): readonly Page[] {
  const made = (state: Installation): Installation => ({
    ...state,
    enclosures: Object.fromEntries(
      Object.entries(state.enclosures).map(([id, box]) => [id, box.kind === "box" ? { ...box, material } : box]),
    ),
  });
  const project: Project = {
    ...kitchen,
    asFound: made(kitchen.asFound),
    ...(kitchen.proposed !== undefined && { proposed: made(kitchen.proposed) }),
  };
  return makeUpCards(inputOf(project, { state: "proposed", box: "BK1" }));
}

test("the card of a plastic box is about as large as that of a metal one", async () => {
  const [plastic, metal] = [cardOf("nonmetallic"), cardOf("metal")];
  const svg = (pages: readonly Page[]): number => pages.reduce((sum, page) => sum + svgOf(page).length, 0);
  expect(svg(plastic)).toBeLessThan(svg(metal) * 1.1);
  const about = { title: "A card", date: "2026-05-04", face: FACE };
  const [one, other] = [await pdfOf(plastic, about), await pdfOf(metal, about)];
  expect(one.length).toBeLessThan(other.length * 1.1);
});

const DOTS: Hatch = { kind: "dots", ink: "#000000", gap: 5, width: 1.6 };
/** Edges that lie between dots, so that no dot is cut or is there or not by a rounding. */
const BOX = { x: 3.4, y: 7.3, width: 41, height: 22 };

/** Where dots stand: a grid of `gap`, and one more in the middle of each of its squares. */
function dotsIn({ x, y, width, height }: typeof BOX): readonly (readonly [number, number])[] {
  const found: (readonly [number, number])[] = [];
  for (let row = 0; row <= 40; row += 1)
    for (let n = 0; n <= 40; n += 1) {
      const [dx, dy] = [n * 5 + (row % 2) * 2.5, row * 2.5];
      if (dx > x && dx < x + width && dy > y && dy < y + height) found.push([dx, dy]);
    }
  return found;
}

test("one line a row, its dashes on the grid of the dots", () => {
  const { d, stroke } = hatchStrokes(BOX, DOTS);
  expect(stroke.cap).toBe("round");
  const [speck = 1, gap = 0] = stroke.dash ?? [];
  // A writer of PDF takes no dash of naught.
  expect(speck).toBeGreaterThan(0);
  expect(speck + gap).toBeCloseTo(5, 9);
  let [x, y] = [0, 0];
  const dots: (readonly [number, number])[] = [];
  for (const { letter, numbers } of readPath(d)) {
    if (letter === "M") [x = 0, y = 0] = numbers;
    else for (let at = x; at < (numbers[0] ?? 0); at += 5) dots.push([at, y]);
  }
  expect(dots).toEqual(dotsIn(BOX));
});

test.skipIf(!HAS_POPPLER)("on paper the dots stand where they should, and nothing between them", async () => {
  const page: Page = {
    sheet: "drawing",
    title: "Dots",
    width: 60,
    height: 40,
    margin: 0,
    marks: [rect(BOX, { hatch: DOTS })],
  };
  const dpi = 254;
  const picture = pictureOfPdf(await pdfOf([page], { title: "Dots", date: "2026-05-04", face: FACE }), dpi);
  const greyAt = (x: number, y: number): number => picture.at(Math.round(x * 10), Math.round(y * 10));
  for (const [x, y] of dotsIn(BOX)) {
    expect(greyAt(x, y), `dot at ${x}, ${y}`).toBeLessThan(100);
    if (x + 2.5 < BOX.x + BOX.width) expect(greyAt(x + 2.5, y), `beside ${x}, ${y}`).toBeGreaterThan(200);
  }
});
