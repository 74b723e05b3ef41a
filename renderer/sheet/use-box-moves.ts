import type { NodeChange, OnNodeDrag, OnNodesChange } from "@xyflow/react";
import { useMemo } from "react";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { dispatch, documentStore } from "../state/document-store.ts";
import type { Selected } from "../state/selection.ts";
import { notify, sessionStore } from "../state/session-store.ts";
import { drawingOf } from "./drawings.ts";
import { gestureStore, stopMoving } from "./gesture-store.ts";
import type { BoxFlowNode } from "./to-flow.ts";

/** Boxes land on the pitch of the drawing, so that stubs of boxes side by side meet straight. */
const PITCH = 16;
const snap = (value: number): number => Math.round(value / PITCH) * PITCH;

/** Selecting and dragging boxes. While a drag lasts only the session knows; its end is one command. */
export function useBoxMoves() {
  return useMemo(() => ({ onNodesChange, onNodeDragStop: drop, onSelectionDragStop: dropSelection }), []);
}

const onNodesChange: OnNodesChange<BoxFlowNode> = (changes) => {
  choose(changes);
  const moving = new Map(gestureStore.get().moving);
  let moved = false;
  for (const change of changes) {
    if (change.type !== "position" || change.position === undefined || change.dragging !== true) continue;
    const id = change.id as EnclosureId;
    const bounds = drawingOf(documentStore.get(), id)?.bounds;
    if (bounds === undefined) continue;
    moving.set(id, { x: snap(change.position.x - bounds.x), y: snap(change.position.y - bounds.y) });
    moved = true;
  }
  if (moved) gestureStore.merge({ moving });
};

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
  const { moving } = gestureStore.get();
  const { enclosures } = documentStore.get().project.layout;
  const moves = [...moving].flatMap(([id, to]) => {
    const before = enclosures[id];
    return before !== undefined && before.x === to.x && before.y === to.y ? [] : [{ id, to }];
  });
  move(moves);
  stopMoving();
}

function move(moves: readonly { readonly id: EnclosureId; readonly to: Point }[]): void {
  if (moves.length === 0) return;
  const done = dispatch({ command: "move-enclosures", args: { moves } });
  if (!done.ok) notify("problem", "The boxes stay where they were", [done.refusal.message]);
}

/** Moves boxes by whole pitches, for arrow keys. */
export function nudge(ids: readonly EnclosureId[], dx: number, dy: number): void {
  const { enclosures } = documentStore.get().project.layout;
  move(
    ids.flatMap((id) => {
      const at = enclosures[id];
      return at === undefined ? [] : [{ id, to: { x: at.x + dx * PITCH, y: at.y + dy * PITCH } }];
    }),
  );
}
