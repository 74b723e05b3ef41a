import { type RefObject, useLayoutEffect, useRef } from "react";
import { documentStore } from "../state/document-store.ts";
import { isFolded } from "../state/folding.ts";
import { preferencesStore } from "../state/preferences-store.ts";
import { useStore } from "../state/use-store.ts";
import { besideStore } from "./beside-store.ts";
import { currentView, fitAll, shiftView } from "./sheet-view.ts";
import { shownOf } from "./view-fit.ts";
import { tellViewRests } from "./view-rest.ts";
import { areasOfAll } from "./whole-of.ts";

/**
 * What stands beside the sheet takes room from it, or gives it back: the drawing stays where it is in the window. A drawing
 * that was seen whole is seen whole after that.
 */
export function useStayPut(room: RefObject<HTMLElement | null>): void {
  const left = useStore(preferencesStore, isFolded.left);
  const right = useStore(preferencesStore, isFolded.right);
  const beside = useStore(besideStore, ({ on }) => on);
  const before = useRef<{ readonly beside: string; readonly area: DOMRect }>(undefined);
  const around = `${left} ${right} ${beside}`;
  useLayoutEffect(() => {
    const area = room.current?.getBoundingClientRect();
    const was = before.current;
    if (area === undefined) return;
    before.current = { beside: around, area };
    const view = currentView();
    if (was === undefined || was.beside === around || view === undefined) return;
    const areas = areasOfAll(documentStore.get());
    const by = was.area.left - area.left;
    const wasWhole = shownOf(areas, was.area, view) === "all";
    if (wasWhole && shownOf(areas, area, { ...view, x: view.x + by }) !== "all") fitAll();
    else shiftView(by);
    tellViewRests();
  }, [around, room]);
}
