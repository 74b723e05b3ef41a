import type { Condition } from "../../../shared-model/answers/energised.ts";
import { CONDITION_TAGS } from "../../state/energise/energise-words.ts";

export const TAG = 14;

/** The letter of a condition in a square; its fill and edge differ, so that the letter is not alone in telling. */
export function ConditionTag({
  condition: { kind },
  x,
  y,
  size = TAG,
}: {
  readonly condition: Condition;
  readonly x: number;
  readonly y: number;
  readonly size?: number;
}) {
  const { letter } = CONDITION_TAGS[kind];
  const width = letter.length > 1 ? TAG * 1.5 : TAG;
  return (
    <g className={`sheet-cond sheet-cond-${kind}`} transform={`translate(${x} ${y}) scale(${size / TAG})`}>
      <rect x={-width / 2} y={-TAG / 2} width={width} height={TAG} rx={2} />
      <text y={4}>{letter}</text>
    </g>
  );
}
