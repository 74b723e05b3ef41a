import type { FillLedger } from "../../answers/fill.ts";
import type { BoxDrawing, Wall } from "../../geometry/box-drawing.ts";
import { feetPath } from "../../geometry/feet-path.ts";
import { linePath } from "../../geometry/line-path.ts";
import { WALL } from "../../geometry/metrics.ts";
import { type MiddleBox, type MiddleDevice, middleBox } from "../../geometry/middle-box.ts";
import type { Crossings } from "../../geometry/roads/crossings.ts";
import { roadLabel } from "../../geometry/roads/road-label.ts";
import type { Road } from "../../geometry/roads/road-map.ts";
import type { Point } from "../../model/project.ts";
import { formatVolume, toDecimal } from "../../units/volume.ts";
import type { Mark } from "../display-list.ts";
import { ofFigures, ofVolume, spliceCount } from "../draw/draw-words.ts";
import { glyphMarks } from "../draw/glyph.ts";
import { offAxis } from "../draw/off-axis.ts";
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
const TAB = { width: 7, height: 21 } as const;

/** A cable as a road, with feet on its side where it lies on LOAD. */
export function roadMarks(points: readonly Point[], road: number, unit: number, isGuarded: boolean): readonly Mark[] {
  const d = offAxis(linePath(points, road * 0.9 + 5 * unit));
  if (d === "") return [];
  const feet = isGuarded ? feetPath(points, road / 2, 5 * unit, road, 7 * unit) : "";
  return [
    path(d, { stroke: { ink: PAPER, width: road + 5 * unit } }),
    path(d, { stroke: { ink: INK, width: road + unit } }),
    path(d, { stroke: { ink: PAPER, width: road - unit } }),
    ...(feet === "" ? [] : [path(feet, { stroke: { ink: INK, width: unit } })]),
  ];
}

/** Between a name alone and the next bend, in pixels: paper cannot be looked at closer, so that no cable is without one. */
const TIGHT = 2;

/**
 * Its name, size and length, on the stretch of its way that is shown and that no other cable crosses; where there is none,
 * its name on paper of its own.
 */
export function roadWords(
  { sheath }: Road,
  shown: readonly Point[],
  road: number,
  unit: number,
  crossed: Crossings,
): readonly Mark[] {
  const size = LETTERS * unit;
  const alone = { name: sheath.name, sizeText: "", lengthText: "" };
  const free = roadLabel(shown, sheath, size, unit, crossed) ?? roadLabel(shown, alone, size, unit, crossed, TIGHT);
  const label = free ?? roadLabel(shown, alone, size, unit, undefined, TIGHT);
  return label === undefined ? [] : labelMarks(label, road, unit, size, free === undefined);
}

function labelMarks(
  { at, upright, name, rest, long }: NonNullable<ReturnType<typeof roadLabel>>,
  road: number,
  unit: number,
  size: number,
  isOver: boolean,
): readonly Mark[] {
  const half = long / 2 + 3 * unit;
  // On a wide way its own outline stays beside the words.
  const isNarrow = road < 14 * unit;
  const high = isNarrow ? 7.5 * unit : road / 2 - unit;
  const plate = upright
    ? { x: at.x - high, y: at.y - half, width: 2 * high, height: 2 * half }
    : { x: at.x - half, y: at.y - high, width: 2 * half, height: 2 * high };
  const nameLong = measure(name, size, 700);
  const common = { size, ...(upright && { turn: -90 as const }) };
  const on = (along: number) =>
    upright
      ? ([at.x + 4.2 * unit, at.y + long / 2 - along] as const)
      : ([at.x - long / 2 + along, at.y + 4.2 * unit] as const);
  return [
    ...(isOver || isNarrow ? [rect(plate, { fill: PAPER })] : []),
    text(name, ...on(0), { ...common, weight: 700 }),
    ...(rest === "" ? [] : [text(rest, ...on(nameLong + 5 * unit), common)]),
  ];
}

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
    // Beyond its corner stands the sign.
    ...nameMarks(
      header.name,
      note,
      beside(middle, "top", unit),
      width + WALL + (marked ? -SIGN_ROOM * unit : room.over),
      unit,
    ),
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

function nameMarks(name: string, note: string, from: number, to: number, unit: number): readonly Mark[] {
  const y = -WALL - 7 * unit;
  const size = NAME * unit;
  const noteAt = from + measure(name, size, 700) + 6 * unit;
  const fitted = cutToFit(note, to - noteAt, { size: NOTE * unit });
  return [
    text(name, from, y, { size, weight: 700 }),
    ...(fitted.length > 3 ? [text(fitted, noteAt, y, { size: NOTE * unit, ink: SECOND_INK })] : []),
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
