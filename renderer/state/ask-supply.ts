import type { SupplyAnswer, SupplyAsk } from "../../shared-model/answers/supply.ts";

/** Asks the worker; undefined when nobody can answer now. */
type AskSupply = (wanted: SupplyAsk) => Promise<SupplyAnswer | undefined>;

let ask: AskSupply | undefined;

/** Says who is to be asked; the state folder does not know the worker. */
export function supplyBy(asked: AskSupply | undefined): void {
  ask = asked;
}

/** An answer that does not come is asked for again so often: a worker may be starting, the document may have moved on. */
const TRIES = 20;
const AGAIN_AFTER_MS = 150;

/** The panel of a cable that leads out of the drawing; undefined when nobody answers in the end. */
export const askSupply: AskSupply = async (wanted) => {
  for (let tries = 0; ask !== undefined && tries < TRIES; tries += 1) {
    const answer = await ask(wanted);
    if (answer !== undefined) return answer;
    await new Promise((done) => setTimeout(done, AGAIN_AFTER_MS));
  }
  return undefined;
};
