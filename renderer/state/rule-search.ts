import type { RuleStatus, Severity } from "../../shared-model/answers/finding.ts";
import type { BookRule } from "../../shared-model/answers/rule-book.ts";

/** Which rules of the book are shown; what is left out does not narrow them. */
export interface RuleSearch {
  readonly typed: string;
  readonly severity?: Severity;
  readonly status?: RuleStatus;
}

export const ALL_RULES: RuleSearch = { typed: "" };

/** Rules that have every typed word in their sentence, id or section, in the order of the book. */
export function findRules(book: readonly BookRule[], { typed, severity, status }: RuleSearch): readonly BookRule[] {
  const words = typed.toLowerCase().split(/\s+/);
  return book.filter((rule) => {
    if (severity !== undefined && rule.severity !== severity) return false;
    if (status !== undefined && rule.status !== status) return false;
    const text =
      `${rule.summary} ${rule.id} ${rule.id.replaceAll("-", " ")} ${rule.section?.section ?? ""}`.toLowerCase();
    return words.every((word) => text.includes(word));
  });
}
