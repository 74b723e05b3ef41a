import { catalogue, type Part } from "../../lib/catalogue.ts";
import { volumeOf } from "../../queries/box-volume.ts";
import { inOrder } from "../../queries/in-order.ts";
import { formatVolume } from "../../units/volume.ts";
import type { BoxDrawing, Rect, SheathDrawing, SpliceDrawing, Wall } from "../box-drawing.ts";
import { PITCH, SHEATH_REACH, SPLICE_HALF, SPLICE_LABEL_RISE, WALL } from "../metrics.ts";
import { textWidth } from "../text-width.ts";
import type { BoxPlan } from "./box-plan.ts";
import { sizeTextOf } from "./entries.ts";
import { type Frame, nameOfStack } from "./frame.ts";
import { type Body, measure } from "./measure.ts";
import { isUpright, middleOfLanes } from "./upright-entries.ts";
import { headerNote, sheathCaption, sheathWords, spliceCaption } from "./words.ts";
import { entryY, writeConductors, yOf } from "./write-conductors.ts";
import { writeDevices, writeFreeSlots } from "./write-devices.ts";

const wording = catalogue({
  feet: (length: Part) => `${length} ft`,
  ringAdds: (ring: Part, in3: Part) => `${ring}, adds ${in3} in³`,
  ringUnmarked: (ring: Part) => `${ring}, not marked, adds 0`,
});

/** Puts the chosen rows, lanes and layers into one drawing. */
export function writeDrawing(plan: BoxPlan, frame: Frame): BoxDrawing {
  const { enclosure } = plan;
  const devices = writeDevices(plan, frame);
  const splices = writeSplices(plan, frame);
  const bonds = plan.bodies.filter((body) => body.what === "bond");
  const bodies: Body[] = [];
  for (const device of devices) {
    const own = new Set(endsOn(plan, device.device));
    const mine = (ends: readonly string[]): boolean => ends.some((end) => own.has(end));
    bodies.push({ rect: device.body, own: ({ ends }) => mine(ends) });
    for (const { block } of device.terminals) if (block) bodies.push({ rect: block, own: ({ ends }) => mine(ends) });
  }
  for (const splice of splices) {
    const own = new Set<string>(splice.rows.map((row) => row.end));
    bodies.push({ rect: capsule(splice), own: ({ ends }) => ends.some((end) => own.has(end)) });
  }
  const bond = bonds[0] && writeBond(frame, bonds[0]);
  if (bond) {
    const own = new Set<string>(bond.taken);
    const rect = { x: bond.at.x - 9, y: bond.at.y - 9, width: 18, height: 18 };
    bodies.push({ rect, own: ({ ends }) => ends.some((end) => own.has(end)) });
  }
  const words: Rect[] = [
    ...splices.map((splice) => wordsOver(splice.x, splice.labelAt.y, splice.name, splice.caption)),
    ...devices.map((device) => wordsOver(device.labelAt.x, device.labelAt.y, device.name, device.caption)),
  ];
  const { conductors, caps } = writeConductors(plan, frame, [...bodies.map(({ rect }) => rect), ...words]);
  const sheaths = plan.entries.map((entry) => writeSheath(plan, frame, entry));
  const rings = writeRings(plan, frame, besideStubs(sheaths, "bottom", 0));
  const header = {
    name: enclosure.name,
    note: headerNote(enclosure),
    at: { x: besideStubs(sheaths, "top", -WALL), y: -22 },
  };
  return {
    enclosure: enclosure.id,
    kind: enclosure.kind,
    material: enclosure.kind === "box" ? enclosure.material : "metal",
    width: frame.width,
    height: frame.height,
    bounds: boundsOf(frame, sheaths, header, rings.length),
    header,
    sheaths,
    conductors,
    splices,
    devices,
    ...(bond && { bond }),
    caps,
    ...(plan.slots && { freeSlots: writeFreeSlots(plan, frame) }),
    rings,
    measure: measure(conductors, bodies),
  };
}

function endsOn(plan: BoxPlan, device: string): string[] {
  return Object.entries(plan.enclosure.places)
    .filter(([, { at }]) => at.kind === "terminal" && at.device === device)
    .map(([end]) => end);
}

const wordsOver = (x: number, y: number, name: string, caption: string): Rect => {
  const width = Math.max(textWidth(name, 15, 700), textWidth(caption, 12));
  return { x: x - width / 2, y: y - 12, width, height: 30 };
};

export const capsule = (splice: SpliceDrawing): Rect => {
  const first = splice.rows[0]?.y ?? splice.freeRow.y;
  const last = splice.rows[splice.rows.length - 1]?.y ?? first;
  return {
    x: splice.x - SPLICE_HALF,
    y: first - SPLICE_HALF,
    width: 2 * SPLICE_HALF,
    height: last - first + 2 * SPLICE_HALF,
  };
};

function writeSplices(plan: BoxPlan, frame: Frame): SpliceDrawing[] {
  return [plan.leftColumn, plan.rightColumn].flatMap((layer) =>
    layer.stacks.flatMap((stack) => {
      if (stack.splice === undefined) return [];
      const x = (frame.left[layer.index] ?? 0) + layer.width / 2;
      const free = stack.members.length === 0 ? stack.top : stack.top + stack.rows;
      return {
        splice: stack.splice.id,
        name: nameOfStack(stack),
        caption: spliceCaption(stack),
        x,
        rows: stack.members.map(({ end, port }) => ({ y: yOf(frame, port.row), end })),
        labelAt: { x, y: yOf(frame, stack.top) - SPLICE_LABEL_RISE },
        freeRow: { x, y: yOf(frame, free) },
      };
    }),
  );
}

function writeBond(frame: Frame, body: BoxPlan["bodies"][number]) {
  const at = { x: (frame.left[body.layer.index] ?? 0) + body.x, y: yOf(frame, body.row) };
  const fromLeft = body.ports[0]?.port.facing === -1;
  return {
    at,
    taken: body.ports.map(({ end }) => end),
    labelAt: { x: at.x + (fromLeft ? 16 : -16), y: at.y + 1 },
    labelAnchor: fromLeft ? ("start" as const) : ("end" as const),
  };
}

function writeSheath(plan: BoxPlan, frame: Frame, entry: BoxPlan["entries"][number]): SheathDrawing {
  const { title, note } = sheathCaption(plan.installation, plan.enclosure, entry);
  const { cable } = entry;
  const means = plan.enclosure.entries[entry.entry]?.means ?? "none";
  return {
    cable: cable.id,
    side: entry.side,
    entry: entry.entry,
    means,
    wall: entry.wall,
    ...stubOf(frame, entry),
    ...sheathWords(
      cable.name,
      sizeTextOf(cable),
      cable.lengthFt === undefined ? "" : wording.feet(cable.lengthFt),
      means,
    ),
    captionTitle: title,
    captionNote: note,
  };
}

function stubOf(frame: Frame, entry: BoxPlan["entries"][number]): Pick<SheathDrawing, "at" | "outer"> {
  const { wall } = entry;
  if (isUpright(entry)) {
    const x = middleOfLanes(entry);
    const y = wall === "top" ? 0 : frame.height;
    return { at: { x, y }, outer: { x, y: wall === "top" ? -SHEATH_REACH : y + SHEATH_REACH } };
  }
  const x = wall === "left" ? 0 : frame.width;
  const y = entryY(frame, entry);
  return { at: { x, y }, outer: { x: wall === "left" ? -SHEATH_REACH : x + SHEATH_REACH, y } };
}

/** From the middle of a stub in the upper or lower wall to the end of the words beside it, at most. */
const BESIDE_STUB = 121;
/** From a stub in the upper or lower wall, with what holds it there, to the words beside it. */
const STUB_ROOM = 24;

/** Where words along a wall begin: right of the stubs in it. */
const besideStubs = (sheaths: readonly SheathDrawing[], wall: Wall, least: number): number =>
  Math.max(least, ...sheaths.filter((sheath) => sheath.wall === wall).map(({ at }) => at.x + STUB_ROOM));

/** Rings under the box, with what each adds to its volume. */
function writeRings(plan: BoxPlan, frame: Frame, x: number): BoxDrawing["rings"] {
  if (plan.enclosure.kind !== "box") return [];
  return inOrder(plan.enclosure.rings).map((ring, index) => {
    const volume = volumeOf(ring.volume);
    const kind = RING_WORDS[ring.kind];
    const text = volume === undefined ? wording.ringUnmarked(kind) : wording.ringAdds(kind, formatVolume(volume));
    const at = { x, y: frame.height + WALL + 20 + PITCH * index };
    return { id: ring.id, text, at };
  });
}

const RING_WORDS = catalogue({
  "plaster-ring": "plaster ring",
  "raised-cover": "raised cover",
  extension: "extension",
});

function boundsOf(
  frame: Frame,
  sheaths: readonly SheathDrawing[],
  header: BoxDrawing["header"],
  ringLines: number,
): Rect {
  const left = sheaths.some(({ wall }) => wall === "left") ? -SHEATH_REACH : -WALL;
  const words = header.at.x + textWidth(header.name, 20, 750) + 10 + textWidth(header.note, 13);
  const has = (wall: Wall): boolean => sheaths.some((sheath) => sheath.wall === wall);
  const beside = sheaths.filter(isUpright).map(({ at }) => at.x + BESIDE_STUB);
  const right = Math.max(frame.width + (has("right") ? SHEATH_REACH : WALL), words, ...beside);
  const top = has("top") ? -SHEATH_REACH : -44;
  const bottom = frame.height + Math.max(WALL + (1 + ringLines) * PITCH, has("bottom") ? SHEATH_REACH : 0);
  return { x: left, y: top, width: right - left, height: bottom - top };
}
