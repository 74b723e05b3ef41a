import {
  type Alignment,
  align,
  type BoxMove,
  distribute,
  type StandingBox,
} from "../../shared-model/geometry/arrange.ts";
import { type InSteps, withPlaces } from "../../shared-model/geometry/circuit/settle.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import { layOutCircuit, layOutEverything } from "../../shared-model/geometry/lay-out.ts";
import { PITCH } from "../../shared-model/geometry/metrics.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point, Project } from "../../shared-model/model/project.ts";
import { type DocumentState, dispatch, documentStore, installationOf, shownInstallation } from "./document-store.ts";
import { layOut } from "./laying-out.ts";
import { notify, sessionStore } from "./session-store.ts";
import { placesOf } from "./sheet-places.ts";

/** The selected boxes and panels, in the order in which they were selected. */
export const selectedBoxes = (): readonly EnclosureId[] =>
  sessionStore.get().selection.flatMap((each) => (each.kind === "enclosure" ? [each.id] : []));

export const ALIGNMENT_WORDS: Readonly<Record<Alignment, string>> = {
  left: "Left edges on one line",
  right: "Right edges on one line",
  top: "Upper edges on one line",
  bottom: "Lower edges on one line",
  "middles-upright": "Middles under each other",
  "middles-level": "Middles beside each other",
};

export const DISTRIBUTE_WORDS = { across: "Even gaps across", down: "Even gaps down" } as const;
export type Axis = keyof typeof DISTRIBUTE_WORDS;

/** Moves boxes so that their walls lie on one line, as one step. Fewer than two stay. */
export const alignBoxes = (ids: readonly EnclosureId[], how: Alignment): boolean =>
  arrange(ids, (boxes) => align(boxes, how), `Align ${ids.length} boxes`);

/** Moves boxes so that the gaps between them are even, as one step. Fewer than three stay. */
export const distributeBoxes = (ids: readonly EnclosureId[], axis: Axis): boolean =>
  arrange(ids, (boxes) => distribute(boxes, axis), `Space ${ids.length} boxes`);

/** Lays out the circuit of a box as one step; see `layOutCircuit`. */
export function layOutCircuitOf(id: EnclosureId): void {
  const name = shownInstallation().enclosures[id]?.name ?? "";
  layOutInSlices(`Lay out the circuit of ${name}`, (now) => layOutCircuit(placed(now), installationOf(now), id));
}

/** Lays out the whole drawing as one step. */
export const layOutAll = (): void =>
  layOutInSlices("Lay out everything", (now) => layOutEverything(placed(now), installationOf(now)));

/** Moves boxes by whole pitches of the drawing; like moves in quick succession are one step. */
export function nudge(ids: readonly EnclosureId[], dx: number, dy: number): boolean {
  const places = placesOf(documentStore.get());
  const moves = ids.flatMap((id) => {
    const at = places[id];
    return at === undefined ? [] : [{ id, to: { x: at.x + dx * PITCH, y: at.y + dy * PITCH } }];
  });
  return moveBoxes(moves);
}

/** Moves boxes as one step. @returns Whether they moved. */
export function moveBoxes(moves: readonly BoxMove[]): boolean {
  if (moves.length === 0) return false;
  return told(dispatch({ command: "move-enclosures", args: { moves } }));
}

/** The document with a place for each box that is shown, as the sheet has it. */
const placed = (document: DocumentState): Project => {
  const { project } = document;
  return { ...project, layout: { ...project.layout, enclosures: placesOf(document) } };
};

/** Walls follow from where the boxes stand, for cables change sides: after so many tries they fit. */
const TRIES = 4;

function arrange(
  ids: readonly EnclosureId[],
  how: (boxes: readonly StandingBox[]) => readonly BoxMove[],
  title: string,
): boolean {
  const before = placed(documentStore.get());
  let project = before;
  for (let left = TRIES; left > 0; left--) {
    const moves = how(standing(project, ids));
    if (moves.length === 0) break;
    project = withPlaces(project, new Map(moves.map(({ id, to }) => [id, to])));
  }
  const moves = ids.flatMap((id): readonly BoxMove[] => {
    const to = project.layout.enclosures[id];
    return to === undefined || isSame(to, before.layout.enclosures[id]) ? [] : [{ id, to }];
  });
  return run(moves, title);
}

const isSame = (a: Point, b: Point | undefined): boolean => a.x === b?.x && a.y === b.y;

/** Walls of boxes where they stand in a document. */
function standing(project: Project, ids: readonly EnclosureId[]): readonly StandingBox[] {
  return ids.flatMap((id) => {
    const at = project.layout.enclosures[id];
    if (at === undefined || !(id in shownInstallation().enclosures)) return [];
    const { width, height } = boxDrawing(project, shownInstallation(), id);
    return [{ id, rect: { ...at, width, height } }];
  });
}

function run(moves: readonly BoxMove[], title: string): boolean {
  if (moves.length === 0) {
    notify("note", "Nothing to move", ["The boxes stand as asked already."]);
    return false;
  }
  const calls = [{ command: "move-enclosures", args: { moves } }] as const;
  return told(dispatch({ command: "run-together", args: { title, calls } }));
}

const layOutInSlices = (title: string, begin: (now: DocumentState) => InSteps<readonly BoxMove[]>): void =>
  layOut({ title, begin, end: (moves) => void run(moves, title) });

function told(done: ReturnType<typeof dispatch>): boolean {
  if (!done.ok) notify("problem", "The boxes stay where they were", [done.refusal.message]);
  return done.ok;
}
