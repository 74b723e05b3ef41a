import { useStore as useFlowStore, ViewportPortal } from "@xyflow/react";
import { memo, useEffect, useMemo } from "react";
import { crossingsOf } from "../../shared-model/geometry/roads/crossings.ts";
import { looseRoad } from "../../shared-model/geometry/roads/lay-roads.ts";
import type { RoadEnd, RoadScale } from "../../shared-model/geometry/roads/road.ts";
import type { CableId, EnclosureId } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { type DocumentState, documentStore, installationOf } from "../state/document-store.ts";
import { energiseStore, isEnergised } from "../state/energise/energise-store.ts";
import { findingsStore } from "../state/findings-store.ts";
import { sessionStore } from "../state/session-store.ts";
import { placesOf } from "../state/sheet-places.ts";
import { useStore } from "../state/use-store.ts";
import { asBent } from "./bend/as-bent.ts";
import { bendStore, shownRoads } from "./bend/bend-store.ts";
import { laidFrom, levelOf, stepNow, unitOf } from "./detail.ts";
import { shownDifference } from "./difference.ts";
import { FarRoads } from "./far/far-roads.tsx";
import { MovingBoxes } from "./far/moving-boxes.tsx";
import { usePainted } from "./far/use-painted.ts";
import { gestureStore } from "./gesture-store.ts";
import { Later } from "./later.ts";
import { cablesBehind } from "./protection.ts";
import { RoadShape } from "./road-shape.tsx";
import { type RoomSign, useRoomSigns } from "./room-signs.ts";
import { RoomsLayer } from "./rooms-layer.tsx";
import type { SheetDrawings } from "./sheet-drawings.ts";
import type { Road } from "./sheet-roads.ts";
import { roadsIn, tilesInView } from "./tiles.ts";
import { useLaidRoads } from "./use-laid-roads.ts";
import { WalkStop } from "./walk/walk-stop.tsx";

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
  const level = levelOf(step);
  const isLarge = useStore(documentStore, hasMany);
  // From afar the lanes of one distance serve for the next ones too.
  const { map, step: laidStep } = useLaidRoads(shown, level === "far" ? laidFrom(step) : step, isLarge);
  // A line that was laid to be seen otherwise is painted until it is laid anew.
  const roadsFar = level === "far" || levelOf(laidStep) === "far";
  useEffect(() => shownRoads.set({ map }), [map]);
  const moving = useStore(gestureStore, movingIds);
  const [still, held] = useMemo(() => parted(map.roads, moving), [map, moving]);
  const roles = useStore(findingsStore, rolesOf);
  const guarded = useMemo(() => cablesBehind(installationOf(document), roles), [document, roles]);
  const painted = usePainted(shown, level);
  const rooms = useRoomSigns(shown, step, map.roads, map.scale.road, painted.marked);
  const layer = { document, scale: map.scale, step: laidStep, guarded };
  return (
    <>
      <FarRoads
        document={document}
        items={painted.items}
        roads={roadsFar ? still : NO_ROADS}
        rooms={level === "far" ? rooms : NO_ROOMS}
        guarded={guarded}
        unit={unitOf(step)}
      />
      {level === "far" && held.length + moving.length > 0 && <MovingBoxes all={painted.all} />}
      <ViewportPortal>
        <svg className="sheet-rooms" width="1" height="1" aria-hidden="true">
          <RoomsLayer signs={rooms} step={step} />
        </svg>
        <svg className="sheet-roads" width="1" height="1" aria-hidden="true">
          {!roadsFar && <RoadLayer {...layer} roads={still} />}
          {held.length > 0 && <MovingRoads {...layer} roads={held} />}
        </svg>
        <WalkStop roads={map.roads} />
      </ViewportPortal>
    </>
  );
});

/** So many cables that laying them anew would be felt while the sheet is zoomed. */
const MANY = 400;
const hasMany = (document: DocumentState): boolean => Object.keys(installationOf(document).cables).length > MANY;

const NO_ROADS: readonly Road[] = [];
const NO_ROOMS: readonly RoomSign[] = [];

interface Layer {
  readonly document: DocumentState;
  readonly scale: RoadScale;
  readonly step: number;
  readonly guarded: ReadonlySet<CableId>;
  readonly roads: readonly Road[];
}

/** The roads in view, each an element of the page. */
const RoadLayer = memo(function RoadLayer({ document, scale, step, guarded, roads }: Layer) {
  const tiles = useFlowStore(tilesInView);
  const chosen = useStore(sessionStore, chosenCables);
  const energised = useStore(energiseStore, isEnergised);
  const picked = new Set(chosen.split(" "));
  const fresh = shownDifference(document)?.cables;
  const level = levelOf(step);
  const unit = level === "near" ? 0 : unitOf(step);
  const bending = useStore(bendStore, bendingNow);
  const bent = useMemo(() => asBent(roads, bending, scale), [roads, bending, scale]);
  // Of all, and as they were before one is bent: what moves in the hand changes no other words.
  const crossed = useMemo(() => crossingsOf(roads, scale.road), [roads, scale]);
  const inView = useMemo(() => roadsIn(bent, tiles), [bent, tiles]);
  return (
    <>
      {energised && <Later show={({ LitRoads }) => <LitRoads roads={inView} unit={unit} road={scale.road} />} />}
      {inView.map((road) => (
        <RoadShape
          key={road.cable}
          cable={road.cable}
          points={unit === 0 ? reachIn(road, TUCK) : road.points}
          sheath={road.sheath}
          scale={scale}
          crossed={crossed}
          unit={unit}
          chosen={picked.has(road.cable)}
          guarded={guarded.has(road.cable)}
          fresh={fresh?.get(road.cable) === "new"}
        />
      ))}
      {energised && <Later show={({ LitRoadTags }) => <LitRoadTags roads={inView} unit={unit} />} />}
    </>
  );
});

const bendingNow = ({ bending }: ReturnType<typeof bendStore.get>) => bending;

/** Roads of boxes on the move, laid anew to where the boxes are now. The others stay as they were. */
function MovingRoads(layer: Layer) {
  const moving = useStore(gestureStore, movingOf);
  const roads = layer.roads.map((road) => moved(road, layer.document, moving, layer.scale));
  return <RoadLayer {...layer} roads={roads} />;
}

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
  if (a === road.a && b === road.b) return road;
  // Where both boxes go, its bends go along.
  const dx = a.at.x - road.a.at.x;
  const dy = a.at.y - road.a.at.y;
  const along = dx === b.at.x - road.b.at.x && dy === b.at.y - road.b.at.y;
  const bends = along ? road.bends?.map(({ x, y }) => ({ x: x + dx, y: y + dy })) : road.bends;
  return { ...road, a, b, points: looseRoad({ a, b, ...(bends && { bends }) }, scale) };
}
