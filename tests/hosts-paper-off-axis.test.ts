/** Conductors and cables are drawn wide and then narrower: both of their edges must be left, whatever shows the page. */
import { expect, test } from "vitest";
import { pdfOf } from "../shared-model/hosts/paper.ts";
import type { Page } from "../shared-model/sheets/display-list.ts";
import { offAxis } from "../shared-model/sheets/draw/off-axis.ts";
import { strandMarks } from "../shared-model/sheets/draw/strand.ts";
import { roadMarks } from "../shared-model/sheets/drawing/road-marks.ts";
import { group } from "../shared-model/sheets/marks.ts";
import { FACE } from "./sheets/face-files.ts";
import { HAS_POPPLER, pictureOfPdf } from "./sheets/read-pdf.ts";

test("what is level or upright all along is set a trace askew, and nothing else is touched", () => {
  expect(offAxis("M10 20L90 20")).toBe("M10 20L90 20.02");
  expect(offAxis("M10 20L10 90")).toBe("M10 20L10.02 90");
  expect(offAxis("M10 20L50 20L90 20")).toBe("M10 20L50 20L90 20.02");
  for (const d of ["", "M10 20", "M10 20L90 30", "M10 20L80 20A9 9 0 0 1 89 29L89 60"]) expect(offAxis(d)).toBe(d);
});

/** As conductors are on a card, and cables on a drawing. */
const [CARD, DRAWING] = [0.2, 0.05];
const LINES = 24;
const pages: readonly Page[] = [
  {
    sheet: "drawing",
    title: "Lines",
    width: 100,
    height: 100,
    margin: 0,
    marks: Array.from({ length: LINES }, (_, i) =>
      // Every line lies otherwise on the points of the picture.
      group(
        i % 2 === 0
          ? strandMarks("M0 0L400 0", "white")
          : roadMarks(
              [
                { x: 0, y: 0 },
                { x: 1600, y: 0 },
              ],
              40,
              4,
              false,
            ),
        { shift: { x: 10, y: 4 + i * 3.937 }, scale: i % 2 === 0 ? CARD : DRAWING },
      ),
    ),
  },
];

test.skipIf(!HAS_POPPLER).each([96, 120])("at %i dpi a level conductor and cable have two edges", async (dpi) => {
  const picture = pictureOfPdf(await pdfOf(pages, { title: "Lines", date: "2026-05-04", face: FACE }), dpi);
  const column = Math.round((50 / 25.4) * dpi);
  for (let i = 0; i < LINES; i += 1) {
    const middle = ((4 + i * 3.937) / 25.4) * dpi;
    const reach = Math.ceil((1.6 / 25.4) * dpi);
    const greys = Array.from({ length: 2 * reach }, (_, n) => picture.at(column, Math.floor(middle) - reach + n));
    const half = reach;
    const [above, below] = [greys.slice(0, half + 1), greys.slice(half)];
    expect(Math.min(...above), `upper edge of line ${i}`).toBeLessThan(215);
    expect(Math.min(...below), `lower edge of line ${i}`).toBeLessThan(215);
    expect(Math.max(...greys.slice(half - 1, half + 2)), `inside of line ${i}`).toBeGreaterThan(
      Math.min(...greys) + 30,
    );
  }
});
