import type { Device } from "../../model/device.ts";
import type { Enclosure, Splice } from "../../model/enclosure.ts";
import { type EndKey, jumperEnd, parseEnd } from "../../model/ids.ts";
import type { At } from "../../model/place.ts";
import type { Installation, Project } from "../../model/project.ts";
import { inOrder } from "../../queries/in-order.ts";
import { landedAt, landingsOf } from "../../queries/landings.ts";
import type { PlacedTerminal } from "../../queries/terminals-of.ts";
import { type SlotPlan, shapeBreakers } from "./breaker-shapes.ts";
import { type DeviceShape, shapeDevice } from "./device-shape.ts";
import { type EntryPlan, planEntries } from "./entries.ts";
import { type Facing, type Kind, kindOfConductor, type Net, type Port } from "./net.ts";
import { sizesOf } from "./words.ts";

/** A splice, or a bar of a panel, in a column. */
export interface Stack {
  readonly id: string;
  readonly kind: Kind;
  readonly splice?: Splice;
  readonly bar?: Device;
  /** Ends in it: of a bar in hole order, of a splice in row order once rows are chosen. */
  members: { readonly end: EndKey; readonly port: Port; readonly net: Net; readonly hole?: number }[];
  /** Rows of its body. */
  rows: number;
  /** Row of its first member. */
  top: number;
  /** Row that a person dragged it to. */
  readonly pinned?: number;
  /** "4 × 12". */
  readonly sizes?: string;
}

export type NeutralWay = "under" | "beside";

/** Splices that a person dragged: the column and the first row where each was put. */
export type Pins = ReadonlyMap<string, { readonly side: Facing; readonly row: number }>;

export interface Layer {
  readonly kind: "wall" | "column" | "device" | "breakers" | "free";
  index: number;
  width: number;
  readonly stacks: Stack[];
  readonly device?: DeviceShape;
}

/** What stands under the devices: the bond, caps of jumpers. */
export interface LooseBody {
  readonly what: "bond" | "cap";
  readonly layer: Layer;
  readonly ports: { readonly port: Port; readonly end: EndKey; readonly net: Net }[];
  /** From the left edge of the layer. */
  x: number;
  row: number;
}

export interface BoxPlan {
  readonly project: Project;
  readonly installation: Installation;
  /** As it is planned: with what is to be expected in it. */
  readonly enclosure: Enclosure;
  readonly there: Enclosure;
  readonly entries: readonly EntryPlan[];
  readonly layers: readonly Layer[];
  readonly leftColumn: Layer;
  readonly rightColumn: Layer;
  readonly centre: readonly Layer[];
  /** Breakers and free spaces of a panel. */
  readonly slots: SlotPlan | undefined;
  readonly barShapes: ReadonlyMap<string, DeviceShape>;
  readonly nets: Net[];
  readonly bodies: LooseBody[];
  /** Where neutrals that cross the box pass the devices: under them, or on the side of the hole that their joint feeds. */
  readonly neutrals: NeutralWay;
  /** Conductors that stop at a cap beside their sheath, or loose: they are drawn, not routed. */
  readonly stubs: Stub[];
  /** Ports of each sheath with their place in its fan. */
  readonly wallPorts: Map<EntryPlan, WallPort[]>;
}

export interface WallPort {
  readonly port: Port;
  readonly index: number;
  readonly net: Net;
}

export interface Stub {
  readonly entry: EntryPlan;
  readonly index: number;
  readonly end: EndKey;
  readonly kind: "capped" | "loose";
  /** "WH", "WH as BK". */
  readonly text: string;
}

/** First hole and last used hole decide how much of a long bar is drawn. */
export const FREE_BAR_HOLES = 4;
const LEAST_BAR_HOLES = 8;
/** Rows under the holes of a bar, for its screw and its words. */
export const BAR_FOOT = 2;

export const isBar = (family: string): boolean => family === "neutral-bar" || family === "ground-bar";

const makeLayer = (kind: Layer["kind"], width: number, device?: DeviceShape): Layer => ({
  kind,
  index: 0,
  width,
  stacks: [],
  ...(device && { device }),
});

export const placeOf = (enclosure: Enclosure, end: EndKey): At => enclosure.places[end]?.at ?? { kind: "loose" };

export type Layers = Omit<BoxPlan, "there" | "nets" | "bodies" | "stubs" | "wallPorts">;

/** Layers of the box from left to right, and the shapes of what stands in them; routes come later. */
export function planLayers(
  project: Project,
  installation: Installation,
  enclosure: Enclosure,
  pins: Pins,
  neutrals: NeutralWay,
): Layers {
  const entries = planEntries(project, installation, enclosure);
  const shapes: DeviceShape[] = [];
  const endsAt =
    (device: Device) =>
    (terminal: PlacedTerminal, hole: number): readonly EndKey[] =>
      landedAt(enclosure, device.id, terminal.name)
        .filter((landing) => landing.hole === hole)
        .map((landing) => landing.end);
  const bars: { device: Device; shape: DeviceShape }[] = [];
  for (const device of inOrder(enclosure.devices)) {
    const shape = shapeDevice(device, endsAt(device));
    if (isBar(shape.type.family)) bars.push({ device, shape });
    else shapes.push(shape);
  }
  const leftWall = makeLayer("wall", 0);
  const rightWall = makeLayer("wall", 0);
  const leftColumn = makeLayer("column", 0);
  const rightColumn = makeLayer("column", 0);
  const slots = enclosure.kind === "panel" ? shapeBreakers(shapes, enclosure.spaces) : undefined;
  const centre =
    enclosure.kind === "panel"
      ? [makeLayer("breakers", BREAKERS_WIDTH)]
      : shapes.map((shape) => makeLayer("device", DEVICE_LAYER_WIDTH, shape));
  const free = needsFreeLayer(enclosure);
  if (centre.length === 0 && free) centre.push(makeLayer("free", FREE_LAYER_WIDTH));
  for (const { device, shape } of bars) {
    const column = shape.type.family === "neutral-bar" ? leftColumn : rightColumn;
    column.stacks.push(barStack(device, shape));
  }
  const sideOf = columnChooser(enclosure, entries, shapes);
  for (const splice of inOrder(enclosure.splices)) {
    const pin = pins.get(splice.id);
    const column =
      (pin?.side ?? sideOf(splice)) < 0 || (shapes.length === 0 && enclosure.kind === "box") ? leftColumn : rightColumn;
    column.stacks.push(spliceStack(enclosure, installation, splice, pin?.row));
  }
  for (const column of [leftColumn, rightColumn])
    if (column.stacks.length > 0) column.width = column.stacks.some((stack) => stack.bar) ? BAR_WIDTH : SPLICE_WIDTH;
  const layers = [leftWall, leftColumn, ...centre, rightColumn, rightWall].filter(
    (layer) => layer.kind !== "column" || layer.stacks.length > 0,
  );
  layers.forEach((layer, index) => {
    layer.index = index;
  });
  const barShapes = new Map(bars.map(({ device, shape }) => [device.id as string, shape]));
  return {
    project,
    installation,
    enclosure,
    entries,
    layers,
    leftColumn,
    rightColumn,
    centre,
    slots,
    barShapes,
    neutrals,
  };
}

export const DEVICE_LAYER_WIDTH = 176;
export const BREAKERS_WIDTH = 232;
const FREE_LAYER_WIDTH = 112;
const SPLICE_WIDTH = 22;
export const BAR_WIDTH = 28;

function needsFreeLayer(enclosure: Enclosure): boolean {
  if (landingsOf(enclosure).bonded.length > 0) return true;
  return Object.values(enclosure.jumpers).some((jumper) =>
    (["a", "b"] as const).some((side) => {
      const { kind } = placeOf(enclosure, jumperEnd(jumper.id, side));
      return kind === "capped" || kind === "loose";
    }),
  );
}

function barStack(device: Device, shape: DeviceShape): Stack {
  const terminal = shape.terminals[0];
  const taken = terminal?.holes.filter((hole) => hole.ends.length > 0).map((hole) => hole.hole) ?? [];
  const most = terminal?.holes.length ?? 0;
  const shown = Math.min(most, Math.max(LEAST_BAR_HOLES, Math.max(0, ...taken) + FREE_BAR_HOLES));
  const rows = (terminal?.holes ?? []).slice(0, shown).reduce((sum, hole) => sum + Math.max(1, hole.ends.length), 0);
  return {
    id: device.id,
    kind: shape.type.family === "ground-bar" ? 2 : 1,
    bar: device,
    members: [],
    rows: rows + BAR_FOOT,
    top: 0,
  };
}

function spliceStack(enclosure: Enclosure, installation: Installation, splice: Splice, pinned?: number): Stack {
  const ends = landingsOf(enclosure).bySplice.get(splice.id) ?? [];
  const votes: [number, number, number] = [0, 0, 0];
  for (const end of ends) votes[kindOfEnd(enclosure, installation, end)] += 1;
  const kind: Kind = votes[2] > 0 && votes[2] >= votes[0] + votes[1] ? 2 : votes[1] > votes[0] ? 1 : 0;
  return {
    id: splice.id,
    kind,
    splice,
    members: [],
    rows: Math.max(1, ends.length),
    top: 0,
    sizes: sizesOf(enclosure, installation, ends),
    ...(pinned !== undefined && { pinned }),
  };
}

export function kindOfEnd(enclosure: Enclosure, installation: Installation, end: EndKey): Kind {
  const parsed = parseEnd(end);
  if (parsed === undefined) return 0;
  const wire =
    parsed.of === "jumper"
      ? enclosure.jumpers[parsed.jumper]
      : installation.cables[parsed.cable]?.conductors[parsed.conductor];
  if (wire === undefined) return 0;
  const grounding = "grounding" in wire ? wire.grounding : wire.colour === "bare" || wire.colour === "green";
  return kindOfConductor({ grounding, colour: wire.colour });
}

/** A splice stands before the wall where most of its cables enter; a tie goes to the side of its jumpers' terminals, then left. */
function columnChooser(
  enclosure: Enclosure,
  entries: readonly EntryPlan[],
  shapes: readonly DeviceShape[],
): (splice: Splice) => Facing {
  const wallOf = new Map<EndKey, Facing>();
  for (const entry of entries)
    for (const { end } of entry.conductors) if (end) wallOf.set(end, entry.flank === "left" ? -1 : 1);
  const middle = (shapes.length - 1) / 2;
  const sideOfEnd = (end: EndKey): number => {
    const at = placeOf(enclosure, end);
    if (at.kind !== "terminal") return 0;
    const index = shapes.findIndex((shape) => shape.device.id === at.device);
    const shape = shapes[index];
    if (shape === undefined) return 0;
    if (index !== middle) return Math.sign(index - middle);
    const edge = shape.terminals.find(({ terminal }) => terminal.name === at.terminal)?.edge;
    return edge === "left" ? -1 : edge === "right" ? 1 : 0;
  };
  return (splice) => {
    let cables = 0;
    let jumpers = 0;
    for (const end of landingsOf(enclosure).bySplice.get(splice.id) ?? []) {
      cables += wallOf.get(end) ?? 0;
      const parsed = parseEnd(end);
      if (parsed?.of === "jumper") jumpers += sideOfEnd(jumperEnd(parsed.jumper, parsed.side === "a" ? "b" : "a"));
    }
    return (cables || jumpers) > 0 ? 1 : -1;
  };
}
