import type { Severity } from "../../answers/finding.ts";
import type { Rect } from "../../geometry/box-drawing.ts";
import type { Upright } from "../../geometry/room-areas.ts";
import { SIGN_HALF } from "../../geometry/room-sign.ts";
import { symbolLegend } from "../../geometry/symbols/symbol-legend.ts";
import { USUAL_SET } from "../../model/symbol-set.ts";
import type { Mark, Page } from "../display-list.ts";
import { SEVERITY_WORDS } from "../lists/findings-words.ts";
import { severitySign } from "../lists/signs.ts";
import { group, pt, rect, text } from "../marks.ts";
import { type DrawingSheet, openDrawingSheet } from "../page/drawing-sheet.ts";
import { INK } from "../page/inks.ts";
import type { Orientation } from "../page/paper-sizes.ts";
import { textsOf } from "../text-boxes.ts";
import { DRAWING } from "./drawing-words.ts";
import { farMarks, farRoadMarks, symbolMarks } from "./far-marks.ts";
import { extentOf, type HouseScene, type Standing, sceneRoads } from "./house-scene.ts";
import {
  FAR_LOAD_ITEM,
  FAR_ROAD_ITEM,
  FILL_ITEM,
  type LegendItem,
  LOAD_ITEM,
  legendMarks,
  ROAD_ITEM,
} from "./legend-marks.ts";
import { middleMarks } from "./middle-marks.ts";
import { roadMarks } from "./road-marks.ts";
import { groundsOf, groundsOnWays, roadTexts } from "./road-texts.ts";
import { roomBeside } from "./room-beside.ts";
import { roomMarks } from "./room-marks.ts";
import { isOnLoad, ledgerOf, ratioOf, worstAt } from "./scene-answers.ts";
import { splitBoxes } from "./split-boxes.ts";

/** What a pixel of the screen is on paper, mm: letters of 12 become 6.8 points. */
const PIXEL = 0.2;
/** Millimetres for a drawing unit: the least at which devices can be told, and the most that paper is spent on. */
const LEAST = 0.022;
const MOST = 0.075;
/** Around boxes, in millimetres: their names, fill and the roads beside them. */
const AROUND = 11;
const LEGEND_GAP = 2;

/** The whole on one page where its devices can be told there; else a plan, and then the whole in parts. */
export function wholePages(scene: HouseScene): readonly Page[] {
  const whole = pageFor(scene, scene.boxes, DRAWING.whole, DRAWING.wholeNote, "middle");
  if (whole.scale >= LEAST) return [whole.page()];
  const parts = splitBoxes(scene.boxes, (boxes) => pageFor(scene, boxes, "", "", "middle").scale >= LEAST);
  const plan = pageFor(scene, scene.boxes, DRAWING.plan, DRAWING.planNote, "far");
  return [
    plan.page(parts),
    ...parts.map((boxes, i) =>
      pageFor(scene, boxes, DRAWING.part(i + 1, parts.length), DRAWING.wholeNote, "middle").page(),
    ),
  ];
}

interface PlannedPage {
  readonly scale: number;
  page(parts?: readonly (readonly Standing[])[]): Page;
}

function pageFor(
  scene: HouseScene,
  boxes: readonly Standing[],
  title: string,
  note: string,
  distance: "middle" | "far",
): PlannedPage {
  const bare = extentOf(boxes, 0);
  const around = distance === "far" ? 4 : AROUND;
  const items = legendItems(scene, boxes, distance);
  const tried = (["landscape", "portrait"] as const).map((orientation: Orientation) => {
    const sheet = openDrawingSheet(scene.input, {
      kind: "drawing",
      title,
      note,
      pageTitle: DRAWING.pageTitle(title),
      orientation,
    });
    const legend = legendMarks(items, sheet.area.width);
    const room = { ...sheet.area, height: sheet.area.height - legend.height - LEGEND_GAP };
    const scale = Math.min(MOST, (room.width - 2 * around) / bare.width, (room.height - 2 * around) / bare.height);
    return { sheet, legend, room, scale };
  });
  const best = tried.reduce((a, b) => (b.scale > a.scale * 1.15 ? b : a));
  return {
    scale: best.scale,
    page: (parts = []) => drawn(scene, boxes, distance, { ...best, around }, parts),
  };
}

interface Placement {
  readonly sheet: DrawingSheet;
  readonly legend: { readonly height: number; readonly marks: readonly Mark[] };
  readonly room: Rect;
  readonly scale: number;
  readonly around: number;
}

function drawn(
  scene: HouseScene,
  boxes: readonly Standing[],
  distance: "middle" | "far",
  { sheet, legend, room, scale, around }: Placement,
  parts: readonly (readonly Standing[])[],
): Page {
  const { input, installation } = scene;
  const unit = PIXEL / scale;
  const set = input.project.symbols ?? USUAL_SET;
  const { roads, scale: roadScale } = sceneRoads(scene, distance, unit);
  const extent = extentOf(boxes, around / scale);
  const shown = new Set(boxes.map(({ enclosure }) => enclosure.id));
  const seen = roads.filter(({ boxes: ends }) => ends.some((id) => shown.has(id)));
  const lines = seen.flatMap((road): readonly Mark[] => {
    const cable = installation.cables[road.cable];
    const guarded = cable !== undefined && isOnLoad(input, cable);
    if (distance === "far") return farRoadMarks(road, unit, guarded);
    return roadMarks(road.points, roadScale.road, unit, guarded);
  });
  // On the plan there are outlines of the parts.
  const rooms =
    distance === "far"
      ? []
      : roomMarks(scene, boxes, seen, {
          unit,
          road: roadScale.road,
          signs: boxes.flatMap(({ enclosure, rect: { x: left, y: top, width } }) =>
            worstAt(input, enclosure) === undefined ? [] : [uprightOfSign(left + width, top, unit)],
          ),
        });
  const surroundings = {
    boxes: scene.boxes.map(({ rect: outer }) => outer),
    ways: seen.map(({ points }) => points),
    wide: roadScale.road + unit,
    names: textsOf(rooms).map(({ box }) => box),
    extent,
    unit,
  };
  const bodies = boxes.flatMap((standing) => {
    const { enclosure, drawing, at, rect: outer } = standing;
    const worst = worstAt(input, enclosure);
    const ledger = ledgerOf(input, enclosure.id);
    const marks =
      distance === "far"
        ? farMarks(standing, set, ratioOf(ledger), unit, worst !== undefined)
        : [
            group(
              middleMarks(drawing, enclosure.note ?? "", ledger, {
                unit,
                marked: worst !== undefined,
                below: roomBelow(scene.boxes, outer),
                beside: roomBeside(outer, surroundings),
              }),
              { shift: at },
            ),
          ];
    return worst === undefined ? marks : [...marks, signAt(worst, outer, scale)];
  });
  const x = room.x + (room.width - extent.width * scale) / 2 - extent.x * scale;
  const y = room.y + (room.height - extent.height * scale) / 2 - extent.y * scale;
  const words =
    distance === "far" ? [] : roadTexts(scene, seen, shown, extent, roadScale.road, unit, [...rooms, ...bodies]);
  return sheet.page([
    group(
      [
        ...rooms,
        ...groundsOf([...bodies, ...words], unit),
        ...lines,
        ...(distance === "far" ? [] : groundsOnWays(bodies, surroundings.ways, surroundings.wide, unit)),
        ...bodies,
        ...words,
        ...parts.flatMap((part, i) => partMarks(part, i + 1, scale)),
      ],
      {
        shift: { x, y },
        scale,
        clip: extent,
      },
    ),
    group(legend.marks, { shift: { x: sheet.area.x, y: sheet.area.y + sheet.area.height - legend.height } }),
  ]);
}

/** Down to the next box that stands under it. */
const roomBelow = (boxes: readonly Standing[], { x, y, width, height }: Rect): number =>
  Math.min(
    Number.POSITIVE_INFINITY,
    ...boxes
      .filter(({ rect: other }) => other.y > y && other.x < x + width && other.x + other.width > x)
      .map(({ rect: other }) => other.y - y - height),
  );

/** The sign of the gravest finding over the upper right corner of a box, beside the way of the cables. */
const signAt = (severity: Severity, { x, y, width }: Rect, scale: number): Mark =>
  group(severitySign(severity).marks, { shift: { x: x + width - 2 / scale, y: y - 2.2 / scale }, scale: 1 / scale });

const uprightOfSign = (x: number, y: number, unit: number): Upright => ({
  x: x - SIGN_HALF * unit,
  from: y - 2 * SIGN_HALF * unit,
  to: y,
});

/** Outline of a part on the plan, with its number. */
function partMarks(part: readonly Standing[], number: number, scale: number): readonly Mark[] {
  const around = extentOf(part, 2 / scale);
  const size = pt(9) / scale;
  return [
    rect(around, { stroke: { ink: INK, width: 0.25 / scale, dash: [3 / scale, 1.2 / scale] } }),
    text(String(number), around.x + around.width - 1 / scale, around.y + around.height - 1 / scale, {
      size,
      weight: 700,
      anchor: "end",
    }),
  ];
}

function legendItems(
  { input, installation }: HouseScene,
  boxes: readonly Standing[],
  distance: "middle" | "far",
): readonly LegendItem[] {
  const shown = new Set<string>(boxes.map(({ enclosure }) => enclosure.id));
  const cables = Object.values(installation.cables).filter(({ sides }) =>
    [sides.a, sides.b].some((side) => "enclosure" in side && shown.has(side.enclosure)),
  );
  const isGuarded = cables.some((cable) => isOnLoad(input, cable));
  const worst = new Set(boxes.map(({ enclosure }) => worstAt(input, enclosure)));
  const signs = (["danger", "violation", "caution", "advice"] as const)
    .filter((severity) => worst.has(severity))
    .map((severity) => ({ marks: severitySign(severity).marks, words: SEVERITY_WORDS[severity] }));
  const lines = distance === "far" ? [FAR_ROAD_ITEM, FAR_LOAD_ITEM] : [ROAD_ITEM, LOAD_ITEM];
  const symbols =
    distance === "far"
      ? symbolLegend(installation, input.project.symbols ?? USUAL_SET).map(({ symbol, count }) => ({
          marks: symbolMarks(symbol, 0, 0, 5),
          words: `${symbol.name} (${count})`,
        }))
      : [];
  return [
    ...symbols,
    ...(cables.length === 0 ? [] : lines.slice(0, isGuarded ? 2 : 1)),
    ...(boxes.some(({ enclosure }) => enclosure.kind === "box") ? [FILL_ITEM] : []),
    ...signs,
  ];
}
