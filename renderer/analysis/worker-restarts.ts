import type { Surroundings } from "./client-contract.ts";
import { wording } from "./words.ts";

/** A check that takes longer hangs: the whole of the largest drawing takes a fraction of it. */
export const DEADLINE_MS = 2000;
/** The first answer waits for the script to load; reading the largest file that is taken waits for its size. */
export const SLOW_DEADLINE_MS = 20_000;
const RESTARTS = 3;

interface Restarts {
  /** Whether another worker may be started after those that failed. */
  isAllowed(): boolean;
  /** What the next worker is greeted with: rules to leave out, and whether to name each rule as it begins. */
  greeting(): { readonly disabledRules?: readonly string[]; readonly watchful?: boolean };
  /** The worker is at this rule, or at nothing that it would name. */
  isAt(rule: string | undefined): void;
  /** All that was sent is answered. */
  isWell(): void;
  /** The worker failed; the rule that it was at is left out from here on. The person is told what becomes of it. */
  hasFailed(): void;
  /** A person tries again. */
  beginAnew(): void;
}

/** Counts workers that failed, and finds the rules that hang them. */
export function countRestarts(tell: Surroundings["trouble"]): Restarts {
  let restarts = 0;
  let lastRule: string | undefined;
  const disabledRules: string[] = [];
  const leftOut = (): string | undefined =>
    disabledRules.length === 0 ? undefined : wording.leftOutBecauseItDidNot(disabledRules.join(", "));
  const isAllowed = (): boolean => restarts <= RESTARTS;
  return {
    isAllowed,
    greeting: () => ({
      ...(disabledRules.length > 0 && { disabledRules }),
      ...(restarts > 0 && { watchful: true }),
    }),
    isAt(rule) {
      lastRule = rule;
    },
    isWell() {
      restarts = 0;
      tell(leftOut());
    },
    hasFailed() {
      if (lastRule !== undefined) disabledRules.push(lastRule);
      restarts += 1;
      if (isAllowed()) tell(leftOut() ?? wording.checkingDidNotAnswerAndWas);
      else tell(wording.checkingHasStoppedItDidNot);
    },
    beginAnew() {
      restarts = 0;
      tell(undefined);
    },
  };
}
