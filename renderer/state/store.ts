/** A value with listeners. Values are replaced, never changed, so that a selector can compare by identity. */
export interface Store<T> {
  get(): T;
  set(next: T): void;
  /** Replaces some fields and keeps the others. */
  merge(part: Partial<T>): void;
  /** Calls `listener` after every change until the returned function is called. */
  subscribe(listener: () => void): () => void;
}

export function createStore<T extends object>(initial: T): Store<T> {
  let value = initial;
  const listeners = new Set<() => void>();
  const set = (next: T): void => {
    if (Object.is(next, value)) return;
    value = next;
    for (const listener of [...listeners]) listener();
  };
  return {
    get: () => value,
    set,
    merge: (part) => set({ ...value, ...part }),
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
