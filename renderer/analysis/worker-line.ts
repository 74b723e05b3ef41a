import type { FromWorker, ToWorker } from "../../shared-model/analysis/protocol.ts";

/** The line to the checking worker that there is now: workers come and go, and what is asked goes to the present one. */
export interface Line {
  /** Whether there is a worker at the other end. */
  isOpen(): boolean;
  /** The revision of the document that was sent last: what a question put now is about. */
  sent(): number;
  /** An answer about another state of the document than the present one is none. */
  ifCurrent<T>(base: number, answer: T): T | undefined;
  /** The number of the next question. */
  nextRequest(): number;
  post(message: ToWorker): void;
  /** Something new is waited for: it may take as long as it may from here on. */
  watch(): void;
}

type Messages = { readonly [M in FromWorker as M["type"]]: M };

/** What is done about each of some messages of the worker. */
export type Takers<T extends keyof Messages> = { readonly [K in T]: (message: Messages[K]) => void };

/** What is done about each that there is. */
export type AllTakers = Takers<keyof Messages>;

/** Hands a message to what is done about it. */
export function take<T extends keyof Messages>(takers: Takers<T>, message: Messages[T] & { readonly type: T }): void {
  const type: T = message.type;
  takers[type](message);
}
