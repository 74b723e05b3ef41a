import { useStore as useFlowStore, ViewportPortal } from "@xyflow/react";
import { WALL } from "../../shared-model/geometry/metrics.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { useLooking } from "../state/looking.ts";
import { sessionStore } from "../state/session-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { useStore } from "../state/use-store.ts";
import { stepAt } from "./detail.ts";
import { gestureStore } from "./gesture-store.ts";
import { laterWording } from "./later-words.ts";
import { openStore } from "./open-boxes.ts";
import { pixelOf } from "./over-boxes.tsx";
import type { SheetDrawings } from "./sheet-drawings.ts";

const TIP = laterWording.dragToAnotherBoxToRun;

/** The one selected box, while nothing is in the hand and nothing moves; else an empty text. */
const loneBox = ({ selection, tool, held }: ReturnType<typeof sessionStore.get>): string => {
  const [only] = selection;
  return selection.length === 1 && only?.kind === "enclosure" && tool === undefined && held === undefined
    ? only.id
    : "";
};
const isBusy = ({ moving, marquee, jumper, choosing }: ReturnType<typeof gestureStore.get>): boolean =>
  moving.size > 0 || marquee !== undefined || jumper !== undefined || choosing;

/** An opened box lies over its neighbours, and over where the knob of its own small drawing would be. */
const isAnyOpen = ({ ids }: ReturnType<typeof openStore.get>): boolean => ids.length > 0;

/**
 * A knob beside the selected box, from which a cable is drawn. For pointers: keys draw one with C, and the menu of the
 * box has a line for it.
 */
export function CableKnob({ shown }: { readonly shown: SheetDrawings }) {
  const id = useStore(sessionStore, loneBox);
  const busy = useStore(gestureStore, isBusy);
  const readOnly = useLooking();
  const pixel = useFlowStore(pixelOf);
  const covered = useStore(openStore, isAnyOpen) && stepAt(1 / pixel) > 0;
  const at = placesOf(shown.document)[id as EnclosureId];
  const drawing = shown.drawings.get(id as EnclosureId);
  if (busy || readOnly || covered || at === undefined || drawing === undefined) return null;
  const x = at.x + drawing.width + WALL + 22 * pixel;
  const y = at.y - WALL - 6 * pixel;
  return (
    <ViewportPortal>
      <svg className="sheet-over sheet-knob-layer" width="1" height="1" aria-hidden="true">
        <g className="sheet-knob nodrag nopan" data-cable-knob={id} transform={`translate(${x} ${y}) scale(${pixel})`}>
          <title>{TIP}</title>
          <circle className="sheet-knob-hit" r="14" />
          <circle className="sheet-knob-ring" r="9" />
          <path d="M-5 0H0M0 0C3 0 2-4 5-4M0 0H5M0 0C3 0 2 4 5 4" />
        </g>
      </svg>
    </ViewportPortal>
  );
}
