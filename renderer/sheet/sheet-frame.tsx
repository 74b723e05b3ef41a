import { memo, useEffect, useRef, useState } from "react";

import { textWidth } from "../../shared-model/geometry/text-width.ts";
import type { StateName } from "../../shared-model/model/project.ts";
import { documentStore } from "../state/document-store.ts";
import { isScopeShown, scopeStore } from "../state/scope/scope-store.ts";
import { STATE_WORDS } from "../state/shown-state.ts";
import { useStore } from "../state/use-store.ts";
import { wording } from "./words.ts";
import { COLUMNS, ROWS } from "./zones.ts";

const THICK = 18;

/**
 * The neat line of the sheet: zones 1 to 8 across and A to F down, with a border scale of alternating bars. Proposed
 * has a double line, and both states say which they are in the corner.
 */
export function SheetFrame() {
  const host = useRef<HTMLDivElement>(null);
  const state = useStore(documentStore, (document) => document.state);
  const scoped = useStore(scopeStore, isScopeShown);
  const [size, setSize] = useState({ width: 0, height: 0 });
  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    const watch = new ResizeObserver(([entry]) => {
      if (entry !== undefined)
        setSize({ width: Math.round(entry.contentRect.width), height: Math.round(entry.contentRect.height) });
    });
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return (
    <div ref={host} className="sheet-frame" aria-hidden="true">
      {size.width > 4 * THICK && size.height > 4 * THICK && <Lines {...size} state={state} scoped={scoped} />}
    </div>
  );
}

const Lines = memo(function Lines({
  width,
  height,
  state,
  scoped,
}: {
  readonly width: number;
  readonly height: number;
  readonly state: StateName;
  readonly scoped: boolean;
}) {
  const across = (width - 2 * THICK) / COLUMNS;
  const down = (height - 2 * THICK) / ROWS.length;
  const columns = Array.from({ length: COLUMNS }, (_, i) => ({ word: `${i + 1}`, x: THICK + across * (i + 0.5) }));
  const rows = ROWS.map((word, i) => ({ word, y: THICK + down * (i + 0.5) + 4 }));
  return (
    <svg aria-hidden="true" width={width} height={height}>
      <path
        className="sheet-frame-margin"
        fillRule="evenodd"
        d={`M0 0H${width}V${height}H0ZM${THICK} ${THICK}V${height - THICK}H${width - THICK}V${THICK}Z`}
      />
      <rect
        className="sheet-frame-line"
        x={THICK + 0.5}
        y={THICK + 0.5}
        width={width - 2 * THICK - 1}
        height={height - 2 * THICK - 1}
      />
      {state === "proposed" && (
        <rect
          className="sheet-frame-second"
          x={THICK + 4.5}
          y={THICK + 4.5}
          width={width - 2 * THICK - 9}
          height={height - 2 * THICK - 9}
        />
      )}
      <path className="sheet-frame-ticks" d={ticks(width, height, across, down)} />
      <path className="sheet-frame-scale" d={scale(width, height, across, down)} />
      {columns.map(({ word, x }) => (
        <g key={word}>
          <text x={x} y={THICK - 5}>
            {word}
          </text>
          <text x={x} y={height - 5}>
            {word}
          </text>
        </g>
      ))}
      {rows.map(({ word, y }) => (
        <g key={word}>
          <text x={THICK / 2} y={y}>
            {word}
          </text>
          <text x={width - THICK / 2} y={y}>
            {word}
          </text>
        </g>
      ))}
      <StateMark state={state} scoped={scoped} />
    </svg>
  );
});

const wordOf = (state: StateName, scoped: boolean): string =>
  (scoped ? wording.scope : STATE_WORDS[state]).toUpperCase();

export const stateMarkWidth = (state: StateName, scoped = false): number =>
  Math.round(textWidth(wordOf(state, scoped), 12, 700) + 34);

/** Which account of the wiring this is, in the corner of the neat line: outlined as found, filled when proposed. */
function StateMark({ state, scoped }: { readonly state: StateName; readonly scoped: boolean }) {
  const word = wordOf(state, scoped);
  const width = stateMarkWidth(state, scoped);
  return (
    <g className={`sheet-frame-state sheet-frame-${state}`}>
      <rect x={THICK + 0.5} y={THICK + 0.5} width={width} height={25} />
      <text x={THICK + width / 2} y={THICK + 17}>
        {word}
      </text>
    </g>
  );
}

function ticks(width: number, height: number, across: number, down: number): string {
  let path = "";
  for (let i = 1; i < COLUMNS; i++) {
    const x = THICK + across * i;
    path += `M${x} 3V${THICK}M${x} ${height - 3}V${height - THICK}`;
  }
  for (let i = 1; i < ROWS.length; i++) {
    const y = THICK + down * i;
    path += `M3 ${y}H${THICK}M${width - 3} ${y}H${width - THICK}`;
  }
  return path;
}

function scale(width: number, height: number, across: number, down: number): string {
  let path = "";
  for (let i = 0; i < COLUMNS * 4; i += 2) {
    const x = THICK + (across / 4) * i;
    path += `M${x} ${THICK - 1.5}h${across / 4}M${x} ${height - THICK + 1.5}h${across / 4}`;
  }
  for (let i = 0; i < ROWS.length * 4; i += 2) {
    const y = THICK + (down / 4) * i;
    path += `M${THICK - 1.5} ${y}v${down / 4}M${width - THICK + 1.5} ${y}v${down / 4}`;
  }
  return path;
}
