import { heldThing } from "../hand.ts";
import { bringIntoView } from "../sheet-view.ts";
import { goHere } from "./go.ts";
import { hereStore, isAt, placeOf } from "./here.ts";
import { fitRing } from "./ring.ts";

/** What keys walk through. */
const WALKED = ":is([data-item], [data-target], [data-mark], [data-walk-stop], .react-flow__node)";
const STOP = "[data-sheet-stop]";

/**
 * Makes the sheet one stop of the Tab key: the sheet itself takes the focus and hands it on to where the keys were last.
 * While the focus is in the sheet, the sheet itself is no stop, so that Shift and Tab lead out of it.
 * @returns Ends it.
 */
export function watchFocus(host: HTMLElement): () => void {
  let pressed = false;
  const settle = (): void => {
    const stop = host.querySelector<HTMLElement>(STOP);
    if (stop !== null)
      stop.tabIndex = stop !== document.activeElement && stop.contains(document.activeElement) ? -1 : 0;
  };
  const down = (): void => {
    pressed = true;
  };
  const up = (): void => {
    pressed = false;
  };
  const come = ({ target }: FocusEvent): void => {
    settle();
    if (!(target instanceof Element)) return;
    if (target.matches(STOP)) {
      // A press on the bare sheet is no wish to go anywhere.
      if (!pressed) enter(target);
      return;
    }
    if (!target.matches(WALKED)) return;
    const place = placeOf(target);
    if (place !== undefined) isAt(place);
    if (!target.matches(":focus-visible")) return;
    fitRing(target);
    bringIntoView(target);
  };
  const leave = ({ relatedTarget }: FocusEvent): void => {
    const { stop } = hereStore.get();
    if (stop !== undefined && !(relatedTarget instanceof Element && relatedTarget.closest("[role=menu]")))
      hereStore.merge({ stop: undefined });
  };
  const away = (event: FocusEvent): void => {
    if (event.target instanceof Element && event.target.matches("[data-walk-stop]")) leave(event);
  };
  host.addEventListener("focusin", come);
  host.addEventListener("focusout", away);
  // What has the focus may be gone without a word when it is scrolled out of view.
  window.addEventListener("keydown", settle, true);
  window.addEventListener("pointerdown", down, true);
  window.addEventListener("pointerup", up, true);
  window.addEventListener("pointercancel", up, true);
  return () => {
    host.removeEventListener("focusin", come);
    host.removeEventListener("focusout", away);
    window.removeEventListener("keydown", settle, true);
    window.removeEventListener("pointerdown", down, true);
    window.removeEventListener("pointerup", up, true);
    window.removeEventListener("pointercancel", up, true);
  };
}

/** With something in the hand its places come first. */
function enter(stop: Element): void {
  const target = heldThing() === undefined ? null : stop.querySelector<SVGElement>("[data-target]");
  if (target === null) goHere();
  else target.focus({ preventScroll: true });
}
