import { useEffect, useMemo, useState } from "react";
import type { ScopeBox } from "../../../shared-model/answers/scope.ts";
import type { BoxDrawing } from "../../../shared-model/geometry/box-drawing.ts";
import { knownScope, scopeSigns, scopeSteps } from "../../../shared-model/geometry/scope/draw-scope.ts";
import type { ScopeDrawing } from "../../../shared-model/geometry/scope/scope-drawing.ts";
import { inSlices } from "../../../shared-model/lib/in-slices.ts";
import { documentStore } from "../../state/document-store.ts";

/** Milliseconds after which the window has its turn again. */
const SLICE_MS = 8;

/**
 * What the difference shows in a box: how each line is drawn at once; flags, old ways and what is laid aside as soon as they
 * are laid out, which is done between two frames. Undefined where nothing changes.
 */
export function useScopeDrawing(drawing: BoxDrawing, box: ScopeBox | undefined): ScopeDrawing | undefined {
  const [, setMade] = useState<ScopeDrawing>();
  const known = box && knownScope(drawing, box);
  const signs = useMemo(() => box && scopeSigns(drawing, box), [drawing, box]);
  useEffect(() => {
    if (box === undefined || known !== undefined) return undefined;
    let drop = (): void => {};
    // Read, not watched: another wiring as found comes with another answer.
    const begin = setTimeout(() => {
      drop = inSlices(scopeSteps(drawing, box, documentStore.get().project.asFound), SLICE_MS, {
        now: () => performance.now(),
        later: (then) => void setTimeout(then),
        tell: () => {},
        end: setMade,
      });
    });
    return () => {
      clearTimeout(begin);
      drop();
    };
  }, [drawing, box, known]);
  return known ?? signs;
}
