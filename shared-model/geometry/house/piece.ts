import { Graph, type GraphLabel, layout, type NodeLabel } from "@dagrejs/dagre";
import type { EnclosureId } from "../../model/ids.ts";
import type { Point } from "../../model/project.ts";
import type { Sizes } from "../circuit/grow.ts";
import type { Places } from "../circuit/settle.ts";
import { type Branch, growTree, onPitch } from "../circuit/tree.ts";
import { type Block, blockOf, standing } from "./block.ts";
import type { House } from "./house.ts";

/** Boxes that cables join without leaving them, in the order of the circuit; the first is where they are fed. */
export type Piece = readonly EnclosureId[];

/** Room between boxes: under one stands its fill, over the next its name, beside them run cables. */
const GAP = { down: 300, across: 420 } as const;
/** More than this are ranked by how far they are from the panel alone: a ring in them is rare, and ranking it slow. */
const MOST_RANKED = 240;

/**
 * The boxes of a piece column by column from where it is fed. What hangs together as a tree is drawn as one, in the order
 * of its cables and without a crossing; where cables run in rings, ranks and order are chosen for few crossings.
 */
export function drawPiece(house: House, piece: Piece, sizeOf: Sizes): Places {
  const links = linksOf(house, piece);
  const isTree = links.length === piece.length - 1;
  return isTree || piece.length > MOST_RANKED ? asTree(house, piece, sizeOf) : asRanks(piece, links, sizeOf);
}

type Link = readonly [from: EnclosureId, to: EnclosureId];

/** Cables of a piece from the box nearer to the panel to the one further out, once for each pair. */
function linksOf({ joined, place }: House, piece: Piece): readonly Link[] {
  const members = new Set(piece);
  return piece.flatMap((id) =>
    joined(id).flatMap((far): readonly Link[] =>
      members.has(far) && (place.get(id) ?? 0) < (place.get(far) ?? 0) ? [[id, far]] : [],
    ),
  );
}

function asTree({ joined }: House, piece: Piece, sizeOf: Sizes): Places {
  const [root] = piece;
  if (root === undefined) return new Map();
  const waiting = new Set(piece);
  waiting.delete(root);
  const children = new Map<EnclosureId, EnclosureId[]>();
  const queue: EnclosureId[] = [root];
  for (const id of queue) {
    const mine = joined(id).filter((far) => waiting.delete(far));
    children.set(id, mine);
    queue.push(...mine);
  }
  // Built from the far ends inward: a circuit may be longer than calls can be nested.
  const branches = new Map<EnclosureId, Branch>();
  for (const id of queue.reverse())
    branches.set(id, {
      id,
      rect: sizeOf(id),
      children: (children.get(id) ?? []).flatMap((child) => branches.get(child) ?? []),
    });
  const tree = branches.get(root);
  return tree === undefined ? new Map() : growTree(tree, 1);
}

function asRanks(piece: Piece, links: readonly Link[], sizeOf: Sizes): Places {
  const graph = new Graph<GraphLabel, NodeLabel, object>();
  graph.setGraph({ rankdir: "LR", nodesep: GAP.down, edgesep: 64, ranksep: GAP.across, ranker: "network-simplex" });
  for (const id of piece) {
    const { width, height } = sizeOf(id);
    graph.setNode(id, { width, height });
  }
  for (const [from, to] of links) graph.setEdge(from, to, {});
  layout(graph);
  const columns = new Map<number, number>();
  const cornerOf = (id: EnclosureId): Point => {
    const { width, height } = sizeOf(id);
    const { x = 0, y = 0 } = graph.node(id);
    return { x: x - width / 2, y: y - height / 2 };
  };
  const rankOf = (id: EnclosureId): number => graph.node(id).rank ?? 0;
  for (const id of piece) {
    const { x } = cornerOf(id);
    columns.set(rankOf(id), Math.min(columns.get(rankOf(id)) ?? x, x));
  }
  return new Map(
    piece.map((id) => {
      const rect = sizeOf(id);
      const left = columns.get(rankOf(id)) ?? 0;
      return [id, { x: onPitch(left - rect.x), y: onPitch(cornerOf(id).y - rect.y) }];
    }),
  );
}

/**
 * A long piece laid back and forth, so that no row has more columns than asked; where several boxes stand side by side at
 * a turn it goes on straight.
 */
export function folded(places: Places, sizeOf: Sizes, most: number): Block {
  const columns = columnsOf(places, sizeOf);
  const rows: (readonly Column[])[] = [];
  let row: Column[] = [];
  columns.forEach((column, i) => {
    row.push(column);
    const next = columns[i + 1];
    if (row.length < most || column.ids.length > 1 || next === undefined || next.ids.length > 1) return;
    rows.push(row);
    row = [];
  });
  if (row.length > 0) rows.push(row);
  if (rows.length < 2) return blockOf(places, sizeOf);
  const done = new Map<EnclosureId, Point>();
  const areas = rows.map((each) =>
    blockOf(new Map(each.flatMap(({ ids }) => ids.map((id) => [id, at(places, id)]))), sizeOf),
  );
  // A row begins under the end of the one over it: aside of that, the cable that feeds it crosses those that go on from it.
  let [turn, y] = [0, 0];
  areas.forEach(({ places: own, area }, i) => {
    const back = i % 2 === 1;
    for (const [id, point] of own) {
      const rect = standing(sizeOf(id), point);
      const x = back ? turn - (rect.x - area.x) - rect.width : turn + rect.x - area.x;
      done.set(id, { x: onPitch(x - sizeOf(id).x), y: onPitch(point.y - area.y + y) });
    }
    turn += back ? -area.width : area.width;
    y += area.height + GAP.down;
  });
  return blockOf(done, sizeOf);
}

interface Column {
  readonly left: number;
  readonly ids: EnclosureId[];
}

const at = (places: Places, id: EnclosureId): Point => places.get(id) ?? { x: 0, y: 0 };

/** Boxes whose left edges stand on one line, to a pitch or two, from left to right. */
function columnsOf(places: Places, sizeOf: Sizes): readonly Column[] {
  const lefts = [...places].map(([id, { x }]) => ({ id, left: x + sizeOf(id).x })).sort((p, q) => p.left - q.left);
  const columns: Column[] = [];
  for (const { id, left } of lefts) {
    const column = columns[columns.length - 1];
    if (column !== undefined && left - column.left <= SAME) column.ids.push(id);
    else columns.push({ left, ids: [id] });
  }
  return columns;
}

const SAME = 48;
