import { ViewportPortal } from "@xyflow/react";
import { sessionStore } from "../state/session-store.ts";
import { useStore } from "../state/use-store.ts";
import { gestureStore } from "./gesture-store.ts";
import { placesOf } from "./places.ts";
import type { SheetDrawings } from "./sheet-drawings.ts";

const fromOf = ({ routeFrom }: ReturnType<typeof sessionStore.get>) => routeFrom;
const pointerOf = ({ pointer }: ReturnType<typeof gestureStore.get>) => pointer;

/** The cable that is being drawn, from the wall of its first box to the pointer. */
export function RouteLine({ shown }: { readonly shown: SheetDrawings }) {
  const from = useStore(sessionStore, fromOf);
  const pointer = useStore(gestureStore, pointerOf);
  if (from === undefined || pointer === undefined) return null;
  const origin = placesOf(shown.document)[from];
  const drawing = shown.drawings.get(from);
  if (origin === undefined || drawing === undefined) return null;
  const x = pointer.x < origin.x + drawing.width / 2 ? origin.x : origin.x + drawing.width;
  const y = Math.min(Math.max(pointer.y, origin.y + 20), origin.y + drawing.height - 20);
  return (
    <ViewportPortal>
      <svg className="sheet-route-line" width="1" height="1" aria-hidden="true">
        <path d={`M${x} ${y}L${pointer.x} ${pointer.y}`} />
        <circle cx={x} cy={y} r={6} />
      </svg>
    </ViewportPortal>
  );
}
