import { boxDrawing } from "../../../shared-model/geometry/draw-box.ts";
import type { EnclosureId, SpliceId } from "../../../shared-model/model/ids.ts";
import type { Point } from "../../../shared-model/model/project.ts";
import { findSplice } from "../../../shared-model/queries/find-item.ts";
import { documentStore, shownInstallation } from "../document-store.ts";
import { lineFor, openPick, type PickLine } from "../pick-store.ts";
import { sessionStore } from "../session-store.ts";

const DIRECTIONS: readonly (readonly [word: string, x: number, y: number])[] = [
  ["Right", 1, 0],
  ["Left", -1, 0],
  ["Down", 0, 1],
  ["Up", 0, -1],
];

/** Steps in drawing units: the pitch that everything lands on, ten of them, and about the width of a box with its captions. */
const STEPS: readonly (readonly [words: string, length: number])[] = [
  ["a step", 16],
  ["ten steps", 160],
  ["the room of a box", 1104],
];

/** Asks how far a box goes on the sheet; the boxes that are selected with it go along. The list stays open. */
export function moveBoxes(id: EnclosureId): void {
  const chosen = sessionStore.get().selection.flatMap((item) => (item.kind === "enclosure" ? [item.id] : []));
  const ids = chosen.includes(id) ? chosen : [id];
  const name = shownInstallation().enclosures[id]?.name ?? "a box";
  const moveBy = (title: string, dx: number, dy: number): PickLine => {
    const { enclosures } = documentStore.get().project.layout;
    const moves = ids.flatMap((one) => {
      const at = enclosures[one];
      return at === undefined ? [] : [{ id: one, to: { x: at.x + dx, y: at.y + dy } }];
    });
    return { ...lineFor(title, { command: "move-enclosures", args: { moves } }), stay: true };
  };
  openPick({
    title: ids.length === 1 ? `Move ${name} on the sheet` : `Move ${ids.length} boxes on the sheet`,
    hint: "Stays open: take as many steps as it needs. Or type a place, for example 320, 160.",
    lines: () => stepLines(moveBy),
    typed: {
      label: "Direction, or a place as across, down",
      line(text) {
        const to = pointOf(text);
        const now = documentStore.get().project.layout.enclosures[id];
        if (to === undefined || now === undefined) return undefined;
        return moveBy(`To ${to.x} across, ${to.y} down`, to.x - now.x, to.y - now.y);
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
    title: `Place splice ${name} by hand`,
    hint: "Stays open: take as many steps as it needs.",
    lines: () => [
      ...stepLines(moveBy, 2),
      lineFor("Let it place itself", { command: "move-splice", args: { splice, to: null } }),
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
    DIRECTIONS.map(([word, x, y]) => moveBy(`${word} by ${words}`, x * length, y * length)),
  );

function pointOf(text: string): Point | undefined {
  const found = /^(-?\d{1,6})\s*[,; ]\s*(-?\d{1,6})$/.exec(text.trim());
  return found === null ? undefined : { x: Number(found[1]), y: Number(found[2]) };
}
