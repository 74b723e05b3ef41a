import { enclosureItems } from "../../catalog/enclosure-items.ts";
import { type Problem, problem, type Result } from "../../lib/result.ts";
import type { Support } from "../../model/enclosure.ts";
import { EDITIONS, type Edition } from "../../model/project.ts";
import { volumeOf } from "../../queries/box-volume.ts";
import { isExactMillilitres, type Millilitres, millilitres } from "../../units/millilitres.ts";
import { type CubicInches, cubicInches, isExactVolume } from "../../units/volume.ts";
import { WIRE_SIZES, type WireSize } from "../../units/wire-size.ts";
import { getEdition } from "../editions/editions.ts";
import { CONDUCTOR_STANDINGS, type ConductorStanding } from "./box-contents.ts";
import type { FillCase } from "./fill-case.ts";
import { wording } from "./read-fill-case-words.ts";

/** Greatest count, number of gangs and cases that a worksheet may name: beyond it a figure is a slip. */
const MOST = 10_000;
/** Greatest depth of a device behind its strap: beyond it a figure is a slip. */
const MOST_DEEP_CM = 100;

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
    "ringsMl",
    "connectors",
  ]);
  const edition = readEdition(reader, it.edition, `${path}/edition`);
  const box = readBox(reader, it.box, `${path}/box`, edition);
  const ringsMl = reader.list(it.ringsMl, `${path}/ringsMl`, (item, at) => reader.millilitres(item, at));
  const unitOfRings = box?.unit === "mL" ? "ringsIn3" : "ringsMl";
  if (it[unitOfRings] !== undefined)
    reader.refuse("two-units", `${path}/${unitOfRings}`, wording.giveOneUnit, it[unitOfRings]);
  return {
    id: it.id === undefined || it.id === null ? null : reader.text(it.id, `${path}/id`),
    edition,
    ...(box?.unit === "in³" && { box: box.volume }),
    ...(box?.unit === "mL" && { marked: { box: box.volume, rings: ringsMl } }),
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
        const row = reader.record(item, at, ["awg", "gangs", "depthCm"]);
        return {
          awg: readSize(reader, row.awg, `${at}/awg`),
          gangs: reader.whole(row.gangs ?? 1, `${at}/gangs`, 1),
          ...(row.depthCm !== undefined && { depthCm: reader.depth(row.depthCm, `${at}/depthCm`) }),
        };
      }),
      terminalBlocks: reader.list(it.terminalBlocks, `${path}/terminalBlocks`, (item, at) =>
        readSize(reader, reader.record(item, at, ["awg"]).awg, `${at}/awg`),
      ),
      connectors: reader.list(it.connectors, `${path}/connectors`, (item, at) => {
        const row = reader.record(item, at, ["awg", "count"]);
        return {
          awg: readSize(reader, row.awg, `${at}/awg`),
          count: reader.whole(row.count, `${at}/count`, 0),
        };
      }),
    },
  };
}

function readEdition(reader: Reader, input: unknown, path: string): Edition {
  const found = EDITIONS.find((edition) => edition === input);
  if (found === undefined) reader.refuse("unknown-edition", path, wording.giveEdition(EDITIONS.join(", ")), input);
  return found ?? EDITIONS[0];
}

function readSize(reader: Reader, input: unknown, path: string): WireSize {
  return reader.oneOf<WireSize>(input, path, WIRE_SIZES);
}

/** Volume of the box alone, in the unit in which it was told. */
type BoxVolume =
  | { readonly unit: "in³"; readonly volume: CubicInches }
  | { readonly unit: "mL"; readonly volume: Millilitres };

const inIn3 = (volume: CubicInches): BoxVolume => ({ unit: "in³", volume });

function readBox(reader: Reader, input: unknown, path: string, edition: Edition): BoxVolume | undefined {
  if (input === undefined) return undefined;
  const { volumeIn3, volumeMl, size } = reader.record(input, path, ["volumeIn3", "volumeMl", "size"]);
  if ([volumeIn3, volumeMl, size].filter((one) => one !== undefined).length > 1) {
    reader.refuse("two-volumes", path, wording.giveOneVolume, input);
    return undefined;
  }
  const { conductorMl, tableBoxes } = getEdition(edition).values;
  if (volumeIn3 !== undefined) return inIn3(reader.volume(volumeIn3, `${path}/volumeIn3`, 1));
  if (volumeMl !== undefined) {
    if (conductorMl === undefined)
      reader.refuse("not-in-millilitres", `${path}/volumeMl`, wording.giveVolumeIn3(edition), volumeMl);
    return { unit: "mL", volume: reader.millilitres(volumeMl, `${path}/volumeMl`, 1) };
  }
  if (size === undefined) return undefined;
  const ofTable = tableBoxes && ((name: string) => tableBoxes.value[name]?.in3);
  const volume = typeof size === "string" ? volumeOfSize(size, ofTable) : undefined;
  if (volume !== undefined) return inIn3(volume);
  reader.refuse(
    "unknown-box",
    `${path}/size`,
    tableBoxes === undefined
      ? wording.nameBox("device-3-2-3-1-2")
      : wording.nameBoxOf(tableBoxes.section, "square-4-2-1-8"),
    size,
  );
  return undefined;
}

/** A catalogue box by its size in the table of standard boxes, its id or its title. */
function volumeOfSize(name: string, ofTable?: (size: string) => CubicInches | undefined): CubicInches | undefined {
  const listed = volumeOf({ kind: "table", size: name }, ofTable);
  if (listed !== undefined) return listed;
  const item = enclosureItems.find(({ id, title }) => id === name || title === name);
  return item?.make.kind === "box" ? volumeOf(item.make.facts.volume, ofTable) : undefined;
}

/** Collects problems while reading; a refused value is replaced by a harmless one, so that all of them are found. */
class Reader {
  readonly problems: Problem[] = [];

  refuse(code: string, path: string, wanted: string, got: unknown): void {
    this.problems.push(problem(code, path, wording.itIs(wanted, shown(got))));
  }

  record<K extends string>(input: unknown, path: string, known: readonly K[]): Partial<Record<K, unknown>> {
    if (typeof input !== "object" || input === null || Array.isArray(input)) {
      this.refuse("not-an-object", path, wording.giveObject, input);
      return {};
    }
    for (const key of Object.keys(input)) {
      if (!(known as readonly string[]).includes(key)) {
        const at = `${path}/${key.slice(0, 40)}`;
        this.problems.push(problem("unknown-field", at, wording.unknownField(known.join(", "))));
      }
    }
    // Own fields only, so that a name such as "constructor" finds nothing.
    return Object.fromEntries(Object.entries(input)) as Partial<Record<K, unknown>>;
  }

  list<T>(input: unknown, path: string, read: (item: unknown, at: string) => T): readonly T[] {
    if (input === undefined) return [];
    if (Array.isArray(input)) return input.map((item, index) => read(item, `${path}/${index}`));
    this.refuse("not-a-list", path, wording.giveList, input);
    return [];
  }

  text(input: unknown, path: string): string {
    if (typeof input === "string") return input;
    this.refuse("not-a-text", path, wording.giveText, input);
    return "";
  }

  yesNo(input: unknown, path: string): boolean {
    if (typeof input === "boolean") return input;
    this.refuse("not-true-or-false", path, wording.giveFlag, input);
    return false;
  }

  whole(input: unknown, path: string, least: number): number {
    if (typeof input === "number" && Number.isInteger(input) && input >= least && input <= MOST) return input;
    this.refuse("not-a-count", path, wording.giveCount(least, MOST), input);
    return least;
  }

  volume(input: unknown, path: string, leastStep: number): CubicInches {
    if (typeof input === "number" && isExactVolume(input) && input * 10_000 >= leastStep) return cubicInches(input);
    this.refuse("not-a-volume", path, leastStep === 0 ? wording.giveIn3FromNone : wording.giveIn3, input);
    return 0 as CubicInches;
  }

  millilitres(input: unknown, path: string, leastStep = 0): Millilitres {
    if (typeof input === "number" && isExactMillilitres(input) && input * 10 >= leastStep) return millilitres(input);
    this.refuse("not-a-volume", path, leastStep === 0 ? wording.giveMlFromNone : wording.giveMl, input);
    return 0 as Millilitres;
  }

  depth(input: unknown, path: string): number {
    if (typeof input === "number" && input >= 0 && input <= MOST_DEEP_CM) return input;
    this.refuse("not-a-depth", path, wording.giveDepth(MOST_DEEP_CM), input);
    return 0;
  }

  oneOf<T extends string>(input: unknown, path: string, choices: readonly T[]): T {
    const found = choices.find((choice) => choice === input);
    if (found !== undefined) return found;
    this.refuse("not-a-choice", path, wording.giveOneOf(choices.map((choice) => `"${choice}"`).join(", ")), input);
    return choices[0] as T;
  }
}

/** A value for a message, short. */
function shown(value: unknown): string {
  if (value === undefined) return wording.missing;
  if (Array.isArray(value)) return wording.aList;
  if (typeof value === "object" && value !== null) return wording.anObject;
  const text = JSON.stringify(value);
  return text === undefined ? `a ${typeof value}` : text.length > 60 ? `${text.slice(0, 57)}...` : text;
}
