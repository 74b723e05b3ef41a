import type { BoxDrawing, ConductorDrawing, Plate, Rect } from "../../shared-model/geometry/box-drawing.ts";
import { textWidth } from "../../shared-model/geometry/text-width.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";

/**
 * What is wrong with a drawing, one sentence each. It looks at the drawing alone, in its own way: conductors are walked
 * in small steps, so that it does not share the program's idea of where a line is.
 */
export function faultsOf(drawing: BoxDrawing, enclosure: Enclosure): string[] {
  return [
    ...endFaults(drawing, enclosure),
    ...bodyFaults(drawing),
    ...sharedFaults(drawing),
    ...plateFaults(drawing),
    ...wordFaults(drawing),
    ...boundsFaults(drawing),
    ...holeFaults(drawing),
    ...captionFaults(drawing),
    ...sheathFaults(drawing),
    ...capFaults(drawing),
    ...slotFaults(drawing),
  ];
}

const nameOf = ({ ends, jumper, passThrough }: ConductorDrawing): string =>
  `${ends.join(" and ") || passThrough || jumper}`;

/** Every end that lies here is drawn once, and its line stops where the place is. */
function endFaults(drawing: BoxDrawing, enclosure: Enclosure): string[] {
  const faults: string[] = [];
  const drawn = drawing.conductors.flatMap(({ ends }) => ends).sort();
  const wanted = (Object.keys(enclosure.places) as EndKey[]).sort();
  if (drawn.join() !== wanted.join()) faults.push(`Drawn ends ${drawn.join()}, places ${wanted.join()}.`);
  for (const conductor of drawing.conductors) {
    conductor.ends.forEach((end, index) => {
      const { points } = conductor;
      const stop = conductor.ends.length === 2 && index === 0 ? points[0] : points[points.length - 1];
      const place = placePoint(drawing, enclosure, end);
      if (stop === undefined || place === undefined) faults.push(`${end} has no point or no place.`);
      else if (Math.hypot(stop.x - place.x, stop.y - place.y) > place.within)
        faults.push(`${end} stops off its place.`);
    });
  }
  return faults;
}

function placePoint(drawing: BoxDrawing, { places }: Enclosure, end: EndKey): (Point & { within: number }) | undefined {
  const at = places[end]?.at;
  if (at === undefined) return undefined;
  if (at.kind === "splice") {
    const splice = drawing.splices.find((each) => each.splice === at.splice);
    const row = splice?.rows.find((each) => each.end === end);
    return splice && row && { x: splice.x, y: row.y, within: 11 };
  }
  if (at.kind === "terminal") {
    const device = drawing.devices.find((each) => each.device === at.device);
    const terminal = device?.terminals.find((each) => each.terminal === at.terminal);
    const hole = terminal?.holes.find((each) => each.hole === at.hole);
    return hole && { ...hole.at, within: 15 };
  }
  if (at.kind === "bond") return drawing.bond && { ...drawing.bond.at, within: 2 };
  const cap = drawing.caps.find((each) => each.end === end);
  return cap && cap.kind === at.kind ? { ...cap.at, within: 2 } : undefined;
}

function* walk(points: readonly Point[], step = 2): Generator<Point> {
  for (let index = 0; index + 1 < points.length; index += 1) {
    const a = points[index] as Point;
    const b = points[index + 1] as Point;
    const count = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / step));
    for (let each = 0; each < count; each += 1) {
      const t = each / count;
      yield { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
    }
  }
}

const inside = ({ x, y }: Point, rect: Rect, by = 0): boolean =>
  x > rect.x + by && x < rect.x + rect.width - by && y > rect.y + by && y < rect.y + rect.height - by;

const capsule = ({ x, rows, freeRow }: BoxDrawing["splices"][number]): Rect => {
  const ys = rows.length === 0 ? [freeRow.y] : rows.map((row) => row.y);
  const top = Math.min(...ys) - 11;
  return { x: x - 11, y: top, width: 22, height: Math.max(...ys) + 11 - top };
};

/** No conductor passes through a splice or a device, its own or another; it may reach into it for its place. */
function bodyFaults(drawing: BoxDrawing): string[] {
  const faults = new Set<string>();
  const bodies = [
    ...drawing.splices.map((splice) => ({ name: splice.name, rect: capsule(splice) })),
    ...drawing.devices.map((device) => ({ name: device.name, rect: device.body })),
  ];
  for (const conductor of drawing.conductors) {
    const { points } = conductor;
    const last = points[points.length - 1] as Point;
    const stops = conductor.kind === "jumper" ? [points[0] as Point, last] : conductor.ends.length === 0 ? [] : [last];
    for (const point of walk(points)) {
      if (stops.some((stop) => Math.hypot(stop.x - point.x, stop.y - point.y) < 34)) continue;
      for (const { name, rect } of bodies)
        if (inside(point, rect, 1)) faults.add(`${nameOf(conductor)} passes through ${name}.`);
    }
  }
  return [...faults];
}

/** No two conductors lie on one another: their lines meet only where they cross, or at a place they share. */
function sharedFaults(drawing: BoxDrawing): string[] {
  const faults = new Set<string>();
  const seen = new Map<string, { readonly conductor: ConductorDrawing; readonly level: boolean }>();
  for (const conductor of drawing.conductors) {
    const { points, fanPoints, fanPointsEnd = 0 } = conductor;
    const from = Math.max(0, fanPoints - 1);
    const to = points.length - 1 - Math.max(0, fanPointsEnd - 1);
    for (let index = from; index < to; index += 1) {
      const a = points[index] as Point;
      const b = points[index + 1] as Point;
      const level = a.y === b.y;
      if (!level && a.x !== b.x) continue;
      const length = Math.abs(a.x - b.x) + Math.abs(a.y - b.y);
      for (let at = 3; at < length - 3; at += 1) {
        const x = Math.round(level ? Math.min(a.x, b.x) + at : a.x);
        const y = Math.round(level ? a.y : Math.min(a.y, b.y) + at);
        const key = `${level ? "l" : "u"} ${x} ${y}`;
        const other = seen.get(key);
        if (other !== undefined && other.conductor !== conductor)
          faults.add(`${nameOf(conductor)} lies on ${nameOf(other.conductor)}.`);
        seen.set(key, { conductor, level });
      }
    }
  }
  return [...faults];
}

export const plateRect = ({ at, text, vertical }: Plate): Rect => {
  const long = textWidth(text, 11, 640) + 6;
  const [width, height] = vertical ? [14, long] : [long, 14];
  return { x: at.x - width / 2, y: at.y - height / 2, width, height };
};

const overlaps = (a: Rect, b: Rect): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** Plates lie on their own conductor, on no other plate, and on no body. */
function plateFaults(drawing: BoxDrawing): string[] {
  const faults: string[] = [];
  const plates = drawing.conductors.flatMap((conductor) =>
    conductor.plates.map((plate) => ({ conductor, plate, rect: plateRect(plate) })),
  );
  plates.forEach(({ conductor, plate, rect }, index) => {
    for (const other of plates.slice(index + 1))
      if (overlaps(rect, other.rect)) faults.push(`Plate ${plate.text} lies on plate ${other.plate.text}.`);
    const on = [...walk(conductor.points, 1)].some(
      (point) => Math.hypot(point.x - plate.at.x, point.y - plate.at.y) < 1.5,
    );
    if (!on) faults.push(`Plate ${plate.text} is beside its conductor.`);
    for (const splice of drawing.splices)
      if (overlaps(rect, capsule(splice))) faults.push(`Plate ${plate.text} lies on ${splice.name}.`);
    for (const device of drawing.devices)
      if (overlaps(rect, device.body)) faults.push(`Plate ${plate.text} lies on ${device.name}.`);
  });
  return faults;
}

/** Name and caption of splices and devices, as they are set: 15 and 11 or 12 high, one under the other. */
function wordsOf({ splices, devices }: BoxDrawing): { readonly text: string; readonly rect: Rect }[] {
  const set = (text: string, x: number, baseline: number, size: number, weight: number) => {
    const width = textWidth(text, size, weight);
    return { text, rect: { x: x - width / 2, y: baseline - size * 0.72, width, height: size * 0.72 } };
  };
  return [
    ...splices.flatMap(({ name, caption, labelAt: { x, y } }) => [
      set(name, x, y, 15, 700),
      set(caption, x, y + 13.5, 11, 400),
    ]),
    ...devices
      .filter(({ family }) => family !== "breaker" && family !== "fuse" && family !== "lugs")
      .flatMap(({ name, caption, labelAt: { x, y } }) => [set(name, x, y, 15, 700), set(caption, x, y + 15, 12, 400)]),
  ];
}

/** No conductor and no plate runs over the words of a splice or a device, and words do not lie on one another. */
function wordFaults(drawing: BoxDrawing): string[] {
  const faults = new Set<string>();
  const words = wordsOf(drawing);
  for (const conductor of drawing.conductors) {
    for (const point of walk(conductor.points, 3))
      for (const { text, rect } of words)
        if (inside(point, rect, -1)) faults.add(`${nameOf(conductor)} runs over "${text}".`);
    for (const plate of conductor.plates)
      for (const { text, rect } of words)
        if (overlaps(plateRect(plate), rect)) faults.add(`Plate ${plate.text} lies on "${text}".`);
  }
  words.forEach(({ text, rect }, index) => {
    for (const other of words.slice(index + 1))
      if (overlaps(rect, other.rect)) faults.add(`"${text}" lies on "${other.text}".`);
  });
  return [...faults];
}

function boundsFaults({ bounds, width, height, conductors, splices, devices, sheaths }: BoxDrawing): string[] {
  const faults: string[] = [];
  const box: Rect = { x: 0, y: 0, width, height };
  if (!Object.values({ ...bounds, width, height }).every(Number.isFinite)) faults.push("A measure is not a number.");
  for (const conductor of conductors)
    if (!conductor.points.every((point) => inside(point, box, 3))) faults.push(`${nameOf(conductor)} leaves the box.`);
  for (const { name, rect } of [
    ...splices.map((splice) => ({ name: splice.name, rect: capsule(splice) })),
    ...devices.map((device) => ({ name: device.name, rect: device.body })),
  ])
    if (!inside({ x: rect.x, y: rect.y }, box) || !inside({ x: rect.x + rect.width, y: rect.y + rect.height }, box))
      faults.push(`${name} leaves the box.`);
  for (const { name, at, outer } of sheaths)
    if (!inside(at, bounds, -1) || !inside(outer, bounds, -1)) faults.push(`Sheath ${name} leaves the drawing.`);
  return faults;
}

/**
 * Where a cable goes is said over its stub: neither on the wall, nor on the frame of a chosen box, nor twice; of a cable
 * from above or below beside its stub, clear of the next one and of the name of the box.
 */
function captionFaults({ sheaths, header }: BoxDrawing): string[] {
  const frame = 18;
  return sheaths.flatMap(({ name, wall, at, outer, captionTitle, captionNote }) => {
    const upright = wall === "top" || wall === "bottom";
    const faults: string[] = [];
    const next = sheaths.filter((other) => other.wall === wall && other.at.x > at.x).map((other) => other.at.x - 10);
    const room = upright ? Math.min(...next) - (at.x + 17) : Math.abs(outer.x - at.x) - frame;
    for (const [text, size, weight] of [
      [captionTitle, 13, 700],
      [captionNote, 12, 400],
    ] as const)
      if (text !== "" && textWidth(text, size, weight) > room)
        faults.push(`"${text}" ${upright ? `beside ${name} reaches the next stub` : `over ${name} reaches the wall`}.`);
    if (captionTitle !== "" && captionTitle === captionNote) faults.push(`${name} says "${captionNote}" twice.`);
    if (wall === "top" && header.at.x < at.x + 17) faults.push(`The name of the box lies on ${name}.`);
    return faults;
  });
}

/** Stubs and fittings of two sheaths stand clear of each other, and each stub leaves by the wall that it names. */
function sheathFaults({ sheaths, width, height }: BoxDrawing): string[] {
  const faults: string[] = [];
  const faces = { left: { x: 0 }, right: { x: width }, top: { y: 0 }, bottom: { y: height } };
  const ways = { left: [-1, 0], right: [1, 0], top: [0, -1], bottom: [0, 1] } as const;
  sheaths.forEach(({ name, wall, at, outer }, index) => {
    const face: Partial<Point> = faces[wall];
    if (at.x !== (face.x ?? at.x) || at.y !== (face.y ?? at.y)) faults.push(`${name} is not in its wall.`);
    const [x, y] = ways[wall];
    if (Math.sign(outer.x - at.x) !== x || Math.sign(outer.y - at.y) !== y)
      faults.push(`${name} leaves the wrong way.`);
    for (const other of sheaths.slice(index + 1))
      if (Math.abs(at.x - other.at.x) < 36 && Math.abs(at.y - other.at.y) < 36)
        faults.push(`${name} and ${other.name} stand too close.`);
  });
  return faults;
}

/** Breakers and free spaces of a panel stand beside one another, and no conductor runs through a free space. */
function slotFaults({ freeSlots = [], devices, conductors }: BoxDrawing): string[] {
  const faults = new Set<string>();
  freeSlots.forEach(({ slot, at }, index) => {
    for (const other of freeSlots.slice(index + 1))
      if (overlaps(at, other.at)) faults.add(`Space ${slot} lies on space ${other.slot}.`);
    for (const { name, body } of devices) if (overlaps(at, body)) faults.add(`Space ${slot} lies on ${name}.`);
    for (const conductor of conductors)
      for (const point of walk(conductor.points, 4))
        if (inside(point, at)) faults.add(`${nameOf(conductor)} runs over space ${slot}.`);
  });
  return [...faults];
}

/** No plate lies on the cap of its own conductor, nor on the end of a sheath, where its conductors still run together. */
function capFaults({ caps, conductors, sheaths }: BoxDrawing): string[] {
  const faults: string[] = [];
  for (const { end, at, from, kind } of caps) {
    const long = kind === "capped" ? 11 : 5;
    const rect = { x: from === "right" ? at.x - long : at.x, y: at.y - 5.6, width: long, height: 11.2 };
    for (const { ends, plates } of conductors)
      if (ends.includes(end) && plates.some((plate) => overlaps(plateRect(plate), rect)))
        faults.push(`The plate of ${end} lies on its cap.`);
  }
  for (const { name, wall, at } of sheaths) {
    const x = wall === "left" ? at.x : wall === "right" ? at.x - 25 : at.x - 10;
    const y = wall === "top" ? at.y : wall === "bottom" ? at.y - 25 : at.y - 10;
    const [width, height] = wall === "left" || wall === "right" ? [25, 20] : [20, 25];
    for (const { plates } of conductors)
      if (plates.some((plate) => overlaps(plateRect(plate), { x, y, width, height })))
        faults.push(`A plate lies on the end of ${name}.`);
  }
  return faults;
}

/** In front of every hole there is room for a conductor to come in. */
function holeFaults(drawing: BoxDrawing): string[] {
  const faults: string[] = [];
  const bodies = [
    ...drawing.splices.map((splice) => ({ name: splice.name, rect: capsule(splice) })),
    ...drawing.devices.map((device) => ({ name: device.name, rect: device.body })),
  ];
  const step = { left: { x: -1, y: 0 }, right: { x: 1, y: 0 }, top: { x: 0, y: -1 }, bottom: { x: 0, y: 1 } };
  for (const device of drawing.devices)
    for (const terminal of device.terminals)
      for (const { at, from, hole } of terminal.holes) {
        const front = { x: at.x + step[from].x * 20, y: at.y + step[from].y * 20 };
        const met = bodies.find(({ rect }) => inside(front, rect, -4));
        if (met) faults.push(`${met.name} stands before ${device.name} ${terminal.terminal} ${hole}.`);
      }
  return faults;
}
