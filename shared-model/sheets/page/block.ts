import type { Mark } from "../display-list.ts";

/** Something as high as it says, drawn from its own top left corner; a flow sets one under another. */
export interface Block {
  readonly height: number;
  readonly marks: readonly Mark[];
  /** Stays on the page of what follows, as a heading does. */
  readonly withNext?: boolean;
  /** White above it that is left out at the top of a page. */
  readonly above?: number;
}
