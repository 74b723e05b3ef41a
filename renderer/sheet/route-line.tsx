import { useStore as useFlowStore, ViewportPortal } from "@xyflow/react";
import { findCableItem } from "../../shared-model/catalog/cable-items.ts";
import { WALL } from "../../shared-model/geometry/metrics.ts";
import { textWidth } from "../../shared-model/geometry/text-width.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { cableKindStore, settledKind } from "../state/cable-kind.ts";
import { installationOf } from "../state/document-store.ts";
import { sessionStore } from "../state/session-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { useStore } from "../state/use-store.ts";
import { gestureStore } from "./gesture-store.ts";
import { laterWording } from "./later-words.ts";
import { pixelOf } from "./over-boxes.tsx";
import type { SheetDrawings } from "./sheet-drawings.ts";

const fromOf = ({ routeFrom }: ReturnType<typeof sessionStore.get>) => routeFrom;
const toolOf = ({ tool }: ReturnType<typeof sessionStore.get>) => tool?.id ?? "";
const pointerOf = ({ pointer }: ReturnType<typeof gestureStore.get>) => pointer;
/** Right edge of the view, in pixels from where the sheet begins. */
const rightEdgeOf = ({ width, transform }: { readonly width: number; readonly transform: readonly number[] }): number =>
  width - (transform[0] ?? 0);
const LETTERS = 12;

/** The cable that is being drawn, from the wall of its first box to the pointer, with where it would end if let go now. */
export function RouteLine({ shown }: { readonly shown: SheetDrawings }) {
  const from = useStore(sessionStore, fromOf);
  const tool = useStore(sessionStore, toolOf);
  const pointer = useStore(gestureStore, pointerOf);
  const kind = useStore(cableKindStore, settledKind);
  const pixel = useFlowStore(pixelOf);
  const edge = useFlowStore(rightEdgeOf);
  if (from === undefined || pointer === undefined) return null;
  const origin = placesOf(shown.document)[from];
  const drawing = shown.drawings.get(from);
  if (origin === undefined || drawing === undefined) return null;
  const x = pointer.x < origin.x + drawing.width / 2 ? origin.x : origin.x + drawing.width;
  const y = Math.min(Math.max(pointer.y, origin.y + 20), origin.y + drawing.height - 20);
  const far = boxUnder(shown, pointer);
  const to = far?.id === from ? undefined : far;
  const size = (findCableItem(tool) ?? kind)?.sizeText ?? "";
  const words = `${size} ${endWords(far?.id === from, to?.name)}`.trim();
  const width = textWidth(words, LETTERS, 600) + 14;
  // At the right edge of the view they stand left of the pointer.
  const beside = pointer.x / pixel + 14 + width > edge ? -14 - width : 14;
  return (
    <ViewportPortal>
      <svg className="sheet-route-line" width="1" height="1" aria-hidden="true">
        <path
          d={`M${x} ${y}L${pointer.x} ${pointer.y}`}
          style={{ strokeWidth: 2.5 * pixel, strokeDasharray: `${8 * pixel} ${5 * pixel}` }}
        />
        <circle cx={x} cy={y} r={Math.max(6, 4 * pixel)} />
        {to && (
          <rect
            className="sheet-route-end"
            x={to.x - WALL - 5 * pixel}
            y={to.y - WALL - 5 * pixel}
            width={to.width + 2 * WALL + 10 * pixel}
            height={to.height + 2 * WALL + 10 * pixel}
            rx={3 * pixel}
            style={{ strokeWidth: 2.5 * pixel }}
          />
        )}
        <g
          className="sheet-route-words"
          transform={`translate(${pointer.x + beside * pixel} ${pointer.y + 16 * pixel}) scale(${pixel})`}
        >
          <rect width={width} height={20} rx={2} />
          <text x={7} y={14} fontSize={LETTERS}>
            {words}
          </text>
        </g>
      </svg>
    </ViewportPortal>
  );
}

/** What letting go would do now. */
function endWords(isHome: boolean, name: string | undefined): string {
  if (isHome) return laterWording.backWhereItBegins;
  return name === undefined ? laterWording.leavesThisDrawing2 : laterWording.to(name);
}

interface Standing extends Point {
  readonly id: EnclosureId;
  readonly name: string;
  readonly width: number;
  readonly height: number;
}

/** The box whose walls a point of the sheet is within. */
function boxUnder({ document, drawings }: SheetDrawings, { x, y }: Point): Standing | undefined {
  const places = placesOf(document);
  const { enclosures } = installationOf(document);
  for (const [id, { width, height }] of drawings) {
    const at = places[id];
    if (at !== undefined && x >= at.x && y >= at.y && x <= at.x + width && y <= at.y + height)
      return { ...at, id, width, height, name: enclosures[id]?.name ?? "" };
  }
  return undefined;
}
