import { enclosureItems } from "../../catalog/enclosure-items.ts";
import { standardBoxes } from "../../catalog/standard-boxes.ts";
import { type Problem, problem, type Result } from "../../lib/result.ts";
import type { Support } from "../../model/enclosure.ts";
import { EDITIONS, type Edition } from "../../model/project.ts";
import { volumeOf } from "../../queries/box-volume.ts";
import { type CubicInches, cubicInches, isExactVolume } from "../../units/volume.ts";
import { WIRE_SIZES, type WireSize } from "../../units/wire-size.ts";
import { CONDUCTOR_STANDINGS, type ConductorStanding } from "./count-fill.ts";
import type { FillCase } from "./fill-case.ts";

/** Greatest count, number of gangs and cases that a worksheet may name: beyond it a figure is a slip. */
const MOST = 10_000;

/** Reads one worksheet, or an array of them, from parsed JSON. Names every problem with its place inside the input. */
export function readFillCases(input: unknown): Result<FillCase | readonly FillCase[]> {
  const reader = new Reader();
  const value = Array.isArray(input)
    ? input.map((item, index) => readCase(reader, item, `/${index}`))
    : readCase(reader, input, "");
  return reader.problems.length === 0 ? { ok: true, value } : { ok: false, problems: reader.problems };
}

function readCase(reader: Reader, input: unknown, path: string): FillCase {
  const it = reader.record(input, path, [
    "id",
    "edition",
    "box",
    "conductors",
    "grounds",
    "internalClamps",
    "supports",
    "devices",
    "terminalBlocks",
    "ringsIn3",
  ]);
  const box = readBox(reader, it.box, `${path}/box`);
  return {
    id: it.id === undefined || it.id === null ? null : reader.text(it.id, `${path}/id`),
    edition: readEdition(reader, it.edition, `${path}/edition`),
    ...(box !== undefined && { box }),
    rings: reader.list(it.ringsIn3, `${path}/ringsIn3`, (item, at) => reader.volume(item, at, 0)),
    contents: {
      conductors: reader.list(it.conductors, `${path}/conductors`, (item, at) => {
        const row = reader.record(item, at, ["awg", "count", "as"]);
        return {
          awg: readSize(reader, row.awg, `${at}/awg`),
          count: reader.whole(row.count, `${at}/count`, 0),
          as: reader.oneOf<ConductorStanding>(row.as ?? "ends", `${at}/as`, CONDUCTOR_STANDINGS),
        };
      }),
      grounds: reader.list(it.grounds, `${path}/grounds`, (item, at) => {
        const row = reader.record(item, at, ["awg", "count", "isolated"]);
        return {
          awg: readSize(reader, row.awg, `${at}/awg`),
          count: reader.whole(row.count, `${at}/count`, 0),
          isolated: reader.yesNo(row.isolated ?? false, `${at}/isolated`),
        };
      }),
      clamps: reader.whole(it.internalClamps ?? 0, `${path}/internalClamps`, 0) > 0,
      supports: reader.list(it.supports, `${path}/supports`, (item, at) =>
        reader.oneOf<Support>(item, at, ["stud", "hickey"]),
      ),
      devices: reader.list(it.devices, `${path}/devices`, (item, at) => {
        const row = reader.record(item, at, ["awg", "gangs"]);
        return {
          awg: readSize(reader, row.awg, `${at}/awg`),
          gangs: reader.whole(row.gangs ?? 1, `${at}/gangs`, 1),
        };
      }),
      terminalBlocks: reader.list(it.terminalBlocks, `${path}/terminalBlocks`, (item, at) =>
        readSize(reader, reader.record(item, at, ["awg"]).awg, `${at}/awg`),
      ),
    },
  };
}

function readEdition(reader: Reader, input: unknown, path: string): Edition {
  const found = EDITIONS.find((edition) => edition === input);
  if (found === undefined)
    reader.refuse("unknown-edition", path, `Give the edition as one of ${EDITIONS.join(", ")}`, input);
  return found ?? EDITIONS[0];
}

function readSize(reader: Reader, input: unknown, path: string): WireSize {
  return reader.oneOf<WireSize>(input, path, WIRE_SIZES);
}

function readBox(reader: Reader, input: unknown, path: string): CubicInches | undefined {
  if (input === undefined) return undefined;
  const { volumeIn3, size } = reader.record(input, path, ["volumeIn3", "size"]);
  if (volumeIn3 !== undefined && size !== undefined) {
    reader.refuse("two-volumes", path, `Give "volumeIn3" or "size", not both`, input);
    return undefined;
  }
  if (volumeIn3 !== undefined) return reader.volume(volumeIn3, `${path}/volumeIn3`, 1);
  if (size === undefined) return undefined;
  const volume = typeof size === "string" ? volumeOfSize(size) : undefined;
  if (volume === undefined) {
    reader.refuse(
      "unknown-box",
      `${path}/size`,
      `Name a box of the catalogue, for example "4x2-1/8 square" or "device-3-2-3-1-2", or give "volumeIn3"`,
      size,
    );
  }
  return volume;
}

/** A catalogue box by its size in the table of standard boxes, its id or its title. */
function volumeOfSize(name: string): CubicInches | undefined {
  const standard = standardBoxes.find(({ size }) => size === name);
  if (standard !== undefined) return cubicInches(standard.volumeIn3);
  const item = enclosureItems.find(({ id, title }) => id === name || title === name);
  return item?.make.kind === "box" ? volumeOf(item.make.facts.volume) : undefined;
}

/** Collects problems while reading; a refused value is replaced by a harmless one, so that all of them are found. */
class Reader {
  readonly problems: Problem[] = [];

  refuse(code: string, path: string, wanted: string, got: unknown): void {
    this.problems.push(problem(code, path, `${wanted}; it is ${shown(got)}.`));
  }

  record<K extends string>(input: unknown, path: string, known: readonly K[]): Partial<Record<K, unknown>> {
    if (typeof input !== "object" || input === null || Array.isArray(input)) {
      this.refuse("not-an-object", path, "Give an object", input);
      return {};
    }
    for (const key of Object.keys(input)) {
      if (!(known as readonly string[]).includes(key)) {
        const at = `${path}/${key.slice(0, 40)}`;
        this.problems.push(
          problem("unknown-field", at, `This field is not known here; known are ${known.join(", ")}.`),
        );
      }
    }
    // Own fields only, so that a name such as "constructor" finds nothing.
    return Object.fromEntries(Object.entries(input)) as Partial<Record<K, unknown>>;
  }

  list<T>(input: unknown, path: string, read: (item: unknown, at: string) => T): readonly T[] {
    if (input === undefined) return [];
    if (Array.isArray(input)) return input.map((item, index) => read(item, `${path}/${index}`));
    this.refuse("not-a-list", path, "Give a list", input);
    return [];
  }

  text(input: unknown, path: string): string {
    if (typeof input === "string") return input;
    this.refuse("not-a-text", path, "Give a text", input);
    return "";
  }

  yesNo(input: unknown, path: string): boolean {
    if (typeof input === "boolean") return input;
    this.refuse("not-true-or-false", path, "Give true or false", input);
    return false;
  }

  whole(input: unknown, path: string, least: number): number {
    if (typeof input === "number" && Number.isInteger(input) && input >= least && input <= MOST) return input;
    this.refuse("not-a-count", path, `Give a whole number from ${least} to ${MOST}`, input);
    return least;
  }

  volume(input: unknown, path: string, leastStep: number): CubicInches {
    if (typeof input === "number" && isExactVolume(input) && input * 10_000 >= leastStep) return cubicInches(input);
    const least = leastStep === 0 ? "0 or more" : "more than 0";
    this.refuse("not-a-volume", path, `Give a volume in in³, ${least}, with at most four decimals`, input);
    return 0 as CubicInches;
  }

  oneOf<T extends string>(input: unknown, path: string, choices: readonly T[]): T {
    const found = choices.find((choice) => choice === input);
    if (found !== undefined) return found;
    this.refuse("not-a-choice", path, `Give one of ${choices.map((choice) => `"${choice}"`).join(", ")}`, input);
    return choices[0] as T;
  }
}

/** A value for a message, short. */
function shown(value: unknown): string {
  if (value === undefined) return "missing";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object" && value !== null) return "an object";
  const text = JSON.stringify(value);
  return text === undefined ? `a ${typeof value}` : text.length > 60 ? `${text.slice(0, 57)}...` : text;
}
