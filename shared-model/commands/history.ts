import type { Patch } from "immer";
import type { Edit } from "./run-command.ts";

/** One undo step: what it was called, and patches both ways. */
export interface Step {
  readonly serial: number;
  readonly title: string;
  readonly patches: readonly Patch[];
  readonly inverse: readonly Patch[];
  readonly mergeKey?: string;
  /** Characters of the photos that it holds; absent where it holds none. */
  readonly photos?: number;
  /** When its latest edit was made, in milliseconds of any steady clock. */
  readonly at: number;
}

/** Undo and redo of one document, as a value. It holds patches, never documents. */
export interface History {
  /** Oldest first; undo takes the last. */
  readonly past: readonly Step[];
  /** Redo takes the first. */
  readonly future: readonly Step[];
  /** Serial of the step that the saved document ends with; 0 for the document as opened. */
  readonly saved: number;
  /** Serial of the newest step that was dropped because the past grew too long; 0 when none was. */
  readonly floor: number;
  readonly nextSerial: number;
}

export const HISTORY_LIMIT = 2_000;
/** Photos are the only heavy thing in a step; so many characters of them are kept, the newest step in any case. */
const PHOTO_CHARACTERS_LIMIT = 64 * 1024 * 1024;
/** Like edits closer together than this are one step; typing in a field and nudging with the arrow keys count on it. */
export const MERGE_WITHIN_MS = 600;

export const emptyHistory: History = { past: [], future: [], saved: 0, floor: 0, nextSerial: 1 };

/** History of a document that was opened with work that no file holds: no step leads back to a saved one. */
export const unsavedHistory: History = { ...emptyHistory, saved: -1 };

/** Adds an edit and drops what could be redone. An edit that changed nothing adds no step and keeps redo. */
export function record(history: History, edit: Edit, at: number): History {
  if (edit.patches.length === 0) return history;
  const { past, nextSerial } = history;
  const last = past[past.length - 1];
  if (last !== undefined && merges(history, last, edit, at)) {
    const merged: Step = {
      ...last,
      serial: nextSerial,
      patches: [...last.patches, ...edit.patches],
      inverse: [...edit.inverse, ...last.inverse],
      at,
    };
    return { ...history, past: [...past.slice(0, -1), merged], nextSerial: nextSerial + 1 };
  }
  const { title, patches, inverse, mergeKey } = edit;
  const photos = photoCharacters(edit);
  const step: Step = {
    serial: nextSerial,
    title,
    patches,
    inverse,
    at,
    ...(mergeKey !== undefined && { mergeKey }),
    ...(photos > 0 && { photos }),
  };
  const longer = [...past, step];
  const excess = Math.max(0, longer.length - HISTORY_LIMIT, tooHeavy(longer));
  return {
    ...history,
    past: longer.slice(excess),
    future: [],
    floor: excess > 0 ? (longer[excess - 1]?.serial ?? history.floor) : history.floor,
    nextSerial: nextSerial + 1,
  };
}

/** How many of the oldest steps hold photos past what is kept. */
function tooHeavy(steps: readonly Step[]): number {
  let characters = 0;
  for (let index = steps.length - 1; index >= 0; index--) {
    characters += steps[index]?.photos ?? 0;
    if (characters > PHOTO_CHARACTERS_LIMIT && index < steps.length - 1) return index + 1;
  }
  return 0;
}

/** A photo that came or went stands whole in one of the two directions. */
function photoCharacters({ patches, inverse }: Edit): number {
  let characters = 0;
  for (const list of [patches, inverse])
    for (const { path, value } of list)
      if (path[0] === "attachments" && typeof value === "object" && value !== null)
        characters += String(Reflect.get(value, "base64") ?? "").length;
  return characters;
}

/** A saved document stays reachable: no edit is merged into the step that it ends with, nor across an undo. */
function merges(history: History, last: Step, edit: Edit, at: number): boolean {
  return (
    edit.mergeKey !== undefined &&
    last.mergeKey === edit.mergeKey &&
    history.future.length === 0 &&
    last.serial !== history.saved &&
    at - last.at <= MERGE_WITHIN_MS
  );
}

/** What a step of undo or redo does to the document, and the history after it. */
export interface Travel {
  readonly history: History;
  readonly patches: readonly Patch[];
  readonly title: string;
}

export function undo(history: History): Travel | undefined {
  const step = history.past[history.past.length - 1];
  if (step === undefined) return undefined;
  const past = history.past.slice(0, -1);
  return { history: { ...history, past, future: [step, ...history.future] }, patches: step.inverse, title: step.title };
}

export function redo(history: History): Travel | undefined {
  const [step, ...future] = history.future;
  if (step === undefined) return undefined;
  return { history: { ...history, past: [...history.past, step], future }, patches: step.patches, title: step.title };
}

/** Names for the menu: "Undo Land C1 BK on R1 H". */
export const undoTitle = (history: History): string | undefined => history.past[history.past.length - 1]?.title;
export const redoTitle = (history: History): string | undefined => history.future[0]?.title;

const here = (history: History): number => history.past[history.past.length - 1]?.serial ?? history.floor;

/** The document as it is now is the one in the file. */
export const markSaved = (history: History): History => ({ ...history, saved: here(history) });

/** The document differs from the file, as far as steps tell: a change made and undone is none. */
export const isDirty = (history: History): boolean => here(history) !== history.saved;
