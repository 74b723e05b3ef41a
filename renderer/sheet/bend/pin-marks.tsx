import "../css/bend.css";
import { useStore as useFlowStore, ViewportPortal } from "@xyflow/react";
import { WALL } from "../../../shared-model/geometry/metrics.ts";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { placesOf } from "../../state/sheet-places.ts";
import { pixelOf } from "../over-boxes.tsx";
import type { SheetDrawings } from "../sheet-drawings.ts";

/** A pin beside the upper left corner of each box that stays where it is; the name of the box says it too. */
export function PinMarks({ shown }: { readonly shown: SheetDrawings }) {
  const { pinned } = shown.document.project.layout;
  return pinned === undefined ? null : <Marks shown={shown} ids={Object.keys(pinned) as EnclosureId[]} />;
}

function Marks({ shown, ids }: { readonly shown: SheetDrawings; readonly ids: readonly EnclosureId[] }) {
  const pixel = useFlowStore(pixelOf);
  const places = placesOf(shown.document);
  return (
    <ViewportPortal>
      <svg className="sheet-over sheet-bend-layer" width="1" height="1" aria-hidden="true">
        {ids.map((id) => {
          const at = places[id];
          if (at === undefined || !shown.drawings.has(id)) return null;
          const x = at.x - WALL - 9 * pixel;
          const y = at.y - WALL - 4 * pixel;
          return (
            <g key={id} className="sheet-pin" transform={`translate(${x} ${y}) scale(${pixel})`}>
              <path className="sheet-pin-head" d="M-3 -7H3L2.2 -3L4 0H-4L-2.2 -3Z" />
              <path d="M0 0V7" />
            </g>
          );
        })}
      </svg>
    </ViewportPortal>
  );
}
