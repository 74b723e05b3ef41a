import { wording } from "./words.ts";
/** What the rule book says in the window. */
export const RULE_BOOK_WORDS = {
  title: wording.ruleBook,
  search: wording.searchTheRules,
  searchHint: wording.wordsASectionNumberARule,
  severity: wording.severityAtWorst,
  everySeverity: wording.everySeverity,
  status: wording.status,
  everyStatus: wording.everyStatus,
  fetching: wording.fetchingTheRulesOfThisEdition,
  nothing: wording.noRuleHasTheseWordsSearch,
  back: wording.backToTheRuleBook,
  close: wording.close,
  ownRule: wording.ourOwnRule,
} as const;

export const STATUS_WORDS = { draft: wording.draft, stable: wording.stable, retired: wording.retired } as const;

/** "113 rules run by edition 2020. 12 of them are shown." */
export const rulesShown = (edition: string, all: number, shown: number): string =>
  wording.byEdition(
    all,
    all === 1 ? "rule runs" : "rules run",
    edition,
    shown < all ? ` ${shown} of them ${shown === 1 ? "is" : "are"} shown.` : "",
  );
