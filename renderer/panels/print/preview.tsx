import { type KeyboardEvent, type RefObject, useEffect, useRef, useState } from "react";
import { tickedSheets } from "../../state/print/print-choice.ts";
import { printStore } from "../../state/print/print-store.ts";
import { sceneNow, showPage } from "../../state/print/printing.ts";
import { useStore } from "../../state/use-store.ts";
import { LostNote } from "./lost-note.tsx";
import { PageTools } from "./page-tools.tsx";
import { usePagePicture } from "./use-page-picture.ts";
import { wording } from "./words.ts";
import { WorkHint } from "./work-hint.tsx";
import { scaleOf, stepped, type Zoom } from "./zoom.ts";

/** The page that is chosen, as it will be printed: always light, since paper is. */
export function Preview() {
  const layout = useStore(printStore, ({ laid }) => laid?.layout);
  const pages = useStore(printStore, ({ laid }) => laid?.pages);
  const page = useStore(printStore, (state) => state.page);
  const [zoom, setZoom] = useState<Zoom>("page");
  const view = useRef<HTMLDivElement>(null);
  const room = useRoom(view);
  const shown = pages?.[page];
  const address = usePagePicture(layout, page, pages?.length ?? 0);
  const scale = shown === undefined ? 1 : scaleOf(zoom, shown, room);
  useEffect(() => {
    // Another page is read from its top.
    if (page >= 0) view.current?.scrollTo(0, 0);
  }, [page]);
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const to = keyTo(event.key, page, pages?.length ?? 0);
    if (to !== undefined) showPage(to);
    else if (event.key === "+" || event.key === "=") setZoom(stepped(scale, 1));
    else if (event.key === "-") setZoom(stepped(scale, -1));
    else return;
    event.preventDefault();
  };
  return (
    <section className="print-preview" aria-label={wording.preview}>
      <PageTools zoom={zoom} scale={scale} onZoom={setZoom} />
      <LostNote />
      <div ref={view} className="print-view">
        {shown !== undefined && (
          <button
            type="button"
            className="print-paper"
            title={zoom === "page" ? wording.nearer : wording.wholePage}
            style={{ width: Math.round(shown.width * scale), height: Math.round(shown.height * scale) }}
            onClick={() => setZoom(zoom === "page" ? Math.max(1, stepped(scale, 1)) : "page")}
            onKeyDown={onKeyDown}
          >
            <img src={address} alt={wording.pageSpoken(page + 1, pages?.length ?? 0, shown.title)} draggable={false} />
          </button>
        )}
        {pages?.length === 0 && <Nothing />}
      </div>
      <WorkHint />
    </section>
  );
}

/** Why there is no page: nothing is ticked, or what is ticked has nothing to say. */
function Nothing() {
  const choice = useStore(printStore, (state) => state.choice);
  const empty = useStore(printStore, ({ laid }) => laid?.empty) ?? {};
  const whys = tickedSheets(choice, sceneNow()).flatMap(({ kind, title }) => {
    const why = empty[kind];
    return why === undefined ? [] : [{ kind, words: wording.nothingOn(title, why) }];
  });
  if (whys.length === 0) return <p className="empty">{wording.nothingIsTicked}</p>;
  return whys.map(({ kind, words }) => (
    <p key={kind} className="empty">
      {words}
    </p>
  ));
}

/** The page that a key leads to; undefined where it leads nowhere. */
function keyTo(key: string, page: number, pages: number): number | undefined {
  const steps: Readonly<Record<string, number>> = { PageDown: page + 1, PageUp: page - 1, Home: 0, End: pages - 1 };
  return steps[key];
}

/** Room within an element, in points; what scrolls does not take any of it. */
function useRoom(element: RefObject<HTMLElement | null>): { readonly width: number; readonly height: number } {
  const [room, setRoom] = useState({ width: 600, height: 600 });
  useEffect(() => {
    const { current } = element;
    if (current === null) return undefined;
    const look = (): void => setRoom({ width: current.clientWidth, height: current.clientHeight });
    look();
    const sizes = new ResizeObserver(look);
    sizes.observe(current);
    return () => sizes.disconnect();
  }, [element]);
  return room;
}
