/** How a window answers when it is to be closed. */
export type CloseStep =
  /** Nothing to ask, or nobody there to ask. */
  | "close"
  /** The window asks the person, and `answerClose` tells. */
  | "ask"
  /** It was asked and has not answered: the question was overlooked, or the page hangs. The main process asks itself. */
  | "insist";

export interface ClosingWindow {
  /** The person said that it may go. */
  readonly mayClose: boolean;
  /** Its page has started and takes messages. */
  readonly listens: boolean;
  readonly edited: boolean;
  readonly asked: boolean;
}

export function closeStep({ mayClose, listens, edited, asked }: ClosingWindow): CloseStep {
  if (mayClose || !listens || !edited) return "close";
  return asked ? "insist" : "ask";
}
