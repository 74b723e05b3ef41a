import { type ReactNode, useEffect, useLayoutEffect, useRef } from "react";
import { type Foldable, isFolded, toggleFold } from "../state/folding.ts";
import { useKeys, useKeysForReaders, withKeys } from "../state/keys/keys.ts";
import { preferencesStore } from "../state/preferences-store.ts";
import { useStore } from "../state/use-store.ts";
import { wording } from "./words.ts";

interface Props<T extends string> {
  readonly side: Foldable;
  /** What the rail offers while it is folded. */
  readonly tabs: readonly { readonly value: T; readonly word: ReactNode }[];
  readonly onShow: (tab: T) => void;
  readonly children: ReactNode;
}

/**
 * A pane beside the sheet that folds to a rail. What is folded stays as it was, out of sight. The focus that was in it goes
 * to the rail, and from the rail to the tab that is shown again.
 */
export function FoldablePane<T extends string>({ side, tabs, onShow, children }: Props<T>) {
  const folded = useStore(preferencesStore, isFolded[side]);
  const root = useRef<HTMLDivElement>(null);
  const isInside = useRef(false);
  const was = useRef(folded);
  // Before anything is rendered otherwise.
  useEffect(
    () =>
      preferencesStore.subscribe(() => {
        isInside.current = root.current?.contains(document.activeElement) === true;
      }),
    [],
  );
  useLayoutEffect(() => {
    if (was.current === folded) return;
    was.current = folded;
    const to = folded ? ".rail > button" : "[role=tab][aria-selected=true]";
    if (isInside.current) root.current?.querySelector<HTMLElement>(to)?.focus({ preventScroll: true });
  }, [folded]);
  return (
    <div ref={root} className="foldable">
      {folded && (
        <div className="rail">
          <FoldButton side={side} folded />
          {tabs.map(({ value, word }) => (
            <button
              key={value}
              type="button"
              className="rail-word"
              onClick={() => {
                onShow(value);
                toggleFold(side);
              }}
            >
              {word}
            </button>
          ))}
        </div>
      )}
      {children}
    </div>
  );
}

/** Folds a pane, from its head, or shows it again, from its rail. */
export function FoldButton({ side, folded = false }: { readonly side: Foldable; readonly folded?: boolean }) {
  const id = side === "left" ? "fold-left" : "fold-right";
  const keys = useKeys(id);
  const forReaders = useKeysForReaders(id);
  const word = wording[`${folded ? "show" : "fold"}-${side}`];
  return (
    <button
      type="button"
      className="fold-button"
      aria-label={word}
      aria-expanded={!folded}
      aria-keyshortcuts={forReaders}
      title={withKeys(word, keys)}
      onClick={() => toggleFold(side)}
    >
      <svg width="14" height="14" viewBox="0 0 14 14" aria-hidden="true">
        <path d={(side === "left") === folded ? "M5 2L10 7L5 12" : "M9 2L4 7L9 12"} />
      </svg>
    </button>
  );
}
