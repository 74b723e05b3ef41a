import type { Point } from "../../model/project.ts";
import type { CapDrawing, ConductorDrawing, Plate, Rect } from "../box-drawing.ts";
import { CAP_LENGTH, FAN, PITCH, PLATE, SHEATH_PLATE } from "../metrics.ts";
import { type BoxPlan, placeOf } from "./box-plan.ts";
import type { EntryPlan } from "./entries.ts";
import type { Frame } from "./frame.ts";
import { channelOf, type Net, type Port } from "./net.ts";
import { isStraight } from "./order-lanes.ts";
import { CAP_INSET } from "./place-loose.ts";
import { type Drawn, placeJumperPlates } from "./place-plates.ts";
import { plateWidth, stubCapAt, stubPlateAt } from "./plate-text.ts";
import { SCREW_X } from "./spots.ts";
import { fanFromAbove, isUpright } from "./upright-entries.ts";

export const yOf = (frame: Frame, row: number): number => frame.zero + row * PITCH;

/** Centre line of a sheath. */
export const entryY = (frame: Frame, entry: EntryPlan): number =>
  yOf(frame, entry.row + (entry.conductors.length - 1) / 2);

/** Conductors, routed and stopped, with their plates; and the caps on those that stop. */
export function writeConductors(
  plan: BoxPlan,
  frame: Frame,
  bodies: readonly Rect[],
): { conductors: ConductorDrawing[]; caps: CapDrawing[] } {
  const entryByPort = new Map<Port, EntryPlan>();
  for (const entry of plan.entries)
    for (const { port } of plan.wallPorts.get(entry) ?? []) entryByPort.set(port, entry);
  const drawn: Drawn[] = plan.nets.map((net) => ({ net, ...pathOf(plan, frame, net, entryByPort), plates: [] }));
  for (const each of drawn) each.plates.push(...fixedPlates(frame, plan, each, entryByPort));
  placeJumperPlates(drawn, [...bodies, ...drawn.flatMap(capsOf)]);
  const caps: CapDrawing[] = [];
  const conductors = drawn.map(({ net, points, fan, fanEnd, plates }): ConductorDrawing => {
    const first = points[0] as Point;
    const last = points[points.length - 1] as Point;
    for (const [port, point, end] of [
      [net.a, first, net.ends[0]],
      [net.b, last, net.ends[net.ends.length - 1]],
    ] as const) {
      if (port.what !== "cap" || end === undefined) continue;
      const kind = placeOf(plan.enclosure, end).kind === "loose" ? "loose" : "capped";
      caps.push({ end, kind, at: point, from: port.facing > 0 ? "right" : "left" });
    }
    return {
      kind: net.of,
      ...(net.jumper !== undefined && { jumper: net.jumper }),
      ...(net.conductor !== undefined && { conductor: net.conductor }),
      ...(net.passThrough !== undefined && { passThrough: net.passThrough }),
      ends: net.ends,
      colour: net.colour,
      markedAs: net.markedAs,
      grounding: net.grounding,
      points,
      fanPoints: fan,
      ...(fanEnd > 0 && { fanPointsEnd: fanEnd }),
      plates,
      grips:
        net.ends.length === 2
          ? [gripAt(points), gripAt([...points].reverse())]
          : net.ends.map(() => gripAt([...points].reverse())),
    };
  });
  for (const stub of plan.stubs) {
    const { key, conductor } = stub.entry.conductors[stub.index] ?? {};
    if (key === undefined || conductor === undefined) continue;
    const markedAs = plan.enclosure.places[stub.end]?.markedAs;
    const row = stub.entry.row + stub.index;
    const capAt = stubCapAt(stub.text);
    const points = [...fan(frame, stub.entry, row), { x: inside(frame, stub.entry, capAt), y: yOf(frame, row) }];
    const at = points[points.length - 1] as Point;
    caps.push({ end: stub.end, kind: stub.kind, at, from: stub.entry.flank });
    conductors.push({
      kind: "cable",
      conductor: key,
      ends: [stub.end],
      colour: conductor.colour,
      markedAs: [markedAs],
      grounding: conductor.grounding,
      points,
      fanPoints: 3,
      plates: [
        {
          at: { x: inside(frame, stub.entry, stubPlateAt(stub.text)), y: yOf(frame, row) },
          text: stub.text,
          vertical: false,
        },
      ],
      grips: [{ x: inside(frame, stub.entry, capAt + CAP_LENGTH / 2), y: yOf(frame, row) }],
    });
  }
  return { conductors, caps };
}

/** Room that the caps of a jumper take. */
const capsOf = ({ net, points }: Drawn): Rect[] =>
  [[net.a, points[0]] as const, [net.b, points[points.length - 1]] as const].flatMap(([port, point]) =>
    port.what === "cap" && point !== undefined
      ? [{ x: port.facing > 0 ? point.x - CAP_LENGTH : point.x, y: point.y - 6, width: CAP_LENGTH, height: 12 }]
      : [],
  );

/** An end is picked up a little way along its conductor, or at the middle of a short last stretch. */
function gripAt(points: readonly Point[]): Point {
  const [end, before] = points;
  if (end === undefined || before === undefined) return { x: 0, y: 0 };
  const length = Math.hypot(before.x - end.x, before.y - end.y);
  const t = length === 0 ? 0 : Math.min(10, length / 2) / length;
  return { x: end.x + (before.x - end.x) * t, y: end.y + (before.y - end.y) * t };
}

/** This far along the rows of a sheath from where they leave their side wall. */
const inside = (frame: Frame, entry: EntryPlan, depth: number): number =>
  entry.flank === "left" ? depth + entry.shift : frame.width - depth;

/** Out of the sheath: together at first, then parting to the rows. */
function fan(frame: Frame, entry: EntryPlan, row: number): Point[] {
  const y = yOf(frame, row);
  if (isUpright(entry)) return fanFromAbove(entry, row - entry.row, frame.height, y);
  const centre = entryY(frame, entry);
  const half = Math.max(1, (entry.conductors.length - 1) / 2) * PITCH;
  const bundled = centre + ((y - centre) / half) * Math.min(6.5, half * (5 / 16));
  return [
    { x: inside(frame, entry, FAN.start), y: bundled },
    { x: inside(frame, entry, FAN.part), y: bundled },
    { x: inside(frame, entry, FAN.end), y },
  ];
}

function pathOf(
  plan: BoxPlan,
  frame: Frame,
  net: Net,
  entryByPort: ReadonlyMap<Port, EntryPlan>,
): { points: Point[]; fan: number; fanEnd: number } {
  const startEntry = entryByPort.get(net.a);
  const endEntry = entryByPort.get(net.b);
  const start = startEntry ? fan(frame, startEntry, net.a.row) : portPoints(plan, frame, net.a);
  const end = endEntry ? fan(frame, endEntry, net.b.row) : portPoints(plan, frame, net.b);
  const points = [...start];
  const ahead = channelOf(net.a) <= channelOf(net.b) ? 1 : -1;
  const pieces = [...(frame.pieces.get(net.a) ?? [])].sort((p, q) => ahead * (p.channel - q.channel));
  for (const piece of pieces) {
    if (isStraight(piece)) continue;
    const x = channelLeft(plan, frame, piece.channel) + (piece.x ?? 0);
    points.push({ x, y: yOf(frame, piece.from.row) }, { x, y: yOf(frame, piece.to.row) });
  }
  points.push(...end.reverse());
  return { points: dropDoubles(points), fan: startEntry ? 3 : 0, fanEnd: endEntry ? 3 : 0 };
}

const channelLeft = (plan: BoxPlan, frame: Frame, channel: number): number =>
  (frame.left[channel] ?? 0) + (plan.layers[channel]?.width ?? 0);

/** Points of a port from its very end outward. */
function portPoints(plan: BoxPlan, frame: Frame, port: Port): Point[] {
  const left = frame.left[port.layer] ?? 0;
  const layer = plan.layers[port.layer];
  const width = layer?.width ?? 0;
  const y = yOf(frame, port.row);
  if (port.screw && layer?.device) {
    const bottom = frame.zero + layer.device.top + layer.device.height + 17;
    const x = left + port.screw.x;
    const tail = port.screw.nth === 0 ? [] : [{ x, y: bottom + 10 }];
    return [{ x: left + SCREW_X, y: bottom }, ...tail, { x, y }];
  }
  if (port.what === "bond" || port.what === "cap") {
    const body = plan.bodies.find((each) => each.ports.some((item) => item.port === port));
    const alone = body?.ports[0]?.net.alone && port.facing < 0;
    const x = left + (alone ? width - CAP_INSET : (body?.x ?? 0));
    if (port.holeRow === undefined) return [{ x, y }];
    return [
      { x, y: yOf(frame, port.holeRow) },
      { x: x + port.facing * 18, y },
    ];
  }
  const x = port.facing < 0 ? left + port.depth : left + width - port.depth;
  if (port.holeRow === undefined) return [{ x, y }];
  const edge = port.facing < 0 ? left - PITCH : left + width + PITCH;
  return [
    { x, y: yOf(frame, port.holeRow) },
    { x: edge, y },
  ];
}

/** Points that repeat or lie on a straight line are dropped, but those of the fan stay. */
function dropDoubles(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const point of points) {
    const last = kept[kept.length - 1];
    if (last && Math.abs(last.x - point.x) < 0.01 && Math.abs(last.y - point.y) < 0.01) continue;
    kept.push(point);
  }
  return kept;
}

/** Codes beside the sheath and beside the place: they stand at the same distance everywhere. */
function fixedPlates(frame: Frame, plan: BoxPlan, { net }: Drawn, entryByPort: ReadonlyMap<Port, EntryPlan>): Plate[] {
  const plates: Plate[] = [];
  for (const port of [net.a, net.b]) {
    const y = yOf(frame, port.row);
    const entry = entryByPort.get(port);
    if (entry !== undefined) {
      plates.push({ at: { x: inside(frame, entry, SHEATH_PLATE), y }, text: net.code, vertical: false });
      continue;
    }
    if (port.what === "splice" || (port.what === "hole" && net.of === "cable")) {
      const layer = plan.layers[port.layer];
      const edge = (frame.left[port.layer] ?? 0) + (port.facing > 0 ? (layer?.width ?? 0) : 0);
      const away = PLATE.gap + plateWidth(net.name) / 2 + (port.holeRow === undefined ? 0 : PITCH);
      plates.push({ at: { x: edge + port.facing * away, y }, text: net.name, vertical: false });
    }
  }
  return plates;
}
