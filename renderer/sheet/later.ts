import type { ReactNode } from "react";
import { createStore, type Store } from "../state/store.ts";
import { useStore } from "../state/use-store.ts";

type Parts = typeof import("./later-parts.ts")["parts"];

const laterStore: Store<{ readonly parts?: Parts }> = createStore({});

/**
 * Brings what the sheet needs once a hand is at work on it. The drawing is seen before that, so it is fetched after the
 * first sight of it, before anybody can have taken hold of something.
 */
export async function fetchLater(): Promise<void> {
  if (laterStore.get().parts !== undefined) return;
  const { parts } = await import("./later-parts.ts");
  laterStore.set({ parts });
}

/** Undefined until it has come. */
export const laterParts = (): Parts | undefined => laterStore.get().parts;

/** As `laterParts`, for a component that renders again when it has come. */
export const useLaterParts = (): Parts | undefined => useStore(laterStore, ({ parts }) => parts);

/** What stands on the sheet as soon as its part has come. */
export function Later({ show }: { readonly show: (parts: Parts) => ReactNode }): ReactNode {
  const parts = useLaterParts();
  return parts === undefined ? null : show(parts);
}
