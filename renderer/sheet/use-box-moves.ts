import type { NodeChange, OnNodeDrag, OnNodesChange } from "@xyflow/react";
import { useMemo } from "react";
import type { Rect } from "../../shared-model/geometry/box-drawing.ts";
import { hull } from "../../shared-model/geometry/free-group-place.ts";
import { snapMove } from "../../shared-model/geometry/snap.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { moveBoxes } from "../state/arranging.ts";
import { type DocumentState, documentStore, shownInstallation } from "../state/document-store.ts";
import type { Selected } from "../state/selection.ts";
import { sessionStore } from "../state/session-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { frameOf, magnification } from "./box-frame.ts";
import { knownDrawingOf } from "./drawings.ts";
import { gestureStore, stopMoving } from "./gesture-store.ts";
import { altIsDown } from "./held-keys.ts";
import { isOpen } from "./open-boxes.ts";
import { viewNow, zoomNow } from "./sheet-view.ts";
import type { BoxFlowNode } from "./to-flow.ts";

/** Pixels at which a line of a neighbour is near enough, and drawing units in which a box is a neighbour. */
const REACH = 6;
const AROUND = 2400;

/** Selecting and dragging boxes. While a drag lasts only the session knows; its end is one command. */
export function useBoxMoves() {
  return useMemo(
    () => ({
      onNodesChange,
      onNodeDragStart: begin,
      onSelectionDragStart: begin,
      onNodeDragStop: drop,
      onSelectionDragStop: dropSelection,
    }),
    [],
  );
}

/** Set when a drag was given up: what the flow still tells of it is nobody's wish. */
let abandoned = false;

function begin(): void {
  abandoned = false;
}

/** Boxes on the move go back; the drag goes on for the flow, and moves nothing more. */
export function abandonMoves(): void {
  if (gestureStore.get().moving.size === 0) return;
  abandoned = true;
  walls = undefined;
  stopMoving();
}

const onNodesChange: OnNodesChange<BoxFlowNode> = (changes) => {
  choose(changes);
  const raw = draggedTo(changes);
  if (raw.size > 0 && !abandoned) lead(raw);
};

/** Where the pointer has taken boxes, by their places. */
function draggedTo(changes: readonly NodeChange<BoxFlowNode>[]): ReadonlyMap<EnclosureId, Point> {
  const raw = new Map<EnclosureId, Point>();
  for (const change of changes) {
    if (change.type !== "position" || change.position === undefined || change.dragging !== true) continue;
    const id = change.id as EnclosureId;
    const drawing = knownDrawingOf(documentStore.get(), id);
    if (drawing === undefined) continue;
    const frame = frameOf(drawing, isOpen(id) ? magnification(drawing, viewNow()) : 1);
    raw.set(id, { x: change.position.x - frame.x, y: change.position.y - frame.y });
  }
  return raw;
}

/** Boxes that are moved together keep their places among each other: one way for all, clicked into place as one. */
function lead(raw: ReadonlyMap<EnclosureId, Point>): void {
  const now = documentStore.get();
  const places = placesOf(now);
  const [first] = raw;
  const from = first && places[first[0]];
  if (first === undefined || from === undefined) return;
  const way = { x: first[1].x - from.x, y: first[1].y - from.y };
  const { by, guides, gaps } = altIsDown()
    ? { by: rounded(way), guides: [], gaps: [] }
    : snapped(now, new Set(raw.keys()), way);
  const moving = new Map<EnclosureId, Point>();
  for (const id of raw.keys()) {
    const at = places[id];
    if (at !== undefined) moving.set(id, { x: at.x + by.x, y: at.y + by.y });
  }
  gestureStore.merge({ moving, guides, gaps });
}

const rounded = ({ x, y }: Point): Point => ({ x: Math.round(x), y: Math.round(y) });

function snapped(now: DocumentState, ids: ReadonlySet<EnclosureId>, way: Point) {
  const { held, staying } = wallsFor(now, ids);
  const near = staying.filter(
    (rect) => Math.abs(rect.x - held.x - way.x) < AROUND && Math.abs(rect.y - held.y - way.y) < AROUND,
  );
  return snapMove(held, way, near, REACH / zoomNow());
}

interface DragWalls {
  readonly document: DocumentState;
  readonly key: string;
  readonly held: Rect;
  readonly staying: readonly Rect[];
}

let walls: DragWalls | undefined;

/** Walls of what moves and of what stays; the same all through a drag. */
function wallsFor(document: DocumentState, ids: ReadonlySet<EnclosureId>): DragWalls {
  const key = [...ids].join(" ");
  if (walls?.document === document && walls.key === key) return walls;
  const places = placesOf(document);
  const moving: Rect[] = [];
  const staying: Rect[] = [];
  for (const id of Object.keys(shownInstallation().enclosures) as EnclosureId[]) {
    const at = places[id];
    const drawing = knownDrawingOf(document, id);
    if (at === undefined || drawing === undefined) continue;
    (ids.has(id) ? moving : staying).push({ ...at, width: drawing.width, height: drawing.height });
  }
  walls = { document, key, held: hull(moving), staying };
  return walls;
}

/** Boxes join and leave the selection; what else is selected makes way. */
function choose(changes: readonly NodeChange<BoxFlowNode>[]): void {
  if (!changes.some((change) => change.type === "select")) return;
  const { selection } = sessionStore.get();
  const boxes = new Set<string>(selection.flatMap((each) => (each.kind === "enclosure" ? [each.id] : [])));
  let added = false;
  for (const change of changes) {
    if (change.type !== "select") continue;
    if (change.selected) {
      boxes.add(change.id);
      added = true;
    } else boxes.delete(change.id);
  }
  const chosen = [...boxes].map((id): Selected => ({ kind: "enclosure", id: id as EnclosureId }));
  const others = added ? [] : selection.filter((each) => each.kind !== "enclosure");
  sessionStore.merge({ selection: [...others, ...chosen] });
}

const drop: OnNodeDrag<BoxFlowNode> = () => commitMoves();
const dropSelection = (): void => commitMoves();

function commitMoves(): void {
  abandoned = false;
  const { moving } = gestureStore.get();
  const places = placesOf(documentStore.get());
  moveBoxes(
    [...moving].flatMap(([id, to]) => {
      const before = places[id];
      return before !== undefined && before.x === to.x && before.y === to.y ? [] : [{ id, to }];
    }),
  );
  walls = undefined;
  stopMoving();
}
