import type { CableId, DeviceId, Side } from "../model/ids.ts";
import type { Point } from "../model/project.ts";
import type { BoxDrawing, Rect, Wall } from "./box-drawing.ts";
import { hull } from "./free-group-place.ts";
import { WALL } from "./metrics.ts";

/**
 * The drawing of a box from middle distance: the same walls at the same place as the near drawing, its devices where they
 * stand in their gangs, and a tab where each cable enters. What is read keeps its size on the screen, so it is given in
 * units of one pixel: `unit` drawing units.
 */
export interface MiddleBox {
  readonly tabs: readonly TabDrawing[];
  readonly devices: readonly MiddleDevice[];
  /** Breaker spaces of a panel with nothing in them. */
  readonly freeSlots: readonly { readonly slot: number; readonly at: Rect }[];
  /** Where the number of splices is written; absent where it has no room. */
  readonly splicesAt?: Point;
}

/** Where a cable enters, on the outer face of the wall. */
export interface TabDrawing {
  readonly cable: CableId;
  readonly side: Side;
  readonly at: Point;
  readonly wall: Wall;
  /** Which way the cable goes from it: -1 to the left or up, 1 to the right or down. */
  readonly out: 1 | -1;
}

export interface MiddleDevice {
  readonly device: DeviceId;
  readonly name: string;
  readonly glyph: string;
  readonly plate: Rect;
  /** 0 where the plate has room for the name alone. */
  readonly glyphSize: number;
  readonly glyphAt: Point;
  /** Baseline, in the middle. */
  readonly nameAt: Point;
}

/** In pixels: the plate of a device with glyph and id, and the letters of both. */
const PLATE = { width: 54, height: 72, gap: 5 } as const;
const GLYPH = 26;
const LETTERS = 12;
/** Between the middles of two tabs on a wall; less where the wall is short. */
const TAB_GAP = 24;
const TAB_MARGIN = 14;
/** At the right end of the upper wall stands the worst finding. */
const SIGN_ROOM = 12;

const isShown = ({ family }: BoxDrawing["devices"][number]): boolean =>
  family !== "neutral-bar" && family !== "ground-bar";

export function middleBox(drawing: BoxDrawing, unit: number): MiddleBox {
  const isPanel = drawing.kind === "panel";
  const shown = drawing.devices.filter(isShown);
  const placed = isPanel ? spacesOf(drawing, unit) : undefined;
  const devices = placed ? breakers(shown, placed) : gangs(drawing, shown, unit);
  const foot = drawing.height - 8 * unit;
  const lowest = Math.max(0, ...devices.map(({ plate }) => plate.y + plate.height));
  const splices = drawing.splices.length > 0 && foot - LETTERS * unit >= lowest;
  return {
    tabs: tabsOf(drawing, unit),
    devices,
    freeSlots: placed ? (drawing.freeSlots ?? []).map(({ slot, at }) => ({ slot, at: placed(at) })) : [],
    ...(splices && { splicesAt: { x: drawing.width / 2, y: foot } }),
  };
}

/** A pixel is this large where the near drawing begins. */
const NEAR_UNIT = 2;

/** Breakers in their spaces: the nearer, the closer to how they are drawn near; away, as large as the cabinet allows. */
function spacesOf(drawing: BoxDrawing, unit: number): (rect: Rect) => Rect {
  const rects = [
    ...drawing.devices.filter(isShown).map(({ body }) => body),
    ...(drawing.freeSlots ?? []).map(({ at }) => at),
  ];
  if (rects.length === 0) return (rect) => rect;
  const all = hull(rects);
  const margin = 8 * unit;
  const grown = Math.min(
    Math.max(1, unit / NEAR_UNIT),
    Math.max(1, (drawing.width - 2 * margin) / all.width),
    Math.max(1, (drawing.height - 2 * margin) / all.height),
  );
  const centred = (from: number, long: number, room: number): number =>
    within(from - (long * (grown - 1)) / 2, margin, Math.max(margin, room - margin - long * grown));
  const x = grown === 1 ? all.x : centred(all.x, all.width, drawing.width);
  const y = grown === 1 ? all.y : centred(all.y, all.height, drawing.height);
  return (rect) => ({
    x: x + (rect.x - all.x) * grown,
    y: y + (rect.y - all.y) * grown,
    width: rect.width * grown,
    height: rect.height * grown,
  });
}

const breakers = (devices: BoxDrawing["devices"], placed: (rect: Rect) => Rect): readonly MiddleDevice[] =>
  devices.map(({ device, name, glyph, body }) => {
    const plate = placed(body);
    const middle = { x: plate.x + plate.width / 2, y: plate.y + plate.height / 2 };
    return { device, name, glyph, plate, glyphSize: 0, glyphAt: middle, nameAt: middle };
  });

/** Devices side by side as near, each as wide as its letters need where the box has room for that. */
function gangs(drawing: BoxDrawing, devices: BoxDrawing["devices"], unit: number): readonly MiddleDevice[] {
  const order = [...devices].sort((a, b) => a.body.x - b.body.x || (a.device < b.device ? -1 : 1));
  const gap = PLATE.gap * unit;
  const most = { width: drawing.width / Math.max(1, order.length) - gap, height: drawing.height - 2 * gap };
  const widest = Math.max(0, ...order.map(({ body }) => body.width));
  const width = Math.min(Math.max(widest, PLATE.width * unit), most.width);
  const middles = spread(
    order.map(({ body }) => body.x + body.width / 2),
    width + gap,
    (width + gap) / 2,
    drawing.width - (width + gap) / 2,
  );
  return order.map(({ device, name, glyph, body }, i) => {
    const height = Math.min(Math.max(body.height, PLATE.height * unit), most.height);
    const x = (middles[i] ?? 0) - width / 2;
    const y = within(body.y + (body.height - height) / 2, gap, drawing.height - height - gap);
    const letters = (LETTERS + 8) * unit;
    const glyphSize = Math.min(GLYPH * unit * 1.15, width * 0.8, height - letters - 4 * unit);
    const shown = glyphSize >= 10 * unit ? glyphSize : 0;
    const middle = { x: x + width / 2, y: y + height / 2 };
    return {
      device,
      name,
      glyph,
      plate: { x, y, width, height },
      glyphSize: shown,
      glyphAt: { x: middle.x, y: middle.y - letters / 2 + 2 * unit },
      nameAt: { x: middle.x, y: shown === 0 ? middle.y + 4 * unit : middle.y + shown / 2 + letters / 2 - 2 * unit },
    };
  });
}

const within = (value: number, least: number, most: number): number => Math.max(least, Math.min(most, value));

/**
 * Where the cables enter, in the order of the near drawing and as close to it as they stand apart.
 * @param pixels Between the middles of two.
 */
export function tabsOf(drawing: BoxDrawing, unit: number, pixels = TAB_GAP): readonly TabDrawing[] {
  const margin = Math.min(pixels / 2 + 2, TAB_MARGIN) * unit;
  const on = (wall: Wall): readonly TabDrawing[] => {
    const upright = wall === "top" || wall === "bottom";
    const [along, long, across] = upright
      ? (["x", drawing.width, drawing.height] as const)
      : (["y", drawing.height, drawing.width] as const);
    const sheaths = drawing.sheaths.filter((sheath) => sheath.wall === wall).sort((a, b) => a.at[along] - b.at[along]);
    if (sheaths.length === 0) return [];
    const out = wall === "left" || wall === "top" ? -1 : 1;
    const edge = out < 0 ? -WALL : across + WALL;
    // A wall may be so short that its ends would leave nothing between them.
    const end = Math.min(upright ? margin + SIGN_ROOM * unit : margin, long / 4);
    const places = spread(
      sheaths.map(({ at }) => at[along]),
      pixels * unit,
      end,
      long - end,
    );
    return sheaths.map(({ cable, side }, i) => {
      const at = upright ? { x: places[i] ?? 0, y: edge } : { x: edge, y: places[i] ?? 0 };
      return { cable, side, wall, out, at };
    });
  };
  return [...on("left"), ...on("right"), ...on("top"), ...on("bottom")];
}

/**
 * Places as near as possible to the wanted ones, in the same order and at least `gap` apart, between two bounds; closer
 * together where there is no room for that.
 * @param wanted In rising order.
 */
export function spread(wanted: readonly number[], gap: number, least: number, most: number): readonly number[] {
  const apart = Math.min(gap, (most - least) / Math.max(1, wanted.length - 1));
  // Without the gaps the places only may not fall: neighbours that would are pooled at their mean.
  const pools: { sum: number; count: number }[] = [];
  wanted.forEach((at, i) => {
    pools.push({ sum: at - i * apart, count: 1 });
    for (let last = pools.length - 1; last > 0; last--) {
      const [before, now] = [pools[last - 1], pools[last]];
      if (before === undefined || now === undefined || before.sum / before.count <= now.sum / now.count) break;
      pools.splice(last - 1, 2, { sum: before.sum + now.sum, count: before.count + now.count });
    }
  });
  const even = pools.flatMap(({ sum, count }) => new Array<number>(count).fill(sum / count));
  const top = most - apart * Math.max(0, wanted.length - 1);
  return even.map((at, i) => Math.min(Math.max(at, least), Math.max(top, least)) + i * apart);
}
