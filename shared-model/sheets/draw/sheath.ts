import type { SheathDrawing, Wall } from "../../geometry/box-drawing.ts";
import { feetPath } from "../../geometry/feet-path.ts";
import { WALL } from "../../geometry/metrics.ts";
import type { Point } from "../../model/project.ts";
import type { Mark } from "../display-list.ts";
import { circle, path, rect, text } from "../marks.ts";
import { INK, PAPER, SECOND_INK, THIRD_INK } from "../page/inks.ts";
import { measure } from "../page/measure.ts";
import { stroke } from "./parts.ts";

const HALF = 10;

/** From the frame of a sheath that comes through the left wall into that of its own wall. */
type Turned = (along: number, across: number) => Point;

const turnedTo =
  (wall: Wall, { x, y }: Point): Turned =>
  (along, across) => {
    switch (wall) {
      case "left":
        return { x: x + along, y: y + across };
      case "right":
        return { x: x - along, y: y - across };
      case "top":
        return { x: x - across, y: y + along };
      case "bottom":
        return { x: x + across, y: y - along };
    }
  };

const box = (at: Turned, along: number, across: number, long: number, high: number) => {
  const [a, b] = [at(along, across), at(along + long, across + high)];
  return { x: Math.min(a.x, b.x), y: Math.min(a.y, b.y), width: Math.abs(a.x - b.x), height: Math.abs(a.y - b.y) };
};

const polyline = (points: readonly Point[]): string =>
  points.map(({ x, y }, i) => `${i === 0 ? "M" : "L"}${x} ${y}`).join("");

export interface SheathLooks {
  /** It goes on into what is not drawn here. */
  readonly torn: boolean;
  /** All its insulated conductors lie behind a ground-fault device. */
  readonly guarded: boolean;
}

/** A cable where it enters: the stub of its sheath, what holds it in the wall, and its end inside. */
export function sheathMarks(sheath: SheathDrawing, { torn, guarded }: SheathLooks): readonly Mark[] {
  const { wall, means, at, outer } = sheath;
  const turn = turnedTo(wall, at);
  const reach = Math.hypot(outer.x - at.x, outer.y - at.y);
  const edge = { ink: SECOND_INK, width: 1.3 } as const;
  const feet = feetPath(straight(turn(-reach, 0), turn(-WALL - 8, 0)), HALF, 6, 7);
  return [
    rect(box(turn, -reach, -HALF, reach + 20, HALF * 2), { fill: PAPER }),
    path(polyline([turn(-reach, -HALF), turn(20, -HALF), turn(20, HALF), turn(-reach, HALF)]), { stroke: edge }),
    ...(torn ? [tornMark(turn, reach)] : []),
    rect(box(turn, -WALL, -HALF, WALL, HALF * 2), { fill: PAPER, stroke: { ink: SECOND_INK, width: 1 } }),
    ...(guarded && feet !== "" ? [path(feet, { stroke: edge })] : []),
    ...(means === "external-connector" ? connectorMarks(turn) : []),
    ...(means === "internal-clamp" || means === "integral-clamp" ? clampMarks(turn, means === "internal-clamp") : []),
  ];
}

/** Level or upright, from left to right or downward. */
const straight = (a: Point, b: Point): readonly Point[] => (a.x > b.x || a.y > b.y ? [b, a] : [a, b]);

/** The torn end of a sheath. */
function tornMark(turn: Turned, reach: number): Mark {
  const wave = [
    [0, -10],
    [3, -6],
    [0, -2],
    [-3, 2],
    [0, 6],
    [0, 10],
  ] as const;
  const points = wave.map(([along, across]) => turn(-reach + along, across));
  return path(polyline(points), { fill: PAPER, stroke: { ink: SECOND_INK, width: 1, join: "round" } });
}

/** Body outside, locknut inside. */
const connectorMarks = (turn: Turned): readonly Mark[] => [
  rect(box(turn, -WALL - 15, -15, 15, 30), { fill: PAPER, stroke: stroke(1.2) }, 2),
  path([-WALL - 10, -WALL - 5].map((along) => polyline([turn(along, -15), turn(along, 15)])).join(""), {
    stroke: { ink: THIRD_INK, width: 0.8 },
  }),
  rect(box(turn, 0, -17, 6, 34), { fill: PAPER, stroke: stroke(1.2) }, 1),
];

/** A saddle over the sheath inside; its screw tells a removable clamp from one that is part of the box. */
function clampMarks(turn: Turned, withScrew: boolean): readonly Mark[] {
  const screw = turn(10, 0);
  return [
    rect(box(turn, 2, -14, 16, 28), { fill: PAPER, stroke: stroke(1.2) }, 2),
    ...(withScrew
      ? [
          circle(screw.x, screw.y, 4.4, { fill: PAPER, stroke: stroke(1.2) }),
          path(`M${screw.x - 2.8} ${screw.y + 1.6}l5.6 -3.2`, { stroke: stroke(1.2) }),
        ]
      : []),
  ];
}

/** Words of a sheath: id, size and length inside it, and where it goes, outside. */
export function sheathWords(sheath: SheathDrawing): readonly Mark[] {
  const { wall, at, outer, name, sizeText, lengthText, captionTitle, captionNote } = sheath;
  const size = 11.5;
  const parts = [
    { words: name, weight: 700 as const, ink: INK },
    { words: sizeText, weight: 400 as const, ink: INK },
    { words: lengthText, weight: 400 as const, ink: SECOND_INK },
  ].filter(({ words }) => words !== "");
  const widths = parts.map(({ words, weight }) => measure(words, size, weight));
  const long = widths.reduce((sum, width) => sum + width, 0) + 7 * (parts.length - 1);
  const along = (i: number): number => widths.slice(0, i).reduce((sum, width) => sum + width + 7, 0);
  const out = wall === "left" || wall === "top" ? -1 : 1;
  const reach = Math.hypot(outer.x - at.x, outer.y - at.y);
  if (wall === "top" || wall === "bottom") {
    const middle = at.y + out * (reach / 2 + 12);
    const x = at.x + HALF + 7;
    const y = at.y + out * (reach - 10);
    return [
      ...parts.map(({ words, weight, ink }, i) =>
        text(words, at.x + 4, middle + long / 2 - along(i), { size, weight, ink, turn: -90 }),
      ),
      text(captionTitle, x, out < 0 ? y + 8 : y - 12, { size: 13, weight: 700 }),
      text(captionNote, x, out < 0 ? y + 22 : y + 2, { size: 12, ink: SECOND_INK }),
    ];
  }
  const anchor = out < 0 ? "start" : "end";
  const left = out < 0 ? outer.x + 10 : outer.x - 10 - long;
  return [
    ...parts.map(({ words, weight, ink }, i) => text(words, left + along(i), at.y + 4, { size, weight, ink })),
    text(captionTitle, outer.x, at.y - (captionNote === "" ? 17 : 31), { size: 13, weight: 700, anchor }),
    text(captionNote, outer.x, at.y - 17, { size: 12, anchor, ink: SECOND_INK }),
  ];
}
