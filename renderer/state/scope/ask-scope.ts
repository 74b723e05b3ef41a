import type { ScopeAnswer, ScopePart } from "../../../shared-model/answers/scope.ts";

/** Asks the worker; undefined when nobody can answer now. `first` is told the difference where its work takes a while. */
type AskScope = (first: (part: ScopePart) => void) => Promise<ScopeAnswer | undefined>;

let ask: AskScope | undefined;

/** Says who is to be asked; the state folder does not know the worker. */
export function scopeBy(asked: AskScope): void {
  ask = asked;
}

/** The difference of the states of the document as it stands. */
export const askScope: AskScope = async (first) => ask?.(first);
