/** Where nothing is painted, in a window out of sight, nobody waits for it. */
const UNPAINTED_MS = 500;

interface Waiting {
  readonly call: () => void;
  readonly until: number;
}

const waiting: Waiting[] = [];
let isAsked = false;
let isTimed = false;

/**
 * Calls it once, after the browser has painted what there is now. Where several wait, each has a frame of its own, in the
 * order in which they came: together they would hold up the next one, and a hand that waits for it.
 */
export function afterPaint(call: () => void): void {
  waiting.push({ call, until: performance.now() + UNPAINTED_MS });
  ask();
}

function ask(): void {
  if (waiting.length === 0) return;
  if (!isTimed) {
    isTimed = true;
    setTimeout(callOverdue, UNPAINTED_MS);
  }
  if (isAsked) return;
  isAsked = true;
  requestAnimationFrame(() =>
    setTimeout(() => {
      isAsked = false;
      const next = waiting.shift();
      ask();
      next?.call();
    }),
  );
}

function callOverdue(): void {
  isTimed = false;
  const now = performance.now();
  // What is asked for meanwhile waits for the next paint.
  const overdue = waiting.filter(({ until }) => until <= now);
  waiting.splice(0, overdue.length);
  ask();
  for (const { call } of overdue) call();
}
