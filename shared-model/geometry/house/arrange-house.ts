import type { EnclosureId } from "../../model/ids.ts";
import type { Installation, Point, Project } from "../../model/project.ts";
import type { BoxMove } from "../arrange.ts";
import type { Rect } from "../box-drawing.ts";
import type { Sizes } from "../circuit/grow.ts";
import { type InSteps, type Placing, settle } from "../circuit/settle.ts";
import { slideClear } from "../circuit/slide-clear.ts";
import { hull } from "../free-group-place.ts";
import { roomOf } from "../free-place.ts";
import { type Block, moved, standing } from "./block.ts";
import { placeByCircuit } from "./by-circuit.ts";
import { placeByRoom } from "./by-room.ts";
import { type House, houseOf } from "./house.ts";
import { roomySize } from "./roomy-size.ts";

export type HouseOrder = "by-circuit" | "by-room";

/** What of a house is arranged, and how. */
export interface ArrangeAsk {
  readonly order: HouseOrder;
  /** Absent: every box that is shown. */
  readonly only?: readonly EnclosureId[];
  /** What is drawn of boxes as they stand now, relative to their places, where that is known. */
  readonly sizes?: ReadonlyMap<EnclosureId, Rect>;
}

/** Up to so many boxes are drawn where they come to stand; of more, what they measured before counts. */
const DRAWN = 120;

/**
 * Moves that arrange a house, or a part of it, as a tidy person would draw it: on the pitch of the drawing, no box on
 * another, panels to the left of what they feed, and of a shape that fits paper. Boxes that a person has pinned stay, and
 * so do those that are not asked for; what is arranged keeps clear of them. Without either, where the boxes stood before
 * has no say.
 * @param project Its layout names a place for every box of the installation.
 */
export function* arrangeHouse(
  project: Project,
  installation: Installation,
  { order, only, sizes = new Map() }: ArrangeAsk,
): InSteps<readonly BoxMove[]> {
  const wanted = new Set(only ?? (Object.keys(installation.enclosures) as EnclosureId[]));
  const house = houseOf(project, installation, wanted);
  const pinned = new Set(house.ids.filter((id) => project.layout.pinned?.[id] === true));
  if (house.ids.length === pinned.size) return [];
  const few = house.ids.length <= DRAWN;
  const known = few ? undefined : new Map(house.ids.map((id) => [id, roomySize(installation, id, sizes.get(id))]));
  // What stays is drawn otherwise once boxes that it is joined to have moved, and may take more room.
  const beside = few ? standingBeside(house, wanted) : [];
  const still = new Set([...pinned, ...beside]);
  const others = standingOthers(project, installation, wanted, still, sizes);
  const takenBy = (sizeOf: Sizes): readonly Rect[] => [
    ...others,
    ...[...still].map((id) => standing(sizeOf(id), project.layout.enclosures[id] ?? { x: 0, y: 0 })),
  ];
  const anchor = anchorOf(project, house, pinned, only !== undefined, sizes);
  const place = (sizeOf: Sizes): Placing => placed(house, order, sizeOf, anchor, takenBy(sizeOf), pinned);
  const { places } = yield* settle(project, installation, few ? [...house.ids, ...beside] : [], place, known);
  return [...places].flatMap(([id, to]) => {
    const at = project.layout.enclosures[id];
    return at?.x === to.x && at.y === to.y ? [] : [{ id, to }];
  });
}

function* placed(
  house: House,
  order: HouseOrder,
  sizeOf: Sizes,
  anchor: Anchor,
  taken: readonly Rect[],
  pinned: ReadonlySet<EnclosureId>,
): Placing {
  const blocks = yield* order === "by-room" ? placeByRoom(house, sizeOf) : placeByCircuit(house, sizeOf);
  const origin = originOf(blocks, anchor, sizeOf);
  const places = new Map<EnclosureId, Point>();
  const rects: Rect[] = [...taken];
  for (const block of blocks) {
    const there = moved(block, origin.x, origin.y);
    const free = [...there.places].filter(([id]) => !pinned.has(id));
    const parts = free.map(([id, at]) => standing(sizeOf(id), at));
    const down = taken.length === 0 ? 0 : slideClear(parts, rects);
    for (const [id, { x, y }] of free) places.set(id, { x, y: y + down });
    if (taken.length > 0 && parts.length > 0) rects.push(...parts.map((rect) => ({ ...rect, y: rect.y + down })));
  }
  return places;
}

/** What decides where the whole comes to stand: a box that stays, or the corner of what was selected. */
type Anchor = { readonly id: EnclosureId; readonly at: Point } | { readonly corner: Point };

function anchorOf(
  { layout }: Project,
  house: House,
  pinned: ReadonlySet<EnclosureId>,
  part: boolean,
  sizes: ReadonlyMap<EnclosureId, Rect>,
): Anchor {
  const fixed = house.ids.find((id) => pinned.has(id));
  if (fixed !== undefined) return { id: fixed, at: layout.enclosures[fixed] ?? { x: 0, y: 0 } };
  if (!part) return { corner: { x: 0, y: 0 } };
  const rects = house.ids.map((id) =>
    standing(sizes.get(id) ?? { x: 0, y: 0, width: 0, height: 0 }, layout.enclosures[id] ?? { x: 0, y: 0 }),
  );
  const { x, y } = hull(rects);
  return { corner: { x, y } };
}

function originOf(blocks: readonly Block[], anchor: Anchor, _sizeOf: Sizes): Point {
  if ("corner" in anchor) {
    const { x, y } = hull(blocks.map(({ area }) => area));
    return { x: anchor.corner.x - x, y: anchor.corner.y - y };
  }
  for (const { places } of blocks) {
    const at = places.get(anchor.id);
    if (at !== undefined) return { x: anchor.at.x - at.x, y: anchor.at.y - at.y };
  }
  return { x: 0, y: 0 };
}

/** Boxes that stay and that cables join to those that are arranged. */
function standingBeside(
  { installation, ids, joined }: House,
  wanted: ReadonlySet<EnclosureId>,
): readonly EnclosureId[] {
  const far = new Set(ids.flatMap((id) => joined(id)));
  return [...far].filter((id) => !wanted.has(id) && id in installation.enclosures);
}

/** What stays and is not drawn anew, in both states: they share the sheet. */
function standingOthers(
  project: Project,
  shown: Installation,
  wanted: ReadonlySet<EnclosureId>,
  still: ReadonlySet<EnclosureId>,
  sizes: ReadonlyMap<EnclosureId, Rect>,
): readonly Rect[] {
  const rects: Rect[] = [];
  const done = new Set<EnclosureId>();
  for (const installation of [shown, project.asFound, project.proposed]) {
    for (const { id, kind } of Object.values(installation?.enclosures ?? {})) {
      const at = project.layout.enclosures[id];
      if (at === undefined || done.has(id)) continue;
      done.add(id);
      if (wanted.has(id) || still.has(id)) continue;
      const size = sizes.get(id);
      rects.push(size === undefined ? roomOf(kind, at) : standing(size, at));
    }
  }
  return rects;
}
