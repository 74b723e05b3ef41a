/** Boxes as a person makes them up, one landing after the other, and how far each landing moves what it does not concern. */
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { boxId, drawing } from "../builders/drawing.ts";
import type { Drawing } from "../builders/drawing-by-commands.ts";

/** One landing: what it is called, and what it does. */
export interface Landing {
  readonly name: string;
  readonly run: (house: Drawing) => Drawing;
}

export const splice = (name: string, connector: string, ...ends: readonly string[]): Landing => ({
  name: `${ends.join(" + ")} in ${name}`,
  run: (house) => house.splice(name, "B1", connector, ...ends),
});

export const land = (end: string, spot: string): Landing => ({
  name: `${end} to ${spot}`,
  run: (house) => house.land(end, spot),
});

export const pigtail = (name: string, colour: "black" | "white" | "bare", from: string, to: string): Landing => ({
  name: `pigtail ${name} from ${from} to ${to}`,
  run: (house) => house.jumper(name, "B1", from, to, { colour }),
});

/** All ends of one colour: two make the splice, each further one joins it, then the pigtail. */
export const colour = (
  key: "cu" | "wh" | "bk",
  name: string,
  cables: readonly string[],
  ...tails: readonly Landing[]
): readonly Landing[] => {
  const ends = cables.map((cable) => `${cable}.${key}@B1`);
  return [
    splice(name, "twist-large", ...ends.slice(0, 2)),
    ...ends.slice(2).map((end) => land(end, `splice ${name}`)),
    ...tails,
  ];
};

export const tails = {
  cu: (to: string) => pigtail("g", "bare", "splice Z", to),
  wh: (to: string) => pigtail("n", "white", "splice Y", to),
  bk: (to: string) => pigtail("h", "black", "splice X", to),
};

export interface Sequence {
  readonly name: string;
  /** How many landings after the first may move anything, and how far at most, in drawing units: as measured. */
  readonly moving: number;
  readonly most: number;
  readonly start: () => Drawing;
  readonly landings: readonly Landing[];
}

/** As the start page makes it: cables whose other ends are not drawn, and a receptacle. */
export const seen = (cables: readonly string[], device: string | undefined) => (): Drawing => {
  let box = drawing().box("B1");
  if (device !== undefined) box = box.device("R1", device, "B1");
  for (const cable of cables) box = box.outside(cable, "B1");
  return box;
};

/** What a hand goes for, by name: sheaths, devices with their terminals, what is in each splice. */
function spotsOf({ sheaths, devices, splices }: BoxDrawing): ReadonlyMap<string, Point> {
  return new Map<string, Point>([
    ...sheaths.map(({ cable, side, at }) => [`sheath ${cable} ${side}`, at] as const),
    ...devices.flatMap(({ device, body, terminals }) => [
      [`device ${device}`, body] as const,
      ...terminals.map(({ terminal, screw }) => [`terminal ${device} ${terminal}`, screw] as const),
    ]),
    ...splices.flatMap(({ splice: id, x, rows }) =>
      rows.map(({ y, end }) => [`splice ${id} ${end}`, { x, y }] as const),
    ),
  ]);
}

export interface Step {
  readonly landing: string;
  readonly before: BoxDrawing;
  readonly after: BoxDrawing;
  /** How far each thing that was there moved, in drawing units. */
  readonly shifts: readonly { readonly what: string; readonly x: number; readonly y: number; readonly by: number }[];
}

export function stepsOf({ start, landings }: Sequence): readonly Step[] {
  let house = start();
  const here = boxId("B1");
  let before = boxDrawing(house.project, house.project.asFound, here);
  return landings.map(({ name, run }) => {
    house = run(house);
    const after = boxDrawing(house.project, house.project.asFound, here);
    const now = spotsOf(after);
    const shifts = [...spotsOf(before)].flatMap(([what, was]) => {
      const is = now.get(what);
      if (is === undefined) return [];
      const [x, y] = [is.x - was.x, is.y - was.y];
      return [{ what, x, y, by: Math.hypot(x, y) }];
    });
    const step = { landing: name, before, after, shifts };
    before = after;
    return step;
  });
}
