import { ALIGNMENTS } from "../../../shared-model/geometry/arrange.ts";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import {
  ALIGNMENT_WORDS,
  type Axis,
  alignBoxes,
  DISTRIBUTE_WORDS,
  distributeBoxes,
  layOutAll,
  layOutCircuitOf,
  nudge,
  selectedBoxes,
} from "../arranging.ts";
import { documentStore, shownInstallation } from "../document-store.ts";
import type { Selected } from "../selection.ts";
import { select } from "../session-store.ts";

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
    title: `Move one step ${word}`,
    keys: keys.replace("Arrow", "Arrow "),
    run: () => void nudge(ids, dx, dy),
  }));
}

/** Layouts: of the circuit of the first selected box, and of everything. */
export function layOutLines(): readonly ArrangeLine[] {
  if (documentStore.get().readOnly) return [];
  const [first] = selectedBoxes();
  const { enclosures } = shownInstallation();
  const name = first && enclosures[first]?.name;
  const all = { title: "Lay out everything", run: () => void layOutAll() };
  if (Object.keys(enclosures).length < 2) return [];
  if (first === undefined || name === undefined) return [all];
  return [{ title: `Lay out the circuit of ${name}`, run: () => void layOutCircuitOf(first) }, all];
}

/** Takes all boxes and panels into the selection. */
export function selectAllBoxes(): void {
  const ids = Object.keys(shownInstallation().enclosures) as EnclosureId[];
  select(...ids.map((id): Selected => ({ kind: "enclosure", id })));
}

const selectLines = (): readonly ArrangeLine[] =>
  Object.keys(shownInstallation().enclosures).length === 0 ? [] : [{ title: "Select all boxes", run: selectAllBoxes }];

/** All of them. */
export const arrangeLines = (): readonly ArrangeLine[] => [
  ...selectLines(),
  ...alignLines(),
  ...nudgeLines(),
  ...layOutLines(),
];
