import type { FillLedger } from "../../../shared-model/answers/fill.ts";
import { formatVolume, toDecimal } from "../../../shared-model/units/volume.ts";
import { SeveritySign } from "../severity-sign.tsx";
import { wording } from "./words.ts";

const BAR = 160;

/** How full the box would be, as the checks count what was entered. */
export function Fill({ fill }: { readonly fill: FillLedger | undefined }) {
  return (
    <p className="seen-fill" role="status">
      {fill === undefined ? <span className="dim">{wording.theFillOfTheBoxIs}</span> : <Counted fill={fill} />}
    </p>
  );
}

function Counted({ fill }: { readonly fill: FillLedger }) {
  const { total, available, verdict, reason } = fill;
  if (verdict === "not-applicable") return <span className="dim">{reason}</span>;
  if (available === undefined) return <span className="dim">{wording.boxFillIn3TheVolumeOf(formatVolume(total))}</span>;
  const ratio = toDecimal(total) / Math.max(toDecimal(available), 0.0001);
  const over = verdict === "overfull";
  return (
    <>
      <span>
        {wording.boxFill}
        <strong className="fig">{wording.ofIn3(formatVolume(total), formatVolume(available))}</strong>
      </span>
      {over && <SeveritySign kind="violation" size={20} />}
      <svg className="seen-bar" width={BAR + 40} height="16" viewBox={`0 0 ${BAR + 40} 16`} aria-hidden="true">
        <rect x="1" y="4" width={BAR} height="9" fill="var(--fill-track)" />
        <rect
          x="1"
          y="4"
          width={BAR * Math.min(1, ratio)}
          height="9"
          fill={over ? "var(--fill-over)" : "var(--fill-ok)"}
        />
        {over && (
          <rect
            x={BAR + 2}
            y="4.5"
            width={Math.max(6, Math.min(36, (ratio - 1) * BAR))}
            height="8"
            fill="none"
            stroke="var(--fill-over)"
            strokeDasharray="2.5 1.5"
          />
        )}
        <path d={`M1 1.5V15.5M${BAR + 1} 1.5V15.5`} stroke="var(--ink-1)" strokeWidth="1.5" />
      </svg>
      {over && <strong className="seen-over">{wording.moreThanTheBoxHolds}</strong>}
    </>
  );
}
