import type { ScopeAnswer, ScopeBox } from "../../../shared-model/answers/scope.ts";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { createStore, type Store } from "../store.ts";

/** What is listed: what changes box by box, the work step by step, or what it takes. */
export type ScopeList = "by-box" | "by-step" | "material";

/** A line of the list, and what it stands for. */
export interface Pressed {
  readonly key: string;
  /** "device d1": things of as found that are laid aside on the sheet show that they are meant. */
  readonly items: readonly string[];
}

const NOTHING: Pressed = { key: "", items: [] };

/** How this window shows the difference of the states. Never saved in the document and never undone. */
export interface ScopeState {
  readonly on: boolean;
  readonly answer: ScopeAnswer | undefined;
  /** Revision of the document that the answer is about. */
  readonly about: number | undefined;
  /** The difference is there, and the work that it leads to is still being worked out. */
  readonly working: boolean;
  readonly trouble: string | undefined;
  readonly list: ScopeList;
  /** The line that was pressed last. */
  readonly pressed: Pressed;
}

const OFF: ScopeState = {
  on: false,
  answer: undefined,
  about: undefined,
  working: false,
  trouble: undefined,
  list: "by-box",
  pressed: NOTHING,
};

export const scopeStore: Store<ScopeState> = createStore(OFF);

export function resetScope(): void {
  scopeStore.set(OFF);
}

/** Puts the list and its answer away; they are there when the difference is shown next. */
export function hideScope(): void {
  scopeStore.merge({ on: false, pressed: NOTHING });
}

export const isScopeShown = ({ on }: ScopeState): boolean => on;

/** The answer while the difference is shown. */
export const shownScope = ({ on, answer }: ScopeState): ScopeAnswer | undefined => (on ? answer : undefined);

const byId = new WeakMap<ScopeAnswer, ReadonlyMap<EnclosureId, ScopeBox>>();

/** What changes in a box by an answer; undefined where nothing does. */
export function scopeBoxIn(answer: ScopeAnswer, id: EnclosureId): ScopeBox | undefined {
  let boxes = byId.get(answer);
  if (boxes === undefined) {
    boxes = new Map(answer.boxes.map((box) => [box.enclosure, box]));
    byId.set(answer, boxes);
  }
  return boxes.get(id);
}
