import { useEffect } from "react";
import { windowCommands } from "../../shared-model/commands/catalog/commands.ts";
import { hasModKey } from "../platform/mod-key.ts";
import { isTextField } from "../platform/text-field.ts";
import { OTHER_STATE_KEY } from "../state/commands/state-lines.ts";
import { dialogStore } from "../state/dialog-store.ts";
import { ENERGISE_KEY, toggleEnergise } from "../state/energise/energising.ts";
import { sessionStore, showPane } from "../state/session-store.ts";
import { showOtherState } from "../state/shown-state.ts";
import { startStore } from "../state/start.ts";
import { runWindowCommand } from "../state/window-commands.ts";

/** Keys that work anywhere in the window. Text fields keep those that edit text. */
export function useWindowKeys(): void {
  useEffect(() => {
    addEventListener("keydown", onKeyDown);
    return () => removeEventListener("keydown", onKeyDown);
  }, []);
}

function onKeyDown(event: KeyboardEvent): void {
  const act = event.defaultPrevented ? undefined : actionOf(event);
  if (act === undefined) return;
  event.preventDefault();
  act();
}

function actionOf(event: KeyboardEvent): (() => void) | undefined {
  if (event.key === OTHER_STATE_KEY && dialogStore.get().kind === "none") return showOtherState;
  if (event.key === ENERGISE_KEY && dialogStore.get().kind === "none" && !startStore.get().open) return toggleEnergise;
  if (event.key === "F6") return () => focusRegion(event.shiftKey ? -1 : 1);
  if (event.key === "F2" && sessionStore.get().selection.length === 1) return focusName;
  if (!hasModKey(event)) return undefined;
  const key = event.key.toLowerCase();
  const isRedo = key === "y" && !event.shiftKey;
  const command = windowCommands.find(({ id, shortcut }) =>
    isRedo ? id === "redo" : shortcut === `Mod${event.shiftKey ? "+Shift" : ""}+${key.toUpperCase()}`,
  );
  if (command?.byPlatform) return undefined;
  const editsText = command?.id === "undo" || command?.id === "redo";
  if (command === undefined || (editsText && isTextField(event.target))) return undefined;
  return () => runWindowCommand(command.id);
}

/** Name field of what is selected: the Details show it first. */
function focusName(): void {
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
