import type { Point } from "../../model/project.ts";
import type { Wall } from "../box-drawing.ts";
import { FAN, PITCH } from "../metrics.ts";

/** What counts here of a sheath in a wall. */
interface Entry {
  readonly wall: Wall;
  readonly conductors: readonly unknown[];
  lane: number;
  shift: number;
}

export const isUpright = ({ wall }: { readonly wall: Wall }): boolean => wall === "top" || wall === "bottom";

/** Along a side wall: what comes from above, what comes through it, what comes from below. */
export const wallRank = ({ wall }: { readonly wall: Wall }): number => (wall === "top" ? 0 : wall === "bottom" ? 2 : 1);

/** The first lane, clear of the side wall and of a connector beside it. */
const FIRST = 24;
/** Lanes from one sheath to the next: the words beside its stub need as much. */
const LANES = 10;
/** From the lane of a conductor to where it is level on its row. */
const TURN = 11;

/**
 * Sheaths in the upper and lower wall stand at the left end, so that boxes under one another are joined straight, each
 * with a lane for every conductor. From there conductors turn onto their rows one inside the other: the outermost sheath
 * of rows, and of its conductors the outermost, has the lane furthest right.
 * @param plans In the order of their rows.
 */
export function giveLanes(plans: readonly Entry[]): void {
  if (!plans.some(isUpright)) return;
  for (const wall of ["top", "bottom"] as const) {
    const own = plans.filter((plan) => plan.wall === wall);
    if (wall === "top") own.reverse();
    let lane = FIRST;
    for (const plan of own) {
      plan.lane = lane;
      plan.shift = Math.max(0, lastLane(plan) + TURN - FAN.end);
      lane += PITCH * Math.max(LANES, plan.conductors.length + 1);
    }
  }
}

const lastLane = ({ lane, conductors }: Entry): number => lane + (conductors.length - 1) * PITCH;

/** x of the middle of a sheath in the upper or lower wall. */
export const middleOfLanes = (entry: Entry): number => (entry.lane + lastLane(entry)) / 2;

/** A conductor from its sheath in the upper or lower wall to its row: together, parting to its lane, along it. */
export function fanFromAbove(entry: Entry, index: number, boxHeight: number, rowY: number): Point[] {
  const last = entry.conductors.length - 1;
  const top = entry.wall === "top";
  const x = entry.lane + PITCH * (top ? last - index : index);
  const [wallY, inward] = top ? [0, 1] : [boxHeight, -1];
  const middle = middleOfLanes(entry);
  const half = Math.max(1, last / 2) * PITCH;
  const bundled = middle + ((x - middle) / half) * Math.min(6.5, half * (5 / 16));
  return [
    { x: bundled, y: wallY + inward * FAN.start },
    { x: bundled, y: wallY + inward * FAN.part },
    { x, y: wallY + inward * FAN.end },
    { x, y: rowY },
  ];
}
