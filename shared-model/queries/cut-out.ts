import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Cable, CableSide } from "../model/cable.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { CableId, DeviceId, EnclosureId, OutletKey, RoomId, Side } from "../model/ids.ts";
import { parseOutlet } from "../model/ids.ts";
import type { Installation, Intent, Layout, Point, Project, StateName } from "../model/project.ts";
import { emptyProject } from "../model/project.ts";
import type { Room } from "../model/room.ts";
import { type InnerItems, innerPart, wholeEnclosure } from "./cut-enclosure.ts";
import { findInstallation } from "./installation-of.ts";
import { keptEntries } from "./kept-entries.ts";
import { outletsOf } from "./outlets-of.ts";

const wording = catalogue({
  partsOf: (title: Part) => `Parts of ${title}`,
  anotherBox: "another box",
  to: (place: Part) => `to ${place}`,
});

/** Something on the sheet by kind and id; kinds that a cut-out does not begin from are passed over. */
export interface CutItem {
  readonly kind: string;
  readonly id: string;
}

/**
 * A small document of its own with copies of some parts of another. `inside`: they come from inside one box, which is
 * there only to carry them. The field stands in the file, where a reader that does not know it keeps it.
 */
export interface CutOut extends Project {
  readonly cutOut: "whole" | "inside";
}

/** Whether a document was cut out from inside one box, so that its parts can go into another. */
export function isFromInside(project: Project & { readonly cutOut?: unknown }): boolean {
  const { enclosures, cables } = project.asFound;
  return project.cutOut === "inside" && Object.keys(enclosures).length === 1 && Object.keys(cables).length === 0;
}

/**
 * Copies of what is selected in one state, as a document that stands by itself, with ids as they were. A box comes with
 * all inside it, the cables between such boxes and those that lead into open country; a cable to a box that stays is
 * left out, or, if it is selected itself, leads into open country. Of a box that is not selected come the devices,
 * splices and jumpers that are, with the jumpers between them; their other ends are capped. Loads, labels, wishes, the
 * directory and rooms come with what they belong to. Undefined when nothing of the selection can stand by itself.
 */
export function cutOut(project: Project, state: StateName, selection: readonly CutItem[]): CutOut | undefined {
  const installation = findInstallation(project, state);
  if (installation === undefined) return undefined;
  const chosen = readSelection(installation, selection);
  const cables = keptCables(installation, chosen);
  const enclosures: Record<EnclosureId, Enclosure> = {};
  for (const enclosure of Object.values(installation.enclosures)) {
    const inner = chosen.inner.get(enclosure.id);
    const part = chosen.whole.has(enclosure.id)
      ? wholeEnclosure(installation, enclosure, cables)
      : inner && innerPart(enclosure, inner);
    if (part !== undefined) enclosures[enclosure.id] = inRoom(part, project);
  }
  const parts = Object.values(enclosures);
  if (parts.length === 0) return undefined;
  return {
    ...emptyProject(wording.partsOf(project.title), project.edition),
    supply: project.supply,
    rooms: roomsOf(project, parts),
    asFound: withBelongings(installation, enclosures, cables, chosen.whole),
    layout: layoutOf(project.layout, parts, cables),
    cutOut: chosen.whole.size === 0 && parts.length === 1 ? "inside" : "whole",
  };
}

interface Chosen {
  readonly whole: ReadonlySet<EnclosureId>;
  readonly cables: ReadonlySet<string>;
  readonly inner: ReadonlyMap<EnclosureId, InnerItems>;
}

function readSelection(installation: Installation, selection: readonly CutItem[]): Chosen {
  const ids = (kind: string) => new Set(selection.flatMap((item) => (item.kind === kind ? [item.id] : [])));
  const [enclosures, devices, splices, jumpers] = ["enclosure", "device", "splice", "jumper"].map(ids);
  const inner = new Map<EnclosureId, InnerItems>();
  const whole = new Set<EnclosureId>();
  const among = <K extends string>(table: Readonly<Record<K, unknown>>, chosen: ReadonlySet<string> | undefined) =>
    new Set((Object.keys(table) as K[]).filter((id) => chosen?.has(id)));
  for (const { id, ...enclosure } of Object.values(installation.enclosures)) {
    if (enclosures?.has(id)) {
      whole.add(id);
      continue;
    }
    const items: InnerItems = {
      devices: among(enclosure.devices, devices),
      splices: among(enclosure.splices, splices),
      jumpers: among(enclosure.jumpers, jumpers),
    };
    if (items.devices.size + items.splices.size + items.jumpers.size > 0) inner.set(id, items);
  }
  return { whole, inner, cables: ids("cable") };
}

/** Cables that come along, as they are in the cut-out. */
function keptCables(installation: Installation, { whole, cables }: Chosen): Readonly<Record<CableId, Cable>> {
  const kept: Record<CableId, Cable> = {};
  for (const cable of Object.values(installation.cables)) {
    const sides = Object.values(cable.sides);
    const drawn = sides.filter((side) => "enclosure" in side);
    const inside = drawn.filter((side) => whole.has(side.enclosure));
    if (inside.length === 0) continue;
    if (inside.length === drawn.length) kept[cable.id] = cable;
    else if (cables.has(cable.id)) kept[cable.id] = { ...cable, sides: openSides(installation, cable, whole) };
  }
  return kept;
}

function openSides({ enclosures }: Installation, { sides }: Cable, whole: ReadonlySet<EnclosureId>): Cable["sides"] {
  const side = (name: Side): CableSide => {
    const where = sides[name];
    if (!("enclosure" in where) || whole.has(where.enclosure)) return where;
    return { outside: wording.to(enclosures[where.enclosure]?.name ?? wording.anotherBox) };
  };
  return { a: side("a"), b: side("b") };
}

function inRoom(enclosure: Enclosure, { rooms }: Project): Enclosure {
  if (enclosure.roomId === undefined || enclosure.roomId in rooms) return enclosure;
  const { roomId: _gone, ...rest } = enclosure;
  return rest as Enclosure;
}

function roomsOf({ rooms }: Project, parts: readonly Enclosure[]): Readonly<Record<RoomId, Room>> {
  const kept: Record<RoomId, Room> = {};
  for (const { roomId } of parts) {
    const room = roomId === undefined ? undefined : rooms[roomId];
    if (room !== undefined) kept[room.id] = room;
  }
  return kept;
}

/** What hangs on the parts: loads, labels, wishes, intent of whole boxes, directory lines. */
function withBelongings(
  installation: Installation,
  enclosures: Installation["enclosures"],
  cables: Installation["cables"],
  whole: ReadonlySet<EnclosureId>,
): Installation {
  const devices = Object.values(enclosures).flatMap((one) => Object.values(one.devices));
  const deviceIds = new Set<DeviceId>(devices.map(({ id }) => id));
  const outlets = new Set<OutletKey>(devices.flatMap((device) => outletsOf(device).map(({ key }) => key)));
  const { loads, labels, intent, directory } = installation;
  return {
    enclosures,
    cables,
    loads: keptEntries(loads, ({ plug }) => deviceIds.has(parseOutlet(plug).device)),
    labels: keptEntries(labels, ({ on }) =>
      "device" in on ? deviceIds.has(on.device) : "cable" in on ? on.cable in cables : whole.has(on.enclosure),
    ),
    intent: {
      boxes: boxIntents(intent.boxes, whole, cables),
      outlets: keptEntries(intent.outlets, (_wish, key) => outlets.has(key as OutletKey)),
    },
    directory: keptEntries(directory, (_line, id) => deviceIds.has(id as DeviceId)),
  };
}

function boxIntents(
  boxes: Intent["boxes"],
  whole: ReadonlySet<EnclosureId>,
  cables: Installation["cables"],
): Intent["boxes"] {
  const kept: Record<EnclosureId, Intent["boxes"][EnclosureId]> = {};
  for (const [id, { supply, protect, ...rest }] of Object.entries(boxes)) {
    if (!whole.has(id as EnclosureId)) continue;
    const guarded = keptEntries(protect ?? {}, (_wish, cable) => cable in cables);
    const one = {
      ...rest,
      ...(supply !== undefined && supply in cables && { supply }),
      ...(Object.keys(guarded).length > 0 && { protect: guarded }),
    };
    if (Object.keys(one).length > 0) kept[id as EnclosureId] = one;
  }
  return kept;
}

/** As it was drawn, moved so that the foremost corner is the origin. */
function layoutOf(layout: Layout, parts: readonly Enclosure[], cables: Installation["cables"]): Layout {
  const points = parts.map(({ id }) => layout.enclosures[id] ?? { x: 0, y: 0 });
  const corner = points.reduce((a, b) => ({ x: Math.min(a.x, b.x), y: Math.min(a.y, b.y) }));
  const moved = ({ x, y }: Point): Point => ({ x: x - corner.x, y: y - corner.y });
  const splices = new Set(parts.flatMap((one) => Object.keys(one.splices)));
  const bends = Object.entries(keptEntries(layout.cables, (_bends, id) => id in cables));
  return {
    enclosures: Object.fromEntries(parts.map(({ id }, index) => [id, moved(points[index] ?? corner)])),
    splices: Object.fromEntries(
      Object.entries(keptEntries(layout.splices, (_at, id) => splices.has(id))).map(([id, { x, y }]) => [id, { x, y }]),
    ),
    cables: Object.fromEntries(bends.map(([id, points]) => [id, points.map(moved)])),
    rooms: {},
  };
}
