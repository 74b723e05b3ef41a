import type { FillLedger } from "../../answers/fill.ts";
import type { BoxDrawing, Wall } from "../../geometry/box-drawing.ts";
import { WALL } from "../../geometry/metrics.ts";
import { type MiddleBox, type MiddleDevice, middleBox } from "../../geometry/middle-box.ts";
import { formatVolume, toDecimal } from "../../units/volume.ts";
import type { Mark } from "../display-list.ts";
import { ofFigures, ofVolume, spliceCount } from "../draw/draw-words.ts";
import { glyphMarks } from "../draw/glyph.ts";
import { path, rect, text } from "../marks.ts";
import { INK, PAPER, SECOND_INK } from "../page/inks.ts";
import { cutToFit, measure } from "../page/measure.ts";
import type { RoomBeside } from "./room-beside.ts";

/** In pixels: what is read keeps its size on paper, however small the drawing is. */
const NAME = 15;
const NOTE = 12;
const FIGURES = 11.5;
const LETTERS = 12;
/** What the sign over the upper right corner keeps free. */
const SIGN_ROOM = 24;
/** And beyond the corner, to the words that stand past it. */
const PAST_SIGN = 5;
const TAB = { width: 7, height: 21 } as const;

export interface MiddleLooks {
  /** Drawing units of a pixel. */
  readonly unit: number;
  /** A sign stands over its upper right corner. */
  readonly marked: boolean;
  /** Drawing units that are free under its wall. */
  readonly below: number;
  /** And beyond its right wall, where its words may run on. */
  readonly beside: RoomBeside;
}

/** A box from middle distance: name, devices in their gangs, tabs where cables enter, how full it is. */
export function middleMarks(
  drawing: BoxDrawing,
  note: string,
  ledger: FillLedger | undefined,
  { unit, marked, below, beside: room }: MiddleLooks,
): readonly Mark[] {
  const { width, height, kind, header } = drawing;
  const middle = middleBox(drawing, unit);
  const line = { ink: INK, width: unit } as const;
  const outer = { x: -WALL, y: -WALL, width: width + 2 * WALL, height: height + 2 * WALL };
  return [
    rect(outer, { fill: PAPER, stroke: { ink: INK, width: 1.7 * unit } }, 2 * unit),
    ...(width > 20 * unit
      ? [
          rect(
            { x: 2.5 * unit, y: 2.5 * unit, width: width - 5 * unit, height: height - 5 * unit },
            { stroke: { ink: SECOND_INK, width: 0.6 * unit } },
            unit,
          ),
        ]
      : []),
    ...middle.freeSlots.map(({ at }) => rect(at, { stroke: { ...line, dash: [4 * unit, 3 * unit] } }, unit)),
    ...middle.devices.flatMap((device) => deviceMarks(device, unit, kind === "panel")),
    ...splicesMarks(middle, drawing.splices.length, unit),
    ...middle.tabs.map(({ at, wall, out }) => tabMark(at, wall, out, unit)),
    ...nameMarks(header.name, note, beside(middle, "top", unit), unit, {
      to: width + WALL + (marked ? -SIGN_ROOM * unit : room.over),
      // At the corner stands the sign.
      beyond: marked ? { from: width + WALL + PAST_SIGN * unit, room: room.over - PAST_SIGN * unit } : undefined,
    }),
    ...(ledger === undefined
      ? []
      : fillMarks(ledger, beside(middle, "bottom", unit), width, height + WALL, unit, { below, beside: room.under })),
  ];
}

const beside = ({ tabs }: MiddleBox, wall: Wall, unit: number): number =>
  Math.max(-WALL, ...tabs.filter((tab) => tab.wall === wall).map(({ at }) => at.x + (TAB.height / 2 + 4) * unit));

function tabMark(at: { readonly x: number; readonly y: number }, wall: Wall, out: 1 | -1, unit: number): Mark {
  const isUpright = wall === "top" || wall === "bottom";
  const [long, high] = isUpright ? [TAB.height, TAB.width] : [TAB.width, TAB.height];
  const shift = (out * unit) / 2;
  const x = at.x - (long * unit) / 2 - (isUpright ? 0 : shift);
  const y = at.y - (high * unit) / 2 - (isUpright ? shift : 0);
  return rect({ x, y, width: long * unit, height: high * unit }, { fill: INK }, unit);
}

function deviceMarks(device: MiddleDevice, unit: number, isPanel: boolean): readonly Mark[] {
  const { plate, glyph, glyphSize, glyphAt, name, nameAt } = device;
  const size = LETTERS * unit;
  const fits = measure(name, size, 700) <= plate.width && plate.height >= size;
  return [
    rect(plate, { fill: PAPER, stroke: { ink: INK, width: unit } }, (isPanel ? 1 : 4) * unit),
    ...(glyphSize > 0 ? glyphMarks(glyph, glyphAt.x, glyphAt.y, glyphSize) : []),
    ...(fits
      ? [text(name, nameAt.x, isPanel ? nameAt.y + size * 0.35 : nameAt.y, { size, weight: 700, anchor: "middle" })]
      : []),
  ];
}

function splicesMarks({ splicesAt }: MiddleBox, count: number, unit: number): readonly Mark[] {
  if (splicesAt === undefined) return [];
  const { x, y } = splicesAt;
  const words = spliceCount(count);
  const size = FIGURES * unit;
  const left = x - (measure(words, size) + 12 * unit) / 2;
  return [
    rect(
      { x: left, y: y - 10 * unit, width: 6 * unit, height: 12 * unit },
      { stroke: { ink: INK, width: unit } },
      3 * unit,
    ),
    path(`M${left + 3 * unit} ${y - 7 * unit}v${6 * unit}`, { stroke: { ink: INK, width: 1.5 * unit } }),
    text(words, left + 12 * unit, y, { size }),
  ];
}

/** Where the words over a box may stand, in drawing units. */
interface NameRoom {
  readonly to: number;
  /** Past the sign at its corner. */
  readonly beyond: { readonly from: number; readonly room: number } | undefined;
}

function nameMarks(name: string, note: string, from: number, unit: number, { to, beyond }: NameRoom): readonly Mark[] {
  const y = -WALL - 7 * unit;
  const size = NAME * unit;
  const lettering = { size: NOTE * unit, ink: SECOND_INK };
  const noteAt = from + measure(name, size, 700) + 6 * unit;
  const fitted = cutToFit(note, to - noteAt, { size: NOTE * unit });
  const isPast = beyond !== undefined && fitted !== note && measure(note, NOTE * unit) <= beyond.room;
  return [
    text(name, from, y, { size, weight: 700 }),
    ...(isPast
      ? [text(note, beyond.from, y, lettering)]
      : fitted.length > 3
        ? [text(fitted, noteAt, y, lettering)]
        : []),
  ];
}

/** In pixels under a box: the name of the next one, and what a bar and its figures take over it, as on the screen. */
const NEXT_NAME = 24;
const BAR_ALONE = 12.5;
const WITH_FIGURES = 26;

/** Under the box: the frame is the box, the ink is what is in it; too much is hatched beyond the frame. */
function fillMarks(
  ledger: FillLedger,
  left: number,
  width: number,
  y: number,
  unit: number,
  free: { readonly below: number; readonly beside: number },
): readonly Mark[] {
  const { total, available, verdict } = ledger;
  const room = free.below / unit - NEXT_NAME;
  if (verdict === "not-applicable" || room < BAR_ALONE) return [];
  const ratio = available === undefined ? undefined : toDecimal(total) / Math.max(toDecimal(available), 0.0001);
  const long = width + WALL - left;
  const top = y + 6 * unit;
  const high = 4.5 * unit;
  const figures = [formatVolume(total), available === undefined ? undefined : formatVolume(available)] as const;
  const words = ofVolume(...figures);
  const size = FIGURES * unit;
  const most = long + free.beside;
  const shown = measure(words, size) <= most ? words : cutToFit(ofFigures(...figures), most, { size });
  const bar = { x: left, y: top, width: long, height: high };
  const ends = `M${left} ${top - 1.5 * unit}v${high + 3 * unit}M${left + long} ${top - 1.5 * unit}v${high + 3 * unit}`;
  const beyond = ratio === undefined || ratio <= 1 ? 0 : Math.max(6 * unit, Math.min(24 * unit, (ratio - 1) * long));
  return [
    ...(ratio === undefined
      ? [rect(bar, { stroke: { ink: INK, width: 0.8 * unit, dash: [4 * unit, 3 * unit] } })]
      : [
          rect({ ...bar, width: long * Math.min(1, ratio) }, { fill: INK }),
          path(ends, { stroke: { ink: INK, width: unit } }),
        ]),
    ...(beyond > 0
      ? [
          rect(
            { x: left + long, y: top, width: beyond, height: high },
            {
              stroke: { ink: INK, width: 0.7 * unit },
              hatch: { kind: "lines", ink: INK, gap: 2.4 * unit, width: 0.8 * unit },
            },
          ),
        ]
      : []),
    ...(room < WITH_FIGURES ? [] : [text(shown, left, top + 16 * unit, { size, tabular: true })]),
  ];
}
