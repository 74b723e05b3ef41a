import { useMemo, useSyncExternalStore } from "react";
import type { Store } from "./store.ts";

/**
 * What `select` picks from a store; the component renders again only when the pick differs. `select` must be a stable
 * function or cheap, and must return primitives, entities of the document, or something that `same` can compare.
 */
export function useStore<T, S>(store: Store<T>, select: (state: T) => S, same: (a: S, b: S) => boolean = Object.is): S {
  const read = useMemo(() => {
    let seen: { readonly state: T; readonly pick: S } | undefined;
    return (): S => {
      const state = store.get();
      if (seen !== undefined && Object.is(seen.state, state)) return seen.pick;
      const pick = select(state);
      seen = { state, pick: seen !== undefined && same(seen.pick, pick) ? seen.pick : pick };
      return seen.pick;
    };
  }, [store, select, same]);
  return useSyncExternalStore(store.subscribe, read);
}

/** Equal length and pairwise identical members: for picks that are lists of entities. */
export function sameList<T>(a: readonly T[], b: readonly T[]): boolean {
  return a.length === b.length && a.every((item, index) => Object.is(item, b[index]));
}
