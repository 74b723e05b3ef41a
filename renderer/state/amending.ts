import type { BookRule, BookValue } from "../../shared-model/answers/rule-book.ts";
import type { Amendment } from "../../shared-model/model/project.ts";
import { unitOfValue, valueWords } from "../../shared-model/model/value-unit.ts";
import { type Dispatched, dispatch } from "./document-store.ts";
import { laterWording } from "./later-words.ts";
import { preferencesStore } from "./preferences-store.ts";

export type Change = Amendment["change"];

/** "12 in."; "no limit" where the edition sets none. */
export const figureWords = (value: number | undefined, unit: string | undefined): string =>
  value === undefined ? laterWording.noLimit : unit === undefined ? String(value) : `${value} ${unit}`;

/** What an amendment does, against the edition where it is known. */
export function changeWords(change: Change, rule: BookRule | undefined): string {
  if (change.kind === "off") return laterWording.switchedOff;
  const held = rule?.values.find(({ name }) => name === change.name);
  const is = figureWords(change.value, unitOfValue(change.name));
  const was = held === undefined ? "" : laterWording.inPlaceOf(figureWords(held.value, held.unit));
  return `${valueWords(change.name)}: ${is}${was}`;
}

/** Where the edition's own number stands, and whether a text was seen that states it. */
export function backingWords({ section, source }: BookValue): string {
  const words = [section?.section, section === undefined ? undefined : CONFIDENCE[section.confidence], source];
  return words.filter((one) => one !== undefined && one !== "").join("; ");
}

const CONFIDENCE = {
  sourced: laterWording.aSourceTextStatesIt,
  "from-memory": laterWording.numberNotCheckedAgainstTheText,
  unconfirmed: laterWording.toBeConfirmed,
  doubtful: "doubtful",
  "own-rule": laterWording.ourOwnRule,
} as const;

/** Of a local amendment what tells it from all others. */
export const keyOfAmendment = ({ rule, change }: Pick<Amendment, "rule" | "change">): string =>
  change.kind === "off" ? rule : `${rule} ${change.name}`;

/** A figure as a person types it; undefined when it is none. */
export function figureTyped(text: string): number | undefined {
  const value = Number(text.trim().replace(",", "."));
  return text.trim() === "" || !Number.isFinite(value) ? undefined : value;
}

/** Makes an amendment, or takes the place of the one that changes the same. Who asks for it is remembered. */
export function amend(rule: string, change: Change, reason: string, by: string): Dispatched {
  const done = dispatch({ command: "set-amendment", args: { rule, change, reason, by } });
  if (done.ok) preferencesStore.merge({ authority: by.trim() });
  return done;
}

export const takeBack = ({ rule, change }: Amendment): Dispatched =>
  dispatch({
    command: "remove-amendment",
    args: { rule, ...(change.kind === "value" && { value: change.name }) },
  });
