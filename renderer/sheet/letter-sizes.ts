import type { BoxDrawing, CapDrawing, ConductorDrawing, Rect } from "../../shared-model/geometry/box-drawing.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { around, isInside, type Lettering, letterings } from "./letterings.ts";

/** Letters of 11 drawing units are to be 9 pixels high on the screen; more than this they do not grow. */
const MOST = 1.5;
const STEPS = 4;
const SMALLEST = 9 / 11;

/** How many times larger letters should be drawn at a zoom, in steps, so that zooming in between renders nothing. */
export function wantedGrowth(zoom: number): number {
  const exact = Math.min(MOST, Math.max(1, SMALLEST / zoom));
  return 1 + (Math.ceil(((exact - 1) / (MOST - 1)) * STEPS - 0.1) / STEPS) * (MOST - 1);
}

/**
 * How many times larger each lettering of a box can be drawn, up to what is wanted, without lying on another one, on a
 * conductor that is not its own, on a device, a splice or a sign. Those not named stay as they are.
 * @param signs Where signs of findings stand.
 */
export function letterSizes(
  drawing: BoxDrawing,
  wanted: number,
  signs: readonly Point[] = [],
): ReadonlyMap<string, number> {
  const sizes = new Map<string, number>();
  if (wanted <= 1) return sizes;
  const all = letterings(drawing);
  const taken = all.map(({ area }) => area);
  const bodies = [...bodiesOf(drawing), ...signs.map((at) => around(at, 11, 10))];
  const lines = drawing.conductors.flatMap((conductor) => segmentsOf(conductor).map((area) => ({ area, conductor })));
  all.forEach((lettering, i) => {
    const { area, own, within } = lettering;
    for (let step = STEPS; step > 0; step--) {
      const factor = 1 + ((wanted - 1) * step) / STEPS;
      const grown = grow(lettering, factor);
      if (within !== undefined && !isInside(grown, within)) continue;
      // What it lies on already does not stop it: it is drawn over that on purpose.
      const meets = (other: Rect): boolean => overlap(grown, other) && !overlap(area, other);
      if (taken.some((other, j) => j !== i && meets(other)) || bodies.some(meets)) continue;
      if (lines.some((line) => meets(line.area) && !(line.conductor === own && isAlong(line.area, lettering))))
        continue;
      sizes.set(lettering.key, factor);
      taken[i] = grown;
      break;
    }
  });
  return sizes;
}

/** A plate may cover more of the straight run that it is set into, but not the bend at its end. */
const isAlong = (line: Rect, { about, along }: Lettering): boolean =>
  along === "x"
    ? line.width > line.height && about.y > line.y && about.y < line.y + line.height
    : line.height > line.width && about.x > line.x && about.x < line.x + line.width;

/** Area of a lettering at a size. */
export function grow({ area, about, along }: Lettering, factor: number): Rect {
  const x = along === "y" ? 1 : factor;
  const y = along === "x" ? 1 : factor;
  return {
    x: about.x + (area.x - about.x) * x,
    y: about.y + (area.y - about.y) * y,
    width: area.width * x,
    height: area.height * y,
  };
}

/** What no letters may lie on: bodies and their terminals, splices, caps, what is seen of a cable. */
function bodiesOf({ devices, splices, caps, bond, sheaths }: BoxDrawing): readonly Rect[] {
  return [
    ...devices.flatMap(({ body, face, terminals }) => [
      body,
      face,
      ...terminals.flatMap(({ screw, holes, block }) => [
        around(screw, 9, 9),
        ...holes.map(({ at }) => around(at, 5, 5)),
        ...(block === undefined ? [] : [block]),
      ]),
    ]),
    ...splices.flatMap(({ x, rows }) =>
      rows.length === 0
        ? []
        : [{ x: x - 11, y: (rows[0]?.y ?? 0) - 11, width: 22, height: (rows.at(-1)?.y ?? 0) - (rows[0]?.y ?? 0) + 22 }],
    ),
    ...caps.map(capArea),
    ...(bond === undefined ? [] : [around(bond.at, 10, 10)]),
    ...sheaths.flatMap(({ at, outer }) => [
      {
        x: Math.min(at.x, outer.x) - (at.x === outer.x ? 10 : 0),
        y: Math.min(at.y, outer.y) - (at.y === outer.y ? 10 : 0),
        width: Math.max(20, Math.abs(at.x - outer.x)),
        height: Math.max(20, Math.abs(at.y - outer.y)),
      },
      around(at, 20, 16),
    ]),
  ];
}

/** A cap goes on from where its conductor comes. */
function capArea({ at, from }: CapDrawing): Rect {
  if (from === "left" || from === "right")
    return { x: from === "left" ? at.x - 2 : at.x - 15, y: at.y - 6, width: 17, height: 12 };
  return { x: at.x - 6, y: from === "top" ? at.y - 2 : at.y - 15, width: 12, height: 17 };
}

const HALF = 3.5;

/** The straight runs of a conductor as it is drawn. */
const segmentsOf = ({ points }: ConductorDrawing): readonly Rect[] =>
  points.slice(1).flatMap((b, i) => {
    const a = points[i];
    if (a === undefined) return [];
    return [
      {
        x: Math.min(a.x, b.x) - HALF,
        y: Math.min(a.y, b.y) - HALF,
        width: Math.abs(a.x - b.x) + 2 * HALF,
        height: Math.abs(a.y - b.y) + 2 * HALF,
      },
    ];
  });

const overlap = (a: Rect, b: Rect): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
