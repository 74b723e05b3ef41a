import type { DeviceShape } from "./device-shape.ts";
import type { Facing } from "./net.ts";

/** A breaker of a panel: a body in the left or right column of slots, with its terminals on the outer edge. */
export interface BreakerShape {
  readonly shape: DeviceShape;
  readonly facing: Facing;
  /** Row of its first terminal, and rows it takes. */
  readonly row: number;
  readonly rows: number;
  /** Row of each terminal's first end. */
  readonly terminalRows: readonly number[];
}

/** A space of the panel with nothing in it. */
export interface FreeSlot {
  readonly slot: number;
  readonly facing: Facing;
  readonly row: number;
}

export interface SlotPlan {
  readonly breakers: readonly BreakerShape[];
  readonly free: readonly FreeSlot[];
  /** Rows from one slot to the next, one of them empty. */
  readonly slotRows: number;
  readonly lastRow: number;
}

const ABOVE_SLOTS = 6;

/**
 * Breakers in two columns by slot, odd numbers left, even numbers right. One without a slot, or in a slot that is taken,
 * takes the next free place of the shorter column. Lugs, which have no slot, stand first.
 */
export function shapeBreakers(shapes: readonly DeviceShape[], spaces: number): SlotPlan {
  const hasLugs = shapes.some((shape) => shape.type.family === "lugs");
  const sorted = shapes
    .map(inTypeOrder)
    .sort((a, b) => placeOf(a) - placeOf(b) || a.device.order - b.device.order || (a.device.id < b.device.id ? -1 : 1));
  const slotRows = sorted.reduce(
    (most, shape) =>
      shape.device.slot === undefined
        ? most
        : Math.max(most, 2 + Math.max(0, shape.terminals.length - shape.type.gangs)),
    2,
  );
  const first = hasLugs ? ABOVE_SLOTS : 0;
  const rowOfSlot = (slot: number): number => first + Math.floor((slot - 1) / 2) * slotRows;
  const next = { left: 0, right: 0 };
  const breakers = sorted.map((shape): BreakerShape => {
    const { slot } = shape.device;
    const left = slot === undefined ? next.left <= next.right : slot % 2 === 1;
    const side = left ? "left" : "right";
    const row = Math.max(slot === undefined ? 0 : rowOfSlot(slot), next[side]);
    const terminalRows: number[] = [];
    let used = row;
    for (const [index, { holes }] of shape.terminals.entries()) {
      // Each pole stands level with its own space; a neutral lead follows the last of them.
      if (index < shape.type.gangs) used = Math.max(used, row + index * slotRows);
      terminalRows.push(used);
      used += holes.reduce((sum, hole) => sum + Math.max(1, hole.ends.length), 0);
    }
    const rows = Math.max(used - row, slotRows * shape.type.gangs - 1);
    next[side] = row + rows + 1;
    return { shape, facing: left ? -1 : 1, row, rows, terminalRows };
  });
  const free: FreeSlot[] = [];
  for (let slot = 1; slot <= spaces; slot += 1) {
    const facing: Facing = slot % 2 === 1 ? -1 : 1;
    const row = rowOfSlot(slot);
    const taken = breakers.some(
      (breaker) => breaker.facing === facing && row <= breaker.row + breaker.rows && breaker.row <= row + slotRows - 1,
    );
    if (!taken) free.push({ slot, facing, row });
  }
  const lastRow = breakers.reduce(
    (most, breaker) => Math.max(most, breaker.row + breaker.rows - 1),
    rowOfSlot(spaces) + slotRows - 2,
  );
  return { breakers, free, slotRows, lastRow };
}

const placeOf = (shape: DeviceShape): number => shape.device.slot ?? (shape.type.family === "lugs" ? 0 : 1000);

/** Terminals of a breaker stand under one another as its type lists them, whatever their metal. */
const inTypeOrder = (shape: DeviceShape): DeviceShape => ({
  ...shape,
  terminals: [...shape.terminals].sort((a, b) => indexIn(shape, a.terminal.name) - indexIn(shape, b.terminal.name)),
});

const indexIn = (shape: DeviceShape, name: string): number =>
  shape.type.terminals.findIndex((terminal) => terminal.name === name);
