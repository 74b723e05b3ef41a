import { documentStore, isDirty } from "../state/document-store.ts";

/** Lets the browser ask before a window with unsaved work is closed or loaded anew. */
export function guardUnsavedWork(): void {
  addEventListener("beforeunload", (event) => {
    if (isDirty(documentStore.get())) event.preventDefault();
  });
}
