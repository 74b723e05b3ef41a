import { type RefObject, useLayoutEffect, useState } from "react";
import { documentStore } from "../state/document-store.ts";
import { rememberedView } from "./remember-view.ts";
import { viewOfAll, viewOfRooms } from "./sheet-view.ts";
import type { Viewport } from "./view-fit.ts";

const CORNER: Viewport = { x: 80, y: 90, zoom: 0.6 };

/**
 * The view that the sheet begins with: all there is, as far as that is known before the boxes of a large building are
 * drawn. Undefined in the first pass, which only measures the room; the browser paints none of it.
 */
export function useFirstView(host: RefObject<HTMLElement | null>, complete: boolean): Viewport | undefined {
  const [view, setView] = useState<Viewport>();
  useLayoutEffect(() => {
    const room = host.current?.getBoundingClientRect();
    const kept = (): Viewport | undefined => rememberedView(documentStore.get(), room);
    setView((before) => before ?? kept() ?? (complete ? viewOfAll(room) : viewOfRooms(room)) ?? CORNER);
  }, [host, complete]);
  return view;
}

/**
 * The flow takes up its view and the size of its room in effects that may run after a paint. State that is set before it
 * makes React run them first.
 */
export function BeforePaint() {
  const [, settle] = useState(false);
  useLayoutEffect(() => settle(true), []);
  return null;
}
