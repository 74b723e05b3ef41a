import { CAP_LENGTH, FIRST_LANE, PITCH, SPLICE_HALF, SPLICE_ROWS_ABOVE } from "../metrics.ts";
import { fitText, textWidth } from "../text-width.ts";
import type { BoxPlan, Layer, Stack } from "./box-plan.ts";
import { type Keep, roomAcross } from "./keep.ts";
import { channelOf, type Port } from "./net.ts";
import { type ChannelPlan, orderLanes, type Piece, piecesOf } from "./order-lanes.ts";
import { stubCapAt } from "./plate-text.ts";
import { isUpright } from "./upright-entries.ts";
import { spliceCaption } from "./words.ts";

/** Where layers, channels and rows lie in drawing units, from the inner top-left corner of the box. */
export interface Frame {
  readonly left: readonly number[];
  readonly width: number;
  readonly height: number;
  readonly pieces: ReadonlyMap<Port, readonly Piece[]>;
  readonly channels: readonly ChannelPlan[];
  /** y of row 0. */
  readonly zero: number;
}

const LEAST_WIDTH = 400;
/** Middle of a column of splices from its wall, unless more lanes need more. */
const COLUMN_AT = 240;
/** Slant of an end that shares its hole with another. */
const JOIN_REACH = 32;
const EVERY = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY } as const;

export function planChannels(plan: BoxPlan, untie: boolean): readonly ChannelPlan[] {
  const pieces = piecesOf(plan);
  const keeps = keepsOf(plan);
  return pieces.map((list, channel) => {
    const before = plan.layers[channel];
    const after = plan.layers[channel + 1];
    const pack = after?.kind === "wall" ? "r" : before?.kind === "column" && after?.kind !== "column" ? "r" : "l";
    const mine = keeps.filter((keep) => keep.channel === channel);
    return orderLanes(
      list,
      mine,
      before?.kind === "wall" && after?.kind !== "wall" ? "l" : pack,
      leastWidth(plan, channel, mine),
      untie,
    );
  });
}

function leastWidth(plan: BoxPlan, channel: number, keeps: readonly Keep[]): number {
  const before = plan.layers[channel];
  const after = plan.layers[channel + 1];
  const atWall = before?.kind === "wall" || after?.kind === "wall";
  if (before?.kind === "wall" && after?.kind === "wall") return LEAST_WIDTH;
  const column = before?.kind === "column" || after?.kind === "column";
  // Lanes are kept free from the start, so that a further conductor seldom moves what stands beside them.
  const keepsLanes = plan.enclosure.kind === "box";
  let least = atWall ? FIRST_LANE + (keepsLanes ? 4 : 2) * PITCH : (keepsLanes && column ? 5 : 3) * PITCH;
  if (keepsLanes && atWall && column) least = COLUMN_AT - SPLICE_HALF;
  if (!atWall && before?.kind !== "column" && after?.kind !== "column") least = 72;
  for (const keep of keeps) if (keep.low === keep.high) least = Math.max(least, atWall ? keep.pad + 24 : keep.pad);
  return Math.max(least, acrossRows(plan, channel, keeps));
}

function keepsOf(plan: BoxPlan): Keep[] {
  const keeps: Keep[] = [];
  const last = plan.layers.length - 2;
  keeps.push(
    { channel: 0, side: "l", ...EVERY, pad: FIRST_LANE },
    { channel: last, side: "r", ...EVERY, pad: FIRST_LANE },
  );
  for (const entry of plan.entries) {
    if (!isUpright(entry)) continue;
    const range =
      entry.wall === "top"
        ? { low: EVERY.low, high: entry.row + entry.conductors.length - 1 }
        : { low: entry.row, high: EVERY.high };
    keeps.push({ channel: 0, side: "l", ...range, pad: FIRST_LANE + entry.shift });
  }
  for (const stub of plan.stubs) {
    const row = stub.entry.row + stub.index;
    const left = stub.entry.flank === "left";
    keeps.push({
      channel: left ? 0 : last,
      side: left ? "l" : "r",
      low: row,
      high: row,
      pad: stubCapAt(stub.text) + CAP_LENGTH + PITCH + stub.entry.shift,
      while: "waiting",
    });
  }
  for (const net of plan.nets) {
    for (const port of [net.a, net.b]) {
      if (port.what === "wall") continue;
      // Beside another in one hole, its plate stands a pitch further out: the slant comes first.
      const pad = port.holeRow === undefined ? port.pad : Math.max(port.pad + PITCH, JOIN_REACH);
      const side = port.facing > 0 ? "l" : "r";
      const row = { channel: channelOf(port), side, low: port.row, high: port.row, pad } as const;
      keeps.push(net.likely ? { ...row, while: "joined" } : row);
    }
  }
  for (const layer of plan.layers) for (const stack of layer.stacks) keeps.push(...labelKeeps(layer, stack));
  return keeps;
}

/** What a channel along a wall needs for sheaths that stand level with plates or words on its other side. */
function acrossRows(plan: BoxPlan, channel: number, keeps: readonly Keep[]): number {
  let least = 0;
  for (const entry of plan.entries) {
    if (channel !== (entry.flank === "left" ? 0 : plan.layers.length - 2)) continue;
    for (let row = entry.row; row < entry.row + entry.conductors.length; row += 1) {
      least = Math.max(least, roomAcross(keeps, row));
    }
  }
  return least;
}

/** Lanes keep clear of the words over a splice, which are wider than its capsule. */
function labelKeeps(layer: Layer, stack: Stack): Keep[] {
  const half = Math.max(textWidth(nameOfStack(stack), 15, 700), textWidth(spliceCaption(stack), 11)) / 2;
  const pad = half - layer.width / 2 + 8;
  const rows = { low: stack.top - SPLICE_ROWS_ABOVE, high: stack.top - 1 };
  return [
    { channel: layer.index - 1, side: "r", ...rows, pad },
    { channel: layer.index, side: "l", ...rows, pad },
  ];
}

const LONGEST_NAME = 140;

/** Name over a splice or bar, as much of it as leaves the drawing its shape. */
export const nameOfStack = (stack: Stack): string =>
  fitText(stack.splice?.name ?? stack.bar?.name ?? "", LONGEST_NAME, 15, 700);

/** Measures the box from its channels and rows. */
export function frameBox(plan: BoxPlan, channels: readonly ChannelPlan[], leastZero: number): Frame {
  const left: number[] = [];
  let x = 0;
  plan.layers.forEach((layer, index) => {
    left.push(x);
    x += layer.width + (channels[index]?.width ?? 0);
  });
  const pieces = new Map<Port, Piece[]>();
  for (const channel of channels) {
    for (const piece of channel.pieces) {
      const list = pieces.get(piece.net.a);
      if (list === undefined) pieces.set(piece.net.a, [piece]);
      else list.push(piece);
    }
  }
  const [highest, bottom] = extent(plan, channels);
  const top = Math.min(-headroom(plan, -highest), -leastZero);
  return { left, width: x, height: bottom - top, pieces, channels, zero: -top };
}

const MARGIN = 24;
/** From the margin to the first row of a sheath in the upper or lower wall: its fan, and the turn onto the row. */
const TO_WALL = 36;

const STEP = 4 * PITCH;
/** Over the first row of a device: its words and two conductors in the corridor; joints over a yoke as well. */
const HEADROOM = { least: 10 * PITCH, yoke: 12 * PITCH } as const;

/**
 * What a box has over row 0. It grows upward in steps, and has room over its devices from the start, so that an edit
 * seldom moves all that is under it.
 */
function headroom(plan: BoxPlan, needed: number): number {
  const devices = plan.centre.flatMap(({ device }) => (device === undefined ? [] : [device]));
  if (devices.length === 0 || plan.entries.length === 0) return needed;
  const from = devices.some(({ type }) => type.yokes > 0) ? HEADROOM.yoke : HEADROOM.least;
  return from + STEP * Math.max(0, Math.ceil((needed - from) / STEP));
}

/** Top and bottom of the box with row 0 at 0. */
function extent(plan: BoxPlan, channels: readonly ChannelPlan[]): [number, number] {
  let top = Number.POSITIVE_INFINITY;
  let bottom = Number.NEGATIVE_INFINITY;
  const see = (from: number, to: number): void => {
    top = Math.min(top, from);
    bottom = Math.max(bottom, to);
  };
  for (const { wall, row, conductors } of plan.entries) {
    const [above, below] = [wall === "top" ? TO_WALL : 28, wall === "bottom" ? TO_WALL : 28];
    see(row * PITCH - above, (row + conductors.length - 1) * PITCH + below);
  }
  for (const layer of plan.layers) {
    for (const stack of layer.stacks)
      see(stack.top * PITCH - SPLICE_HALF - 36, (stack.top + stack.rows) * PITCH + SPLICE_HALF);
    if (layer.device) see(layer.device.top - 42, layer.device.top + layer.device.height + 18);
  }
  if (plan.slots) see(-24, plan.slots.lastRow * PITCH + 24);
  for (const body of plan.bodies) see(body.row * PITCH - 12, (body.row + body.ports.length - 1) * PITCH + 28);
  for (const channel of channels)
    for (const piece of channel.pieces) see(piece.low * PITCH - 10, piece.high * PITCH + 10);
  if (!Number.isFinite(top)) return [-96, 96];
  return [top - MARGIN, bottom + MARGIN];
}
