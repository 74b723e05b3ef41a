import type { Point } from "../../model/project.ts";
import type { Ground } from "./ground.ts";
import type { RoadEnds, RoadScale } from "./road.ts";

const TRIES = 60;

export interface Tried {
  readonly points: readonly Point[];
  readonly clear: boolean;
  /** It lies on another, for want of a lane. */
  readonly shares?: boolean;
}

/** Places that are tried in the width of a lane where lanes are scarce. */
const FINE = 4;

/** Where before its wall a road may turn. */
export interface Lanes {
  /** Closer together than lanes are: the wall has more cables than room. */
  readonly tight: boolean;
  /** Beyond this lane it crosses none of the roads that left the wall before it; undefined where it passes none of them. */
  readonly past: number | undefined;
}

export function plainRoad({ a, b }: RoadEnds, ground: Ground, scale: RoadScale, { tight, past }: Lanes): Tried {
  const { lane, stepOut, between, around, road } = scale;
  const startX = a.at.x + a.out * stepOut;
  const endX = b.at.x + b.out * stepOut;
  const facing = a.out !== b.out && (endX - startX) * a.out >= 0;
  if (facing && Math.abs(a.at.y - b.at.y) < 1)
    return { points: [a.at, b.at], clear: ground.reach(a.at.y, a.at.x, a.out, b.at.x) === b.at.x };
  if (facing || a.out === b.out) {
    const from = facing ? startX : a.out > 0 ? Math.max(startX, endX) : Math.min(startX, endX);
    const last = facing ? endX : from + a.out * TRIES * lane;
    // On either height there may be a box in the way, before which the upright has to stand.
    const farthest = ground.reach(a.at.y, a.at.x, a.out, last);
    const back = facing ? ground.reach(b.at.y, b.at.x, b.out, from) : ground.reach(b.at.y, b.at.x, b.out, farthest);
    const [first, end] = facing ? [beyond(from, back, a.out), farthest] : [from, before(farthest, back, a.out)];
    const close = (x: number): boolean => ground.freeClose(x, a.at.y, b.at.y);
    const free = tight ? close : (x: number): boolean => ground.free(x, a.at.y, b.at.y);
    const step = tight ? ground.closest : lane;
    const alone = (x: number): boolean =>
      free(x) && ground.freeLevel(a.at.y, a.at.x, x) && ground.freeLevel(b.at.y, x, b.at.x);
    const uncrossed = (x: number): boolean => facing && past !== undefined && (x - past) * a.out > 0 && alone(x);
    const found =
      search(first, end, a.out, step, uncrossed) ??
      search(first, end, a.out, step, alone) ??
      search(first, end, a.out, step, free);
    // Where all lanes are taken it runs close to others, and nearer to its ends; where there is no room for that either it
    // shares one: that is no reason to go around.
    const short = stepOut - road / 2;
    const beside =
      found ??
      search(first - a.out * short, facing ? end + a.out * short : end, a.out, lane / FINE, close, TRIES * FINE);
    const shared = beside ?? search(first, end, a.out, lane, (x) => ground.isClear(x, a.at.y, b.at.y));
    const x = shared ?? from;
    return {
      points: [a.at, { x, y: a.at.y }, { x, y: b.at.y }, b.at],
      clear: shared !== undefined,
      shares: beside === undefined,
    };
  }
  // They face away from each other: around, between the two where there is height, else above.
  const y = Math.abs(a.at.y - b.at.y) > between ? (a.at.y + b.at.y) / 2 : Math.min(a.at.y, b.at.y) - around;
  return overAt({ a, b }, y, ground, scale);
}

/** Out of both stubs, upright to a height and level there. */
export function overAt({ a, b }: RoadEnds, y: number, ground: Ground, { lane, stepOut }: RoadScale): Tried {
  const lay = ({ at, out }: RoadEnds["a"]): { readonly x: number; readonly clear: boolean } => {
    const start = at.x + out * stepOut;
    const end = ground.reach(at.y, at.x, out, start + out * TRIES * lane);
    const free = (x: number): boolean => ground.free(x, at.y, y);
    const found =
      search(start, end, out, lane, (x) => free(x) && ground.freeLevel(at.y, at.x, x)) ??
      search(start, end, out, lane, free);
    return { x: found ?? start, clear: found !== undefined };
  };
  const one = lay(a);
  const other = lay(b);
  return {
    points: [a.at, { x: one.x, y: a.at.y }, { x: one.x, y }, { x: other.x, y }, { x: other.x, y: b.at.y }, b.at],
    clear: one.clear && other.clear && ground.freeLevel(y, one.x, other.x),
  };
}

/** Of two places the one further out, and the one less far. */
const beyond = (p: number, q: number, out: 1 | -1): number => ((p - q) * out > 0 ? p : q);
const before = (p: number, q: number, out: 1 | -1): number => ((p - q) * out > 0 ? q : p);

/** The first free lane from a stub outward. */
function search(
  from: number,
  last: number,
  out: 1 | -1,
  lane: number,
  free: (x: number) => boolean,
  tries = TRIES,
): number | undefined {
  for (let i = 0; i <= tries; i++) {
    const x = from + out * i * lane;
    if ((last - x) * out < 0) break;
    if (free(x)) return x;
  }
  return (last - from) * out >= 0 && free(last) ? last : undefined;
}
