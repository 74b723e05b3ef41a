import * as v from "valibot";
import { EVIDENCE_MARKS } from "../../model/evidence.ts";
import { type EndKey, isEnd, isId, type OutletKey } from "../../model/ids.ts";
import { COLOURS } from "../../units/colour.ts";
import { isExactVolume } from "../../units/volume.ts";
import { WIRE_SIZES } from "../../units/wire-size.ts";
import { LIMITS } from "../limits.ts";
import { RESERVED_KEYS } from "../reserved-keys.ts";

/** A schema whose checked value has a branded type; brands exist in types only. */
const branded = <T>(schema: v.GenericSchema): v.GenericSchema<T> => schema as unknown as v.GenericSchema<T>;

/** Words of a person or names of the catalogue, of any content. */
export const text = v.pipe(
  v.string(),
  v.maxLength(LIMITS.textLength, `a text of at most ${LIMITS.textLength} characters`),
);

/** 1 to 80 characters on one line. */
export const isName = (text: string): boolean => text.trim() !== "" && text.length <= 80 && !/\p{Cc}/u.test(text);

/** As a person names an item: it goes into tables and into sentences. */
export const name = v.pipe(v.string(), v.check(isName, "a name of 1 to 80 characters on one line"));

/** Id of something in the catalogue, looked up later. */
export const catalogId = v.pipe(v.string(), v.check(isName, "a catalogue id of 1 to 80 characters"));

/** Any brand of id, told apart by where it stands. */
export const idOf = <T extends string>(): v.GenericSchema<T> =>
  branded<T>(v.pipe(v.string(), v.check(isId, "an id of 1 to 40 letters, digits, _ or -, and not a reserved word")));

/** Things by id. The library's own type would make every entry optional, as it cannot tell a brand from a list of keys. */
export const tableOf = <K extends string, T>(
  key: v.GenericSchema<K>,
  value: v.GenericSchema<T>,
): v.GenericSchema<Record<K, T>> => branded(v.record(key as v.GenericSchema<string>, value));

export const endKey = branded<EndKey>(
  v.pipe(v.string(), v.check(isEnd, 'the key of a conductor end, such as "c1.bk.a" or "j1.b"')),
);

const isOutletKey = (text: string): boolean => isId(text.replace(/[/](upper|lower)$/, ""));

export const outletKey = branded<OutletKey>(
  v.pipe(v.string(), v.check(isOutletKey, 'the key of an outlet, such as "d5" or "d5/upper"')),
);

const ID = "[A-Za-z0-9_-]{1,40}";

/** What the tests above accept, reserved words apart, as patterns for the JSON Schema. */
export const PATTERNS: ReadonlyMap<unknown, string> = new Map([
  [isId, `^${ID}$`],
  [isEnd, `^${ID}([.]${ID})?[.][ab]$`],
  [isOutletKey, `^${ID}(/(upper|lower))?$`],
]);

const bounded = v.pipe(
  v.number(),
  v.minValue(-LIMITS.magnitude, `a number from ${-LIMITS.magnitude} to ${LIMITS.magnitude}`),
  v.maxValue(LIMITS.magnitude, `a number from ${-LIMITS.magnitude} to ${LIMITS.magnitude}`),
);

/** Any finite number of bearable size; `quantity<Amps>()` for one with a unit. */
export const quantity = <T extends number = number>(): v.GenericSchema<T> => branded<T>(bounded);

/** A length, power or resistance, which cannot be below zero. */
export const notNegative = <T extends number = number>(): v.GenericSchema<T> =>
  branded<T>(
    v.pipe(
      v.number(),
      v.minValue(0, `a number from 0 to ${LIMITS.magnitude}`),
      v.maxValue(LIMITS.magnitude, `a number from 0 to ${LIMITS.magnitude}`),
    ),
  );

export const count = (least: number, most: number): v.GenericSchema<number> => {
  const wanted = `a whole number from ${least} to ${most}`;
  return branded<number>(v.pipe(v.number(), v.integer(wanted), v.minValue(least, wanted), v.maxValue(most, wanted)));
};

/** Decimal cubic inches in a file, with at most four places, so that the exact count in memory is a whole number. */
export const volumeIn3 = v.pipe(
  v.number(),
  v.minValue(0, "a volume from 0 to 1000000 in³"),
  v.check(isExactVolume, "a volume of at most 1000000 in³ with at most four decimals"),
);

export const order = bounded;
export const colour = v.picklist(COLOURS);
export const wireSize = v.picklist(WIRE_SIZES);
export const material = v.picklist(["copper", "aluminium", "copper-clad-aluminium"]);

const isFreeKey = (key: string): boolean => key.length <= LIMITS.textLength && !RESERVED_KEYS.has(key);

/** Key of a table that is filed by words and not by ids. */
export const freeKey = v.pipe(v.string(), v.check(isFreeKey, "a text that is not a reserved word"));

/** Marks of how the fields of an entity are known. */
export const withEvidence = { evidence: v.exactOptional(v.record(freeKey, v.picklist(EVIDENCE_MARKS))) };
