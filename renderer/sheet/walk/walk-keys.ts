import { shownInstallation } from "../../state/document-store.ts";
import { select, sessionStore, toggleSelected } from "../../state/session-store.ts";
import { removeSelected } from "../action.ts";
import type { Direction } from "../box-items.ts";
import { openMenu } from "../gesture-store.ts";
import { besideCable } from "./beyond.ts";
import { goBack, goHere, goOn, goTo, goToNeighbour, goToRim } from "./go.ts";
import { hereStore, placeOf } from "./here.ts";
import type { Place } from "./place.ts";

const ARROWS: Readonly<Record<string, Direction>> = {
  ArrowLeft: "left",
  ArrowRight: "right",
  ArrowUp: "up",
  ArrowDown: "down",
};

/** Goes on along what is connected; with Shift, back. */
export const FOLLOW_KEY = "f";

/**
 * Keys that walk between places of the sheet: arrows and Home and End between boxes, and along what is connected from
 * anywhere. Arrows within a box are answered by the box.
 * @param on What has the focus.
 * @returns True when the key meant something here.
 */
export function walkKey(on: Element, event: KeyboardEvent): boolean {
  if (event.altKey || event.ctrlKey || event.metaKey) return false;
  if (on.matches("[data-walk-stop]")) return stopKey(event);
  const place = placeOf(on);
  if (event.key.toLowerCase() === FOLLOW_KEY && place !== undefined) {
    if (event.shiftKey) goBack();
    else goOn(place);
    return true;
  }
  if (on.matches("[data-sheet-stop], main")) return entryKey(event);
  if (place?.kind !== "box" || !on.matches(".react-flow__node")) return false;
  const direction = ARROWS[event.key];
  if (direction !== undefined) {
    const next = goToNeighbour(place.box, direction);
    if (event.shiftKey && next !== undefined) add(place, { kind: "box", box: next });
    return true;
  }
  return rimKey(event);
}

function rimKey({ key }: KeyboardEvent): boolean {
  if (key !== "Home" && key !== "End") return false;
  goToRim(key === "Home" ? "first" : "last");
  return true;
}

/** The sheet as a whole has the focus: any key that walks begins to. */
function entryKey(event: KeyboardEvent): boolean {
  if (ARROWS[event.key] === undefined && event.key !== "Enter") return rimKey(event);
  goHere();
  return true;
}

/** Both boxes are selected then. */
function add(...places: readonly Place[]): void {
  const { selection } = sessionStore.get();
  for (const { box } of places)
    if (!selection.some((each) => each.kind === "enclosure" && each.id === box))
      toggleSelected({ kind: "enclosure", id: box });
}

/** Keys while a cable between boxes has the focus. */
function stopKey(event: KeyboardEvent): boolean {
  const { stop } = hereStore.get();
  if (stop === undefined) return false;
  const cable = stop.kind === "cable" ? ({ kind: "cable", id: stop.cable } as const) : undefined;
  switch (event.key) {
    case "ArrowDown":
    case "ArrowRight":
    case "ArrowUp":
    case "ArrowLeft":
      if (stop.kind === "cable")
        goTo(besideCable(shownInstallation(), stop, event.key === "ArrowDown" || event.key === "ArrowRight" ? 1 : -1));
      return true;
    case "Escape":
      goTo({ kind: "box", box: stop.box });
      return true;
    case "Enter":
    case " ":
      select(cable ?? { kind: "enclosure", id: stop.box });
      sessionStore.merge({ pane: "details" });
      return true;
    case "Delete":
    case "Backspace":
      if (cable === undefined) return false;
      select(cable);
      goTo({ kind: "box", box: stop.box });
      removeSelected();
      return true;
    case "ContextMenu":
      menuOf(stop);
      return true;
    case "F10":
      if (event.shiftKey) menuOf(stop);
      return event.shiftKey;
    default:
      if (event.key.toLowerCase() !== FOLLOW_KEY) return rimKey(event);
      if (event.shiftKey) goBack();
      else goOn(stop);
      return true;
  }
}

function menuOf(stop: Place): void {
  const { left = 0, bottom = 0 } =
    document.querySelector("[data-walk-stop]")?.getBoundingClientRect() ?? ({} as Partial<DOMRect>);
  const subject =
    stop.kind === "cable"
      ? ({ kind: "cable", enclosure: undefined, id: stop.cable } as const)
      : ({ kind: "box", enclosure: stop.box } as const);
  openMenu({ subject, x: left, y: bottom });
}
