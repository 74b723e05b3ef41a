/** Quiet after the last change before something is said, in milliseconds: a run of edits is told once. */
const QUIET_MS = 500;
/** From one sentence to the next, in milliseconds: nobody is talked over. */
const APART_MS = 1000;
/** Edits that never end are told of after so long, in milliseconds. */
const LATEST_MS = 3000;

/**
 * Says things at the pace of speech.
 * @param tell Says what there is to say. @returns Whether there was something.
 */
export function paced(tell: () => boolean): { readonly changed: () => void; readonly stop: () => void } {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let since: number | undefined;
  let saidAt = Number.NEGATIVE_INFINITY;
  const say = (): void => {
    since = undefined;
    if (tell()) saidAt = performance.now();
  };
  return {
    changed: () => {
      clearTimeout(timer);
      const now = performance.now();
      since ??= now;
      const quiet = Math.min(QUIET_MS, Math.max(0, since + LATEST_MS - now));
      timer = setTimeout(say, Math.max(quiet, saidAt + APART_MS - now));
    },
    stop: () => clearTimeout(timer),
  };
}
