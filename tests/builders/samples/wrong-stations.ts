import type { SampleDrawing } from "./sample-drawing.ts";

interface Station {
  /** Number of the station: its breaker, its boxes and its row. */
  readonly number: number;
  /** What stands in its boxes 1A, 1B: catalogue types by the letter of the box. */
  readonly devices: Readonly<Record<string, string>>;
  readonly room?: string;
  readonly cable?: string;
  /** Of its breaker, where it is not 20. */
  readonly ratingA?: number;
  /** Of single boxes, by the letter of the box that it feeds. */
  readonly cables?: Readonly<Record<string, string>>;
  /** All boxes hang on the first one, not each on the one before. */
  readonly star?: true;
  /** Catalogue item of its boxes. */
  readonly box?: string;
  /** Of single boxes, by letter. */
  readonly boxes?: Readonly<Record<string, string>>;
}

const DUPLEX = "receptacle-15";
const SWITCHED = { A: "switch-single-pole", B: "luminaire-60" };
const PROTECTED = { A: "gfci-receptacle-15", B: DUPLEX };
const SIX = { A: DUPLEX, B: DUPLEX, C: DUPLEX, D: DUPLEX, E: DUPLEX, F: DUPLEX };
const SQUARE = "square-4-2-1-8";

/** 1 to 8, 18 and 19 without a ground-fault device, 9 to 15 with one, 16, 17 and 20 to 30 boxes with a fault in each. */
export const STATIONS: readonly Station[] = [
  { number: 1, devices: { A: DUPLEX } },
  { number: 2, devices: { A: DUPLEX } },
  { number: 3, devices: { A: DUPLEX, B: DUPLEX } },
  { number: 4, devices: { A: DUPLEX, B: DUPLEX } },
  { number: 5, devices: { A: DUPLEX }, room: "Porch", box: "weatherproof-fd" },
  { number: 6, devices: SWITCHED },
  { number: 7, devices: SWITCHED },
  { number: 8, devices: { A: DUPLEX } },
  ...[9, 10, 11, 12, 13, 14].map((number) => ({ number, devices: PROTECTED })),
  { number: 15, devices: { A: "gfci-receptacle-15" } },
  { number: 16, devices: SIX, box: SQUARE, boxes: { A: "device-3-2-2-1-2", C: "device-3-2-3-1-2" } },
  { number: 17, devices: { ...SIX, A: "receptacle-20", G: DUPLEX }, box: SQUARE },
  ...[18, 19].map((number) => ({ number, devices: { A: DUPLEX } })),
  {
    number: 20,
    devices: { A: DUPLEX, B: DUPLEX, C: DUPLEX, D: DUPLEX, E: DUPLEX },
    boxes: { A: "plastic-new-2", B: "square-4-1-1-2" },
    star: true,
  },
  { number: 21, devices: { A: DUPLEX, B: DUPLEX, C: DUPLEX, D: DUPLEX }, boxes: { C: SQUARE, D: SQUARE } },
  { number: 22, devices: { A: DUPLEX, B: DUPLEX, C: DUPLEX } },
  {
    number: 23,
    devices: { A: "switch-single-pole", B: "luminaire-60", C: "luminaire-60", D: "fan-light" },
    boxes: { B: "plastic-new-1", D: "plastic-ceiling" },
  },
  {
    number: 24,
    devices: { A: "switch-single-pole", B: "luminaire-60", C: "luminaire-60" },
    room: "Reading room",
    boxes: { A: "plastic-new-2" },
    cables: { B: "nm-12-3-g" },
    star: true,
  },
  {
    number: 25,
    devices: { A: DUPLEX, B: DUPLEX, C: DUPLEX, D: DUPLEX },
    cable: "nm-14-2-g",
    ratingA: 15,
  },
  {
    number: 26,
    devices: { A: DUPLEX, B: "gfci-receptacle-15" },
    cables: { B: "nm-10-2-g" },
  },
  {
    number: 27,
    devices: { A: DUPLEX, B: DUPLEX, C: DUPLEX },
    cables: { B: "nm-14-2-g", C: "nm-14-3-g" },
    ratingA: 15,
  },
  { number: 28, devices: { A: DUPLEX, B: DUPLEX, C: DUPLEX }, box: SQUARE },
  {
    number: 29,
    devices: { A: DUPLEX, B: DUPLEX, C: DUPLEX },
    boxes: { A: "plastic-new-2" },
    cables: { B: "al-12-2-g", C: "al-12-2-g" },
    ratingA: 15,
    star: true,
  },
  {
    number: 30,
    devices: { A: DUPLEX, B: "gfci-receptacle-15", C: DUPLEX, D: DUPLEX, E: DUPLEX },
    boxes: { A: SQUARE, C: SQUARE },
    cables: { B: "nm-12-2", C: "armoured-12-2-old", D: "nm-12-2", E: "knob-tube-12" },
    star: true,
  },
];

/** Odd stations left of the panel, even ones right of it, one a row. */
const rowOf = (number: number): number => Math.floor((number - 1) / 2);

/** The panel is wider than a box: the first box to its right stands a column and a quarter further off. */
const columnOf = (number: number, index: number): number =>
  number % 2 === 1 ? -1 - index : 2.25 + index * (WIDE.has(number) ? 4 / 3 : 1);

/** Stations with a box of two gangs. */
const WIDE: ReadonlySet<number> = new Set([24]);

/** Name of the device in a box: "D3A"; of the cable that feeds it: "C3A". */
export const deviceOf = (box: string): string => `D${box}`;
export const cableOf = (box: string): string => `C${box}`;

/** Draws breaker, boxes, devices, cables from box to box and the panel end of a station; what is wired wrong comes after. */
export function station(
  sheet: SampleDrawing,
  {
    number,
    devices,
    room = "Classroom",
    cable = "nm-12-2-g",
    cables = {},
    box = "plastic-new-1",
    boxes = {},
    star,
    ratingA = 20,
  }: Station,
): void {
  sheet.breakerIn(number, `Q${number}`, "P", { ratingA });
  let before = "P";
  Object.entries(devices).forEach(([letter, type], index) => {
    const name = `${number}${letter}`;
    const item = boxes[letter] ?? (type.startsWith("luminaire") ? "plastic-ceiling" : box);
    sheet
      .boxAt(columnOf(number, index), rowOf(number), name, item, { room, note: `station ${number}` })
      .device(deviceOf(name), type, name)
      .cable(cableOf(name), before, name, { item: cables[letter] ?? cable, ft: index === 0 ? 20 : 10 });
    if (index === 0 || star !== true) before = name;
  });
  sheet.home(cableOf(`${number}A`), `Q${number}`);
}

/** Grounds of both boxes of a station, as they should be. */
export function goodGrounds(sheet: SampleDrawing, number: number, letters = "AB"): void {
  [...letters].forEach((letter, index) => {
    const box = `${number}${letter}`;
    const next = letters[index + 1];
    const cables = next === undefined ? [cableOf(box)] : [cableOf(box), cableOf(`${number}${next}`)];
    const awg = sheet.cableNamed(cableOf(box)).item === "nm-14-2-g" ? "14" : "12";
    sheet.grounds(box, cables, [deviceOf(box)], awg);
  });
}
