import type { SheetInput } from "../../answers/sheet-input.ts";
import type { BoxDrawing, Rect } from "../../geometry/box-drawing.ts";
import { boxDrawing } from "../../geometry/draw-box.ts";
import { freePlace } from "../../geometry/free-place.ts";
import { WALL } from "../../geometry/metrics.ts";
import { layRoads } from "../../geometry/roads/lay-roads.ts";
import type { RoadScale } from "../../geometry/roads/road.ts";
import { type Distance, type Road, roadEntries, roadScaleAt, roadsToLay } from "../../geometry/roads/road-map.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { EnclosureId } from "../../model/ids.ts";
import type { Installation, Point, Project, StateName } from "../../model/project.ts";
import { inOrder } from "../../queries/in-order.ts";
import { getInstallation } from "../../queries/installation-of.ts";

/** A box as it stands on the sheet. */
export interface Standing {
  readonly enclosure: Enclosure;
  readonly drawing: BoxDrawing;
  readonly at: Point;
  /** Outside of its walls, drawing units of the sheet. */
  readonly rect: Rect;
}

export interface HouseScene {
  readonly input: SheetInput;
  readonly installation: Installation;
  readonly boxes: readonly Standing[];
}

type Placed = Pick<HouseScene, "installation" | "boxes"> & { readonly project: Project };

const scenes = new WeakMap<Project, Map<StateName, Placed>>();

/**
 * All boxes of the shown state at their places; one without a place gets the first free one, as on the screen. Kept by the
 * document: a job asks for it box by box.
 */
export function houseScene(input: SheetInput): HouseScene {
  const { project: asked, state } = input;
  const known = scenes.get(asked) ?? new Map<StateName, Placed>();
  scenes.set(asked, known);
  const { project, installation, boxes } = known.get(state) ?? placedIn(asked, state);
  known.set(state, { project, installation, boxes });
  return { input: { ...input, project }, installation, boxes };
}

function placedIn(asked: Project, state: StateName): Placed {
  const installation = getInstallation(asked, state);
  const project = withPlaces(asked, installation);
  const boxes = inOrder(installation.enclosures).map((enclosure): Standing => {
    const drawing = boxDrawing(project, installation, enclosure.id);
    const at = project.layout.enclosures[enclosure.id] ?? { x: 0, y: 0 };
    const { width, height } = drawing;
    const rect = { x: at.x - WALL, y: at.y - WALL, width: width + 2 * WALL, height: height + 2 * WALL };
    return { enclosure, drawing, at, rect };
  });
  return { project, installation, boxes };
}

function withPlaces(project: Project, installation: Installation): Project {
  let { enclosures } = project.layout;
  for (const { id, item } of inOrder(installation.enclosures)) {
    if (enclosures[id] !== undefined) continue;
    const at = freePlace({ ...project, layout: { ...project.layout, enclosures } }, installation, item);
    enclosures = { ...enclosures, [id]: at };
  }
  return enclosures === project.layout.enclosures ? project : { ...project, layout: { ...project.layout, enclosures } };
}

export interface SceneRoads {
  readonly roads: readonly Road[];
  readonly scale: RoadScale;
}

/** The ways of all cables as they are seen from a distance. @param unit Drawing units of a pixel. */
export function sceneRoads({ input, installation, boxes }: HouseScene, distance: Distance, unit: number): SceneRoads {
  const drawings = new Map(boxes.map(({ enclosure, drawing }) => [enclosure.id, drawing]));
  const entries = new Map<EnclosureId, ReturnType<typeof roadEntries>>(
    boxes.map(({ enclosure, drawing, at }) => [enclosure.id, roadEntries(drawing, at, distance, unit)]),
  );
  const ends = roadsToLay(installation, input.project.layout, drawings, entries);
  const scale = roadScaleAt(distance, unit, entries.values());
  const standing = boxes.map(({ at, drawing: { width, height } }) => ({ ...at, width, height }));
  const ways = layRoads(ends, standing, scale);
  return { roads: ends.map((end, i) => ({ ...end, points: ways[i] ?? [] })), scale };
}

/** What boxes and the words around them take. */
export function extentOf(boxes: readonly Standing[], around: number): Rect {
  const left = Math.min(...boxes.map(({ rect }) => rect.x)) - around;
  const top = Math.min(...boxes.map(({ rect }) => rect.y)) - around;
  const right = Math.max(...boxes.map(({ rect }) => rect.x + rect.width)) + around;
  const bottom = Math.max(...boxes.map(({ rect }) => rect.y + rect.height)) + around;
  return { x: left, y: top, width: right - left, height: bottom - top };
}
