import type { CannotTell, Finding, Severity } from "../../shared-model/answers/finding.ts";
import { SEVERITIES } from "../../shared-model/model/severity.ts";
import { wording } from "./words.ts";

const ONE: Readonly<Record<Severity, string>> = {
  danger: "danger",
  violation: "violation",
  caution: "caution",
  advice: "advice",
};
const MANY: Readonly<Record<Severity, string>> = {
  danger: "dangers",
  violation: "violations",
  caution: "cautions",
  advice: "advice",
};

/** "1 danger, 2 cautions, 1 cannot tell": how many of each kind, worst first; empty where there is nothing to say. */
export function answerWords(answers: readonly (Finding | CannotTell)[]): string {
  if (answers.length === 0) return "";
  const found = SEVERITIES.flatMap((severity) => {
    const count = answers.filter((answer) => "severity" in answer && answer.severity === severity).length;
    return count === 0 ? [] : [`${count} ${(count === 1 ? ONE : MANY)[severity]}`];
  });
  const unsure = answers.filter((answer) => !("severity" in answer)).length;
  return [...found, ...(unsure === 0 ? [] : [wording.cannotTell(unsure)])].join(", ");
}

/** "circuit Q14", "circuits Q2 and Q4"; empty where none is known. */
export function circuitWords(names: readonly string[]): string {
  const last = names.at(-1);
  if (last === undefined) return "";
  return names.length === 1 ? wording.circuit(last) : wording.circuitsAnd(names.slice(0, -1).join(", "), last);
}
