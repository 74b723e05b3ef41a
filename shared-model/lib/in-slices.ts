/** What work in slices needs of its surroundings. */
export interface SlicedWork<P, R> {
  /** Milliseconds of any clock. */
  now(): number;
  /** Calls it when others have had their turn. */
  later(then: () => void): void;
  /** How far it has come, after each slice but the last. */
  tell(progress: P): void;
  end(result: R): void;
}

/**
 * Does work that may be left off between any two steps, a slice at a time.
 * @param budget Milliseconds after which a slice ends with the step that it is at.
 * @returns Drops the work: nothing more is told and it does not end.
 */
export function inSlices<P, R>(steps: Iterator<P, R, undefined>, budget: number, work: SlicedWork<P, R>): () => void {
  let dropped = false;
  const slice = (): void => {
    if (dropped) return;
    const until = work.now() + budget;
    for (;;) {
      const step = steps.next();
      if (step.done === true) {
        work.end(step.value);
        return;
      }
      if (work.now() < until) continue;
      work.tell(step.value);
      work.later(slice);
      return;
    }
  };
  slice();
  return () => {
    dropped = true;
  };
}

/** What work in steps comes to, done at once. */
export function allAtOnce<R>(steps: Iterator<unknown, R, undefined>): R {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
