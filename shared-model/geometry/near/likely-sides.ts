import type { Cable } from "../../model/cable.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import { type CableId, type Side as CableSide, type EndKey, otherSide, parseEnd } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { cablesInto, enclosureAtSide } from "../../queries/cables-into.ts";
import { farEnd } from "../../queries/end-facts.ts";
import { landingsOf } from "../../queries/landings.ts";
import { findTerminal } from "../../queries/terminals-of.ts";
import { kindOfEnd } from "./box-plan.ts";
import { type DeviceSide, hasLoadSide } from "./open-terminals.ts";

/** For each cable of a box the side of its protecting device that its hot and neutral belong to. */
export type Sides = (cable: CableId) => DeviceSide;

type Side = Exclude<DeviceSide, undefined>;

/**
 * Which cables feed a protecting device and which it protects. What the box's owner wished comes first, then what is landed:
 * cables whose hots or neutrals are joined belong together. While nothing is known the supply is the cable from a panel, or
 * the first, and all others are to be protected: that is what the second pair of terminals is for.
 */
export function likelySides(installation: Installation, box: Enclosure): Sides {
  if (!hasLoadSide(box)) return () => undefined;
  const groups = groupsOf(installation, box);
  const known = new Map(groups.map((group) => [group, sideOf(installation, box, group)]));
  const sides = new Set([...known.values()]);
  const feeding = sides.has("LINE") ? undefined : feedingGroup(installation, box, groups, known);
  const wished = Object.values(installation.intent.boxes[box.id]?.protect ?? {}).includes(true);
  const rest: Side = wished ? "LINE" : "LOAD";
  const byCable = new Map(
    groups.flatMap((group) => {
      const side = known.get(group) ?? (group === feeding ? "LINE" : rest);
      return [...group.cables].map((cable) => [cable, side] as const);
    }),
  );
  return (cable) => byCable.get(cable) ?? "LINE";
}

/** Cables whose hots or neutrals meet in joints, and where those joints are led. */
interface Group {
  readonly cables: ReadonlySet<CableId>;
  readonly landedOn: ReadonlySet<Side>;
}

function groupsOf(installation: Installation, box: Enclosure): readonly Group[] {
  const single = cablesInto(installation.cables, box.id).map(({ cable }) => new Set([cable.id]));
  let sets: readonly ReadonlySet<CableId>[] = single;
  const led: { readonly cables: ReadonlySet<CableId>; readonly side: Side }[] = [];
  for (const ends of meetings(box)) {
    const live = ends.filter((end) => kindOfEnd(box, installation, end) !== 2);
    const met = new Set(live.flatMap((end) => cableOf(end) ?? []));
    const touching = sets.filter((set) => [...set].some((cable) => met.has(cable)));
    const joined = new Set(touching.flatMap((set) => [...set]));
    sets = [...sets.filter((set) => !touching.includes(set)), ...(joined.size > 0 ? [joined] : [])];
    for (const end of live) {
      const side = sideLandedOn(box, end) ?? sideLandedOn(box, farEnd(end));
      if (side !== undefined) led.push({ cables: met, side });
    }
  }
  return sets.map((cables) => ({
    cables,
    landedOn: new Set(led.flatMap((each) => ([...each.cables].some((cable) => cables.has(cable)) ? [each.side] : []))),
  }));
}

/** Ends that lie together: in each splice, on each terminal. */
const meetings = (box: Enclosure): readonly (readonly EndKey[])[] => {
  const { bySplice, byTerminal } = landingsOf(box);
  return [...bySplice.values(), ...[...byTerminal.values()].map((landings) => landings.map(({ end }) => end))];
};

const cableOf = (end: EndKey): CableId | undefined => {
  const parsed = parseEnd(end);
  return parsed?.of === "cable" ? parsed.cable : undefined;
};

/** The side of the terminal that an end lies on; the far end of a jumper tells for the joint that it comes from. */
function sideLandedOn(box: Enclosure, end: EndKey): Side | undefined {
  const at = box.places[end]?.at;
  if (at?.kind !== "terminal") return undefined;
  const device = box.devices[at.device];
  const group = device && findTerminal(device, at.terminal)?.group;
  return group === "LINE" || group === "LOAD" ? group : undefined;
}

function sideOf({ intent }: Installation, { id }: Enclosure, { cables, landedOn }: Group): Side | undefined {
  const wishes = [...cables].map((cable) => intent.boxes[id]?.protect?.[cable]);
  if (wishes.includes(true)) return "LOAD";
  if (wishes.includes(false)) return "LINE";
  return landedOn.has("LOAD") ? "LOAD" : landedOn.has("LINE") ? "LINE" : undefined;
}

/** Of the cables of which nothing is known, those with the supply among them. */
function feedingGroup(
  installation: Installation,
  box: Enclosure,
  groups: readonly Group[],
  known: ReadonlyMap<Group, Side | undefined>,
): Group | undefined {
  const open = groups.filter((group) => known.get(group) === undefined);
  const cables = cablesInto(installation.cables, box.id).filter(({ cable }) =>
    open.some((group) => group.cables.has(cable.id)),
  );
  const supply = cables.find(({ cable, side }) => isFromPanel(installation, cable, side)) ?? cables[0];
  return open.find((group) => supply !== undefined && group.cables.has(supply.cable.id));
}

/** Whether a cable comes from a panel to the box at one of its sides. */
export const isFromPanel = (installation: Installation, cable: Cable, side: CableSide): boolean =>
  enclosureAtSide(installation, cable, otherSide(side))?.kind === "panel";
