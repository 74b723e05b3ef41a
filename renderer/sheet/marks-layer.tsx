import { memo } from "react";
import { SeveritySign } from "./draw/severity-sign.tsx";
import type { FindingMark } from "./finding-marks.ts";
import { asButton } from "./svg-roles.ts";
import { wording } from "./words.ts";

/** What the checks say, at the things it is about. A press goes to the finding. */
export const MarksLayer = memo(function MarksLayer({ marks }: { readonly marks: readonly FindingMark[] }) {
  return (
    <g className="sheet-marks">
      {marks.map((mark) => (
        <g key={mark.key} {...asButton(markWords(mark))} className="sheet-mark nodrag nopan" data-mark={mark.key}>
          <SeveritySign kind={mark.worst} x={mark.at.x} y={mark.at.y} size={18} />
          {mark.count > 1 && (
            <text className="sheet-mark-count" x={mark.at.x + 12} y={mark.at.y - 5}>
              {mark.count}
            </text>
          )}
          <circle className="sheet-hit" cx={mark.at.x} cy={mark.at.y} r={12} />
          <title>{markWords(mark)}</title>
        </g>
      ))}
    </g>
  );
});

const WORDS = {
  unknown: wording.cannotTell,
  danger: wording.danger,
  violation: wording.violation,
  caution: wording.caution,
  advice: wording.advice,
};

export function markWords({ worst, count, messages, subject }: FindingMark): string {
  const more = count > 1 ? wording.andMore(count - 1) : "";
  return wording.at(WORDS[worst], more, subject.name, messages.join(" "));
}
