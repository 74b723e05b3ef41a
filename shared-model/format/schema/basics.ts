import * as v from "valibot";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import { EVIDENCE_MARKS } from "../../model/evidence.ts";
import { type EndKey, isEnd, isId, type OutletKey } from "../../model/ids.ts";
import { COLOURS } from "../../units/colour.ts";
import { isExactVolume } from "../../units/volume.ts";
import { WIRE_SIZES } from "../../units/wire-size.ts";
import { LIMITS } from "../limits.ts";
import { RESERVED_KEYS } from "../reserved-keys.ts";

const wording = catalogue({
  catalogId: "a catalogue id of 1 to 80 characters",
  end: 'the key of a conductor end, such as "c1.bk.a" or "j1.b"',
  freeKey: "a text that is not a reserved word",
  id: "an id of 1 to 40 letters, digits, _ or -, and not a reserved word",
  name: "a name of 1 to 80 characters on one line",
  number: (least: Part, most: Part) => `a number from ${least} to ${most}`,
  outlet: 'the key of an outlet, such as "d5" or "d5/upper"',
  text: (most: Part) => `a text of at most ${most} characters`,
  volume: "a volume from 0 to 1000000 in³",
  volumeDecimals: "a volume of at most 1000000 in³ with at most four decimals",
  wholeNumber: (least: Part, most: Part) => `a whole number from ${least} to ${most}`,
});

/** A schema whose checked value has a branded type; brands exist in types only. */
const branded = <T>(schema: v.GenericSchema): v.GenericSchema<T> => schema as unknown as v.GenericSchema<T>;

/** Words of a person or names of the catalogue, of any content. */
export const text = v.pipe(v.string(), v.maxLength(LIMITS.textLength, wording.text(LIMITS.textLength)));

/** 1 to 80 characters on one line. */
export const isName = (text: string): boolean => text.trim() !== "" && text.length <= 80 && !/\p{Cc}/u.test(text);

/** As a person names an item: it goes into tables and into sentences. */
export const name = v.pipe(v.string(), v.check(isName, wording.name));

/** Id of something in the catalogue, looked up later. */
export const catalogId = v.pipe(v.string(), v.check(isName, wording.catalogId));

/** Any brand of id, told apart by where it stands. */
export const idOf = <T extends string>(): v.GenericSchema<T> =>
  branded<T>(v.pipe(v.string(), v.check(isId, wording.id)));

/** Things by id. The library's own type would make every entry optional, as it cannot tell a brand from a list of keys. */
export const tableOf = <K extends string, T>(
  key: v.GenericSchema<K>,
  value: v.GenericSchema<T>,
): v.GenericSchema<Record<K, T>> => branded(v.record(key as v.GenericSchema<string>, value));

export const endKey = branded<EndKey>(v.pipe(v.string(), v.check(isEnd, wording.end)));

const isOutletKey = (text: string): boolean => isId(text.replace(/[/](upper|lower)$/, ""));

export const outletKey = branded<OutletKey>(v.pipe(v.string(), v.check(isOutletKey, wording.outlet)));

const ID = "[A-Za-z0-9_-]{1,40}";

/** What the tests above accept, reserved words apart, as patterns for the JSON Schema. */
export const PATTERNS: ReadonlyMap<unknown, string> = new Map([
  [isId, `^${ID}$`],
  [isEnd, `^${ID}([.]${ID})?[.][ab]$`],
  [isOutletKey, `^${ID}(/(upper|lower))?$`],
]);

const bounded = v.pipe(
  v.number(),
  v.minValue(-LIMITS.magnitude, wording.number(-LIMITS.magnitude, LIMITS.magnitude)),
  v.maxValue(LIMITS.magnitude, wording.number(-LIMITS.magnitude, LIMITS.magnitude)),
);

/** Any finite number of bearable size; `quantity<Amps>()` for one with a unit. */
export const quantity = <T extends number = number>(): v.GenericSchema<T> => branded<T>(bounded);

/** A length, power or resistance, which cannot be below zero. */
export const notNegative = <T extends number = number>(): v.GenericSchema<T> =>
  branded<T>(
    v.pipe(
      v.number(),
      v.minValue(0, wording.number(0, LIMITS.magnitude)),
      v.maxValue(LIMITS.magnitude, wording.number(0, LIMITS.magnitude)),
    ),
  );

export const count = (least: number, most: number): v.GenericSchema<number> => {
  const wanted = wording.wholeNumber(least, most);
  return branded<number>(v.pipe(v.number(), v.integer(wanted), v.minValue(least, wanted), v.maxValue(most, wanted)));
};

/** Decimal cubic inches in a file, with at most four places, so that the exact count in memory is a whole number. */
export const volumeIn3 = v.pipe(
  v.number(),
  v.minValue(0, wording.volume),
  v.check(isExactVolume, wording.volumeDecimals),
);

export const order = bounded;
export const colour = v.picklist(COLOURS);
export const wireSize = v.picklist(WIRE_SIZES);
export const material = v.picklist(["copper", "aluminium", "copper-clad-aluminium"]);

const isFreeKey = (key: string): boolean => key.length <= LIMITS.textLength && !RESERVED_KEYS.has(key);

/** Key of a table that is filed by words and not by ids. */
export const freeKey = v.pipe(v.string(), v.check(isFreeKey, wording.freeKey));

/** Marks of how the fields of an entity are known. */
export const withEvidence = { evidence: v.exactOptional(v.record(freeKey, v.picklist(EVIDENCE_MARKS))) };
