import type { FromWorker, ToWorker } from "../../analysis/protocol.ts";
import type { RuleWatch } from "../../rules/run-rules.ts";

// The line to the window: what goes out on it, and the signs that the work goes on.
const scope = self as unknown as Pick<DedicatedWorkerGlobalScope, "postMessage">;

/** A message of the window, by its type. */
export type Message<T extends ToWorker["type"]> = Extract<ToWorker, { readonly type: T }>;

const SIGN_OF_LIFE_MS = 500;

let held = -1;
let skipped: ReadonlySet<string> = new Set();
let watchful = false;
/** When the window was last told that the job goes on: the two states of a large drawing take longer than one rule may. */
let saidAt = 0;

export const post = (message: FromWorker): void => scope.postMessage(message);

/** Which revision of the window's document is held; -1 before the first. */
export const heldRevision = (): number => held;

/**
 * A revision is held from here on, and the work on it begins.
 * @returns When it did, milliseconds.
 */
export function begin(revision: number): number {
  post({ type: "started", revision });
  saidAt = performance.now();
  held = revision;
  return saidAt;
}

const sayGoesOn = (): void => post({ type: "started", revision: held });

/** Tells the window that long work goes on, where that was not told for a while. */
export function giveSign(): void {
  if (performance.now() - saidAt <= SIGN_OF_LIFE_MS) return;
  sayGoesOn();
  saidAt = performance.now();
}

/** Keeps the window informed while a script is fetched: that is not hanging, however long it takes. */
export async function whileFetching<T>(fetch: () => Promise<T>): Promise<T> {
  const signs = setInterval(sayGoesOn, SIGN_OF_LIFE_MS);
  try {
    return await fetch();
  } finally {
    clearInterval(signs);
  }
}

/** What the window greets with: rules that are left out, and whether each is to be named as it begins. */
export function heedGreeting(greeting: Message<"hello">): void {
  skipped = new Set(greeting.disabledRules ?? []);
  watchful = greeting.watchful ?? false;
}

export const watch: RuleWatch = {
  skips: (rule) => skipped.has(rule),
  begins(rule) {
    if (!watchful) return giveSign();
    post({ type: "started", revision: held, rule });
    saidAt = performance.now();
  },
};
