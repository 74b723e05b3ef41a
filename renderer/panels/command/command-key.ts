import { hasModKey } from "../../platform/mod-key.ts";

/** Calls `open` when the key of the command field is pressed anywhere in the window, until the returned function is called. */
export function listenForCommandKey(open: () => void): () => void {
  const listener = (event: KeyboardEvent): void => {
    if (!hasModKey(event) || event.shiftKey || event.key.toLowerCase() !== "k") return;
    event.preventDefault();
    open();
  };
  addEventListener("keydown", listener);
  return () => removeEventListener("keydown", listener);
}
