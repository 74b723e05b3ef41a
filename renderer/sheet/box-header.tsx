import { memo } from "react";
import type { FillLedger } from "../../shared-model/answers/fill.ts";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { WALL } from "../../shared-model/geometry/metrics.ts";
import { textWidth } from "../../shared-model/geometry/text-width.ts";
import type { EnclosureChange } from "../../shared-model/queries/changed-between-states.ts";
import { formatVolume, toDecimal } from "../../shared-model/units/volume.ts";
import { CHANGE_WORDS } from "./difference.ts";
import { wording } from "./words.ts";

export const FILL_BAR = 118;
/** Between words and bar, with a sign and its count. */
export const FILL_SIGN = 46;
const BAR = FILL_BAR;
/** Below this the words of the box and its fill do not fit side by side. */
const GAP = 24;
/** Of the words beside the name, and how many times larger they may be. */
const SIZE = 13;
const MOST = 1.25;

/** Name and make of a box above its wall, and how full it is. */
export const BoxHeader = memo(function BoxHeader({
  drawing,
  ledger,
  marked,
  change,
  growth,
}: {
  readonly drawing: BoxDrawing;
  readonly ledger: FillLedger | undefined;
  /** Whether a severity sign stands before the bar. */
  readonly marked: boolean;
  readonly change: EnclosureChange | undefined;
  /** How many times larger letters are to be, where there is room for it. */
  readonly growth: number;
}) {
  const { header, width } = drawing;
  const right = width + WALL;
  const words = ledger && fillWords(ledger);
  const fillWidth = (at: number) =>
    words === undefined ? 0 : textWidth(words, at, 600) + (marked ? FILL_SIGN : 12) + BAR;
  const nameWidth = textWidth(header.name, 20, 750) + (change === undefined ? 0 : tagWidth(change) + 10);
  // Letters of 11 units need to grow more than these of 13; a name beside a fill that is too long stays as it is.
  const wanted = Math.max(SIZE, Math.min(11 * growth, SIZE * MOST));
  const fits = (at: number): boolean => header.at.x + nameWidth + GAP + fillWidth(at) <= right;
  const size = fits(wanted) ? wanted : SIZE;
  const noteWidth = textWidth(header.note, size, 400);
  const room = right - header.at.x - nameWidth - 12 - fillWidth(size) - GAP;
  const noteAbove = noteWidth > room;
  return (
    <g className="sheet-box-header">
      <text className="sheet-box-name" x={header.at.x} y={header.at.y}>
        {header.name}
      </text>
      {change !== undefined && <ChangeTag change={change} x={header.at.x + nameWidth} y={header.at.y} />}
      <text
        className="sheet-box-note"
        x={noteAbove ? header.at.x : header.at.x + nameWidth + 12}
        y={noteAbove ? header.at.y - 22 : header.at.y}
        style={{ fontSize: size }}
      >
        {header.note}
      </text>
      {ledger && words && (
        <Fill ledger={ledger} words={words} size={size} right={right} y={header.at.y} gap={marked ? FILL_SIGN : 12} />
      )}
    </g>
  );
});

const tagWidth = (change: EnclosureChange): number => textWidth(CHANGE_WORDS[change], 12, 600) + 14;

/** "opened", "new": what the work does to the box, at the right end of its name. */
function ChangeTag({ change, x, y }: { readonly change: EnclosureChange; readonly x: number; readonly y: number }) {
  const width = tagWidth(change);
  return (
    <g className={`sheet-change-tag sheet-change-tag-${change}`}>
      <rect x={x - width} y={y - 15} width={width} height={18} rx={2} />
      <text x={x - width / 2} y={y - 2}>
        {CHANGE_WORDS[change]}
      </text>
    </g>
  );
}

/** "29.8125 of 30.3 in³"; the needed volume alone where the box's own is not known. */
export function fillWords(ledger: FillLedger): string | undefined {
  if (ledger.verdict === "not-applicable") return undefined;
  const needed = formatVolume(ledger.total);
  return ledger.available === undefined
    ? wording.ofIn3(needed)
    : wording.ofIn32(needed, formatVolume(ledger.available));
}

/** The frame is the box, the ink is what is in it; too much is hatched beyond the frame; unknown is an empty dashed frame. */
function Fill({
  ledger,
  words,
  size,
  right,
  y,
  gap,
}: {
  readonly ledger: FillLedger;
  readonly words: string;
  /** Of its letters. */
  readonly size: number;
  readonly right: number;
  readonly y: number;
  /** Between the words and the bar. */
  readonly gap: number;
}) {
  const { total, available } = ledger;
  const ratio = available === undefined ? undefined : toDecimal(total) / Math.max(toDecimal(available), 0.0001);
  const over = ratio !== undefined && ratio > 1 ? Math.max(9, Math.min(60, (ratio - 1) * BAR)) : 0;
  const x = right - BAR;
  return (
    <g className={over > 0 ? "sheet-fill sheet-fill-over" : "sheet-fill"}>
      <text className="fig" x={x - gap} y={y} textAnchor="end" style={{ fontSize: size }}>
        {words}
      </text>
      {ratio === undefined ? (
        <rect className="sheet-fill-unknown" x={x} y={y - 10} width={BAR} height={9} />
      ) : (
        <>
          <rect className="sheet-fill-track" x={x} y={y - 10} width={BAR} height={9} />
          <rect className="sheet-fill-ink" x={x} y={y - 10} width={BAR * Math.min(1, ratio)} height={9} />
          {over > 0 && <rect className="sheet-fill-beyond" x={right} y={y - 10} width={over} height={9} />}
          <path className="sheet-fill-frame" d={`M${x} ${y - 12}v13M${right} ${y - 12}v13`} />
        </>
      )}
    </g>
  );
}
