import { boxDrawing } from "../../../shared-model/geometry/draw-box.ts";
import type { EnclosureId, SpliceId } from "../../../shared-model/model/ids.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import { findSplice } from "../../../shared-model/queries/find-item.ts";
import { documentStore, shownInstallation } from "../document-store.ts";
import { lineFor, openPick, type PickLine } from "../pick-store.ts";
import { sessionStore } from "../session-store.ts";
import { wording } from "./words.ts";

const DIRECTIONS: readonly (readonly [word: string, x: number, y: number])[] = [
  ["Right", 1, 0],
  [wording.left, -1, 0],
  [wording.down, 0, 1],
  [wording.up, 0, -1],
];

/** Steps in drawing units: the pitch that everything lands on, ten of them, and about the width of a box with its captions. */
const STEPS: readonly (readonly [words: string, length: number])[] = [
  [wording.aStep, 16],
  [wording.tenSteps, 160],
  [wording.theRoomOfABox, 1104],
];

/** Asks how far a box goes on the sheet; the boxes that are selected with it go along. The list stays open. */
export function moveBoxes(id: EnclosureId): void {
  const chosen = sessionStore.get().selection.flatMap((item) => (item.kind === "enclosure" ? [item.id] : []));
  const ids = chosen.includes(id) ? chosen : [id];
  const name = shownInstallation().enclosures[id]?.name ?? wording.aBox;
  const moveBy = (title: string, dx: number, dy: number): PickLine => {
    const { enclosures } = documentStore.get().project.layout;
    const moves = ids.flatMap((one) => {
      const at = enclosures[one];
      return at === undefined ? [] : [{ id: one, to: { x: at.x + dx, y: at.y + dy } }];
    });
    return { ...lineFor(title, { command: "move-enclosures", args: { moves } }), stay: true };
  };
  openPick({
    title: ids.length === 1 ? wording.moveOnTheSheet2(name) : wording.moveBoxesOnTheSheet(ids.length),
    hint: wording.staysOpenTakeAsManySteps,
    lines: () => stepLines(moveBy),
    typed: {
      label: wording.directionOrAPlaceAsAcross,
      line(text) {
        const to = pointOf(text);
        const now = documentStore.get().project.layout.enclosures[id];
        if (to === undefined || now === undefined) return undefined;
        return moveBy(wording.toAcrossDown(to.x, to.y), to.x - now.x, to.y - now.y);
      },
    },
  });
}

/** Asks where a splice goes inside its box, or lets it place itself. The list stays open. */
export function moveSpliceByHand(splice: SpliceId, name: string): void {
  const moveBy = (title: string, dx: number, dy: number): PickLine => {
    const now = spliceAt(splice);
    const to = { x: now.x + dx, y: now.y + dy };
    return { ...lineFor(title, { command: "move-splice", args: { splice, to } }), stay: true };
  };
  openPick({
    title: wording.placeSpliceByHand(name),
    hint: wording.staysOpenTakeAsManySteps2,
    lines: () => [
      ...stepLines(moveBy, 2),
      lineFor(wording.letItPlaceItself, { command: "move-splice", args: { splice, to: null } }),
    ],
  });
}

/** Where a splice is now: where a person put it, else where the drawing has it. */
function spliceAt(splice: SpliceId): Point {
  const { project } = documentStore.get();
  const byHand = project.layout.splices[splice];
  if (byHand !== undefined) return byHand;
  const installation = shownInstallation();
  const home = findSplice(installation, splice)?.enclosure.id;
  const drawn = home && boxDrawing(project, installation, home).splices.find((one) => one.splice === splice);
  return { x: Math.round(drawn?.x ?? 0), y: Math.round(drawn?.rows[0]?.y ?? 0) };
}

const stepLines = (
  moveBy: (title: string, dx: number, dy: number) => PickLine,
  count = STEPS.length,
): readonly PickLine[] =>
  STEPS.slice(0, count).flatMap(([words, length]) =>
    DIRECTIONS.map(([word, x, y]) => moveBy(wording.by(word, words), x * length, y * length)),
  );

function pointOf(text: string): Point | undefined {
  const found = /^(-?\d{1,6})\s*[,; ]\s*(-?\d{1,6})$/.exec(text.trim());
  return found === null ? undefined : { x: Number(found[1]), y: Number(found[2]) };
}
