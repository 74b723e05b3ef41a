/** Boxes as a person makes them up, one landing after the other, and how far each landing moves what it does not concern. */
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { boxDrawing } from "../../shared-model/geometry/draw-box.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { boxId, cableId, drawing } from "../builders/drawing.ts";
import type { Drawing } from "../builders/drawing-by-commands.ts";
import { laundryEmpty } from "./laundry-sheet.ts";

/** One landing: what it is called, and what it does. */
export interface Landing {
  readonly name: string;
  readonly run: (house: Drawing) => Drawing;
}

const splice = (name: string, connector: string, ...ends: readonly string[]): Landing => ({
  name: `${ends.join(" + ")} in ${name}`,
  run: (house) => house.splice(name, "B1", connector, ...ends),
});

const land = (end: string, spot: string): Landing => ({
  name: `${end} to ${spot}`,
  run: (house) => house.land(end, spot),
});

const pigtail = (name: string, colour: "black" | "white" | "bare", from: string, to: string): Landing => ({
  name: `pigtail ${name} from ${from} to ${to}`,
  run: (house) => house.jumper(name, "B1", from, to, { colour }),
});

/** All ends of one colour: two make the splice, each further one joins it, then the pigtail. */
const colour = (
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

const tails = {
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
const seen = (cables: readonly string[], device: string | undefined) => (): Drawing => {
  let box = drawing().box("B1");
  if (device !== undefined) box = box.device("R1", device, "B1");
  for (const cable of cables) box = box.outside(cable, "B1");
  return box;
};

const three = ["C1", "C2", "C3"] as const;
const five = ["C1", "C2", "C3", "C4", "C5"] as const;

const gfci: readonly Landing[] = [
  ...colour("cu", "Z", three, tails.cu("R1.G")),
  ...colour("wh", "Y", three.slice(0, 2), tails.wh("R1.LINE_N")),
  ...colour("bk", "X", three.slice(0, 2), tails.bk("R1.LINE_H")),
  land("C3.bk@B1", "R1.LOAD_H"),
  land("C3.wh@B1", "R1.LOAD_N"),
];

export const SEQUENCES: readonly Sequence[] = [
  {
    name: "three cables and a receptacle: grounds, whites, blacks",
    moving: 0,
    most: 0,
    start: seen(three, "receptacle-15"),
    landings: [
      ...colour("cu", "Z", three, tails.cu("R1.G")),
      ...colour("wh", "Y", three, tails.wh("R1.N1")),
      ...colour("bk", "X", three, tails.bk("R1.H1")),
    ],
  },
  {
    name: "three cables and a receptacle: blacks, whites, grounds",
    moving: 0,
    most: 0,
    start: seen(three, "receptacle-15"),
    landings: [
      ...colour("bk", "X", three, tails.bk("R1.H1")),
      ...colour("wh", "Y", three, tails.wh("R1.N1")),
      ...colour("cu", "Z", three, tails.cu("R1.G")),
    ],
  },
  {
    name: "three cables and a receptacle fed through: one cable after the other",
    moving: 0,
    most: 0,
    start: seen(three, "receptacle-15"),
    landings: [
      land("C1.bk@B1", "R1.H1"),
      land("C1.wh@B1", "R1.N1"),
      splice("Z", "twist-large", "C1.cu@B1", "C2.cu@B1"),
      land("C2.bk@B1", "R1.H2"),
      land("C2.wh@B1", "R1.N2"),
      land("C3.cu@B1", "splice Z"),
      tails.cu("R1.G"),
    ],
  },
  {
    name: "a GFCI receptacle: line by pigtails, load straight",
    moving: 2,
    most: 368,
    start: seen(three, "gfci-receptacle-20"),
    landings: gfci,
  },
  {
    name: "a GFCI receptacle with a cable that it is to protect",
    moving: 0,
    most: 0,
    start: () =>
      seen(three, "gfci-receptacle-20")().run("set-box-intent", {
        enclosure: boxId("B1"),
        intent: { protect: { [cableId("C3")]: true } },
      }),
    landings: gfci,
  },
  {
    name: "two cables and a switch: grounds, whites, blacks",
    moving: 0,
    most: 0,
    start: seen(["C1", "C2"], "switch-single-pole"),
    landings: [
      ...colour("cu", "Z", ["C1", "C2"], tails.cu("R1.G")),
      ...colour("wh", "Y", ["C1", "C2"]),
      land("C1.bk@B1", "R1.C"),
      land("C2.bk@B1", "R1.L"),
    ],
  },
  {
    name: "three cables and no device: grounds, whites, blacks",
    moving: 0,
    most: 0,
    start: seen(three, undefined),
    landings: [...colour("cu", "Z", three), ...colour("wh", "Y", three), ...colour("bk", "X", three)],
  },
  {
    name: "laundry: grounds, whites, blacks",
    moving: 3,
    most: 27,
    start: laundryEmpty,
    landings: [
      ...colour("cu", "Z", five, tails.cu("R1.G"), pigtail("t", "bare", "splice Z", "bond")),
      ...colour("wh", "Y", five, tails.wh("R1.N1")),
      ...colour("bk", "X", five, tails.bk("R1.H1")),
    ],
  },
  {
    name: "laundry: blacks, whites, grounds",
    moving: 3,
    most: 27,
    start: laundryEmpty,
    landings: [
      ...colour("bk", "X", five, tails.bk("R1.H1")),
      ...colour("wh", "Y", five, tails.wh("R1.N1")),
      ...colour("cu", "Z", five, tails.cu("R1.G")),
    ],
  },
];

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
