import { useStore as useFlowStore, ViewportPortal } from "@xyflow/react";
import { memo, useMemo, useState } from "react";
import type { CableId, EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { type DocumentState, installationOf } from "../state/document-store.ts";
import { findingsStore } from "../state/findings-store.ts";
import { sessionStore } from "../state/session-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { useStore } from "../state/use-store.ts";
import { levelOf, stepNow, unitOf } from "./detail.ts";
import { shownDifference } from "./difference.ts";
import { LitRoads, LitRoadTags } from "./energise/lit-roads.tsx";
import { FarRoads } from "./far-roads.tsx";
import { gestureStore } from "./gesture-store.ts";
import { cablesBehind } from "./protection.ts";
import { looseRoad, type RoadEnd, type RoadScale } from "./road-path.ts";
import { RoadShape } from "./road-shape.tsx";
import { RoomsLayer } from "./rooms-layer.tsx";
import type { SheetDrawings } from "./sheet-drawings.ts";
import { createRoads, type Road, type RoadMap } from "./sheet-roads.ts";
import { roadsIn, tilesInView } from "./tiles.ts";

/** Near, a road only tucks under the stub it goes on from. */
const TUCK = 3;

/** The points of a road, its ends drawn on into the boxes by some units. */
function reachIn({ points, a, b }: Road, by: number): readonly Point[] {
  return [inward(a, by), ...points.slice(1, -1), inward(b, by)];
}

const inward = ({ at: { x, y }, out, upright }: RoadEnd, by: number): Point =>
  upright ? { x, y: y - out * by } : { x: x - out * by, y };

/** Cables between boxes, under the boxes, in one layer. */
export const Roads = memo(function Roads({ shown }: { readonly shown: SheetDrawings }) {
  const { document } = shown;
  const step = useFlowStore(stepNow);
  const [lay] = useState(createRoads);
  // While boxes still wait to be drawn, lanes would be given away too early.
  const map = useMemo(() => (shown.missing > 0 ? NONE : lay(shown, step)), [lay, shown, step]);
  const moving = useStore(gestureStore, movingIds);
  const [still, held] = useMemo(() => parted(map.roads, moving), [map, moving]);
  const roles = useStore(findingsStore, rolesOf);
  const guarded = useMemo(() => cablesBehind(installationOf(document), roles), [document, roles]);
  const layer = { document, scale: map.scale, step, guarded };
  return (
    <ViewportPortal>
      <svg className="sheet-rooms" width="1" height="1" aria-hidden="true">
        <RoomsLayer shown={shown} step={step} roads={map.roads} road={map.scale.road} />
      </svg>
      <svg className="sheet-roads" width="1" height="1" aria-hidden="true">
        <RoadLayer {...layer} roads={still} />
        {held.length > 0 && <MovingRoads {...layer} roads={held} />}
      </svg>
    </ViewportPortal>
  );
});

interface Layer {
  readonly document: DocumentState;
  readonly scale: RoadScale;
  readonly step: number;
  readonly guarded: ReadonlySet<CableId>;
  readonly roads: readonly Road[];
}

/** The roads in view; from afar all of them as one shape. */
const RoadLayer = memo(function RoadLayer({ document, scale, step, guarded, roads }: Layer) {
  const tiles = useFlowStore(tilesInView);
  const chosen = useStore(sessionStore, chosenCables);
  const picked = new Set(chosen.split(" "));
  const fresh = shownDifference(document)?.cables;
  const level = levelOf(step);
  const unit = level === "near" ? 0 : unitOf(step);
  const inView = useMemo(() => roadsIn(roads, tiles), [roads, tiles]);
  if (level === "far")
    return <FarRoads roads={roads} unit={unit} guarded={guarded} isNew={(cable) => fresh?.get(cable) === "new"} />;
  return (
    <>
      <LitRoads roads={inView} unit={unit} road={scale.road} />
      {inView.map((road) => (
        <RoadShape
          key={road.cable}
          cable={road.cable}
          points={unit === 0 ? reachIn(road, TUCK) : road.points}
          sheath={road.sheath}
          scale={scale}
          unit={unit}
          chosen={picked.has(road.cable)}
          guarded={guarded.has(road.cable)}
          fresh={fresh?.get(road.cable) === "new"}
        />
      ))}
      <LitRoadTags roads={inView} unit={unit} />
    </>
  );
});

/** Roads of boxes on the move, laid anew to where the boxes are now. The others stay as they were. */
function MovingRoads(layer: Layer) {
  const moving = useStore(gestureStore, movingOf);
  const roads = layer.roads.map((road) => moved(road, layer.document, moving, layer.scale));
  return <RoadLayer {...layer} roads={roads} />;
}

const NONE: RoadMap = { roads: [], scale: { road: 0, lane: 1, stepOut: 0, between: 0, around: 0 } };
const rolesOf = ({ roles }: ReturnType<typeof findingsStore.get>) => roles;
const movingOf = ({ moving }: ReturnType<typeof gestureStore.get>) => moving;
/** One text while the same boxes are on the move. */
const movingIds = ({ moving }: ReturnType<typeof gestureStore.get>): string => [...moving.keys()].join(" ");
const chosenCables = ({ selection }: ReturnType<typeof sessionStore.get>): string =>
  selection.flatMap((each) => (each.kind === "cable" ? [each.id] : [])).join(" ");

function parted(roads: readonly Road[], moving: string): readonly [readonly Road[], readonly Road[]] {
  if (moving === "") return [roads, []];
  const ids = new Set<string>(moving.split(" "));
  const isHeld = ({ boxes }: Road): boolean => ids.has(boxes[0]) || ids.has(boxes[1]);
  return [roads.filter((road) => !isHeld(road)), roads.filter(isHeld)];
}

function moved(road: Road, document: DocumentState, moving: ReadonlyMap<EnclosureId, Point>, scale: RoadScale): Road {
  const shift = (end: RoadEnd, box: EnclosureId): RoadEnd => {
    const now = moving.get(box);
    const before = placesOf(document)[box];
    if (now === undefined || before === undefined) return end;
    return { ...end, at: { x: end.at.x + now.x - before.x, y: end.at.y + now.y - before.y } };
  };
  const a = shift(road.a, road.boxes[0]);
  const b = shift(road.b, road.boxes[1]);
  return a === road.a && b === road.b ? road : { ...road, a, b, points: looseRoad({ a, b }, scale) };
}
