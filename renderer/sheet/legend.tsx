import { useStore as useFlowStore } from "@xyflow/react";
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from "react";
import { createPortal } from "react-dom";
import { drawLegend, LEGEND_LETTERS } from "../../shared-model/geometry/symbols/legend-drawing.ts";
import { SYMBOL_SIZE, SYMBOL_STROKE } from "../../shared-model/geometry/symbols/plan-symbol.ts";
import { symbolLegend } from "../../shared-model/geometry/symbols/symbol-legend.ts";
import { symbolPaths } from "../../shared-model/geometry/symbols/symbol-lines.ts";
import { SYMBOL_SETS, type SymbolSet, USUAL_SET } from "../../shared-model/model/symbol-set.ts";
import { dispatch, documentStore, installationOf } from "../state/document-store.ts";
import { type LegendCorner, preferencesStore } from "../state/preferences-store.ts";
import { useStore } from "../state/use-store.ts";
import { besideStore, setBeside } from "./beside-store.ts";
import { putInto, useCorner, useDrag } from "./legend-corner.ts";
import { cornerAfter } from "./legend-place.ts";
import { LEGEND_WORDS } from "./legend-words.ts";
import { sheetArea } from "./sheet-view.ts";

/** What the symbols of the plan mean: those that stand on it and no others, in a corner of the sheet or beside it. */
export function Legend() {
  const open = useStore(preferencesStore, ({ legend }) => legend);
  return open ? <OpenLegend /> : null;
}

function OpenLegend() {
  const installation = useStore(documentStore, installationOf);
  const set = useStore(documentStore, ({ project }) => project.symbols ?? USUAL_SET);
  const readOnly = useStore(documentStore, (document) => document.readOnly);
  const lines = useMemo(() => symbolLegend(installation, set), [installation, set]);
  const { width, height, title, lines: cells, note } = useMemo(() => drawLegend(lines, set), [lines, set]);
  const root = useRef<HTMLElement>(null);
  const { corner, free } = useCorner(root, width, height);
  const beside = useBeside(free);
  // Who puts it into a corner has it there whatever it covers.
  const [put, setPut] = useState(false);
  const putThere = (to: LegendCorner): void => {
    setPut(true);
    putInto(to);
  };
  const drag = useDrag(root, putThere);
  // Its head, by which it was asked for, is gone then.
  useEffect(() => {
    if ((beside || put) && document.activeElement === document.body) root.current?.querySelector("button")?.focus();
  }, [beside, put]);
  if (free === false && !put && !beside)
    return (
      <section ref={root} className="sheet-symbols" aria-label={LEGEND_WORDS.region} data-corner={corner}>
        <div className="sheet-symbols-head">
          <button
            type="button"
            title={hasRoomBeside() ? LEGEND_WORDS.beside : LEGEND_WORDS.noRoom}
            onClick={() => (hasRoomBeside() ? setBeside(true) : setPut(true))}
          >
            {LEGEND_WORDS.show}
          </button>
          <FoldButton />
        </div>
      </section>
    );
  const side = beside ? document.querySelector(".sheet-beside") : null;
  const whole = (
    <section
      ref={root}
      className="sheet-symbols"
      aria-label={LEGEND_WORDS.region}
      data-corner={beside ? "beside" : corner}
      {...(drag.at && { style: { translate: `${drag.at.x}px ${drag.at.y}px` } })}
    >
      <div className="sheet-symbols-head" {...(!beside && drag.events)}>
        {beside ? (
          <span className="sheet-symbols-name" aria-hidden="true">
            {LEGEND_WORDS.name}
          </span>
        ) : (
          <button type="button" title={LEGEND_WORDS.moveTip} onClick={() => putThere(cornerAfter(corner))}>
            {LEGEND_WORDS.move}
          </button>
        )}
        <FoldButton />
      </div>
      <fieldset className="sheet-symbols-sets" aria-label={LEGEND_WORDS.sets}>
        {SYMBOL_SETS.map((each) => (
          <button
            key={each}
            type="button"
            aria-pressed={each === set}
            disabled={readOnly && each !== set}
            onClick={() => choose(each)}
          >
            {LEGEND_WORDS[each]}
          </button>
        ))}
      </fieldset>

      <ul className="unseen">
        {lines.length === 0 && <li>{LEGEND_WORDS.none}</li>}
        {lines.map(({ symbol, count }) => (
          <li key={symbol.id}>{`${symbol.name}: ${count}`}</li>
        ))}
      </ul>
      <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        <text className="sheet-symbols-title" {...title.at} fontSize={LEGEND_LETTERS.title}>
          {title.text}
        </text>
        {cells.map(({ symbol, corner, side, text, textAt, count, countAt }) => {
          const { strokes, areas } = symbolPaths(symbol);
          return (
            <g key={symbol.id}>
              <g transform={`translate(${corner.x} ${corner.y}) scale(${side / SYMBOL_SIZE})`}>
                <path className="sheet-symbol" d={strokes} style={{ strokeWidth: SYMBOL_STROKE }} />
                <path className="sheet-symbol-area" d={areas} />
              </g>
              <text {...textAt} fontSize={LEGEND_LETTERS.line}>
                {text}
              </text>
              <text className="sheet-symbols-count fig" {...countAt} fontSize={LEGEND_LETTERS.line}>
                {count}
              </text>
            </g>
          );
        })}
        {note.map(({ text, at }) => (
          <text key={text} className="sheet-symbols-note" {...at} fontSize={LEGEND_LETTERS.note}>
            {text}
          </text>
        ))}
      </svg>
    </section>
  );
  return side === null ? whole : createPortal(whole, side);
}

/**
 * Whether it stands beside the sheet: where it was asked for and every corner has something in it that it would cover, until
 * it is folded, or the sheet would be too narrow.
 */
function useBeside(free: boolean | undefined): boolean {
  const [asked, setAsked] = useState(isAsked);
  const on = useStore(besideStore, (state) => state.on);
  const isCramped = useFlowStore(({ width }) => width > 0 && width < LEAST);
  useLayoutEffect(() => {
    if (free === undefined) return;
    if (asked) setBeside(!free && hasRoomBeside());
    setAsked(false);
  }, [asked, free]);
  useLayoutEffect(() => {
    if (isCramped) setBeside(false);
  }, [isCramped]);
  useLayoutEffect(() => () => setBeside(false), []);
  return on;
}

/** Remembered from the last time it is not asked for. */
const isAsked = (): boolean => document.activeElement?.matches(".sheet-symbols-button") === true;

/** Pixels of a sheet that can give some up for it, and of one that cannot. */
const WIDE = 640;
const LEAST = 360;
const hasRoomBeside = (): boolean => (sheetArea()?.width ?? 0) >= WIDE;

function FoldButton() {
  return (
    <button type="button" onClick={fold}>
      {LEGEND_WORDS.close}
    </button>
  );
}

const fold = (): void => {
  preferencesStore.merge({ legend: false });
  document.querySelector<HTMLElement>(".sheet-symbols-button")?.focus({ preventScroll: true });
};

function choose(set: SymbolSet): void {
  const { state } = documentStore.get();
  dispatch({ command: "set-property", args: { state, target: { kind: "project" }, field: "symbols", value: set } });
}
