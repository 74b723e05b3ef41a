/** Who looks at the view whenever it comes to rest; the flow itself takes no more than one. */
const listeners = new Set<() => void>();

/** Calls it each time the view has come to rest, until the returned function is called. */
export function whenViewRests(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export function tellViewRests(): void {
  for (const listener of [...listeners]) listener();
}
