import { useMemo } from "react";
import { drawLegend, LEGEND_LETTERS } from "../../shared-model/geometry/symbols/legend-drawing.ts";
import { SYMBOL_SIZE, SYMBOL_STROKE } from "../../shared-model/geometry/symbols/plan-symbol.ts";
import { symbolLegend } from "../../shared-model/geometry/symbols/symbol-legend.ts";
import { symbolPaths } from "../../shared-model/geometry/symbols/symbol-lines.ts";
import { SYMBOL_SETS, type SymbolSet, USUAL_SET } from "../../shared-model/model/symbol-set.ts";
import { dispatch, documentStore, installationOf } from "../state/document-store.ts";
import { createStore, type Store } from "../state/store.ts";
import { useStore } from "../state/use-store.ts";
import { LEGEND_WORDS } from "./legend-words.ts";

const legendStore: Store<{ readonly open: boolean }> = createStore({ open: false });

/** Shows the legend, or puts it away. */
export function LegendButton() {
  const open = useStore(legendStore, (legend) => legend.open);
  return (
    <button
      type="button"
      className="sheet-symbols-button"
      aria-expanded={open}
      onClick={() => legendStore.set({ open: !open })}
    >
      {LEGEND_WORDS.open}
    </button>
  );
}

/** What the symbols of the plan mean: those that stand on it and no others, over the title block. */
export function Legend() {
  const open = useStore(legendStore, (legend) => legend.open);
  return open ? <OpenLegend /> : null;
}

function OpenLegend() {
  const installation = useStore(documentStore, installationOf);
  const set = useStore(documentStore, ({ project }) => project.symbols ?? USUAL_SET);
  const readOnly = useStore(documentStore, (document) => document.readOnly);
  const lines = useMemo(() => symbolLegend(installation, set), [installation, set]);
  const { width, height, title, lines: cells, note } = useMemo(() => drawLegend(lines, set), [lines, set]);
  return (
    <section className="sheet-symbols" aria-label={LEGEND_WORDS.region}>
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
}

function choose(set: SymbolSet): void {
  const { state } = documentStore.get();
  dispatch({ command: "set-property", args: { state, target: { kind: "project" }, field: "symbols", value: set } });
}
