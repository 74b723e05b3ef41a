import type { ConditionKind } from "../../../shared-model/answers/energised.ts";
import { CONDITION_TAGS } from "../../state/energise/energise-words.ts";

const LINE = "M0 9H34";
/** Under the patterns lies a conductor of this colour. */
const UNDER = { live: "black", switched: "red", ground: "bare" } as const;

/** A condition with the letter and the pattern that the sheet gives it. */
export function ConditionSign({ kind }: { readonly kind: ConditionKind }) {
  const { letter } = CONDITION_TAGS[kind];
  const width = letter.length > 1 ? 21 : 14;
  const under = kind in UNDER ? UNDER[kind as keyof typeof UNDER] : "white";
  return (
    <svg width="64" height="18" viewBox="-28 0 64 18" aria-hidden="true">
      <g className={`sheet-cond sheet-cond-${kind}`} transform="translate(-15 9)">
        <rect x={-width / 2} y={-7} width={width} height={14} rx={2} />
        <text y={4}>{letter}</text>
      </g>
      {kind === "dead" ? (
        ["casing", "hollow", "core"].map((part) => <path key={part} d={LINE} className={`sheet-dead-${part}`} />)
      ) : (
        <>
          {kind !== "ground" && <path d={LINE} className={`sheet-sleeve-edge sheet-sleeve-edge-${kind}`} />}
          {kind !== "ground" && <path d={LINE} className={`sheet-sleeve sheet-sleeve-${kind}`} />}
          <path d={LINE} className={`sheet-casing sheet-casing-${under}`} />
          <path d={LINE} className={`sheet-core sheet-core-${under}`} />
        </>
      )}
    </svg>
  );
}
