import type { Condition } from "../../../shared-model/answers/energised.ts";

/**
 * The sleeve around an energised conductor: its edge tells the condition without colour. A bonded ground has none, so that
 * only what is out of order is seen on grounds.
 */
export function Sleeve({ path, condition: { kind } }: { readonly path: string; readonly condition: Condition }) {
  if (kind === "ground" || kind === "dead") return null;
  return (
    <>
      <path d={path} className={`sheet-sleeve-edge sheet-sleeve-edge-${kind}`} />
      <path d={path} className={`sheet-sleeve sheet-sleeve-${kind}`} />
    </>
  );
}

/** A dead conductor: hollow, its core dotted. */
export const DeadStrand = ({ path }: { readonly path: string }) => (
  <>
    <path d={path} className="sheet-dead-casing" />
    <path d={path} className="sheet-dead-hollow" />
    <path d={path} className="sheet-dead-core" />
  </>
);
