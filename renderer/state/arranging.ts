import type { ArrangeWhat } from "../../shared-model/analysis/protocol.ts";
import type { TypedCall } from "../../shared-model/commands/command-args.ts";
import {
  type Alignment,
  align,
  type BoxMove,
  distribute,
  type StandingBox,
} from "../../shared-model/geometry/arrange.ts";
import { withPlaces } from "../../shared-model/geometry/circuit/settle.ts";
import { boxDrawing, lastDrawing } from "../../shared-model/geometry/draw-box.ts";
import { PITCH } from "../../shared-model/geometry/metrics.ts";
import type { CableId, EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point, Project } from "../../shared-model/model/project.ts";
import { ARRANGE_WORDS } from "./arrange-words.ts";
import { type DocumentState, dispatch, documentStore, installationOf, shownInstallation } from "./document-store.ts";
import { layOut } from "./laying-out.ts";
import { notify, sessionStore } from "./session-store.ts";
import { placesOf } from "./sheet-places.ts";
import { stepTitle } from "./step-title.ts";
import { wording } from "./words.ts";

/** The selected boxes and panels, in the order in which they were selected. */
export const selectedBoxes = (): readonly EnclosureId[] =>
  sessionStore.get().selection.flatMap((each) => (each.kind === "enclosure" ? [each.id] : []));

export const ALIGNMENT_WORDS: Readonly<Record<Alignment, string>> = {
  left: wording.leftEdgesOnOneLine,
  right: wording.rightEdgesOnOneLine,
  top: wording.upperEdgesOnOneLine,
  bottom: wording.lowerEdgesOnOneLine,
  "middles-upright": wording.middlesUnderEachOther,
  "middles-level": wording.middlesBesideEachOther,
};

export const DISTRIBUTE_WORDS = { across: wording.evenGapsAcross, down: wording.evenGapsDown } as const;
export type Axis = keyof typeof DISTRIBUTE_WORDS;

/** Moves boxes so that their walls lie on one line, as one step. Fewer than two stay. */
export const alignBoxes = (ids: readonly EnclosureId[], how: Alignment): boolean =>
  arrange(ids, (boxes) => align(boxes, how), wording.alignBoxes(ids.length));

/** Moves boxes so that the gaps between them are even, as one step. Fewer than three stay. */
export const distributeBoxes = (ids: readonly EnclosureId[], axis: Axis): boolean =>
  arrange(ids, (boxes) => distribute(boxes, axis), wording.spaceBoxes(ids.length));

/** Lays out the circuit of a box as one step; see `layOutCircuit`. */
export function layOutCircuitOf(id: EnclosureId): void {
  const name = shownInstallation().enclosures[id]?.name ?? "";
  arrangeBoxes(ARRANGE_WORDS.circuitOf(name), { circuitOf: id });
}

/**
 * Arranges boxes as one step, in the worker; see `arrangeHouse`.
 * @param only Absent: the whole drawing.
 */
export const arrangeBoxes = (title: string, order: ArrangeWhat["order"], only?: readonly EnclosureId[]): void =>
  layOut({
    title,
    what: (now) => ({ order, ...(only !== undefined && { only }), ...standingNow(now) }),
    shows: typeof order === "string",
    end: (moves) => void runArranged(moves, title),
  });

/** Where boxes stand that the layout does not name, and what is drawn of those that were drawn. */
function standingNow(document: DocumentState): Pick<ArrangeWhat, "places" | "sizes"> {
  const { layout } = document.project;
  const places = Object.entries(placesOf(document)).filter(([id]) => !(id in layout.enclosures));
  const sizes = Object.values(installationOf(document).enclosures).flatMap((enclosure) => {
    const bounds = lastDrawing(enclosure)?.bounds;
    return bounds === undefined ? [] : [[enclosure.id, bounds.x, bounds.y, bounds.width, bounds.height] as const];
  });
  return { places: Object.fromEntries(places), sizes };
}

/** Moves what was arranged; cables that were bent for where their boxes stood find their own way again. */
function runArranged(moves: readonly BoxMove[], title: string): boolean {
  const { layout } = documentStore.get().project;
  const by = new Map(
    moves.map(({ id, to }) => {
      const at = layout.enclosures[id];
      return [id, at === undefined ? "new" : `${to.x - at.x} ${to.y - at.y}`] as const;
    }),
  );
  const { cables } = shownInstallation();
  const straightened = (Object.keys(layout.cables) as CableId[]).filter((id) => {
    const sides = cables[id]?.sides;
    const [one, other] = [sides?.a, sides?.b].map((side) => side && "enclosure" in side && by.get(side.enclosure));
    return one !== other;
  });
  return run(
    moves,
    title,
    straightened.map((cable) => ({ command: "bend-cable", args: { cable, bends: [] } })),
  );
}

/** What can be done with the pins of boxes: set them where one is missing, take them off where there is one. */
export function pinsOf(
  ids: readonly EnclosureId[],
  what: string,
): readonly { readonly title: string; readonly run: () => void }[] {
  const { pinned } = documentStore.get().project.layout;
  const some = ids.some((id) => pinned?.[id] === true);
  const all = ids.every((id) => pinned?.[id] === true);
  return [
    ...(all ? [] : [{ title: ARRANGE_WORDS.pin(what), run: () => void pin(ids, true) }]),
    ...(some ? [{ title: ARRANGE_WORDS.unpin(what), run: () => void pin(ids, false) }] : []),
  ];
}

/** Says that boxes stay where they are when the drawing is arranged, or no longer, as one step. */
export const pin = (enclosures: readonly EnclosureId[], pinned: boolean): boolean =>
  told(dispatch({ command: "pin-enclosures", args: { enclosures, pinned } }));

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

function run(moves: readonly BoxMove[], title: string, more: readonly TypedCall[] = []): boolean {
  if (moves.length === 0) {
    notify("note", wording.nothingToMove, [wording.theBoxesStandAsAskedAlready]);
    return false;
  }
  const calls: readonly TypedCall[] = [{ command: "move-enclosures", args: { moves } }, ...more];
  return told(dispatch({ command: "run-together", args: { title: stepTitle(title), calls } }));
}

function told(done: ReturnType<typeof dispatch>): boolean {
  if (!done.ok) notify("problem", wording.theBoxesStayWhereTheyWere, [done.refusal.message]);
  return done.ok;
}
