import { type DocumentState, documentStore } from "../state/document-store.ts";
import { keyOfView, recallView, rememberView } from "../state/remembered-views.ts";
import { placesOf } from "../state/sheet-places.ts";
import { around, shownOf, type Viewport } from "./view-fit.ts";

type Size = Pick<DOMRect, "width" | "height">;

/** About as large as a box, for a look at whether a view is worth going back to before anything is drawn. */
const BOX = 400;

/** Where a document was looked at when it was left, while something of it still stands there. */
export function rememberedView(document: DocumentState, host: Size | undefined): Viewport | undefined {
  const key = keyOfView(document);
  const kept = key === undefined ? undefined : recallView(localStorage, key);
  if (kept === undefined || host === undefined || host.width === 0) return undefined;
  const view = around(kept, host);
  const areas = Object.values(placesOf(document)).map(({ x, y }) => ({ x, y, width: BOX, height: BOX }));
  return shownOf(areas, host, view) === "none" ? undefined : view;
}

let timer: ReturnType<typeof setTimeout> | undefined;
const SETTLED_MS = 400;

/** Keeps where the document is looked at; a view of all of it is the one that any window begins with. */
export function keepView(view: Viewport, host: Size, shown: ReturnType<typeof shownOf>): void {
  const key = keyOfView(documentStore.get());
  clearTimeout(timer);
  if (key === undefined) return;
  const { zoom } = view;
  const middle = { x: (host.width / 2 - view.x) / zoom, y: (host.height / 2 - view.y) / zoom, zoom };
  timer = setTimeout(() => rememberView(localStorage, key, shown === "some" ? middle : undefined), SETTLED_MS);
}
