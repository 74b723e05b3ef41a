import { useStore as useFlowStore, ViewportPortal } from "@xyflow/react";
import { memo, useMemo } from "react";
import { scopeStore, shownScope } from "../../state/scope/scope-store.ts";
import { placesOf } from "../../state/sheet-places.ts";
import { useStore } from "../../state/use-store.ts";
import { levelOf, stepNow, unitOf } from "../detail.ts";
import type { SheetDrawings } from "../sheet-drawings.ts";
import { ScopeTallies } from "./scope-tallies.tsx";

/** From afar boxes are painted: how much of each changes stands over the painting. */
export const ScopeFar = memo(function ScopeFar({ shown }: { readonly shown: SheetDrawings }) {
  const step = useFlowStore(stepNow);
  return levelOf(step) === "far" ? <Tallies shown={shown} unit={unitOf(step)} /> : null;
});

function Tallies({ shown, unit }: { readonly shown: SheetDrawings; readonly unit: number }) {
  const answer = useStore(scopeStore, shownScope);
  const placed = useMemo(() => {
    const places = placesOf(shown.document);
    return (answer?.boxes ?? []).flatMap((box) => {
      const drawing = shown.drawings.get(box.enclosure);
      const at = places[box.enclosure];
      return drawing === undefined || at === undefined ? [] : [{ box, drawing, at }];
    });
  }, [answer, shown]);
  return (
    <ViewportPortal>
      <svg className="scope-gone scope-far" width="1" height="1" aria-hidden="true">
        {placed.map(({ box, drawing, at }) => (
          <g key={box.enclosure} transform={`translate(${at.x} ${at.y})`}>
            <ScopeTallies box={box} drawing={drawing} unit={unit} />
          </g>
        ))}
      </svg>
    </ViewportPortal>
  );
}
