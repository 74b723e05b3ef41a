import type { EnergiseAsk, Energised, EnergisedNews, Operated } from "../answers/energised.ts";
import type { Installation, StateName, Supply } from "../model/project.ts";
import { newsSince } from "../queries/energised-news.ts";
import { energise } from "./energise.ts";
import { LitBoxes } from "./lit-boxes.ts";

/** Answers one ask after the other, each with what is different from the answer before. */
export class Energiser {
  private state: StateName | undefined;
  private lit = new LitBoxes();
  private last: Energised | undefined;

  /** @returns News that continue the answer before. After a throw, and in the other state, they are the whole. */
  answer(
    state: StateName,
    installation: Installation,
    supply: Supply,
    operated: Operated,
    ask: EnergiseAsk,
  ): EnergisedNews {
    if (state !== this.state) this.lit = new LitBoxes();
    const before = state === this.state ? this.last : undefined;
    this.state = state;
    this.last = undefined;
    const now = energise(installation, supply, operated, ask, this.lit);
    this.last = now;
    return newsSince(before, now);
  }
}
