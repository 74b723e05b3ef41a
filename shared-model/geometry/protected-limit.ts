import type { DeviceId, EndKey } from "../model/ids.ts";
import type { BoxDrawing, Rect, SheathDrawing, SpliceDrawing, Wall } from "./box-drawing.ts";
import { SPLICE_HALF } from "./metrics.ts";

/** Ends that lie behind ground-fault devices, with those devices. */
export type Behind = Readonly<Record<EndKey, readonly DeviceId[]>>;

/** An area of a box that lies behind a device of that box. */
export interface LimitDrawing {
  readonly device: DeviceId;
  readonly area: Rect;
  /** The side on which its cables leave the box, where the limit stays open. */
  readonly open: Wall | undefined;
}

/** From the middle of a column to its limit: clear of the plates on the device's side. */
const COLUMN_REACH = 53;
const LABEL_RISE = 24;
const FOOT = 18;
const SHEATH_HALF = 30;
/** Around a single splice. */
const CLOSE = 8;

/**
 * Limits of what lies behind the devices of a box: one area over the joints and the cables that leave on their side, where
 * nothing else stands in it; else a close limit around each joint. Cables alone carry their own mark, not a limit.
 */
export function protectedLimits(drawing: BoxDrawing, behind: Behind): readonly LimitDrawing[] {
  return drawing.devices.flatMap(({ device }) => {
    const isBehind = (end: EndKey): boolean => behind[end]?.includes(device) === true;
    const joints = drawing.splices.filter(({ rows }) => rows.length > 0 && rows.every(({ end }) => isBehind(end)));
    if (joints.length === 0) return [];
    const sheaths = drawing.sheaths.filter((sheath) => isSheathBehind(drawing, sheath, isBehind));
    const wide = wideLimit(drawing, joints, sheaths);
    if (wide !== undefined) return [{ device, ...wide }];
    return joints.map((joint) => ({ device, area: grown(capsuleOf(joint), CLOSE), open: undefined }));
  });
}

/** Whether all insulated conductors of a cable that end here lie behind a device. */
export function isSheathBehind(
  { conductors }: BoxDrawing,
  { cable, side }: Pick<SheathDrawing, "cable" | "side">,
  isBehind: (end: EndKey) => boolean,
): boolean {
  let some = false;
  for (const { kind, ends, grounding } of conductors) {
    const [end] = ends;
    if (kind !== "cable" || grounding || end === undefined) continue;
    if (!end.startsWith(`${cable}.`) || !end.endsWith(`.${side}`)) continue;
    if (!isBehind(end)) return false;
    some = true;
  }
  return some;
}

function wideLimit(
  drawing: BoxDrawing,
  joints: readonly SpliceDrawing[],
  sheaths: readonly SheathDrawing[],
): Pick<LimitDrawing, "area" | "open"> | undefined {
  const [first] = joints;
  if (first === undefined || joints.some(({ x }) => x !== first.x)) return undefined;
  const side = first.x > drawing.width / 2 ? "right" : "left";
  // What comes from above or below passes before a side wall, through where the area would be.
  if (drawing.sheaths.some(({ wall }) => wall === "top" || wall === "bottom")) return undefined;
  const own = sheaths.filter(({ wall }) => wall === side);
  const capsules = joints.map(capsuleOf);
  const top = Math.min(
    ...joints.map(({ labelAt }) => labelAt.y - LABEL_RISE),
    ...own.map(({ at }) => at.y - SHEATH_HALF),
  );
  const bottom = Math.max(
    ...capsules.map(({ y, height }) => y + height + FOOT),
    ...own.map(({ at }) => at.y + SHEATH_HALF),
  );
  const x = side === "right" ? first.x - COLUMN_REACH : 0;
  const end = side === "right" ? drawing.width : first.x + COLUMN_REACH;
  const area = { x, y: top, width: end - x, height: bottom - top };
  const others: Rect[] = [
    ...drawing.splices.filter((splice) => !joints.includes(splice)).map(capsuleOf),
    ...drawing.devices.map(({ body }) => body),
    ...drawing.sheaths
      .filter((sheath) => sheath.wall === side && !sheaths.includes(sheath))
      .map(({ at }) => ({ x: at.x - 1, y: at.y - 10, width: 2, height: 20 })),
    ...(drawing.bond ? [{ x: drawing.bond.at.x - 9, y: drawing.bond.at.y - 9, width: 18, height: 34 }] : []),
  ];
  if (others.some((other) => touches(area, other))) return undefined;
  return { area, open: side };
}

function capsuleOf({ x, rows }: SpliceDrawing): Rect {
  const ys = rows.map(({ y }) => y);
  const top = Math.min(...ys) - SPLICE_HALF;
  return { x: x - SPLICE_HALF, y: top, width: 2 * SPLICE_HALF, height: Math.max(...ys) + SPLICE_HALF - top };
}

const grown = ({ x, y, width, height }: Rect, by: number): Rect => ({
  x: x - by,
  y: y - by,
  width: width + 2 * by,
  height: height + 2 * by,
});

const touches = (a: Rect, b: Rect): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
