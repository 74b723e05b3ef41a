import { useStore as useFlowStore } from "@xyflow/react";
import { type Level, levelOf, stepNow } from "./detail.ts";
import { showLevel } from "./show-level.ts";
import { wording } from "./words.ts";

const LEVELS: readonly { readonly level: Level; readonly word: string; readonly x: number }[] = [
  { level: "far", word: wording.far, x: 0 },
  { level: "middle", word: wording.middle, x: 1 },
  { level: "near", word: wording.near, x: 2 },
];

/** How much of the drawing is shown, as stops on a line: presses go from one to the next. */
export function DetailSwitch() {
  const now = levelOf(useFlowStore(stepNow));
  return (
    <fieldset className="sheet-detail" aria-label={wording.detail}>
      {LEVELS.map(({ level, word, x }) => (
        <button
          key={level}
          type="button"
          aria-pressed={level === now}
          className={level === now ? "sheet-detail-now" : undefined}
          onClick={() => showLevel(level)}
        >
          <svg width="48" height="12" viewBox="0 0 48 12" aria-hidden="true">
            <line x1={x === 0 ? 24 : 0} x2={x === 2 ? 24 : 48} y1="7" y2="7" />
            <circle cx="24" cy="7" r={level === now ? 4.5 : 3.5} />
          </svg>
          {word}
        </button>
      ))}
    </fieldset>
  );
}
