/** Where nothing is painted, in a window out of sight, it does not wait for it. */
const UNPAINTED_MS = 500;

/** Calls it once, after the browser has painted what there is now. */
export function afterPaint(call: () => void): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const once = (): void => {
    if (timer === undefined) return;
    clearTimeout(timer);
    timer = undefined;
    call();
  };
  timer = setTimeout(once, UNPAINTED_MS);
  requestAnimationFrame(() => setTimeout(once));
}
