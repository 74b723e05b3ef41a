import type { ExpectedAnswer, WantedTest } from "../../shared-model/answers/expected-test.ts";

/** Asks the worker; undefined when nobody can answer now. */
type AskExpected = (wanted: readonly WantedTest[]) => Promise<readonly ExpectedAnswer[] | undefined>;

let ask: AskExpected | undefined;

/** Says who is to be asked; the state folder does not know the worker. */
export function expectTestsBy(asked: AskExpected): void {
  ask = asked;
}

/** What the document as it stands leads to expect of some tests. */
export const askExpected: AskExpected = async (wanted) => ask?.(wanted);
