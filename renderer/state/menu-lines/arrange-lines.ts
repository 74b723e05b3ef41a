import { ALIGNMENTS } from "../../../shared-model/geometry/arrange.ts";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { ARRANGE_WORDS } from "../arrange-words.ts";
import {
  ALIGNMENT_WORDS,
  type Axis,
  alignBoxes,
  arrangeBoxes,
  DISTRIBUTE_WORDS,
  distributeBoxes,
  layOutCircuitOf,
  nudge,
  pinsOf,
  selectedBoxes,
} from "../arranging.ts";
import { documentStore, shownInstallation } from "../document-store.ts";
import type { Selected } from "../selection.ts";
import { select } from "../session-store.ts";
import { wording } from "./words.ts";

/** Something that moves boxes on the sheet, as menus and the command field offer it. */
export interface ArrangeLine {
  readonly title: string;
  readonly keys?: string;
  readonly run: () => void;
}

const AXES: readonly Axis[] = ["across", "down"];
const STEPS = [
  ["left", -1, 0, "ArrowLeft"],
  ["right", 1, 0, "ArrowRight"],
  ["up", 0, -1, "ArrowUp"],
  ["down", 0, 1, "ArrowDown"],
] as const;

/** Lines on which the selected boxes can be brought, and even gaps between them. */
export function alignLines(): readonly ArrangeLine[] {
  const ids = selectedBoxes();
  if (documentStore.get().readOnly || ids.length < 2) return [];
  const lines = ALIGNMENTS.map((how) => ({ title: ALIGNMENT_WORDS[how], run: () => void alignBoxes(ids, how) }));
  if (ids.length < 3) return lines;
  return [
    ...lines,
    ...AXES.map((axis) => ({ title: DISTRIBUTE_WORDS[axis], run: () => void distributeBoxes(ids, axis) })),
  ];
}

/** Moves of the selected boxes by one step of the drawing. */
export function nudgeLines(): readonly ArrangeLine[] {
  const ids = selectedBoxes();
  if (documentStore.get().readOnly || ids.length === 0) return [];
  return STEPS.map(([word, dx, dy, keys]) => ({
    title: wording.moveOneStep(word),
    keys: keys.replace("Arrow", "Alt Arrow "),
    run: () => void nudge(ids, dx, dy),
  }));
}

/**
 * Layouts: of the circuit of the first selected box; and of what is selected, or of everything where fewer than two boxes
 * are, by circuit and by room.
 */
export function layOutLines(): readonly ArrangeLine[] {
  if (documentStore.get().readOnly) return [];
  const chosen = selectedBoxes();
  const [first] = chosen;
  const { enclosures } = shownInstallation();
  const name = first && enclosures[first]?.name;
  if (Object.keys(enclosures).length < 2) return [];
  const only = chosen.length > 1 ? chosen : undefined;
  const words = only === undefined ? ARRANGE_WORDS.all : ARRANGE_WORDS.some(only.length);
  const whole = ORDERS.map((order) => ({ title: words[order], run: () => arrangeBoxes(words[order], order, only) }));
  if (first === undefined || name === undefined) return whole;
  return [{ title: ARRANGE_WORDS.circuitOf(name), run: () => layOutCircuitOf(first) }, ...whole];
}

const ORDERS = ["by-circuit", "by-room"] as const;

/** Pins of the selected boxes, set and taken off. */
export function pinLines(): readonly ArrangeLine[] {
  const ids = selectedBoxes();
  if (documentStore.get().readOnly || ids.length === 0) return [];
  const name = shownInstallation().enclosures[ids[0] as EnclosureId]?.name ?? "";
  return pinsOf(ids, ids.length === 1 ? name : ARRANGE_WORDS.boxes(ids.length));
}

/** Takes all boxes and panels into the selection. */
export function selectAllBoxes(): void {
  const ids = Object.keys(shownInstallation().enclosures) as EnclosureId[];
  select(...ids.map((id): Selected => ({ kind: "enclosure", id })));
}

const selectLines = (): readonly ArrangeLine[] =>
  Object.keys(shownInstallation().enclosures).length === 0
    ? []
    : [{ title: wording.selectAllBoxes, run: selectAllBoxes }];

/** All of them. */
export const arrangeLines = (): readonly ArrangeLine[] => [
  ...selectLines(),
  ...alignLines(),
  ...nudgeLines(),
  ...pinLines(),
  ...layOutLines(),
];
