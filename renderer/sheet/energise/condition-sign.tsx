import type { ConditionKind } from "../../../shared-model/answers/energised.ts";
import { ConditionTag } from "./condition-tag.tsx";
import { DeadStrand, Sleeve } from "./sleeve.tsx";

const LINE = "M0 9H34";

/** A condition as the sheet shows it: the letter of its tag and the pattern around a conductor. */
export function ConditionSign({ kind }: { readonly kind: ConditionKind }) {
  return (
    <svg width="64" height="18" viewBox="-28 0 64 18" preserveAspectRatio="xMinYMid slice" aria-hidden="true">
      <ConditionTag condition={{ kind, volts: 0 }} x={-15} y={9} />
      <Sleeve path={LINE} condition={{ kind, volts: 0 }} />
      {kind === "dead" ? (
        <DeadStrand path={LINE} />
      ) : (
        <>
          <path d={LINE} className={`sheet-casing sheet-casing-${colourOf(kind)}`} />
          <path d={LINE} className={`sheet-core sheet-core-${colourOf(kind)}`} />
        </>
      )}
    </svg>
  );
}

const colourOf = (kind: ConditionKind): string => {
  if (kind === "ground") return "bare";
  if (kind === "neutral" || kind === "floating" || kind === "neutral-and-ground" || kind === "through-load")
    return "white";
  return kind === "switched" ? "red" : "black";
};
