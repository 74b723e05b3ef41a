import { bandLegs } from "../../geometry/band-legs.ts";
import type { ConductorDrawing } from "../../geometry/box-drawing.ts";
import { CONDUCTOR_MARKS } from "../../geometry/conductor-marks.ts";
import { linePath } from "../../geometry/line-path.ts";
import type { Colour } from "../../units/colour.ts";
import type { Ink, Mark } from "../display-list.ts";
import { path } from "../marks.ts";
import { INK, PAPER } from "../page/inks.ts";
import { offAxis } from "./off-axis.ts";

/** Widths in drawing units, as on the screen. */
const CASING = 7;
const CORE = 4.6;
const HALO = 13.4;
const GREY: Ink = "#bbbbbb";

/** Cores that are dark on paper; the mark of a dark one is white. */
const DARK: ReadonlySet<Colour> = new Set<Colour>(["black", "red", "blue", "brown", "violet"]);

const coreInk = (colour: Colour): Ink => (colour === "grey" ? GREY : DARK.has(colour) ? INK : PAPER);

/** Casing, core and mark of one conductor along a path, in one ink. */
export function strandMarks(way: string, colour: Colour): readonly Mark[] {
  const d = offAxis(way);
  const mark = CONDUCTOR_MARKS[colour];
  return [
    path(d, { stroke: { ink: INK, width: CASING } }),
    ...(colour === "black" ? [] : [path(d, { stroke: { ink: coreInk(colour), width: CORE } })]),
    ...(mark === undefined
      ? []
      : [
          path(d, {
            stroke: {
              ink: DARK.has(colour) ? PAPER : INK,
              width: mark.width,
              ...(mark.dash !== undefined && { dash: mark.dash }),
              ...(mark.round && { cap: "round" as const }),
            },
          }),
        ]),
  ];
}

/** One conductor: its halo of paper, which makes a crossing read as a bridge, the strand, and bands where it is re-identified. */
export function conductorMarks(conductor: ConductorDrawing): readonly Mark[] {
  const { points, fanPoints, fanPointsEnd = 0, colour, markedAs, grips } = conductor;
  const d = linePath(points);
  const bare = points.slice(
    Math.max(0, fanPoints - 1),
    fanPointsEnd > 1 ? points.length - fanPointsEnd + 1 : undefined,
  );
  const halo = linePath(bare);
  return [
    ...(halo === "" ? [] : [path(halo, { stroke: { ink: PAPER, width: HALO } })]),
    ...strandMarks(d, colour),
    ...markedAs.flatMap((mark, i) => {
      const at = grips[i];
      const legs = mark === undefined || at === undefined ? undefined : bandLegs(conductor, at);
      if (mark === undefined || legs === undefined) return [];
      const bands = offAxis(legs.map((leg) => linePath(leg)).join(""));
      return [
        path(bands, { stroke: { ink: INK, width: CASING + 3 } }),
        path(bands, { stroke: { ink: coreInk(mark), width: CASING + 1 } }),
      ];
    }),
  ];
}
