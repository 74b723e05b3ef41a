import type { Rect } from "../../geometry/box-drawing.ts";
import type { Colour } from "../../units/colour.ts";
import { COLOURS } from "../../units/colour.ts";
import { formatVolume } from "../../units/volume.ts";
import { breakersOf } from "../cards/card-facts.ts";
import type { Mark, Page } from "../display-list.ts";
import { ofVolume } from "../draw/draw-words.ts";
import { nearBoxMarks } from "../draw/near-box.ts";
import { boundsOfMarks } from "../mark-bounds.ts";
import { group } from "../marks.ts";
import { type DrawingSheet, openDrawingSheet } from "../page/drawing-sheet.ts";
import type { Orientation } from "../page/paper-sizes.ts";
import { overlap } from "../text-boxes.ts";
import { DRAWING } from "./drawing-words.ts";
import type { HouseScene, Standing } from "./house-scene.ts";
import { conductorItem, type LegendItem, LIMIT_ITEM, legendMarks } from "./legend-marks.ts";
import { ledgerOf, protectedElsewhere } from "./scene-answers.ts";

/** Millimetres for a drawing unit: as on the screen at 140 %, the least at which letters can be read, and in parts. */
const LARGEST = 0.37;
const SMALLEST = 0.14;
const IN_PARTS = 0.19;
/** What two parts share, mm. */
const SHARED = 8;

/** One box with every conductor, filling a page; one that cannot be read there, in parts that share an edge. */
export function nearPages({ input, installation }: HouseScene, { enclosure, drawing }: Standing): readonly Page[] {
  const ledger = ledgerOf(input, enclosure.id);
  const isBox = enclosure.kind === "box";
  const filled = ledger === undefined || ledger.verdict === "not-applicable" ? undefined : ledger;
  const breaker = breakersOf(input, installation, enclosure);
  const roles = input.shownRoles[enclosure.id];
  const marks = nearBoxMarks({
    drawing,
    roles,
    protects: (device) => protectedElsewhere(input, device),
    torn: () => true,
  });
  const bounds = boundsOfMarks(marks) ?? { x: 0, y: 0, width: 1, height: 1 };
  const used = new Set<Colour>(drawing.conductors.map(({ colour }) => colour));
  const items: readonly LegendItem[] = [
    ...COLOURS.filter((colour) => used.has(colour)).map(conductorItem),
    ...(roles?.behind === undefined ? [] : [LIMIT_ITEM]),
  ];
  const open = (orientation: Orientation, part: string | undefined): DrawingSheet =>
    openDrawingSheet(input, {
      kind: "drawing",
      title: enclosure.name,
      note: part === undefined ? drawing.header.note : `${part}; ${drawing.header.note}`,
      pageTitle: DRAWING.pageTitle(enclosure.name),
      orientation,
      cells: [
        ...(isBox ? [breaker] : []),
        ...(filled === undefined
          ? []
          : [
              {
                caption: DRAWING.fillCaption,
                value: ofVolume(
                  formatVolume(filled.total),
                  filled.available === undefined ? undefined : formatVolume(filled.available),
                ),
              },
            ]),
      ],
    });
  const orientation = bounds.width >= bounds.height ? "landscape" : "portrait";
  const one = roomOn(open(orientation, undefined), items);
  const scale = Math.min(LARGEST, one.room.width / bounds.width, one.room.height / bounds.height);
  if (scale >= SMALLEST) return [drawnOn(open(orientation, undefined), items, marks, bounds, scale)];
  const parts = partsOf(bounds, { width: one.room.width / IN_PARTS, height: one.room.height / IN_PARTS });
  return parts.map((part, i) =>
    drawnOn(open(orientation, DRAWING.part(i + 1, parts.length)), items, marks, part, IN_PARTS),
  );
}

interface Room {
  readonly room: Rect;
  readonly legend: ReturnType<typeof legendMarks>;
}

function roomOn({ area }: DrawingSheet, items: readonly LegendItem[]): Room {
  const legend = legendMarks(items, area.width);
  return { legend, room: { ...area, height: area.height - legend.height - 2 } };
}

/** A page with what lies in an area of a drawing, and nothing of what lies outside of it. */
function drawnOn(
  sheet: DrawingSheet,
  items: readonly LegendItem[],
  marks: readonly Mark[],
  part: Rect,
  scale: number,
): Page {
  const { room, legend } = roomOn(sheet, items);
  const x = room.x + (room.width - part.width * scale) / 2 - part.x * scale;
  const y = room.y + (room.height - part.height * scale) / 2 - part.y * scale;
  const seen = marks.filter((mark) => {
    const bounds = boundsOfMarks([mark]);
    return bounds !== undefined && overlap(bounds, part);
  });
  return sheet.page([
    group(seen, { shift: { x, y }, scale, clip: part }),
    group(legend.marks, { shift: { x: sheet.area.x, y: sheet.area.y + sheet.area.height - legend.height } }),
  ]);
}

/** An area in equal parts that share an edge, row by row, each at most as large as `most`. */
function partsOf(whole: Rect, most: { readonly width: number; readonly height: number }): readonly Rect[] {
  const shared = SHARED / IN_PARTS;
  const count = (long: number, limit: number): number => Math.max(1, Math.ceil((long - shared) / (limit - shared)));
  const [across, down] = [count(whole.width, most.width), count(whole.height, most.height)];
  const width = (whole.width + shared * (across - 1)) / across;
  const height = (whole.height + shared * (down - 1)) / down;
  return Array.from({ length: across * down }, (_, i) => ({
    x: whole.x + (i % across) * (width - shared),
    y: whole.y + Math.floor(i / across) * (height - shared),
    width,
    height,
  }));
}
