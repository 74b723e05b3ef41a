import type { DeviceFamily } from "../../catalog/device-type.ts";
import type { DeviceDrawing, Rect } from "../../geometry/box-drawing.ts";
import type { Mark } from "../display-list.ts";
import { path, rect, text } from "../marks.ts";
import { INK, PAPER, SECOND_INK } from "../page/inks.ts";
import { DRAW_WORDS } from "./draw-words.ts";
import { glyphMarks } from "./glyph.ts";

/** Bars show their holes, breakers their names: there is nothing else to see. */
const PLAIN: ReadonlySet<DeviceFamily> = new Set<DeviceFamily>(["neutral-bar", "ground-bar", "breaker", "fuse"]);
const EDGE = { ink: SECOND_INK, width: 1.1 } as const;
const LINE = { ink: INK, width: 1.1 } as const;

/** What a person would see of the device from the room, in the space that the drawing leaves for it. */
export function faceMarks(device: DeviceDrawing): readonly Mark[] {
  const { face, family } = device;
  if (PLAIN.has(family)) return [];
  if (face.height < 80 || face.width < 40) return glyphFace(device);
  if (family === "receptacle" || family === "ground-fault-receptacle") return outletFace(device);
  if (family === "switch") return switchFace(device);
  return glyphFace(device);
}

const middleOf = ({ x, y, width, height }: Rect) => ({ x: x + width / 2, y: y + height / 2 });

const plate = (x: number, y: number, width: number, height: number): Mark =>
  rect({ x: x - width / 2, y: y - height / 2, width, height }, { fill: PAPER, stroke: EDGE }, 7);

function glyphFace({ face, glyph }: DeviceDrawing): readonly Mark[] {
  const { x, y } = middleOf(face);
  const plated = face.width >= 72 && face.height >= 72;
  const size = plated ? Math.min(54, face.width - 20, face.height - 20) : Math.min(40, face.width, face.height);
  if (size < 10) return [];
  return [...(plated ? [plate(x, y, size + 20, size + 20)] : []), ...glyphMarks(glyph, x, y, size)];
}

function outletFace({ face, family, glyph }: DeviceDrawing): readonly Mark[] {
  const { x, y } = middleOf(face);
  const senses = family === "ground-fault-receptacle";
  const width = Math.min(96, face.width);
  const height = Math.min(senses ? 130 : 150, face.height);
  const apart = senses ? height / 4 + 8 : height / 4;
  const earthed = glyph !== "receptacle-two-slot";
  const outlets = glyph === "receptacle-single" ? [y] : [y - apart, y + apart];
  return [
    plate(x, y, width, height),
    ...outlets.flatMap((at) => [
      rect({ x: x - 10, y: at - 13, width: 3, height: 14 }, { fill: INK }, 0.6),
      rect({ x: x + 7, y: at - 11.5, width: 3, height: 11 }, { fill: INK }, 0.6),
      ...(earthed ? [path(`M${x - 4.4} ${at + 12}v-2.6a4.4 4.4 0 0 1 8.8 0v2.6z`, { fill: INK })] : []),
    ]),
    ...(senses ? [...button(x - 44, y, 39, DRAW_WORDS.test), ...button(x - 2, y, 46, DRAW_WORDS.reset)] : []),
  ];
}

const button = (x: number, y: number, width: number, words: string): readonly Mark[] => [
  rect({ x, y: y - 11, width, height: 22 }, { fill: PAPER, stroke: LINE }, 3),
  text(words, x + width / 2, y + 4, { size: 11, weight: 700, anchor: "middle" }),
];

/** A toggle with its plate; a three-way handle carries no on and off. */
function switchFace({ face, glyph }: DeviceDrawing): readonly Mark[] {
  const { x, y } = middleOf(face);
  const half = Math.min(58, face.height / 2);
  const marked = (glyph === "switch" || glyph === "switch-pilot") && half >= 46;
  const word = { size: 11, weight: 700, anchor: "middle" } as const;
  return [
    plate(x, y, Math.min(52, face.width), half * 2),
    rect({ x: x - 11, y: y - 24, width: 22, height: 48 }, { fill: PAPER, stroke: LINE }, 3),
    path(`M${x - 8} ${y - 1}L${x - 6} ${y - 20}h12l2 19z`, { fill: PAPER, stroke: { ...LINE, join: "round" } }),
    ...(marked ? [text(DRAW_WORDS.on, x, y - 32, word), text(DRAW_WORDS.off, x, y + 42, word)] : []),
  ];
}
