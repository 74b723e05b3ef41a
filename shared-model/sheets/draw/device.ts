import type { DeviceFamily } from "../../catalog/device-type.ts";
import type { DeviceDrawing, Rect, TerminalDrawing } from "../../geometry/box-drawing.ts";
import type { Mark } from "../display-list.ts";
import { circle, path, rect, text } from "../marks.ts";
import { INK, PAPER, SECOND_INK, THIRD_INK } from "../page/inks.ts";
import { DRAW_WORDS } from "./draw-words.ts";
import { faceMarks } from "./face.ts";
import { stroke, underlaid } from "./parts.ts";
import { screwMarks } from "./screw.ts";

const SENSES: ReadonlySet<DeviceFamily> = new Set<DeviceFamily>(["ground-fault-receptacle", "ground-fault-blank"]);

/** A device in its gang: body, face, terminals; LINE and LOAD are written out on a ground-fault device. */
export function deviceMarks(device: DeviceDrawing): readonly Mark[] {
  const { body, family } = device;
  const middle = body.x + body.width / 2;
  const word = { size: 14, weight: 700, anchor: "middle", track: 14 * 0.14 } as const;
  return [
    rect(body, { fill: PAPER, stroke: stroke(1.75) }, Math.min(10, body.height / 6)),
    ...(SENSES.has(family)
      ? [
          text(DRAW_WORDS.line, middle + 1, body.y + 20, word),
          text(DRAW_WORDS.load, middle + 1, body.y + body.height - 10.5, word),
          ...contactMarks(device),
        ]
      : []),
    ...faceMarks(device),
    ...device.terminals.flatMap((terminal) => terminalMarks(terminal, body)),
    ...nameMarks(device),
  ];
}

/** Name and make above a yoke; the name alone on a breaker. */
function nameMarks({ labelAt: { x, y }, name, caption, family }: DeviceDrawing): readonly Mark[] {
  if (family === "breaker" || family === "fuse") return [text(name, x, y, { size: 11, weight: 700, anchor: "middle" })];
  return [
    ...underlaid(name, x, y, 15, 700),
    ...(caption.toLowerCase() === name.toLowerCase() ? [] : underlaid(caption, x, y + 15, 11, 400)),
  ];
}

/** The two inner paths from LINE to LOAD with their contacts, drawn closed: the drawing shows the device reset. */
function contactMarks({ body, terminals }: DeviceDrawing): readonly Mark[] {
  const blocks = terminals.flatMap(({ block }) => (block === undefined ? [] : [block]));
  const upper = Math.min(...blocks.map((block) => block.y + block.height));
  const lower = Math.max(...blocks.map((block) => block.y));
  if (!(lower - upper > 40)) return [];
  const centre = (upper + lower) / 2;
  return [body.x + 10, body.x + body.width - 10].flatMap((x) => [
    path(`M${x} ${upper + 2}V${centre - 6}M${x} ${centre + 6}V${lower - 2}`, {
      stroke: { ink: THIRD_INK, width: 1.4 },
    }),
    path(`M${x} ${centre - 6}V${centre + 6}`, { stroke: stroke(2.2) }),
    circle(x, centre - 6, 2.1, { fill: INK }),
    circle(x, centre + 6, 2.1, { fill: INK }),
  ]);
}

/** A terminal: block, screw and holes; a hole is a ring, and a dot shows that it is taken. */
function terminalMarks(terminal: TerminalDrawing, body: Rect): readonly Mark[] {
  const { block, screw, holes, labelAt, labelAnchor, word, label, entryKind, finish } = terminal;
  const isBar = entryKind === "neutral-bar" || entryKind === "ground-bar";
  const showsScrew = !isBar && entryKind !== "lead";
  const isLow = block !== undefined && block.height < 24;
  const atScrew = holes.some((hole) => Math.hypot(hole.at.x - screw.x, hole.at.y - screw.y) < 6);
  const leadFrom = (x: number): number => (x < body.x ? body.x : body.x + body.width);
  return [
    ...(entryKind === "lead"
      ? holes.map(({ at }) => path(`M${leadFrom(at.x)} ${at.y}H${at.x}`, { stroke: stroke(3) }))
      : []),
    ...(block === undefined ? [] : [rect(block, { fill: PAPER, stroke: stroke(1.3) }, 3)]),
    ...(showsScrew ? screwMarks(finish, screw.x, screw.y) : []),
    ...holes.flatMap(({ at, taken }) => [
      ...(atScrew && showsScrew ? [] : [circle(at.x, at.y, 4.4, { fill: PAPER, stroke: stroke(1.1) })]),
      ...(taken ? [circle(at.x, at.y, 2.7, { fill: INK })] : []),
    ]),
    text(label, labelAt.x, labelAt.y, { size: 13, weight: 700, anchor: labelAnchor }),
    ...(word === "" || isLow
      ? []
      : [text(word, labelAt.x, labelAt.y + 12.5, { size: 11, anchor: labelAnchor, ink: SECOND_INK })]),
  ];
}
