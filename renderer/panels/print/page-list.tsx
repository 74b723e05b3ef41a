import { type KeyboardEvent, useId, useLayoutEffect, useRef } from "react";
import { printStore } from "../../state/print/print-store.ts";
import { showPage } from "../../state/print/printing.ts";
import { useStore } from "../../state/use-store.ts";
import { useWindowing } from "../../ui/use-windowing.ts";
import { wording } from "./words.ts";

const ROW = 28;

/** All pages by their titles, as one stop of the Tab key: the one that is chosen is shown. */
export function PageList() {
  const pages = useStore(printStore, ({ laid }) => laid?.pages) ?? [];
  const page = useStore(printStore, (state) => state.page);
  const id = useId();
  const list = useRef<HTMLUListElement>(null);
  /** The keys have gone to another page: the focus follows once its line is there. */
  const follows = useRef(false);
  const { first, last, page: jump } = useWindowing(list, { count: pages.length, size: ROW, keepInView: page });
  useLayoutEffect(() => {
    if (!follows.current) return;
    const line = list.current?.querySelector<HTMLElement>("[aria-current]");
    if (line?.dataset.page !== String(page)) return;
    follows.current = false;
    line.focus({ preventScroll: true });
  });
  const onKeyDown = (event: KeyboardEvent): void => {
    const to = keyTo(event.key, page, pages.length, jump);
    if (to === undefined) return;
    event.preventDefault();
    follows.current = true;
    showPage(to);
  };
  const lines = pages.slice(first, last).map((each, i) => ({ ...each, place: first + i }));
  return (
    <nav className="print-list" aria-labelledby={id}>
      <h3 id={id}>{wording.pages}</h3>
      <ul ref={list} className="print-lines">
        <li aria-hidden="true" style={{ height: first * ROW }} />
        {lines.map(({ place, title, part, parts }) => (
          <li key={place}>
            <button
              type="button"
              className="print-line"
              data-page={place}
              tabIndex={place === page ? 0 : -1}
              aria-current={place === page ? "page" : undefined}
              onClick={() => showPage(place)}
              onKeyDown={onKeyDown}
            >
              <span className="fig">{place + 1}</span>
              <span className="print-line-title">{title}</span>
              {parts > 1 && <span className="fig dim">{wording.of(part, parts)}</span>}
            </button>
          </li>
        ))}
        <li aria-hidden="true" style={{ height: Math.max(0, pages.length - last) * ROW }} />
      </ul>
    </nav>
  );
}

/** The page that a key leads to; undefined where it leads nowhere. */
function keyTo(key: string, page: number, pages: number, jump: number): number | undefined {
  const steps: Readonly<Record<string, number>> = {
    ArrowDown: page + 1,
    ArrowUp: page - 1,
    PageDown: page + jump,
    PageUp: page - jump,
    Home: 0,
    End: pages - 1,
  };
  const to = steps[key];
  return to === undefined ? undefined : Math.min(Math.max(0, to), pages - 1);
}
