import { findCableItem } from "../../catalog/cable-items.ts";
import type { Cable, Conductor } from "../../model/cable.ts";
import type { Enclosure, PassThrough } from "../../model/enclosure.ts";
import { type ConductorKey, cableEnd, type EndKey, type EntryId, otherSide, type Side } from "../../model/ids.ts";
import type { Installation, Project } from "../../model/project.ts";
import { cablesInto } from "../../queries/cables-into.ts";

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
  wall: "left" | "right";
  /** Rows: that of its first conductor. */
  row: number;
}

/** Least distance, across the sheet, at which the other end of a cable decides the wall. */
const CLEARLY_BESIDE = 240;

const rankOf = (conductor: Conductor): number =>
  conductor.grounding ? 2 : conductor.colour === "white" || conductor.colour === "grey" ? 1 : 0;

/**
 * Sheaths of an enclosure with the wall that each enters by, in order along the wall. The wall is the side facing the
 * other end of the cable; where that says nothing, sheaths fill the emptier wall in the order they were drawn, so that
 * a further cable moves none. Only the two side walls are used: a sheath carries its words level, and its conductors
 * arrive on rows.
 */
export function planEntries(project: Project, installation: Installation, enclosure: Enclosure): EntryPlan[] {
  const found = [...sheathsOf(installation, enclosure), ...passingSheaths(installation, enclosure)];
  const here = project.layout.enclosures[enclosure.id];
  const intent = installation.intent.boxes[enclosure.id];
  const placed: { plan: EntryPlan; slope: number; group: number; index: number }[] = [];
  const count = { left: 0, right: 0 };
  const undecided: typeof placed = [];
  found.forEach((plan, index) => {
    const far = plan.cable.sides[otherSide(plan.side)];
    const there = "enclosure" in far ? project.layout.enclosures[far.enclosure] : undefined;
    const dx = here && there ? there.x - here.x : 0;
    const dy = here && there ? there.y - here.y : 0;
    const protects = intent?.protect?.[plan.cable.id];
    const item = { plan, slope: dy / Math.max(Math.abs(dx), CLEARLY_BESIDE), group: protects ? 1 : 0, index };
    placed.push(item);
    if (Math.abs(dx) < CLEARLY_BESIDE) undecided.push(item);
    else {
      plan.wall = dx < 0 ? "left" : "right";
      count[plan.wall] += 1;
    }
  });
  for (const { plan } of undecided) {
    plan.wall = count.left <= count.right ? "left" : "right";
    count[plan.wall] += 1;
  }
  placed.sort((p, q) => p.slope - q.slope || p.group - q.group || p.index - q.index);
  return placed.map(({ plan }) => plan);
}

function sheathsOf(installation: Installation, enclosure: Enclosure): EntryPlan[] {
  return cablesInto(installation.cables, enclosure.id).map(({ cable, side, entry }) => ({
    key: `${cable.id}.${side}`,
    cable,
    side,
    entry,
    conductors: inRows(cable).map(([key, conductor]) => ({ key, conductor, end: cableEnd(cable.id, key, side) })),
    wall: "left" as const,
    row: 0,
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
      plans.push({ key: `${pass.id}.${side}`, cable, side: otherSide(side), entry, conductors, wall: "left", row: 0 });
  }
  return plans;
}

/** Hots, neutrals, grounds from top to bottom; in each the order of the cable. */
const inRows = (cable: Cable): [ConductorKey, Conductor][] =>
  (Object.entries(cable.conductors) as [ConductorKey, Conductor][]).sort(
    ([p, a], [q, b]) => rankOf(a) - rankOf(b) || a.order - b.order || (p < q ? -1 : 1),
  );

/** "12/2" of a stock cable, or its size and number of insulated conductors. */
export function sizeTextOf(cable: Cable): string {
  const item = findCableItem(cable.item);
  if (item !== undefined) return item.sizeText;
  const wires = Object.values(cable.conductors);
  const insulated = wires.filter((wire) => !wire.grounding);
  return wires[0] === undefined ? "" : `${(insulated[0] ?? wires[0]).awg}/${insulated.length}`;
}
