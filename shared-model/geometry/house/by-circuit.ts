import type { EnclosureId } from "../../model/ids.ts";
import type { Sizes } from "../circuit/grow.ts";
import type { Places } from "../circuit/settle.ts";
import { type Block, blockOf, joined, mirrored, moved, movedTo } from "./block.ts";
import { groupsAmong, type House } from "./house.ts";
import { scaleOnPaper } from "./paper.ts";
import { drawPiece, folded, type Piece } from "./piece.ts";
import { bestShelves, type Gaps } from "./shelves.ts";
import { NO_SLOT, slotsOf } from "./slots.ts";

/** Between circuits of a panel, and between what no cable joins. */
const CIRCUITS: Gaps = { across: 560, down: 300, lane: 48 };
const GROUPS: Gaps = { across: 480, down: 480, lane: 0 };
/** Between a panel and its circuits: every cable has a lane there. */
const PANEL = { least: 320, lane: 40, most: 1280 } as const;
/** Columns of boxes after which a circuit may turn back. */
const FOLDS = [Number.POSITIVE_INFINITY, 10, 8, 6, 5, 4] as const;
/**
 * What each has to bring on paper: a further turn of circuits, circuits on both sides of the panel, where nobody looks for
 * them first, and a further column of circuits, whose cables cross others.
 */
const DEARER = { fold: 0.06, side: 0.12, column: 0.6, group: 0.05 } as const;

/**
 * Every circuit in a band of its own, in order along the circuit, beside the panel that feeds it; a panel fed by another
 * stands where its feeder comes, with its own circuits beside it.
 */
export function* placeByCircuit(house: House, sizeOf: Sizes): Generator<undefined, readonly Block[]> {
  const left = new Set(house.ids);
  const blocks: Block[] = [];
  for (const start of house.ids) {
    if (!left.has(start)) continue;
    if (house.isPanel(start)) blocks.push(yield* panelBlock(house, start, left, sizeOf));
    else blocks.push(bestFold(yield* drawn(house, circuitFrom(house, start, left), sizeOf), sizeOf));
  }
  return bestShelves(blocks, GROUPS, DEARER.group).blocks;
}

/** A panel with everything that it feeds and that has no place yet. */
function* panelBlock(
  house: House,
  panel: EnclosureId,
  left: Set<EnclosureId>,
  sizeOf: Sizes,
): Generator<undefined, Block> {
  left.delete(panel);
  const circuits: { readonly places: Places; readonly slot: number }[] = [];
  const fed: Block[] = [];
  const panels: EnclosureId[] = [];
  const slots = slotsOf(house, panel);
  const feeds = [...house.joined(panel)].sort((a, b) => (slots.get(a) ?? NO_SLOT) - (slots.get(b) ?? NO_SLOT));
  for (const far of feeds) {
    if (!left.has(far)) continue;
    if (house.isPanel(far)) {
      panels.push(far);
      continue;
    }
    const circuit = circuitFrom(house, far, left);
    circuits.push({ places: yield* drawn(house, circuit, sizeOf), slot: slots.get(far) ?? NO_SLOT });
    for (const id of circuit) panels.push(...house.joined(id).filter((each) => left.has(each) && house.isPanel(each)));
  }
  for (const each of panels) if (left.has(each)) fed.push(yield* panelBlock(house, each, left, sizeOf));
  const own = blockOf(new Map([[panel, { x: 0, y: 0 }]]), sizeOf);
  if (circuits.length + fed.length === 0) return own;
  let best: Tried | undefined;
  let before = "";
  FOLDS.forEach((most, i) => {
    const bands = circuits.map(({ places, slot }): Band => ({ block: folded(places, sizeOf, most), slot }));
    const all = [...bands, ...fed.map((block): Band => ({ block, slot: NO_SLOT }))];
    const blocks = all.map(({ block }) => block);
    const sizes = blocks.map(({ area }) => `${area.width} ${area.height}`).join();
    if (sizes === before) return;
    before = sizes;
    for (const tried of [toTheRight(own, blocks), onBothSides(own, all, sizeOf)]) {
      const worth = tried.worth / (1 + DEARER.fold * i);
      if (best === undefined || worth > best.worth * 1.001) best = { ...tried, worth };
    }
  });
  return best?.block ?? own;
}

interface Tried {
  readonly block: Block;
  readonly worth: number;
}

const gapFor = (cables: number): number => Math.min(PANEL.most, PANEL.least + PANEL.lane * (cables - 1));

/** Circuits to the right of their panel. */
function toTheRight(own: Block, blocks: readonly Block[]): Tried {
  const gap = gapFor(blocks.length);
  const beside = { width: own.area.width + gap, height: own.area.height };
  const { blocks: shelved, height, worth } = bestShelves(blocks, CIRCUITS, DEARER.column, beside);
  const right = own.area.x + own.area.width + gap;
  const top = own.area.y + own.area.height / 2 - height / 2;
  return { block: joined([own, ...shelved.map((block) => moved(block, right, top))]), worth };
}

/** Even spaces of a panel are on its right, odd ones on its left: their circuits stand on the same sides. */
function onBothSides(own: Block, bands: readonly Band[], sizeOf: Sizes): Tried {
  if (bands.length < 2) return { block: own, worth: 0 };
  const [rightward, leftward] = partedBySide(bands);
  const gap = gapFor(Math.max(rightward.length, leftward.length));
  const column = (part: readonly Block[]): readonly Block[] => {
    const height = part.reduce((sum, { area }) => sum + area.height + CIRCUITS.down, -CIRCUITS.down);
    let y = own.area.y + own.area.height / 2 - height / 2;
    return part.map((block) => {
      const there = movedTo(block, { x: own.area.x + own.area.width + gap, y });
      y += block.area.height + CIRCUITS.down;
      return there;
    });
  };
  const right = column(rightward);
  const left = column(leftward).map((block) => {
    const turned = mirrored(block, sizeOf);
    return movedTo(turned, { x: own.area.x - gap - turned.area.width, y: turned.area.y });
  });
  const block = joined([own, ...right, ...left]);
  return { block, worth: scaleOnPaper(block.area) / (1 + DEARER.side) };
}

/** Bands for the right and for the left side; those of no space go where less stands. */
function partedBySide(bands: readonly Band[]): readonly [right: readonly Block[], left: readonly Block[]] {
  const sides: readonly [Block[], Block[]] = [[], []];
  const heights = [0, 0];
  const add = (side: 0 | 1, block: Block): void => {
    sides[side].push(block);
    heights[side] = (heights[side] ?? 0) + block.area.height + CIRCUITS.down;
  };
  for (const { block, slot } of bands) if (slot !== NO_SLOT) add(slot % 2 === 0 ? 0 : 1, block);
  for (const { block, slot } of bands) if (slot === NO_SLOT) add((heights[0] ?? 0) <= (heights[1] ?? 0) ? 0 : 1, block);
  return sides;
}

/** A circuit in its band, and the space of the breaker that feeds it. */
interface Band {
  readonly block: Block;
  readonly slot: number;
}

/** Boxes that hang together without passing a panel, taken out of those that have no place yet. */
function circuitFrom(house: House, start: EnclosureId, left: Set<EnclosureId>): Piece {
  const boxes = [...left].filter((id) => !house.isPanel(id));
  // The box next to the panel comes first in any group that has it.
  const [circuit = [start]] = groupsAmong(house, [start, ...boxes.filter((id) => id !== start)]);
  for (const id of circuit) left.delete(id);
  return circuit;
}

function* drawn(house: House, piece: Piece, sizeOf: Sizes): Generator<undefined, Places> {
  const places = drawPiece(house, piece, sizeOf);
  yield;
  return places;
}

/** A circuit without a panel, laid back and forth or not, whichever comes out larger on paper. */
function bestFold(places: Places, sizeOf: Sizes): Block {
  let best = blockOf(places, sizeOf);
  let most = scaleOnPaper(best.area);
  FOLDS.forEach((columns, i) => {
    const tried = folded(places, sizeOf, columns);
    const worth = scaleOnPaper(tried.area) / (1 + DEARER.fold * i);
    if (worth > most * 1.001) [best, most] = [tried, worth];
  });
  return best;
}
