import { findCableItem } from "../../catalog/cable-items.ts";
import type { Cable, Conductor } from "../../model/cable.ts";
import type { Enclosure, PassThrough } from "../../model/enclosure.ts";
import { type ConductorKey, cableEnd, type EndKey, type EntryId, otherSide, type Side } from "../../model/ids.ts";
import type { Installation, Project } from "../../model/project.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import type { Wall } from "../box-drawing.ts";
import { kindOfConductor } from "./net.ts";
import { giveLanes, wallRank } from "./upright-entries.ts";

/** A conductor of a sheath, in the order of its rows. */
export interface EntryConductor {
  readonly key: ConductorKey;
  readonly conductor: Conductor;
  /** Its end here; absent where it runs through unbroken. */
  readonly end?: EndKey;
  readonly pass?: PassThrough;
}

/** A sheath in the wall. */
export interface EntryPlan {
  readonly key: string;
  readonly cable: Cable;
  readonly side: Side;
  readonly entry: EntryId;
  readonly conductors: readonly EntryConductor[];
  wall: Wall;
  /** Rows: that of its first conductor. */
  row: number;
  /** Row that the block of its side wall was placed by. */
  block: number;
  /** The side wall before which its conductors come onto their rows: its own, or the left one. */
  flank: "left" | "right";
  /** In the upper or lower wall: x of its first lane, from left to right. */
  lane: number;
  /** How much further from the side wall than those of a sheath there its conductors are on their rows. */
  shift: number;
}

/** Least distance, across the sheet, at which the other end of a cable decides the wall. */
const CLEARLY_BESIDE = 240;
/**
 * A box stands over or under another: so far that their walls and stubs are clear of each other, not so far that a third
 * one could stand between them, and not so far aside that a road could pass from side to side.
 */
const OVER_OR_UNDER = { aside: 640, apart: 800, beyond: 1600 } as const;

/**
 * Sheaths of an enclosure with the wall that each enters by, in order along the wall. The wall is the side facing the
 * other end of the cable: the upper or lower one where that box stands over or under this one, which is a matter of the
 * two places alone, so that both ends of a cable always agree; else the left or right one. Where that says nothing,
 * sheaths fill the emptier side wall in the order they were drawn, so that a further cable moves none. Cables of panels
 * keep to the side walls, where their many sheaths stand in one row.
 */
export function planEntries(project: Project, installation: Installation, enclosure: Enclosure): EntryPlan[] {
  const found = [...sheathsOf(installation, enclosure), ...passingSheaths(installation, enclosure)];
  const here = project.layout.enclosures[enclosure.id];
  const intent = installation.intent.boxes[enclosure.id];
  const placed: { plan: EntryPlan; along: number; group: number; index: number }[] = [];
  const count = { left: 0, right: 0 };
  const undecided: typeof placed = [];
  found.forEach((plan, index) => {
    const far = plan.cable.sides[otherSide(plan.side)];
    const there = "enclosure" in far ? project.layout.enclosures[far.enclosure] : undefined;
    const dx = here && there ? there.x - here.x : 0;
    const dy = here && there ? there.y - here.y : 0;
    const protects = intent?.protect?.[plan.cable.id];
    const item = { plan, along: dy / Math.max(Math.abs(dx), CLEARLY_BESIDE), group: protects ? 1 : 0, index };
    placed.push(item);
    const panel =
      enclosure.kind === "panel" || ("enclosure" in far && installation.enclosures[far.enclosure]?.kind === "panel");
    if (!panel && isOverOrUnder(dx, dy)) {
      plan.wall = dy < 0 ? "top" : "bottom";
      // The rows of what goes furthest to the right lie outermost, so that nothing crosses.
      item.along = dy < 0 ? -dx : dx;
    } else if (Math.abs(dx) < CLEARLY_BESIDE) undecided.push(item);
    else {
      plan.wall = plan.flank = dx < 0 ? "left" : "right";
      count[plan.wall] += 1;
    }
  });
  for (const { plan } of undecided) {
    plan.wall = plan.flank = count.left <= count.right ? "left" : "right";
    count[plan.wall] += 1;
  }
  placed.sort(
    (p, q) => wallRank(p.plan) - wallRank(q.plan) || p.along - q.along || p.group - q.group || p.index - q.index,
  );
  const plans = placed.map(({ plan }) => plan);
  giveLanes(plans);
  return plans;
}

function isOverOrUnder(dx: number, dy: number): boolean {
  const { aside, apart, beyond } = OVER_OR_UNDER;
  return Math.abs(dx) < aside && Math.abs(dy) >= apart && Math.abs(dy) < beyond;
}

const UNPLACED = { wall: "left", flank: "left", row: 0, block: 0, lane: 0, shift: 0 } as const;

function sheathsOf(installation: Installation, enclosure: Enclosure): EntryPlan[] {
  return cablesInto(installation.cables, enclosure.id).map(({ cable, side, entry }) => ({
    key: `${cable.id}.${side}`,
    cable,
    side,
    entry,
    conductors: inRows(cable).map(([key, conductor]) => ({ key, conductor, end: cableEnd(cable.id, key, side) })),
    ...UNPLACED,
  }));
}

/** A cable that runs through shows two sheaths, with only the conductors that are said to pass. */
function passingSheaths(installation: Installation, enclosure: Enclosure): EntryPlan[] {
  const plans: EntryPlan[] = [];
  const passes = Object.values(enclosure.passThroughs).sort((a, b) => (a.id < b.id ? -1 : 1));
  for (const pass of passes) {
    const cable = installation.cables[pass.cable];
    if (cable === undefined) continue;
    const wanted = new Set<string>(pass.conductors);
    const conductors = inRows(cable)
      .filter(([key]) => wanted.has(key))
      .map(([key, conductor]) => ({ key, conductor, pass }));
    if (conductors.length === 0) continue;
    for (const [side, entry] of [
      ["a", pass.entryIn],
      ["b", pass.entryOut],
    ] as const)
      plans.push({ key: `${pass.id}.${side}`, cable, side: otherSide(side), entry, conductors, ...UNPLACED });
  }
  return plans;
}

/** Hots, neutrals, grounds from top to bottom; in each the order of the cable. */
const inRows = (cable: Cable): [ConductorKey, Conductor][] =>
  (Object.entries(cable.conductors) as [ConductorKey, Conductor][]).sort(
    ([p, a], [q, b]) => kindOfConductor(a) - kindOfConductor(b) || a.order - b.order || (p < q ? -1 : 1),
  );

/** "12/2" of a stock cable, or its size and number of insulated conductors. */
export function sizeTextOf(cable: Cable): string {
  const item = findCableItem(cable.item);
  if (item !== undefined) return item.sizeText;
  const wires = Object.values(cable.conductors);
  const insulated = wires.filter((wire) => !wire.grounding);
  return wires[0] === undefined ? "" : `${(insulated[0] ?? wires[0]).awg}/${insulated.length}`;
}
