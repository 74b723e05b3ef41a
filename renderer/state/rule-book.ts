import type { BookRule } from "../../shared-model/answers/rule-book.ts";
import type { Edition } from "../../shared-model/model/project.ts";

/** Asks the worker; undefined when nobody can answer now. */
type AskRules = (edition: Edition) => Promise<readonly BookRule[] | undefined>;

let ask: AskRules | undefined;

/** Says who is to be asked; the state folder does not know the worker. */
export function readRulesBy(asked: AskRules): void {
  ask = asked;
}

/** The rules that run by an edition, with the numbers that a local amendment can replace. */
export const askRuleBook: AskRules = async (edition) => ask?.(edition);
