import type {
  BoxDrawing,
  ConductorDrawing,
  DeviceDrawing,
  Plate,
  Rect,
  SheathDrawing,
  TerminalDrawing,
} from "../../shared-model/geometry/box-drawing.ts";
import { PLATE, WALL } from "../../shared-model/geometry/metrics.ts";
import { textWidth } from "../../shared-model/geometry/text-width.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { wording } from "./words.ts";

/** Lines of text that grow together, about a point that stays. */
export interface Lettering {
  readonly key: string;
  readonly about: Point;
  readonly area: Rect;
  /** What it belongs to and lies on, or in: no obstacle. */
  readonly own?: ConductorDrawing;
  /** A plate stays as high as it is: the rows of conductors are that near each other. */
  readonly along?: "x" | "y";
  /** It must stay inside this. */
  readonly within?: Rect;
}

export const plateKey = ({ at }: Pick<Plate, "at">): string => `plate ${at.x} ${at.y}`;
export const spliceKey = (splice: string): string => `splice ${splice}`;
export const deviceKey = (device: string): string => `device ${device}`;
export const terminalKey = (at: Point): string => `terminal ${at.x} ${at.y}`;
export const sheathKey = ({ cable, side }: Pick<SheathDrawing, "cable" | "side">): string => `sheath ${cable} ${side}`;
export const captionKey = ({ cable, side }: Pick<SheathDrawing, "cable" | "side">): string =>
  `caption ${cable} ${side}`;
export const BOND_KEY = "bond";

/** All words of a box that may grow. */
export function letterings(drawing: BoxDrawing): readonly Lettering[] {
  const { devices, splices, sheaths, conductors, bond } = drawing;
  return [
    ...conductors.flatMap((own) => own.plates.map((plate) => ofPlate(plate, own))),
    ...splices.map(({ splice, name, caption, labelAt }): Lettering => {
      // The letter of its role stands right of the name.
      const half = Math.max(textWidth(name, 15, 700) / 2 + 20, textWidth(caption, 11) / 2);
      const area = { x: labelAt.x - half, y: labelAt.y - 13, width: 2 * half, height: 30 };
      return { key: spliceKey(splice), about: { x: labelAt.x, y: labelAt.y + 17 }, area };
    }),
    ...devices.flatMap((device) => [
      ...(isPlain(device) ? [] : [ofDevice(device)]),
      ...device.terminals.map((terminal) => ofTerminal(terminal, device)),
    ]),
    ...sheaths.flatMap(ofSheath),
    ...(bond === undefined
      ? []
      : [
          ofLines(
            BOND_KEY,
            bond.labelAt,
            bond.labelAnchor,
            [
              [wording.groundScrew, 11.5, 600],
              ["green", 11, 400],
            ],
            13,
          ),
        ]),
  ];
}

/** A slot of a panel and a bar leave no room around their words. */
const isPlain = ({ family }: DeviceDrawing): boolean =>
  family === "breaker" || family === "fuse" || family === "neutral-bar" || family === "ground-bar";

function ofPlate(plate: Plate, own: ConductorDrawing): Lettering {
  const { at, text, vertical } = plate;
  const long = textWidth(text, PLATE.size, PLATE.weight) + PLATE.pad * 2;
  const area = vertical ? around(at, PLATE.height / 2, long / 2) : around(at, long / 2, PLATE.height / 2);
  return { key: plateKey(plate), about: at, area, own, along: vertical ? "y" : "x" };
}

function ofDevice({ device, name, caption, labelAt }: DeviceDrawing): Lettering {
  const half = Math.max(textWidth(name, 15, 700), textWidth(caption, 11)) / 2;
  const area = { x: labelAt.x - half, y: labelAt.y - 12, width: 2 * half, height: 31 };
  return { key: deviceKey(device), about: { x: labelAt.x, y: labelAt.y + 19 }, area };
}

function ofTerminal({ label, word, labelAt, labelAnchor }: TerminalDrawing, { body, face }: DeviceDrawing): Lettering {
  const lines: readonly Line[] = [[label, 13, 700], ...(word === "" ? [] : [[word, 11, 400] as const])];
  const lettering = ofLines(terminalKey(labelAt), labelAt, labelAnchor, lines, 12.5);
  if (!isInside(lettering.area, body)) return lettering;
  // Beside its screw, up to what is seen of the device from the room.
  const left = labelAt.x < face.x + face.width / 2;
  const from = left ? body.x : Math.max(face.x + face.width, lettering.area.x - 400);
  const to = left ? face.x : body.x + body.width;
  const free = { x: from + 1, y: body.y, width: to - from - 2, height: body.height };
  return { ...lettering, within: isInside(lettering.area, free) ? free : lettering.area };
}

function ofSheath(sheath: SheathDrawing): readonly Lettering[] {
  const { wall, at, outer } = sheath;
  if (wall === "top" || wall === "bottom") return [];
  const out = wall === "left" ? -1 : 1;
  const words = [sheath.name, sheath.sizeText, sheath.lengthText].filter((word) => word !== "");
  const width = words.reduce((sum, word) => sum + textWidth(word, 11.5, 640) + 7, -7);
  const from = outer.x - out * 10;
  const inner = at.x + out * (WALL + 2);
  const room = { x: Math.min(inner, outer.x), y: at.y - 10, width: Math.abs(outer.x - inner), height: 20 };
  const text = { x: out < 0 ? from : from - width, y: at.y - 6, width, height: 12 };
  const title = textWidth(sheath.captionTitle, 13, 700);
  const note = textWidth(sheath.captionNote, 11);
  const long = Math.max(title, note);
  const high = sheath.captionNote === "" ? 14 : 28;
  const caption = { x: out < 0 ? outer.x : outer.x - long, y: at.y - 14 - high, width: long, height: high };
  const outside = {
    x: Math.min(at.x + out * WALL, outer.x),
    y: -1e6,
    width: Math.abs(at.x - outer.x) - WALL,
    height: 2e6,
  };
  return [
    { key: sheathKey(sheath), about: { x: from, y: at.y }, area: text, within: isInside(text, room) ? room : text },
    {
      key: captionKey(sheath),
      about: { x: outer.x, y: at.y - 14 },
      area: caption,
      within: isInside(caption, outside) ? outside : caption,
    },
  ];
}

type Line = readonly [text: string, size: number, weight: number];

function ofLines(
  key: string,
  at: Point,
  anchor: TerminalDrawing["labelAnchor"],
  lines: readonly Line[],
  apart: number,
): Lettering {
  const width = Math.max(...lines.map(([text, size, weight]) => textWidth(text, size, weight)));
  const x = anchor === "start" ? at.x : anchor === "end" ? at.x - width : at.x - width / 2;
  const high = lines[0]?.[1] ?? 0;
  return {
    key,
    about: at,
    area: { x, y: at.y - high * 0.75, width, height: high * 0.75 + apart * (lines.length - 1) + 3 },
  };
}

export const around = ({ x, y }: Point, halfWidth: number, halfHeight: number): Rect => ({
  x: x - halfWidth,
  y: y - halfHeight,
  width: halfWidth * 2,
  height: halfHeight * 2,
});

export const isInside = (a: Rect, b: Rect): boolean =>
  a.x >= b.x && a.y >= b.y && a.x + a.width <= b.x + b.width && a.y + a.height <= b.y + b.height;
