import "../css/bend.css";
import { useStore as useFlowStore, ViewportPortal } from "@xyflow/react";
import { useEffect } from "react";
import { WALL } from "../../../shared-model/geometry/metrics.ts";
import { acrossLeg } from "../../../shared-model/geometry/roads/bends.ts";
import { textWidth } from "../../../shared-model/geometry/text-width.ts";
import type { CableId, Side } from "../../../shared-model/model/ids.ts";
import { BEND_WORDS, END_WORDS } from "../../state/arrange-words.ts";
import { isLooking, useLooking } from "../../state/looking.ts";
import { sessionStore } from "../../state/session-store.ts";
import { placesOf } from "../../state/sheet-places.ts";
import { useStore } from "../../state/use-store.ts";
import { levelOf, stepAt } from "../detail.ts";
import { gestureStore } from "../gesture-store.ts";
import { pixelOf } from "../over-boxes.tsx";
import type { SheetDrawings } from "../sheet-drawings.ts";
import type { Road } from "../sheet-roads.ts";
import { beginBend } from "./bend-drag.ts";
import { bendStore, type HeldSide, shownRoads } from "./bend-store.ts";
import { beginEndDrag } from "./end-drag.ts";

/** The one selected cable, while nothing is in the hand and nothing moves; else an empty text. */
const loneCable = ({ selection, tool, held }: ReturnType<typeof sessionStore.get>): string => {
  const [only] = selection;
  return selection.length === 1 && only?.kind === "cable" && tool === undefined && held === undefined ? only.id : "";
};
const isBusy = ({ moving, marquee, jumper }: ReturnType<typeof gestureStore.get>): boolean =>
  moving.size > 0 || marquee !== undefined || jumper !== undefined;

/**
 * Grips of the selected cable: on each stretch, to lead it elsewhere, and at both ends, to take them to another box. For
 * pointers: the menu of the cable has a line for either.
 */
export function BendLayer({ shown }: { readonly shown: SheetDrawings }) {
  const id = useStore(sessionStore, loneCable);
  const readOnly = useLooking();
  const busy = useStore(gestureStore, isBusy);
  const road = useStore(shownRoads, ({ map }) => map?.roads.find(({ cable }) => cable === id));
  const { bending, ending } = useStore(bendStore, (bend) => bend);
  const zoom = useFlowStore(({ transform }) => transform[2]);
  useEffect(() => listen(), []);
  const grips = !readOnly && !busy && bending === undefined && ending === undefined && levelOf(stepAt(zoom)) !== "far";
  if (ending === undefined && (road === undefined || !grips)) return null;
  return (
    <ViewportPortal>
      <svg className="sheet-over sheet-bend-layer" width="1" height="1" aria-hidden="true">
        {ending === undefined ? road && <Grips road={road} /> : <EndLine ending={ending} shown={shown} />}
      </svg>
    </ViewportPortal>
  );
}

/** A press on a grip, or anywhere on the selected cable. */
function listen(): () => void {
  const down = (event: PointerEvent): void => {
    const on = event.target;
    if (event.button !== 0 || !(on instanceof Element) || isLooking()) return;
    const chosen = loneCable(sessionStore.get()) as CableId | "";
    if (chosen === "") return;
    const grip = on.closest<SVGElement>("[data-bend]")?.dataset.bend;
    if (grip === "a" || grip === "b") beginEndDrag(event, chosen, grip);
    else if (grip !== undefined) beginBend(event, chosen, Number(grip));
    else if (on.closest<SVGElement>("[data-road]")?.dataset.road === chosen) beginBend(event, chosen);
  };
  window.addEventListener("pointerdown", down);
  return () => window.removeEventListener("pointerdown", down);
}

/** Pixels: a stretch shorter than this on the screen has no grip of its own. */
const LEAST_LEG = 30;
/** A longer one may have words in its middle, which the grip stands clear of. */
const WORDS = 110;
const BESIDE_WORDS = 0.86;

function Grips({ road }: { readonly road: Road }) {
  const pixel = useFlowStore(pixelOf);
  const { points, turned } = road;
  const legs = points.slice(1).flatMap((b, i) => {
    const a = points[i] ?? b;
    const long = Math.abs(a.x - b.x) + Math.abs(a.y - b.y);
    const share = long > WORDS * pixel ? BESIDE_WORDS : 0.5;
    const at = { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
    return long < LEAST_LEG * pixel ? [] : [{ i, axis: acrossLeg(a, b), ...at }];
  });
  const ends: readonly (readonly [Side, Road["a"]])[] = turned
    ? [
        ["b", road.a],
        ["a", road.b],
      ]
    : [
        ["a", road.a],
        ["b", road.b],
      ];
  return (
    <>
      {legs.map(({ i, axis, x, y }) => (
        <g
          key={i}
          className={`sheet-bend sheet-bend-${axis} nodrag nopan`}
          data-bend={i}
          transform={`translate(${x} ${y}) scale(${pixel})`}
        >
          <title>{BEND_WORDS.grip}</title>
          <circle className="sheet-bend-hit" r="12" />
          <circle className="sheet-bend-ring" r="5.5" />
        </g>
      ))}
      {ends.map(([side, { at }]) => (
        <g
          key={side}
          className="sheet-bend sheet-bend-end nodrag nopan"
          data-bend={side}
          transform={`translate(${at.x} ${at.y}) scale(${pixel})`}
        >
          <title>{END_WORDS.grip}</title>
          <circle className="sheet-bend-hit" r="12" />
          <rect className="sheet-bend-ring" x="-5" y="-5" width="10" height="10" rx="1" />
        </g>
      ))}
    </>
  );
}

const LETTERS = 12;

/** The cable in the hand, from where it stays to the pointer, with what letting go would do. */
function EndLine({ ending, shown }: { readonly ending: HeldSide; readonly shown: SheetDrawings }) {
  const pixel = useFlowStore(pixelOf);
  const { from, pointer, over, words, possible } = ending;
  const at = over && placesOf(shown.document)[over];
  const drawing = over && shown.drawings.get(over);
  const width = textWidth(words, LETTERS, 600) + 14;
  return (
    <>
      <path
        className="sheet-bend-line"
        d={`M${from.x} ${from.y}L${pointer.x} ${pointer.y}`}
        style={{ strokeWidth: 2.5 * pixel, strokeDasharray: `${8 * pixel} ${5 * pixel}` }}
      />
      {at && drawing && (
        <rect
          className={possible ? "sheet-bend-to" : "sheet-bend-to sheet-bend-not"}
          x={at.x - WALL - 5 * pixel}
          y={at.y - WALL - 5 * pixel}
          width={drawing.width + 2 * WALL + 10 * pixel}
          height={drawing.height + 2 * WALL + 10 * pixel}
          rx={3 * pixel}
          style={{ strokeWidth: 2.5 * pixel, ...(!possible && { strokeDasharray: `${6 * pixel} ${5 * pixel}` }) }}
        />
      )}
      <g
        className="sheet-bend-words"
        transform={`translate(${pointer.x + 14 * pixel} ${pointer.y + 16 * pixel}) scale(${pixel})`}
      >
        <rect width={width} height={20} rx={2} />
        <text x={7} y={14} fontSize={LETTERS}>
          {words}
        </text>
      </g>
    </>
  );
}
