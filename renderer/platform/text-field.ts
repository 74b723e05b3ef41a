/** A field in which something was typed that is not taken over yet, or that is for searching: undo there is about its text. */
export function isTextField(target: EventTarget | null): boolean {
  if (target instanceof HTMLElement && target.dataset.committed === "true") return false;
  return target instanceof HTMLTextAreaElement || (target instanceof HTMLInputElement && target.type !== "checkbox");
}
