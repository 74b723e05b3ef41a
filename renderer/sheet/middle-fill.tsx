import type { FillLedger } from "../../shared-model/answers/fill.ts";
import { WALL } from "../../shared-model/geometry/metrics.ts";
import { textWidth } from "../../shared-model/geometry/text-width.ts";
import { toDecimal } from "../../shared-model/units/volume.ts";
import { fillWords } from "./box-header.tsx";

/** In pixels. */
const BAR = { under: 6, height: 4.5, words: 16 } as const;
const FIGURES = 11.5;
/** In pixels under a box: the name of the next box, with what stays free over it; and under its own bar and figures. */
const NEXT_NAME = 24;
const WITH_FIGURES = BAR.under + BAR.words + 4;
const BAR_ALONE = BAR.under + BAR.height + 2;

/** Under the box, as wide as it, but beside what comes through its lower wall: the frame is the box, the ink is what is in it. */
export function MiddleFill({
  ledger,
  left,
  width,
  y,
  free,
  unit,
}: {
  readonly ledger: FillLedger;
  readonly left: number;
  readonly width: number;
  readonly y: number;
  /** Drawing units down to the next box. */
  readonly free: number;
  readonly unit: number;
}) {
  const words = fillWords(ledger);
  const room = free / unit - NEXT_NAME;
  if (words === undefined || room < BAR_ALONE) return null;
  const { total, available } = ledger;
  const ratio = available === undefined ? undefined : toDecimal(total) / Math.max(toDecimal(available), 0.0001);
  const over = ratio !== undefined && ratio > 1;
  const long = width + WALL - left;
  const top = y + BAR.under * unit;
  const high = BAR.height * unit;
  const beyond = over ? Math.max(6 * unit, Math.min(24 * unit, (ratio - 1) * long)) : 0;
  const size = FIGURES * unit;
  const figures = textWidth(words, size) <= long ? words : words.replace(" in³", "");
  return (
    <g className={over ? "sheet-fill sheet-fill-over" : "sheet-fill"}>
      {ratio === undefined ? (
        <rect className="sheet-fill-unknown" x={left} y={top} width={long} height={high} />
      ) : (
        <>
          <rect className="sheet-fill-track" x={left} y={top} width={long} height={high} />
          <rect className="sheet-fill-ink" x={left} y={top} width={long * Math.min(1, ratio)} height={high} />
          {over && <rect className="sheet-fill-beyond" x={left + long} y={top} width={beyond} height={high} />}
          <path
            className="sheet-middle-ends"
            d={`M${left} ${top - 1.5 * unit}v${high + 3 * unit}M${left + long} ${top - 1.5 * unit}v${high + 3 * unit}`}
          />
        </>
      )}
      {room >= WITH_FIGURES && (
        <text className="sheet-middle-figures fig" x={left} y={top + BAR.words * unit} style={{ fontSize: size }}>
          {figures}
        </text>
      )}
    </g>
  );
}
