import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { type DocumentState, installationOf } from "../state/document-store.ts";
import { type DrawingPicture, FIELD, NAME_LENGTH, type PictureBox } from "../state/drawing-picture.ts";
import { placesOf } from "../state/sheet-places.ts";
import { stepAt } from "./detail.ts";
import { drawingOf, knownDrawingOf } from "./drawings.ts";
import { createRoads } from "./sheet-roads.ts";

/** A picture is at most about so wide where it is shown, in pixels. */
const SHOWN = 390;
/** Of a building with more boxes only what is drawn already is shown, and no cables. */
const MOST_BOXES = 200;

/** The sheet as a small picture; undefined where nothing is drawn. */
export function pictureOf(document: DocumentState): DrawingPicture | undefined {
  const { enclosures } = installationOf(document);
  const ids = Object.keys(enclosures) as EnclosureId[];
  const large = ids.length > MOST_BOXES;
  const places = placesOf(document);
  const drawings = new Map<EnclosureId, BoxDrawing>();
  for (const id of ids) {
    const drawing = large ? knownDrawingOf(document, id) : drawingOf(document, id);
    if (drawing !== undefined && places[id] !== undefined) drawings.set(id, drawing);
  }
  const standing = [...drawings].map(([id, drawing]) => ({ drawing, ...(places[id] ?? { x: 0, y: 0 }) }));
  if (standing.length === 0) return undefined;
  const wide = extent(standing.flatMap(({ x, drawing }) => [x, x + drawing.width]));
  const map = large
    ? undefined
    : createRoads()({ document, drawings, missing: 0 }, Math.max(1, stepAt(SHOWN / wide.size)));
  const roads = map?.roads.map(({ points }) => points) ?? [];
  const across = extent([...standing.flatMap(({ x, drawing }) => [x, x + drawing.width]), ...xs(roads)]);
  const down = extent([...standing.flatMap(({ y, drawing }) => [y, y + drawing.height]), ...ys(roads)]);
  const scale = FIELD / Math.max(across.size, down.size);
  const x = (value: number): number => Math.round((value - across.from) * scale);
  const y = (value: number): number => Math.round((value - down.from) * scale);
  return {
    state: document.state,
    count: Object.values(enclosures).filter(({ kind }) => kind === "box").length,
    width: Math.max(1, x(across.from + across.size)),
    height: Math.max(1, y(down.from + down.size)),
    boxes: standing.map(({ drawing, ...at }): PictureBox => {
      const glyph = glyphOf(drawing);
      return {
        at: [x(at.x), y(at.y), Math.round(drawing.width * scale), Math.round(drawing.height * scale)],
        name: drawing.header.name.slice(0, NAME_LENGTH),
        ...(glyph !== undefined && { glyph }),
      };
    }),
    roads: roads.map((points) => points.flatMap((point) => [x(point.x), y(point.y)])),
  };
}

interface Extent {
  readonly from: number;
  readonly size: number;
}

function extent(values: readonly number[]): Extent {
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    from = Math.min(from, value);
    to = Math.max(to, value);
  }
  return { from, size: Math.max(1, to - from) };
}

type Roads = readonly (readonly { readonly x: number; readonly y: number }[])[];

const xs = (roads: Roads): readonly number[] => roads.flatMap((points) => points.map(({ x }) => x));
const ys = (roads: Roads): readonly number[] => roads.flatMap((points) => points.map(({ y }) => y));

/** The sign that tells most: the panel itself, else the first device. */
const glyphOf = ({ kind, devices }: BoxDrawing): string | undefined =>
  kind === "panel" ? "panel" : devices.find(({ family }) => !family.endsWith("-bar"))?.glyph;
