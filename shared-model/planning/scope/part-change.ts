import type { ScopeChange, ScopeItem, ScopeKind, ScopePlace } from "../../answers/scope.ts";
import type { BoxPair } from "./box-pair.ts";

interface Told {
  readonly kind: ScopeKind;
  readonly item: ScopeItem;
  readonly was?: string | undefined;
  readonly will?: string | undefined;
  readonly fields?: readonly string[];
}

/** A change of a thing that is no conductor: nothing is counted for it. */
export function change({ id }: BoxPair, { kind, item, was, will, fields = [] }: Told): ScopeChange {
  const place = (words: string | undefined): ScopePlace | undefined => (words === undefined ? undefined : { words });
  const [old, now] = [place(was), place(will)];
  return {
    key: `${id} ${item.kind} ${item.id}`,
    kind,
    item,
    states: kind === "new" ? "proposed" : kind === "removed" ? "as-found" : "both",
    ...(old !== undefined && { was: old }),
    ...(now !== undefined && { will: now }),
    detach: 0,
    attach: 0,
    ...(fields.length > 0 && { fields }),
  };
}
