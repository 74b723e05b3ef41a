import { SPLICE_ROWS_ABOVE } from "../metrics.ts";
import type { Stack } from "./box-plan.ts";
import { type Band, otherPort, type Wish } from "./wishes.ts";

/** A bend costs this much more than a row of travel. */
export const BEND_PAIR = 2;
const PER_ROW = 0.16;
const CROSSING = 8;

export type Members = Stack["members"];

export const isWall = (member: Members[number]): boolean => otherPort(member.net, member.port).what === "wall";

export const inHoles = (stack: Stack): Members =>
  [...stack.members].sort((a, b) => (a.hole ?? 0) - (b.hole ?? 0) || (a.end < b.end ? -1 : 1));

/** Members in the order in which their conductors arrive; those that go over a device first, or last. */
export function memberOrders(stack: Stack, wishes: ReadonlyMap<Members[number], Wish>, band: Band): Members[] {
  const sorted = (over: number): Members => {
    const at = (member: Members[number]): number => {
      const wish = wishes.get(member);
      if (wish === undefined) return 0;
      return wish.kind === "over" ? over : Math.min(wish.row, wish.rank ? band.under : wish.row) + (wish.rank ?? 0);
    };
    return [...stack.members].sort(
      (a, b) => at(a) - at(b) || nesting(a, b, wishes.get(a)?.kind === "over") || (a.end < b.end ? -1 : 1),
    );
  };
  const hasOver = [...wishes.values()].some((wish) => wish.kind === "over");
  return hasOver ? [sorted(band.over - 100), sorted(band.under + 30)] : [sorted(0)];
}

/**
 * Of two that leave a splice by the same corridor, the one that goes further lies outside, so that they nest. On one
 * wall the upper sheath comes first either way; on one side of a device the nearer hole lies inside.
 */
function nesting(a: Members[number], b: Members[number], over: boolean): number {
  const p = otherPort(a.net, a.port);
  const q = otherPort(b.net, b.port);
  const further = Math.abs(p.layer - a.port.layer) - Math.abs(q.layer - b.port.layer);
  if (further !== 0) return over ? -further : further;
  return p.what === "wall" ? p.row - q.row : q.row - p.row;
}

/** Rows of a bar from its first hole: a hole that holds several ends takes as many rows. */
export function barOffset(stack: Stack, member: Stack["members"][number]): number {
  const hole = member.hole ?? 1;
  let offset = hole - 1;
  let nth = 0;
  const seen = new Set<number>();
  for (const other of stack.members) {
    const at = other.hole ?? 1;
    if (at < hole) offset += seen.has(at) ? 1 : 0;
    else if (other === member) return offset + nth;
    else if (at === hole) nth += 1;
    seen.add(at);
  }
  return offset + nth;
}

/**
 * Cost of a stack by the row of its first member, for one order of its members. What does not depend on that row is
 * worked out once: the cost is asked for at every row.
 */
export function stackCost(
  stack: Stack,
  order: Members,
  wishes: ReadonlyMap<Members[number], Wish>,
  band: Band,
): (top: number) => number {
  const { pinned } = stack;
  if (pinned !== undefined) return (top) => Math.abs(top - pinned) * 50;
  const centre = (band.over + band.under) / 2;
  const ground = stack.kind === 2 ? band.under + SPLICE_ROWS_ABOVE + 1 : Number.NEGATIVE_INFINITY;
  const list = order.flatMap((member, index) => {
    const wish = wishes.get(member);
    if (wish === undefined) return [];
    // Going up past what leaves straight from a row above would cross it.
    const passed = order.filter(
      (above, at) => at < index && above.port.facing === member.port.facing && wishes.get(above)?.kind !== "over",
    );
    return {
      offset: stack.bar ? barOffset(stack, member) : index,
      row: wish.row,
      kind: wish.kind,
      weight: wish.weight ?? 1,
      crossings: wish.kind === "over" ? passed.length * CROSSING : 0,
    };
  });
  return (top) => {
    let cost = 0.01 * Math.abs(top - centre);
    for (const { offset, row: wanted, kind, weight, crossings } of list) {
      const row = top + offset;
      const away = Math.abs(row - wanted);
      if (kind === "exact") cost += weight * (PER_ROW * away + (away === 0 ? 0 : BEND_PAIR));
      else if (kind === "near") cost += 0.08 * away;
      else if (kind === "over") {
        // A neutral may step up to its corridor; its joint stands level with its hole.
        if (row <= wanted) cost += 0.03 * away;
        else cost += crossings + (stack.kind === 1 ? 0.6 + 0.05 * away : 3 + PER_ROW * away);
      } else cost += row >= wanted ? 0.03 * away : 3 + PER_ROW * away;
    }
    // Grounds stand under everything, with the room their labels need.
    return top < ground ? cost + (ground - top) * 0.8 : cost;
  };
}
