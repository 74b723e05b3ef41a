import { useStore as useFlowStore, ViewportPortal } from "@xyflow/react";
import { memo, useMemo, useState } from "react";
import type { CableId, EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import type { DocumentState } from "../state/document-store.ts";
import { sessionStore } from "../state/session-store.ts";
import { useStore } from "../state/use-store.ts";
import { linePath } from "./draw/line-path.ts";
import { gestureStore } from "./gesture-store.ts";
import { looseRoad, type RoadEnd } from "./road-path.ts";
import type { SheetDrawings } from "./sheet-drawings.ts";
import { createRoads, type Road } from "./sheet-roads.ts";
import { NEAR_FROM } from "./sheet-view.ts";

/** From afar the stubs in the boxes are not drawn, so a road goes on to the wall. Near it only tucks under its stub. */
const STUB = 116;
const TUCK = 3;

/** The points of a road, its ends drawn on into the boxes by some units. */
function reachIn({ points, a, b }: Road, by: number): readonly Point[] {
  const first = { x: a.at.x - a.out * by, y: a.at.y };
  const last = { x: b.at.x - b.out * by, y: b.at.y };
  return [first, ...points.slice(1, -1), last];
}

const TILE = 1200;

/** What is in view, in coarse steps, so that panning a little renders nothing; from afar all cables are one shape. */
const tilesInView = ({
  transform: [x, y, zoom],
  width,
  height,
}: {
  readonly transform: readonly [number, number, number];
  readonly width: number;
  readonly height: number;
}): string =>
  zoom < NEAR_FROM
    ? "far"
    : [-x / zoom, -y / zoom, (width - x) / zoom, (height - y) / zoom].map((v) => Math.floor(v / TILE)).join(" ");

/** Cables between boxes, under the boxes, in one layer. */
export const Roads = memo(function Roads({ shown }: { readonly shown: SheetDrawings }) {
  const { document } = shown;
  const moving = useStore(gestureStore, movingOf);
  const tiles = useFlowStore(tilesInView);
  const chosen = useStore(sessionStore, chosenCables);
  const [lay] = useState(createRoads);
  // While boxes still wait to be drawn, lanes would be given away too early.
  const roads = useMemo(() => (shown.missing > 0 ? NONE : lay(shown)), [lay, shown]);
  const laid = useMemo(
    () => (moving.size === 0 ? roads : roads.map((road) => moved(road, document, moving))),
    [roads, document, moving],
  );
  const picked = new Set(chosen.split(" "));
  return (
    <ViewportPortal>
      <svg className="sheet-roads" width="1" height="1" aria-hidden="true">
        {tiles === "far" ? (
          <path className="sheet-road-line" d={laid.map((road) => linePath(reachIn(road, STUB), 30)).join("")} />
        ) : (
          laid
            .filter(({ points }) => isInTiles(points, tiles))
            .map((road) => (
              <RoadShape
                key={road.cable}
                cable={road.cable}
                points={reachIn(road, TUCK)}
                chosen={picked.has(road.cable)}
              />
            ))
        )}
      </svg>
    </ViewportPortal>
  );
});

const NONE: readonly Road[] = [];
const movingOf = ({ moving }: ReturnType<typeof gestureStore.get>) => moving;
const chosenCables = ({ selection }: ReturnType<typeof sessionStore.get>): string =>
  selection.flatMap((each) => (each.kind === "cable" ? [each.id] : [])).join(" ");

/** The stub of the cable in either box is the same thing with a name and for the keyboard; presses are answered by the sheet. */
const RoadShape = memo(function RoadShape({
  cable,
  points,
  chosen,
}: {
  readonly cable: CableId;
  readonly points: readonly Point[];
  readonly chosen: boolean;
}) {
  const path = linePath(points, 16);
  return (
    <g className={chosen ? "sheet-road sheet-chosen" : "sheet-road"} data-road={cable}>
      <path className="sheet-road-halo" d={path} />
      <path className="sheet-road-edge" d={path} />
      <path className="sheet-road-body" d={path} />
    </g>
  );
});

/** A road of a box on the move, laid anew to where the box is now. */
function moved(road: Road, document: DocumentState, moving: ReadonlyMap<EnclosureId, Point>): Road {
  const shift = (end: RoadEnd, box: EnclosureId): RoadEnd => {
    const now = moving.get(box);
    const before = document.project.layout.enclosures[box];
    if (now === undefined || before === undefined) return end;
    return { ...end, at: { x: end.at.x + now.x - before.x, y: end.at.y + now.y - before.y } };
  };
  const a = shift(road.a, road.boxes[0]);
  const b = shift(road.b, road.boxes[1]);
  return a === road.a && b === road.b ? road : { ...road, a, b, points: looseRoad({ a, b }) };
}

function isInTiles(points: readonly Point[], tiles: string): boolean {
  const [left = 0, top = 0, right = 0, bottom = 0] = tiles.split(" ").map((tile) => Number(tile) * TILE);
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return (
    Math.max(...xs) >= left &&
    Math.min(...xs) <= right + TILE &&
    Math.max(...ys) >= top &&
    Math.min(...ys) <= bottom + TILE
  );
}
