import type { SupplyAnswer, SupplyAsk } from "../../shared-model/answers/supply.ts";

/** Asks the worker; undefined when nobody can answer now. */
type AskSupply = (wanted: SupplyAsk) => Promise<SupplyAnswer | undefined>;

let ask: AskSupply | undefined;

/** Says who is to be asked; the state folder does not know the worker. */
export function supplyBy(asked: AskSupply | undefined): void {
  ask = asked;
}

/** As long as a person may be kept waiting: a worker may be starting, or not answer at all. */
const LONGEST_MS = 5000;
/** An answer that does not come is asked for again so soon: the document may have moved on. */
const AGAIN_AFTER_MS = 150;

const wait = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

/** The panel of a cable that leads out of the drawing; undefined when nobody answers in the end. */
export const askSupply: AskSupply = async (wanted) => {
  let isLate = false;
  const end = wait(LONGEST_MS).then(() => {
    isLate = true;
    return undefined;
  });
  while (ask !== undefined && !isLate) {
    const answer = await Promise.race([ask(wanted), end]);
    if (answer !== undefined) return answer;
    await wait(AGAIN_AFTER_MS);
  }
  return undefined;
};
