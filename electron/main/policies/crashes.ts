/** What follows when the process behind a window ends by itself. */
export type AfterCrash =
  /** It ended as it should. */
  | "nothing"
  /** The window starts again, once. */
  | "reload"
  /** It failed again too soon, or cannot start at all: the person decides. */
  | "ask";

/** A second failure within this time is not bad luck. */
const SOON_MS = 60_000;

/** Reasons of Electron's `render-process-gone` after which starting again has no prospect. */
const HOPELESS: ReadonlySet<string> = new Set(["launch-failed", "integrity-failure"]);

/**
 * @param reason As Electron names it.
 * @param nowMs Time of this failure.
 * @param beforeMs Time of the one before, in the same window; undefined for the first.
 */
export function afterCrash(reason: string, nowMs: number, beforeMs: number | undefined): AfterCrash {
  if (reason === "clean-exit") return "nothing";
  if (HOPELESS.has(reason)) return "ask";
  return beforeMs !== undefined && nowMs - beforeMs < SOON_MS ? "ask" : "reload";
}
