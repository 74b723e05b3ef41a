import { useStore as useFlowStore, ViewportPortal } from "@xyflow/react";
import { sessionStore } from "../state/session-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { useStore } from "../state/use-store.ts";
import { gestureStore } from "./gesture-store.ts";
import { pixelOf } from "./over-boxes.tsx";
import type { SheetDrawings } from "./sheet-drawings.ts";

const fromOf = ({ routeFrom }: ReturnType<typeof sessionStore.get>) => routeFrom;
const pointerOf = ({ pointer }: ReturnType<typeof gestureStore.get>) => pointer;

/** The cable that is being drawn, from the wall of its first box to the pointer. */
export function RouteLine({ shown }: { readonly shown: SheetDrawings }) {
  const from = useStore(sessionStore, fromOf);
  const pointer = useStore(gestureStore, pointerOf);
  const pixel = useFlowStore(pixelOf);
  if (from === undefined || pointer === undefined) return null;
  const origin = placesOf(shown.document)[from];
  const drawing = shown.drawings.get(from);
  if (origin === undefined || drawing === undefined) return null;
  const x = pointer.x < origin.x + drawing.width / 2 ? origin.x : origin.x + drawing.width;
  const y = Math.min(Math.max(pointer.y, origin.y + 20), origin.y + drawing.height - 20);
  return (
    <ViewportPortal>
      <svg className="sheet-route-line" width="1" height="1" aria-hidden="true">
        <path
          d={`M${x} ${y}L${pointer.x} ${pointer.y}`}
          style={{ strokeWidth: 2.5 * pixel, strokeDasharray: `${8 * pixel} ${5 * pixel}` }}
        />
        <circle cx={x} cy={y} r={Math.max(6, 4 * pixel)} />
      </svg>
    </ViewportPortal>
  );
}
