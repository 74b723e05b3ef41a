import type { ScopeAnswer } from "../../../shared-model/answers/scope.ts";

/** Asks the worker; undefined when nobody can answer now. */
type AskScope = () => Promise<ScopeAnswer | undefined>;

let ask: AskScope | undefined;

/** Says who is to be asked; the state folder does not know the worker. */
export function scopeBy(asked: AskScope): void {
  ask = asked;
}

/** The difference of the states of the document as it stands. */
export const askScope: AskScope = async () => ask?.();
