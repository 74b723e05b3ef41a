/** Orders in which people make up a box, landing by landing. */
import { boxId, cableId } from "../builders/drawing.ts";
import { laundryEmpty } from "./laundry-sheet.ts";
import { colour, type Landing, land, pigtail, type Sequence, seen, splice, tails } from "./made-up-by-hand.ts";

const two = ["C1", "C2"] as const;
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
    moving: 1,
    most: 145,
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
    start: seen(two, "switch-single-pole"),
    landings: [
      ...colour("cu", "Z", two, tails.cu("R1.G")),
      ...colour("wh", "Y", two),
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
    moving: 2,
    most: 14,
    start: laundryEmpty,
    landings: [
      ...colour("bk", "X", five, tails.bk("R1.H1")),
      ...colour("wh", "Y", five, tails.wh("R1.N1")),
      ...colour("cu", "Z", five, tails.cu("R1.G")),
    ],
  },
  {
    name: "a GFCI receptacle, line and load straight: grounds first",
    moving: 0,
    most: 0,
    start: seen(two, "gfci-receptacle-20"),
    landings: [
      ...colour("cu", "Z", two, tails.cu("R1.G")),
      land("C1.wh@B1", "R1.LINE_N"),
      land("C1.bk@B1", "R1.LINE_H"),
      land("C2.wh@B1", "R1.LOAD_N"),
      land("C2.bk@B1", "R1.LOAD_H"),
    ],
  },
  {
    name: "a GFCI receptacle, line and load straight: grounds last",
    moving: 0,
    most: 0,
    start: seen(two, "gfci-receptacle-20"),
    landings: [
      land("C1.bk@B1", "R1.LINE_H"),
      land("C1.wh@B1", "R1.LINE_N"),
      land("C2.bk@B1", "R1.LOAD_H"),
      land("C2.wh@B1", "R1.LOAD_N"),
      ...colour("cu", "Z", two, tails.cu("R1.G")),
    ],
  },
  {
    name: "a GFCI receptacle with two cables on its load side",
    moving: 0,
    most: 0,
    start: seen(three, "gfci-receptacle-20"),
    landings: [
      ...colour("cu", "Z", three, tails.cu("R1.G")),
      land("C1.wh@B1", "R1.LINE_N"),
      land("C1.bk@B1", "R1.LINE_H"),
      ...colour("wh", "Y", ["C2", "C3"], tails.wh("R1.LOAD_N")),
      ...colour("bk", "X", ["C2", "C3"], tails.bk("R1.LOAD_H")),
    ],
  },
  {
    name: "a GFCI receptacle that protects nothing but itself",
    moving: 2,
    most: 216,
    start: seen(three, "gfci-receptacle-20"),
    landings: [
      ...colour("cu", "Z", three, tails.cu("R1.G")),
      ...colour("wh", "Y", three, tails.wh("R1.LINE_N")),
      ...colour("bk", "X", three, tails.bk("R1.LINE_H")),
    ],
  },
  {
    name: "a receptacle fed through, grounds first",
    moving: 1,
    most: 171,
    start: seen(two, "receptacle-15"),
    landings: [
      ...colour("cu", "Z", two, tails.cu("R1.G")),
      land("C1.wh@B1", "R1.N1"),
      land("C2.wh@B1", "R1.N2"),
      land("C1.bk@B1", "R1.H1"),
      land("C2.bk@B1", "R1.H2"),
    ],
  },
  {
    name: "three cables and a switch: the last black is switched",
    moving: 0,
    most: 0,
    start: seen(three, "switch-single-pole"),
    landings: [
      ...colour("cu", "Z", three, tails.cu("R1.G")),
      ...colour("wh", "Y", three),
      ...colour("bk", "X", two, tails.bk("R1.C")),
      land("C3.bk@B1", "R1.L"),
    ],
  },
  {
    name: "three cables and a switch: the first black is switched",
    moving: 0,
    most: 0,
    start: seen(three, "switch-single-pole"),
    landings: [
      land("C1.bk@B1", "R1.L"),
      ...colour("bk", "X", ["C2", "C3"], tails.bk("R1.C")),
      ...colour("wh", "Y", three),
      ...colour("cu", "Z", three, tails.cu("R1.G")),
    ],
  },
  {
    name: "a switch and a receptacle side by side",
    moving: 0,
    most: 0,
    start: () => seen(three, "switch-single-pole")().device("R2", "receptacle-15", "B1"),
    landings: [
      ...colour("cu", "Z", three, tails.cu("R1.G"), pigtail("k", "bare", "splice Z", "R2.G")),
      ...colour("wh", "Y", three, pigtail("n", "white", "splice Y", "R2.N1")),
      ...colour("bk", "X", two, tails.bk("R1.C"), pigtail("m", "black", "splice X", "R2.H1")),
      land("C3.bk@B1", "R1.L"),
    ],
  },
];
