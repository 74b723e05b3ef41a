import { useCallback, useMemo } from "react";
import type { ScopeBox } from "../../../shared-model/answers/scope.ts";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { type ScopeState, scopeBoxIn, scopeStore, shownScope } from "../../state/scope/scope-store.ts";
import { useStore } from "../../state/use-store.ts";

type Parts = typeof import("./scope-parts.ts")["parts"];

let parts: Parts | undefined;

/** Brings what draws the difference, before it is shown. */
export async function fetchScopeParts(): Promise<void> {
  ({ parts } = await import("./scope-parts.ts"));
}

export const scopeParts = (): Parts | undefined => parts;

/** The difference in one box. */
export interface Scoped {
  readonly parts: Parts;
  /** Undefined where nothing changes. */
  readonly box: ScopeBox | undefined;
}

/** Undefined while the difference is not shown, and before it is known. */
export function useScoped(id: EnclosureId): Scoped | undefined {
  const known = useStore(scopeStore, isKnown);
  const box = useStore(
    scopeStore,
    useCallback(
      (state: ScopeState) => {
        const answer = shownScope(state);
        return answer && scopeBoxIn(answer, id);
      },
      [id],
    ),
  );
  return useMemo(() => (known && parts !== undefined ? { parts, box } : undefined), [known, box]);
}

const isKnown = (state: ScopeState): boolean => shownScope(state) !== undefined;
