import { useStore as useFlowStore, ViewportPortal } from "@xyflow/react";
import { memo, useMemo, useState } from "react";
import type { CableId, EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { type DocumentState, installationOf } from "../state/document-store.ts";
import { findingsStore } from "../state/findings-store.ts";
import { sessionStore } from "../state/session-store.ts";
import { useStore } from "../state/use-store.ts";
import { shownDifference } from "./difference.ts";
import { feetPath } from "./draw/feet-path.ts";
import { linePath } from "./draw/line-path.ts";
import { gestureStore } from "./gesture-store.ts";
import { placesOf } from "./places.ts";
import { cablesBehind } from "./protection.ts";
import { looseRoad, ROAD, type RoadEnd } from "./road-path.ts";
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

const FAR_BEND = 30;
/** From afar feet are as long as a road is wide there, and further apart. */
const farFeet = (points: readonly Point[]): string => feetPath(points, 5, 22, 40, 44);

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
  const roles = useStore(findingsStore, rolesOf);
  const guarded = useMemo(() => cablesBehind(installationOf(document), roles), [document, roles]);
  const fresh = shownDifference(document)?.cables;
  const isNew = (cable: CableId): boolean => fresh?.get(cable) === "new";
  return (
    <ViewportPortal>
      <svg className="sheet-roads" width="1" height="1" aria-hidden="true">
        {tiles === "far" ? (
          <>
            <path
              className="sheet-road-line"
              d={laid.map((road) => linePath(reachIn(road, STUB), FAR_BEND)).join("")}
            />
            <path
              className="sheet-road-line sheet-road-new"
              d={laid.map((road) => (isNew(road.cable) ? linePath(reachIn(road, STUB), FAR_BEND) : "")).join("")}
            />
            <path
              className="sheet-road-feet-far"
              d={laid.map((road) => (guarded.has(road.cable) ? farFeet(reachIn(road, STUB)) : "")).join("")}
            />
          </>
        ) : (
          laid
            .filter(({ points }) => isInTiles(points, tiles))
            .map((road) => (
              <RoadShape
                key={road.cable}
                cable={road.cable}
                points={reachIn(road, TUCK)}
                chosen={picked.has(road.cable)}
                guarded={guarded.has(road.cable)}
                fresh={isNew(road.cable)}
              />
            ))
        )}
      </svg>
    </ViewportPortal>
  );
});

const NONE: readonly Road[] = [];
const rolesOf = ({ roles }: ReturnType<typeof findingsStore.get>) => roles;
const movingOf = ({ moving }: ReturnType<typeof gestureStore.get>) => moving;
const chosenCables = ({ selection }: ReturnType<typeof sessionStore.get>): string =>
  selection.flatMap((each) => (each.kind === "cable" ? [each.id] : [])).join(" ");

/** The stub of the cable in either box is the same thing with a name and for the keyboard; presses are answered by the sheet. */
const RoadShape = memo(function RoadShape({
  cable,
  points,
  chosen,
  guarded,
  fresh,
}: {
  readonly cable: CableId;
  readonly points: readonly Point[];
  readonly chosen: boolean;
  readonly guarded: boolean;
  readonly fresh: boolean;
}) {
  const path = linePath(points, 16);
  return (
    <g className={`sheet-road${chosen ? " sheet-chosen" : ""}${fresh ? " sheet-new" : ""}`} data-road={cable}>
      <path className="sheet-road-halo" d={path} />
      <path className="sheet-road-edge" d={path} />
      <path className="sheet-road-body" d={path} />
      {guarded && <path className="sheet-feet" d={feetPath(points, ROAD / 2, 6, 18)} />}
    </g>
  );
});

/** A road of a box on the move, laid anew to where the box is now. */
function moved(road: Road, document: DocumentState, moving: ReadonlyMap<EnclosureId, Point>): Road {
  const shift = (end: RoadEnd, box: EnclosureId): RoadEnd => {
    const now = moving.get(box);
    const before = placesOf(document)[box];
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
