import fc from "fast-check";
import { getDeviceType } from "../../shared-model/catalog/device-types.ts";
import { Drawing } from "../rules/drawing.ts";

/** Numbers that decide a drawing, taken one by one; past the end every choice is the first, so that shrinking simplifies. */
class Tape {
  private at = 0;
  private readonly numbers: readonly number[];

  constructor(numbers: readonly number[]) {
    this.numbers = numbers;
  }

  below(count: number): number {
    const number = this.numbers[this.at++] ?? 0;
    return number % count;
  }

  pick<T>(items: readonly [T, ...T[]]): T {
    return items[this.below(items.length)] ?? items[0];
  }
}

const IN_BOXES = [
  "receptacle-20",
  "gfci-receptacle-20",
  "luminaire-60",
  "switch-single-pole",
  "switch-3way",
  "switch-4way",
  "gfci-blank",
  "afci-receptacle-15",
] as const;
const BREAKERS = ["breaker-1", "breaker-gfci-1", "breaker-afci-1"] as const;
/** Joints of every box: hot, neutral and ground as they come, and hot and neutral behind a device or a switch. */
const JOINTS = ["H", "N", "G", "HD", "ND"] as const;

/** Terminals by the joint that they are commonly on. */
const COMMON: Readonly<Record<string, (typeof JOINTS)[number]>> = {
  H: "H",
  H1: "H",
  LINE_H: "H",
  C: "H",
  A1: "H",
  N: "N",
  N1: "N",
  LINE_N: "N",
  LOAD_H: "HD",
  L: "HD",
  T1: "HD",
  B1: "HD",
  LOAD_N: "ND",
  G: "G",
};
const MOST_SWITCHES = 5;

function build(numbers: readonly number[]): Drawing {
  const tape = new Tape(numbers);
  const drawing = new Drawing().panel("P");
  const breakers = ["Q0", "Q1"].slice(0, 1 + tape.below(2)) as [string, ...string[]];
  for (const name of breakers) drawing.breaker(name, 20, { legs: [tape.pick(["A", "B"])] }, tape.pick(BREAKERS));
  const boxes = ["B0", "B1", "B2", "B3"].slice(0, 1 + tape.below(4));
  for (const box of boxes) {
    drawing.box(box, 30.3);
    for (const joint of JOINTS) drawing.splice(`${box}-${joint}`, box, "twist-large");
  }
  const places = new Map<string, readonly [string, ...string[]]>();
  let switches = 0;
  boxes.forEach((box, index) => {
    for (let number = 0; number <= tape.below(3); number++) {
      const type = tape.pick(IN_BOXES);
      if (getDeviceType(type).positions.length > 0 && ++switches > MOST_SWITCHES) continue;
      const tied = tape.below(4) === 1 ? ({ faceContact: "tied-to-load" } as const) : {};
      const split = tape.below(4) === 1 ? ({ hotTab: "removed" } as const) : {};
      drawing.device(`D${index}${number}`, type, box, { ...tied, ...split });
      wireDevice(drawing, tape, box, `D${index}${number}`, type);
    }
    const devices = Object.values(drawing.at(box).devices);
    const terminals = devices.flatMap(({ id, type }) =>
      getDeviceType(type).terminals.map(({ name }) => `${id}.${name}`),
    );
    places.set(box, ["cap", "loose", "bond", ...JOINTS.map((joint) => `${box}-${joint}`), ...terminals]);
    const from = tape.below(3) === 1 && index > 1 ? "P" : index === 0 ? "P" : (boxes[tape.below(index)] ?? "P");
    cableTo(drawing, tape, `C${index}`, from, box, breakers);
  });
  if (boxes.length > 1 && tape.below(3) === 1)
    cableTo(drawing, tape, "X", "P", boxes[boxes.length - 1] ?? "", breakers);
  for (let number = tape.below(5); number > 0; number--) makeMistake(drawing, tape, places);
  return drawing;
}

function wireDevice(drawing: Drawing, tape: Tape, box: string, device: string, type: string): void {
  for (const { name } of getDeviceType(type).terminals) {
    const joint = COMMON[name];
    const behind = joint === "H" || joint === "N" ? tape.below(3) === 1 : false;
    if (joint !== undefined)
      drawing.jumper(
        `${device}-${name}`,
        box,
        `${box}-${joint}${behind && !name.includes("_") ? "D" : ""}`,
        `${device}.${name}`,
      );
  }
}

function cableTo(
  drawing: Drawing,
  tape: Tape,
  name: string,
  from: string,
  to: string,
  breakers: readonly [string, ...string[]],
): void {
  drawing.cable(name, "nm-12-2-g", from, to);
  drawing.put({ [`${name}.bk@${to}`]: `${to}-H`, [`${name}.wh@${to}`]: `${to}-N`, [`${name}.cu@${to}`]: `${to}-G` });
  if (from === "P") {
    const breaker = tape.pick(breakers);
    const senses = getDeviceType(drawing.deviceOf(breaker).type).sensing !== undefined;
    const neutral = senses && tape.below(3) > 0 ? `${breaker}.LOAD_N` : "P-NB.BAR";
    drawing.put({ [`${name}.bk@P`]: `${breaker}.OUT`, [`${name}.wh@P`]: neutral, [`${name}.cu@P`]: "P-GB.BAR" });
  } else {
    const behind = tape.below(2) === 1 ? "D" : "";
    drawing.put({ [`${name}.bk@${from}`]: `${from}-H${behind}`, [`${name}.wh@${from}`]: `${from}-N${behind}` });
    drawing.put({ [`${name}.cu@${from}`]: `${from}-G` });
  }
}

/** Moves one end of a box to some place of it. */
function makeMistake(drawing: Drawing, tape: Tape, places: ReadonlyMap<string, readonly [string, ...string[]]>): void {
  const boxes = [...places.keys()] as [string, ...string[]];
  const box = tape.pick(boxes);
  const ends = Object.keys(drawing.at(box).places) as [string, ...string[]];
  const end = tape.pick(ends);
  const to = tape.pick(places.get(box) ?? ["cap"]);
  const parts = end.split(".");
  const name = parts.length === 2 ? `${parts[0]}.${parts[1] === "a" ? 1 : 2}` : `${parts[0]}.${parts[1]}@${box}`;
  drawing.put({ [name]: to });
}

/** Drawings of one panel and up to four boxes: mostly sensible, with up to four ends in wrong places. */
export const randomDrawing: fc.Arbitrary<Drawing> = fc
  .array(fc.nat({ max: 5039 }), { minLength: 40, maxLength: 140 })
  .map(build);
