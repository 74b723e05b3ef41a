import { PITCH } from "../metrics.ts";
import type { BoxPlan } from "./box-plan.ts";
import { type Keep, roomAcross } from "./keep.ts";
import { channelOf, type Net, type Port } from "./net.ts";

/** Where a piece of a route meets one side of its channel. */
interface Meeting {
  readonly side: "l" | "r";
  readonly row: number;
}

/** The part of a route inside one channel: level from one side, along a lane, level to a side. */
export interface Piece {
  readonly net: Net;
  readonly channel: number;
  readonly from: Meeting;
  readonly to: Meeting;
  readonly low: number;
  readonly high: number;
  /** Lane, from the left edge of the channel; nothing where the piece runs straight across. */
  x?: number;
}

export interface ChannelPlan {
  readonly pieces: readonly Piece[];
  readonly width: number;
  /** Pairs of pieces whose order could not be had: they would share a level stretch. */
  readonly conflicts: readonly (readonly [Piece, Piece])[];
}

const HARD = 10_000;
const meetingOf = (port: Port): Meeting => ({ side: port.facing > 0 ? "l" : "r", row: port.row });

/** Takes every route apart by channel. */
export function piecesOf(plan: BoxPlan): Piece[][] {
  const pieces: Piece[][] = plan.layers.slice(1).map(() => []);
  const add = (net: Net, channel: number, from: Meeting, to: Meeting): void => {
    pieces[channel]?.push({
      net,
      channel,
      from,
      to,
      low: Math.min(from.row, to.row),
      high: Math.max(from.row, to.row),
    });
  };
  for (const net of plan.nets) {
    if (net.alone) continue;
    const a = channelOf(net.a);
    const b = channelOf(net.b);
    if (a === b) {
      add(net, a, meetingOf(net.a), meetingOf(net.b));
      continue;
    }
    const ahead = a < b;
    const run = (side: "l" | "r"): Meeting => ({ side, row: net.run });
    add(net, a, meetingOf(net.a), run(ahead ? "r" : "l"));
    for (let channel = Math.min(a, b) + 1; channel < Math.max(a, b); channel += 1)
      add(net, channel, run("l"), run("r"));
    add(net, b, run(ahead ? "l" : "r"), meetingOf(net.b));
  }
  return pieces;
}

export const isStraight = (piece: Piece): boolean => piece.low === piece.high && piece.from.side !== piece.to.side;

/**
 * Orders the lanes of a channel for the least crossings, then packs them from one edge. Whether two conductors cross
 * depends only on which of their lanes is further left, so this is an ordering of lanes: improved by taking each out
 * and putting it back where it costs least, until nothing improves.
 */
export function orderLanes(
  pieces: readonly Piece[],
  keeps: readonly Keep[],
  pack: "l" | "r",
  least: number,
  untie: boolean,
): ChannelPlan {
  let all = pieces;
  let order = bestOrder(all.filter((piece) => !isStraight(piece)));
  let conflicts = conflictsOf(order);
  for (let left = all.length; untie && left > 0; left -= 1) {
    const tied = conflicts[0]?.[0];
    if (tied === undefined) break;
    all = all.flatMap((piece) => (piece === tied ? inTwoLanes(piece, all) : [piece]));
    order = bestOrder(all.filter((piece) => !isStraight(piece)));
    conflicts = conflictsOf(order);
  }
  const straight = all.filter(isStraight).map((piece) => straightWidth(piece, keeps));
  const width = packLanes(order, keeps, pack, Math.max(least, ...straight, 0));
  return { pieces: all, width, conflicts };
}

function conflictsOf(order: readonly Piece[]): (readonly [Piece, Piece])[] {
  const conflicts: (readonly [Piece, Piece])[] = [];
  order.forEach((left, index) => {
    for (const right of order.slice(index + 1)) if (cost(left, right) >= HARD) conflicts.push([left, right]);
  });
  return conflicts;
}

/** Two conductors that change places on the same two rows: one of them takes a second lane, by a row nobody uses. */
function inTwoLanes(piece: Piece, all: readonly Piece[]): Piece[] {
  const used = new Set(all.flatMap(({ from, to }) => [from.row, to.row]));
  const middle = Math.round((piece.low + piece.high) / 2);
  let row = middle;
  for (let away = 1; used.has(row); away += 1) row = used.has(middle + away) ? middle - away : middle + away;
  const part = (from: Meeting, to: Meeting): Piece => ({
    net: piece.net,
    channel: piece.channel,
    from,
    to,
    low: Math.min(from.row, to.row),
    high: Math.max(from.row, to.row),
  });
  // The lane of its left meeting lies left of all that must stand before the lane of its right one.
  const [near, far] = piece.from.side === "l" ? (["r", "l"] as const) : (["l", "r"] as const);
  return [part(piece.from, { side: near, row }), part({ side: far, row }, piece.to)];
}

/** Crossings when `left` has the lane further left; a shared level stretch is out of the question. */
function cost(left: Piece, right: Piece): number {
  // The two lanes of one conductor stand in the order in which it runs.
  if (left.net === right.net) {
    if (follows(left, right)) return 0;
    if (follows(right, left)) return HARD;
  }
  if (left.high < right.low || right.high < left.low) return 0;
  const weight = left.net.kind === 2 || right.net.kind === 2 ? 3 : 8;
  let sum = 0;
  for (const meeting of [left.from, left.to]) {
    if (meeting.side !== "r") continue;
    if (meeting.row > right.low && meeting.row < right.high) sum += weight;
    for (const other of [right.from, right.to]) if (other.side === "l" && other.row === meeting.row) sum += HARD;
  }
  for (const meeting of [right.from, right.to])
    if (meeting.side === "l" && meeting.row > left.low && meeting.row < left.high) sum += weight;
  return sum;
}

/** The two lanes of one conductor, on the row between them. */
const follows = (left: Piece, right: Piece): boolean =>
  [left.from, left.to].some(
    (p) => p.side === "r" && [right.from, right.to].some((q) => q.side === "l" && q.row === p.row),
  );

function bestOrder(lanes: readonly Piece[]): Piece[] {
  const count = lanes.length;
  const costs = lanes.map((left) => Float64Array.from(lanes, (right) => (left === right ? 0 : cost(left, right))));
  const at = (left: number, right: number): number => costs[left]?.[right] ?? 0;
  // Start: going up, the topmost outermost; going down, the topmost innermost; and nothing before what it must follow.
  const wanted = lanes.map((_, index) => index);
  const start = (piece: Piece): number => (piece.from.row > piece.to.row ? piece.from.row : 1000 - piece.from.row);
  wanted.sort((p, q) => start(lanes[p] as Piece) - start(lanes[q] as Piece) || p - q);
  const order: number[] = [];
  while (wanted.length > 0) {
    let next = 0;
    let fewest = Number.POSITIVE_INFINITY;
    for (let place = 0; place < wanted.length && fewest > 0; place += 1) {
      const candidate = wanted[place] as number;
      const before = wanted.reduce((sum, other) => sum + (at(candidate, other) >= HARD ? 1 : 0), 0);
      if (before < fewest) [fewest, next] = [before, place];
    }
    order.push(...wanted.splice(next, 1));
  }
  for (let pass = 0; pass < 6; pass += 1) {
    let improved = false;
    for (let taken = 0; taken < count; taken += 1) {
      const now = order.indexOf(taken);
      order.splice(now, 1);
      let here = 0;
      for (const other of order) here += at(taken, other);
      let bestAt = 0;
      let best = here;
      let current = now === 0 ? here : 0;
      for (let place = 1; place < count; place += 1) {
        const passed = order[place - 1] as number;
        here += at(passed, taken) - at(taken, passed);
        if (place === now) current = here;
        if (here < best - 1e-9) {
          best = here;
          bestAt = place;
        }
      }
      const better = best < current - 1e-9;
      order.splice(better ? bestAt : now, 0, taken);
      improved ||= better;
    }
    if (!improved) break;
  }
  return order.map((index) => lanes[index] as Piece);
}

/** Gives lanes their x from one edge of the channel; two that do not meet in height may share one. Returns the width. */
function packLanes(order: readonly Piece[], keeps: readonly Keep[], pack: "l" | "r", least: number): number {
  const fromLeft = pack === "l";
  const sequence = fromLeft ? order : [...order].reverse();
  const far = fromLeft ? "r" : "l";
  let width = least;
  const depth = new Map<Piece, number>();
  sequence.forEach((piece, index) => {
    let x = padOn(piece, keeps, pack);
    for (const other of sequence.slice(0, index)) {
      if (other.low <= piece.high && piece.low <= other.high) x = Math.max(x, (depth.get(other) ?? 0) + PITCH);
    }
    depth.set(piece, x);
    width = Math.max(width, x + padOn(piece, keeps, far));
  });
  for (const [piece, x] of depth) piece.x = fromLeft ? x : width - x;
  return width;
}

const padOn = (piece: Piece, keeps: readonly Keep[], side: "l" | "r"): number => {
  let pad = PITCH;
  for (const keep of keeps)
    if (keep.while === "waiting" && piece.net.likely) continue;
    else if (keep.side === side && keep.low <= piece.high && keep.high >= piece.low) pad = Math.max(pad, keep.pad);
  return pad;
};

/** A straight conductor needs room for the plates at both its ends. */
function straightWidth(piece: Piece, keeps: readonly Keep[]): number {
  const sum = roomAcross(keeps, piece.low);
  return piece.net.of === "jumper"
    ? Math.min(sum, Math.max(...keeps.filter((k) => k.low === piece.low && k.high === piece.low).map((k) => k.pad), 0))
    : sum;
}
