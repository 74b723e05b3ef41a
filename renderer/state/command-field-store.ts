import { createStore, type Store } from "./store.ts";

/** Counts how often the command field was asked for, by a key or from a menu. */
export const commandFieldStore: Store<{ readonly asked: number }> = createStore({ asked: 0 });

export const askForCommandField = (): void => commandFieldStore.merge({ asked: commandFieldStore.get().asked + 1 });
