import { preferencesStore } from "./preferences-store.ts";

/** What stands beside the sheet and can be folded to a rail: stock and outline at the left, details and the rest at the right. */
export type Foldable = "left" | "right";

const FIELD = { left: "leftFolded", right: "rightFolded" } as const;

export const toggleFold = (side: Foldable): void =>
  preferencesStore.merge({ [FIELD[side]]: !preferencesStore.get()[FIELD[side]] });

/** Shows it again, for who asks for what is in it. */
export function unfold(side: Foldable): void {
  if (preferencesStore.get()[FIELD[side]]) toggleFold(side);
}

/** Selectors for components. */
export const isFolded: Readonly<Record<Foldable, () => boolean>> = {
  left: () => preferencesStore.get().leftFolded,
  right: () => preferencesStore.get().rightFolded,
};
