import type { FillLedger } from "../../../shared-model/answers/fill.ts";
import { toDecimal } from "../../../shared-model/units/volume.ts";

const WIDTH = 312;

/** One piece a line of the ledger; what does not fit stands hatched beyond the frame. */
export function FillBar({
  ledger,
  available,
  over,
}: {
  readonly ledger: FillLedger;
  readonly available: number;
  readonly over: boolean;
}) {
  const needed = toDecimal(ledger.total);
  const scale = (WIDTH - 4) / Math.max(needed, available);
  const frame = available * scale;
  let from = 2;
  const pieces = ledger.lines.map((line) => {
    const width = toDecimal(line.volume) * scale;
    const piece = (
      <rect key={`${line.item} ${line.awg} ${line.each}`} x={from} y="4" width={Math.max(0, width - 1)} height="9" />
    );
    from += width;
    return piece;
  });
  return (
    <svg className="fill-bar" viewBox={`0 0 ${WIDTH} 18`} aria-hidden="true">
      <defs>
        <pattern id="over-hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V5" stroke="var(--fill-over)" strokeWidth="2.4" />
        </pattern>
      </defs>
      <rect x="2" y="4" width={frame} height="9" fill="var(--fill-track)" />
      <g fill={over ? "var(--fill-over)" : "var(--fill-ok)"}>{pieces}</g>
      {over && (
        <>
          <rect x={frame + 2} y="3" width={WIDTH} height="11" fill="var(--margin)" />
          <rect
            x={frame + 3}
            y="4.5"
            width={(needed - available) * scale - 2}
            height="8"
            fill="url(#over-hatch)"
            stroke="var(--fill-over)"
          />
        </>
      )}
      <path d={`M2 1V16M${frame + 2} 1V16`} stroke="var(--ink-1)" strokeWidth="1.5" />
    </svg>
  );
}
