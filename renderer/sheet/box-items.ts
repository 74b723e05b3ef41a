import type { BoxRoles } from "../../shared-model/answers/circuit.ts";
import type {
  BoxDrawing,
  DeviceDrawing,
  HoleDrawing,
  Rect,
  TerminalDrawing,
} from "../../shared-model/geometry/box-drawing.ts";
import { hull } from "../../shared-model/geometry/free-group-place.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { At } from "../../shared-model/model/place.ts";
import type { Installation, Point } from "../../shared-model/model/project.ts";
import { ROLE_TAGS } from "../state/role-tags.ts";
import { cableName, deviceName, endName, spliceName } from "./item-names.ts";
import type { ItemNews } from "./item-news.ts";
import type { Subject } from "./sheet-subject.ts";

/** Something in a box that can be focused and pressed, with its full name and the area that takes the press. */
export interface BoxItem {
  readonly key: string;
  readonly subject: Exclude<Subject, { readonly kind: "sheet" | "box" | "arrange" }>;
  readonly name: string;
  readonly at: Point;
  readonly area: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
}

/** Half of the pressable square around an end: the pitch of the drawing leaves no room for more. */
const REACH = 8;

const around = (at: Point, halfWidth: number, halfHeight: number): BoxItem["area"] => ({
  x: at.x - halfWidth,
  y: at.y - halfHeight,
  width: halfWidth * 2,
  height: halfHeight * 2,
});

/** Half of a screw and of a hole as they are drawn, and a little more for the hand. */
const SCREW = 10;
const HOLE = 6;

/** What of a terminal can be pressed: it may stand out of the body of its device. */
const terminalParts = ({ block, screw, holes }: TerminalDrawing): readonly Rect[] => [
  around(screw, SCREW, SCREW),
  ...(block === undefined ? [] : [block]),
  ...holes.map(({ at }) => around(at, HOLE, HOLE)),
];

/** The free place of the terminal at a point of a device, else a taken one of it; undefined beside all terminals. */
export function terminalAt({ device, terminals }: DeviceDrawing, point: Point): At | undefined {
  const terminal = terminals.find((each) => terminalParts(each).some((part) => covers(part, point)));
  const away = ({ at }: HoleDrawing): number => Math.hypot(at.x - point.x, at.y - point.y);
  const [hole] = [...(terminal?.holes ?? [])].sort((a, b) => Number(a.taken) - Number(b.taken) || away(a) - away(b));
  return terminal && hole && { kind: "terminal", device, terminal: terminal.terminal, hole: hole.hole };
}

const covers = ({ x, y, width, height }: Rect, point: Point): boolean =>
  point.x >= x && point.x <= x + width && point.y >= y && point.y <= y + height;

const NO_NEWS: ItemNews = new Map();

/** Everything in a box, back to front: cables, devices, splices, then the conductor ends on top. */
export function boxItems(
  installation: Installation,
  enclosure: Enclosure,
  drawing: BoxDrawing,
  roles?: BoxRoles,
  news: ItemNews = NO_NEWS,
): readonly BoxItem[] {
  const box = enclosure.id;
  const naming = { installation, enclosure, news };
  const cables = drawing.sheaths.map(({ cable, side, at, outer, name }): BoxItem => {
    const x = Math.min(at.x, outer.x) - 10;
    const y = Math.min(at.y, outer.y) - 10;
    return {
      key: `cable ${cable} ${side}`,
      subject: { kind: "cable", enclosure: box, id: cable },
      name: cableName(installation, installation.cables[cable], name, news.get(`cable ${cable}`)),
      at: { x: (at.x + outer.x) / 2, y: (at.y + outer.y) / 2 },
      area: { x, y, width: Math.abs(at.x - outer.x) + 20, height: Math.abs(at.y - outer.y) + 20 },
    };
  });
  const devices = drawing.devices.map(
    ({ device, name, caption, body, terminals }): BoxItem => ({
      key: `device ${device}`,
      subject: { kind: "device", enclosure: box, id: device },
      name: deviceName(naming, { device, name, caption }),
      at: { x: body.x + body.width / 2, y: body.y + body.height / 2 },
      area: hull([body, ...terminals.flatMap(terminalParts)]),
    }),
  );
  const splices = drawing.splices.map(({ splice, name, caption, x, rows, freeRow }): BoxItem => {
    const ys = rows.length > 0 ? rows.map((row) => row.y) : [freeRow.y];
    const top = Math.min(...ys);
    const role = roles?.splices[splice];
    const bottom = Math.max(...ys);
    return {
      key: `splice ${splice}`,
      subject: { kind: "splice", enclosure: box, id: splice },
      name: spliceName(naming, { splice, name, caption, rows }, role && ROLE_TAGS[role].word),
      at: { x, y: (top + bottom) / 2 },
      area: { x: x - 12, y: top - 12, width: 24, height: bottom - top + 24 },
    };
  });
  const ends = drawing.conductors.flatMap(({ ends: keys, grips }) =>
    keys.flatMap((end, i): readonly BoxItem[] => {
      const grip = grips[i];
      if (grip === undefined) return [];
      return [
        {
          key: `end ${end}`,
          subject: { kind: "end", enclosure: box, id: end },
          name: endName(naming, end),
          at: grip,
          area: around(grip, REACH + 4, REACH),
        },
      ];
    }),
  );
  return [...cables, ...devices, ...splices, ...ends];
}

export type Direction = "left" | "right" | "up" | "down";

/** The nearest thing that lies in a direction: distance along it, with twice the distance across. */
export function neighbour<T extends { readonly at: Point }>(
  items: readonly T[],
  from: Point,
  direction: Direction,
): T | undefined {
  let best: T | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const item of items) {
    const dx = item.at.x - from.x;
    const dy = item.at.y - from.y;
    const along = direction === "left" ? -dx : direction === "right" ? dx : direction === "up" ? -dy : dy;
    const across = direction === "left" || direction === "right" ? Math.abs(dy) : Math.abs(dx);
    if (along < 1 || across > along * 3) continue;
    const cost = along + 2 * across;
    if (cost < least) {
      least = cost;
      best = item;
    }
  }
  return best;
}
