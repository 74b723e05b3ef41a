import type { At } from "../../../shared-model/model/place.ts";
import { leaveEnergise } from "../../state/energise/ending.ts";
import { energiseStore } from "../../state/energise/energise-store.ts";
import type { Action } from "../action.ts";
import type { BoxItem } from "../box-items.ts";
import { laterParts } from "../later.ts";
import type { Subject } from "../sheet-subject.ts";

/** Whether presses place a lead, so that nothing is picked up by them. */
export const isLeadInHand = (): boolean => energiseStore.get().on && energiseStore.get().inHand !== undefined;

/**
 * A press, Enter or Space on something in an energised box. `terminal` is the terminal that a press was on.
 * @returns False where it means what it means otherwise.
 */
export const pressLit = (item: BoxItem, terminal: At | undefined): boolean =>
  energiseStore.get().on && (laterParts()?.pressLit(item, terminal) ?? false);

/** What an energised drawing offers in the menu of a thing. */
export const litActions = (subject: Subject): readonly Action[] =>
  energiseStore.get().on ? (laterParts()?.litActions(subject) ?? []) : [];

/** What closes itself with Escape. */
const CLOSES_ITSELF = "[role='dialog'], [role='menu'], [role='listbox']";

/** Escape lays a lead down, else ends it all. @returns False where nothing is energised, or something nearer is closed. */
export function escapeLit({ target }: KeyboardEvent): boolean {
  const { on, inHand } = energiseStore.get();
  if (!on || (target instanceof Element && target.closest(CLOSES_ITSELF) !== null)) return false;
  if (inHand !== undefined) energiseStore.merge({ inHand: undefined });
  else leaveEnergise();
  return true;
}
