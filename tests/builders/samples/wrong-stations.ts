import type { SampleDrawing } from "./sample-drawing.ts";

interface Station {
  /** Number of the station: its breaker, its boxes and its row. */
  readonly number: number;
  /** What stands in its boxes 1A, 1B: catalogue types by the letter of the box. */
  readonly devices: Readonly<Record<string, string>>;
  readonly room?: string;
  readonly cable?: string;
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

/** 1 to 8, 18 and 19 without a ground-fault device, 9 to 15 with one, 16 and 17 chains of boxes. */
export const STATIONS: readonly Station[] = [
  { number: 1, devices: { A: DUPLEX }, cable: "nm-14-2-g" },
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
];

/** Odd stations left of the panel, even ones right of it, one a row. */
const rowOf = (number: number): number => Math.floor((number - 1) / 2);

/** The panel is wider than a box: the first box to its right stands half a column further off. */
const columnOf = (number: number, index: number): number => (number % 2 === 1 ? -1 - index : 1.5 + index);

/** Name of the device in a box: "D3A"; of the cable that feeds it: "C3A". */
export const deviceOf = (box: string): string => `D${box}`;
export const cableOf = (box: string): string => `C${box}`;

/** Draws breaker, boxes, devices, cables from box to box and the panel end of a station; what is wired wrong comes after. */
export function station(
  sheet: SampleDrawing,
  { number, devices, room = "Classroom", cable = "nm-12-2-g", box = "plastic-new-1", boxes = {} }: Station,
): void {
  sheet.breakerIn(number, `Q${number}`, "P");
  let before = "P";
  Object.entries(devices).forEach(([letter, type], index) => {
    const name = `${number}${letter}`;
    const item = type.startsWith("luminaire") ? "plastic-ceiling" : (boxes[letter] ?? box);
    sheet
      .boxAt(columnOf(number, index), rowOf(number), name, item, { room, note: `station ${number}` })
      .device(deviceOf(name), type, name)
      .cable(cableOf(name), before, name, { item: cable, ft: index === 0 ? 20 : 10 });
    before = name;
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
