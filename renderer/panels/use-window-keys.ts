import { useEffect } from "react";
import { windowCommands } from "../../shared-model/commands/catalog/commands.ts";
import type { KeyId } from "../../shared-model/commands/catalog/keys.ts";
import { isTextField } from "../platform/text-field.ts";
import { dialogStore } from "../state/dialog-store.ts";
import { entryOfEvent } from "../state/keys/keys.ts";
import { translateSheetKeys } from "../state/keys/sheet-keys.ts";
import { refuseWhileScoped } from "../state/looking.ts";
import { renameInPlace } from "../state/rename.ts";
import { sessionStore, showPane } from "../state/session-store.ts";
import { startStore } from "../state/start.ts";
import { runWindowCommand } from "../state/window-commands.ts";

/** Keys that work anywhere in the window. Text fields keep those that edit text. */
export function useWindowKeys(): void {
  useEffect(() => {
    const stop = translateSheetKeys();
    addEventListener("keydown", onKeyDown);
    return () => {
      stop();
      removeEventListener("keydown", onKeyDown);
    };
  }, []);
}

function onKeyDown(event: KeyboardEvent): void {
  const act = event.defaultPrevented ? undefined : actionOf(event);
  if (act === undefined) return;
  event.preventDefault();
  act();
}

/** What makes no sense behind a dialog, or while no drawing is shown. */
const NOT_IN_DIALOG: ReadonlySet<KeyId> = new Set([
  "find-anything",
  "other-state",
  "show-scope",
  "overview",
  "fold-left",
  "fold-right",
  "energise",
]);

/** What is there to be changed only while a drawing is shown. */
const OF_DRAWING: ReadonlySet<KeyId> = new Set(["energise", "show-scope", "overview", "fold-left", "fold-right"]);

function actionOf(event: KeyboardEvent): (() => void) | undefined {
  const entry = entryOfEvent(event, "window");
  if (entry === undefined || entry.fixed) return undefined;
  const { id } = entry;
  if (NOT_IN_DIALOG.has(id) && dialogStore.get().kind !== "none") return undefined;
  // Not the page of the browser either: it would print the dialog.
  if (id === "print-export" && dialogStore.get().kind !== "none") return () => {};
  if (OF_DRAWING.has(id) && startStore.get().open) return undefined;
  if ((id === "undo" || id === "redo") && isTextField(event.target)) return undefined;
  if (id === "next-region") return () => focusRegion(1);
  if (id === "region-before") return () => focusRegion(-1);
  if (id === "rename" && refuseWhileScoped()) return () => {};
  if (id === "rename") return sessionStore.get().selection.length === 1 ? focusName : undefined;
  const command = windowCommands.find((one) => one.id === id);
  return command && (() => runWindowCommand(command.id));
}

/** Name of what is selected: where it stands on the sheet, unless the focus is elsewhere or it is not drawn there. */
function focusName(): void {
  const [item] = sessionStore.get().selection;
  const { activeElement, body } = document;
  const isElsewhere = activeElement !== body && activeElement?.closest(".sheet") == null;
  if (item !== undefined && !isElsewhere && renameInPlace(item)) return;
  showPane("details");
  requestAnimationFrame(() => {
    const field = document.querySelector<HTMLInputElement>(".who .name-field");
    field?.focus();
    field?.select();
  });
}

/** Of a row of tabs only the one that is shown: to focus another would show that one instead. */
const FOCUSABLE = "button:not(:disabled, [tabindex='-1']), input, select, summary, [tabindex='0']";

/** Moves the focus to the first control of the region after, or before, the one that has it. */
function focusRegion(direction: 1 | -1): void {
  const regions = [...document.querySelectorAll<HTMLElement>("[data-region]")];
  const now = regions.findIndex((region) => region.contains(document.activeElement));
  const next = regions[(now + direction + regions.length) % regions.length];
  next?.querySelector<HTMLElement>(FOCUSABLE)?.focus();
}
