import type { EnclosureId } from "../../model/ids.ts";
import type { Sizes } from "../circuit/grow.ts";
import { type Block, joined } from "./block.ts";
import { placeByCircuit } from "./by-circuit.ts";
import { groupsAmong, type House } from "./house.ts";
import { drawPiece, folded } from "./piece.ts";
import { bestShelves, type Gaps } from "./shelves.ts";

/** Between what hangs together in a room, and between rooms: over a room stands its name, and cables pass. */
const INSIDE: Gaps = { across: 480, down: 340, lane: 48 };
const ROOMS: Gaps = { across: 800, down: 760, lane: 40 };
/** What a further column has to bring on paper. */
const DEARER = 0.02;
/** Boxes in a row of a room, at most. */
const FOLD = 4;

/**
 * The boxes of each room together, what cables join in it side by side; rooms in the order in which circuits reach them
 * from the panel. Boxes of no room come last.
 */
export function* placeByRoom(house: House, sizeOf: Sizes): Generator<undefined, readonly Block[]> {
  const rooms = new Map<string, EnclosureId[]>();
  const nowhere: EnclosureId[] = [];
  for (const id of house.ids) {
    const room = house.roomOf(id);
    if (room === undefined) {
      nowhere.push(id);
      continue;
    }
    const boxes = rooms.get(room);
    if (boxes === undefined) rooms.set(room, [id]);
    else boxes.push(id);
  }
  const blocks: Block[] = [];
  for (const ids of [...rooms.values(), ...(nowhere.length > 0 ? [nowhere] : [])]) {
    const pieces: Block[] = [];
    for (const piece of groupsAmong(house, ids)) {
      if (piece.some(house.isPanel)) pieces.push(joined(yield* placeByCircuit({ ...house, ids: piece }, sizeOf)));
      else pieces.push(folded(drawPiece(house, piece, sizeOf), sizeOf, FOLD));
      yield;
    }
    blocks.push(joined(bestShelves(pieces, INSIDE, DEARER).blocks));
  }
  return bestShelves(blocks, ROOMS, DEARER).blocks;
}
