import { SPLICE_ROWS_ABOVE, SPLICE_ROWS_BELOW } from "../metrics.ts";
import type { BoxPlan, Layer, Stack } from "./box-plan.ts";
import type { EntryPlan } from "./entries.ts";
import { BEND_PAIR, barOffset, inHoles, isWall, type Members, memberOrders, stackCost } from "./stack-cost.ts";
import { stackInOrder } from "./stack-in-order.ts";
import { type Band, bandOf, otherPort, wishOf } from "./wishes.ts";

/** Least rows between the last member of a splice and the first of the next: label, capsule ends and a free row. */
const BETWEEN_STACKS = SPLICE_ROWS_ABOVE + SPLICE_ROWS_BELOW + 1;

/**
 * Chooses rows of sheaths and splices: by turns, each best for the other, so that as many as possible run straight.
 * Sheaths of one wall stand at an even distance, as a block. `avoid` names rows that a former try could not route.
 */
export function chooseRows(plan: BoxPlan, avoid: ReadonlySet<string> = new Set()): void {
  const band = bandOf(plan);
  const centre = (band.over + band.under) / 2;
  const walls = (["left", "right"] as const).map((wall) => plan.entries.filter((entry) => entry.flank === wall));
  for (const entries of walls) moveBlock(plan, entries, middleOf(entries, centre));
  const columns = [plan.leftColumn, plan.rightColumn];
  for (let turn = 0; turn < 2; turn += 1) {
    for (const column of columns) placeStacks(plan, column, band, turn, avoid);
    for (const [index, entries] of walls.entries()) placeBlock(plan, entries, centre, band, `wall${index}`, avoid);
  }
  for (const [index, column] of columns.entries()) {
    const entries = walls[index] ?? [];
    if (entries.length === 0 || column.stacks.length === 0) continue;
    // A block and the splices before it hold each other where they are: try the block a few rows off.
    const now = entries[0]?.block ?? 0;
    const own = blockCost(plan, entries, middleOf(entries, centre), band, false);
    let best = { cost: Number.POSITIVE_INFINITY, row: now };
    for (const step of [0, 1, -1, 2, -2, 3, -3, 4, -4]) {
      if (avoid.has(`wall${index}@${now + step}`)) continue;
      moveBlock(plan, entries, now + step);
      const cost = placeStacks(plan, column, band, 2, avoid) + own(now + step);
      if (cost < best.cost - 1e-9) best = { cost, row: now + step };
    }
    moveBlock(plan, entries, best.row);
    placeStacks(plan, column, band, 2, avoid);
  }
  // Links between the columns meet the rows that the other one has now.
  placeStacks(plan, plan.leftColumn, band, 2, avoid);
}

/** Rows from the first conductor of one sheath to that of the next. */
export const rowsOf = (entry: EntryPlan): number => Math.max(4, entry.conductors.length + 2);

const totalRows = (entries: readonly EntryPlan[]): number => entries.reduce((sum, entry) => sum + rowsOf(entry), 0);

const middleOf = (entries: readonly EntryPlan[], centre: number): number =>
  Math.round(centre - totalRows(entries) / 2) + 1;

function moveBlock(plan: BoxPlan, entries: readonly EntryPlan[], first: number): void {
  const rows = firstRows(entries, first, bandOf(plan));
  entries.forEach((entry, nth) => {
    const row = rows[nth] ?? first;
    entry.row = row;
    entry.block = first;
    for (const { port, index } of plan.wallPorts.get(entry) ?? []) port.row = row + index;
  });
}

/**
 * First row of each sheath of a block. Those through the upper wall come no further down than to the last rows over the
 * devices, those through the lower one no further up than to the first under them: what goes on over or under a device
 * need not turn back.
 */
function firstRows(entries: readonly EntryPlan[], first: number, band: Band): readonly number[] {
  const rows: number[] = [];
  let row = first;
  for (const entry of entries) {
    if (entry.wall === "bottom") row = Math.max(row, band.under);
    rows.push(row);
    row += rowsOf(entry);
  }
  let next = band.over + 4;
  for (let nth = entries.length - 1; nth >= 0; nth -= 1) {
    const entry = entries[nth];
    if (entry?.wall !== "top") continue;
    next = Math.min(next, rows[nth + 1] ?? Number.POSITIVE_INFINITY) - rowsOf(entry);
    rows[nth] = Math.min(rows[nth] ?? next, next);
  }
  return rows;
}

function placeStacks(plan: BoxPlan, column: Layer, band: Band, turn: number, avoid: ReadonlySet<string>): number {
  const items = column.stacks.map((stack) => {
    // A former try may have drawn it out to its runs.
    if (!stack.bar) stack.rows = Math.max(1, stack.members.length);
    const wishes = new Map(stack.members.map((member) => [member, wishOf(plan, member.net, member.port, band)]));
    if (turn === 0)
      for (const [member, wish] of wishes) if (isWall(member)) wishes.set(member, { ...wish, weight: 0.3 });
    const orders = stack.bar ? [inHoles(stack)] : memberOrders(stack, wishes, band);
    const rows = [...wishes.values()].map((wish) => wish.row);
    return { stack, wishes, orders, mean: rows.reduce((sum, row) => sum + row, 0) / Math.max(1, rows.length) };
  });
  // From top to bottom hots, neutrals, grounds; a dragged splice wherever its row puts it.
  const loose = items.filter(({ stack }) => stack.pinned === undefined);
  loose.sort(
    (a, b) =>
      a.stack.kind - b.stack.kind ||
      a.mean - b.mean ||
      orderOf(a.stack) - orderOf(b.stack) ||
      (a.stack.id < b.stack.id ? -1 : 1),
  );
  const pinned = items.filter(({ stack }) => stack.pinned !== undefined);
  pinned.sort((a, b) => (a.stack.pinned ?? 0) - (b.stack.pinned ?? 0) || (a.stack.id < b.stack.id ? -1 : 1));
  for (const item of pinned) {
    const at = loose.findIndex(({ stack, mean }) => (stack.pinned ?? mean) > (item.stack.pinned ?? 0));
    loose.splice(at < 0 ? loose.length : at, 0, item);
  }
  items.splice(0, items.length, ...loose);
  column.stacks.sort((a, b) => items.findIndex((i) => i.stack === a) - items.findIndex((i) => i.stack === b));
  const costs = items.map(({ stack, wishes, orders }) => {
    const each = orders.map((order) => ({ order, cost: stackCost(stack, order, wishes, band) }));
    return (top: number): { cost: number; order: Members } => {
      let best = { cost: Number.POSITIVE_INFINITY, order: stack.members };
      for (const { order, cost } of each) {
        const here = cost(top);
        if (here < best.cost - 1e-9) best = { cost: here, order };
      }
      if (avoid.size > 0 && avoid.has(`${stack.id}@${top}`)) best = { ...best, cost: best.cost + 60 };
      return best;
    };
  });
  const tops = stackInOrder(
    items.map(({ stack }, index) => ({
      rows: stack.rows,
      gap: BETWEEN_STACKS,
      cost: (top: number) => costs[index]?.(top).cost ?? 0,
    })),
    band.over,
    band.under,
  );
  items.forEach(({ stack }, index) => {
    stack.top = tops[index] ?? 0;
    stack.members = [...(costs[index]?.(stack.top).order ?? stack.members)];
    setMemberRows(stack);
  });
  return items.reduce((sum, { stack }, index) => sum + (costs[index]?.(stack.top).cost ?? 0), 0);
}

const orderOf = (stack: Stack): number => stack.splice?.order ?? stack.bar?.order ?? 0;

function setMemberRows(stack: Stack): void {
  if (stack.bar === undefined) {
    stack.members.forEach((member, index) => {
      member.port.row = stack.top + index;
    });
    return;
  }
  for (const member of stack.members) {
    member.port.row = stack.top + barOffset(stack, member);
    const first = stack.members.find((other) => other.hole === member.hole);
    if (first !== undefined && first !== member) member.port.holeRow = first.port.row;
  }
}

/** Cost of a block of sheaths by its first row; without what goes to splices where those are moved along with it. */
function blockCost(
  plan: BoxPlan,
  entries: readonly EntryPlan[],
  middle: number,
  band: Band,
  toSplices: boolean,
): (first: number) => number {
  const wishes: {
    readonly nth: number;
    readonly index: number;
    readonly row: number;
    readonly travel: number;
    readonly bends: number;
  }[] = [];
  for (const [nth, entry] of entries.entries()) {
    for (const { port, index, net } of plan.wallPorts.get(entry) ?? []) {
      const wish = wishOf(plan, net, port, band);
      if (wish.kind !== "exact" || (!toSplices && otherPort(net, port).what === "splice")) continue;
      const bends = net.kind === 1 ? 1.5 * BEND_PAIR : BEND_PAIR;
      wishes.push({ nth, index, row: wish.row, travel: net.kind === 2 ? 0.01 : 0.05, bends });
    }
  }
  return (first) => {
    let sum = 0.3 * Math.abs(first - middle);
    const rows = firstRows(entries, first, band);
    for (const { nth, index, row, travel, bends } of wishes) {
      const away = Math.abs((rows[nth] ?? first) + index - row);
      if (away > 0) sum += travel * away + bends;
    }
    return sum;
  };
}

function placeBlock(
  plan: BoxPlan,
  entries: readonly EntryPlan[],
  centre: number,
  band: Band,
  wall: string,
  avoid: ReadonlySet<string>,
): void {
  if (entries.length === 0) return;
  const middle = middleOf(entries, centre);
  const plain = blockCost(plan, entries, middle, band, true);
  const cost = (first: number): number => plain(first) + (avoid.has(`${wall}@${first}`) ? 60 : 0);
  const [first] = stackInOrder([{ rows: totalRows(entries), gap: 0, cost }], band.over, band.under);
  moveBlock(plan, entries, first ?? middle);
}
