import { commandFieldStore } from "../../state/command-field-store.ts";

/** Calls `open` when the command field is asked for, until the returned function is called. */
export const listenForCommandKey = (open: () => void): (() => void) => commandFieldStore.subscribe(open);
