/**
 * What a person reads of a drawing names things and facts as people call them: no id, no key of a field, no abbreviation
 * in small letters, no word twice in a row.
 */
import { expect, test } from "vitest";
import type { SheetInput } from "../../shared-model/answers/sheet-input.ts";
import { cableItems } from "../../shared-model/catalog/cable-items.ts";
import { connectors } from "../../shared-model/catalog/connectors.ts";
import { deviceTypes } from "../../shared-model/catalog/device-types.ts";
import { enclosureItems } from "../../shared-model/catalog/enclosure-items.ts";
import { loadItems } from "../../shared-model/catalog/load-items.ts";
import { type Project, READING_INSTRUMENTS } from "../../shared-model/model/project.ts";
import { ROOM_KINDS } from "../../shared-model/model/room.ts";
import { helpPage } from "../../shared-model/rules/help-page.ts";
import { rules } from "../../shared-model/rules/registry.ts";
import { SHEETS } from "../../shared-model/sheets/registry.ts";
import { textsOf } from "../../shared-model/sheets/text-boxes.ts";
import { inputOf, statesOf } from "../sheets/sheet-inputs.ts";
import { drawings, energisedIn, findingsIn, proofsIn, type Said } from "./said-of-drawings.ts";

/** Ids of the stock, and of whatever else is stored as a word with a dash in it. */
const STORED = [deviceTypes, cableItems, connectors, enclosureItems, loadItems]
  .flatMap((items) => items.map(({ id }) => id))
  .concat(READING_INSTRUMENTS, ROOM_KINDS)
  .filter((id) => id.includes("-"))
  // Trade words that are the same as what is stored.
  .filter((id) => !/^(fan-light|clamp-meter|test-lamp|by-eye)$/.test(id));

/** Ids and names that stand in a drawing, at any depth. */
function standingIn(value: unknown, ids: Set<string>, names: Set<string>): void {
  if (typeof value !== "object" || value === null) return;
  for (const [key, one] of Object.entries(value)) {
    if (key === "id" && typeof one === "string") ids.add(one);
    else if (typeof one === "string") names.add(one);
    else standingIn(one, ids, names);
  }
}

/** A key of a field, as "freeLengthIn"; units alone are written so: mA, mL. */
const KEY = /(?<![\p{L}\d])(?!m[AL]\b)[a-z]+[A-Z]\p{L}*/gu;
/** Abbreviations are capitals; a weight has its figure before it. */
const SMALL = /(?<![\p{L}-])(?:led|gfci|afci|awg|tr|wr|nm|(?<!\d )lb)(?![\p{L}-])/gu;
const TWICE = /(?<![\p{L}\d-])(\p{L}{2,}) \1(?![\p{L}\d-])/gu;

const asWord = (id: string): RegExp =>
  new RegExp(`(?<![\\p{L}\\d-])${id.replace(/[.*+?^${}()|[\]\\/]/g, "\\$&")}(?![\\p{L}\\d-])`, "u");
const STORED_WORDS = STORED.map((id) => [id, asWord(id)] as const);

/** What is wrong with the words of a text. @param own Names of the drawing. @param ids Of its things, which are no names. */
function wrongIn(
  text: string,
  own: ReadonlySet<string>,
  ids: readonly (readonly [string, RegExp])[],
): readonly string[] {
  const keys = (text.match(KEY) ?? []).filter((word) => !own.has(word));
  const stored = [...STORED_WORDS, ...ids].flatMap(([id, pattern]) => (pattern.test(text) ? [id] : []));
  return [...keys, ...stored, ...(text.match(SMALL) ?? []), ...(text.match(TWICE) ?? [])];
}

/** All that is on sheets and in their lists; the rule of a finding is named by its id there, for whoever looks it up. */
function onSheets(input: SheetInput): Said {
  return SHEETS.flatMap((sheet): Said => {
    if (sheet.kind === "drawing") return [];
    const pages = sheet.make(input).flatMap(({ marks }) => textsOf(marks).map(({ written }) => written));
    // The key of a change is for whoever compares two lists.
    const lists = (sheet.tables?.(input) ?? []).flatMap(({ columns, rows }) => {
      const last = columns.length - 1;
      const hasKey = sheet.kind === "scope" && columns[last]?.head === "Key";
      return rows.flatMap((row) => (hasKey ? row.slice(0, last) : row)).filter((one) => typeof one === "string");
    });
    return [...pages, ...lists].map((text) => [`sheet ${sheet.kind}`, text] as const);
  });
}

/** In a narrow column the id of a rule is in pieces. */
const RULE_IDS = rules.map(({ id }) => `${id}, draft rule`);
const isRuleId = (text: string): boolean => RULE_IDS.some((id) => id.includes(text));

function wrongInDrawing(name: string, project: Project): readonly string[] {
  const [ids, own] = [new Set<string>(), new Set<string>()];
  standingIn(project, ids, own);
  const ofThings = [...ids].filter((id) => !own.has(id) && /[-\d]/.test(id)).map((id) => [id, asWord(id)] as const);
  const said = [
    ...findingsIn(name, project).said,
    ...proofsIn(name, project),
    ...energisedIn(name, project),
    ...statesOf(project).flatMap((state) => onSheets(inputOf(project, { state }))),
  ];
  return said
    .filter(([, text]) => !isRuleId(text))
    .flatMap(([where, text]) => wrongIn(text, own, ofThings).map((word) => `${word} | ${where} | ${name} | ${text}`));
}

test("what is looked for is found", () => {
  const ids = [["box-B1", asWord("box-B1")]] as const;
  const wrong = (text: string): readonly string[] => wrongIn(text, new Set(["jA"]), ids);
  expect(wrong("C1 BK: freeLengthIn")).toEqual(["freeLengthIn"]);
  expect(wrong("led rating 150 W, gfci, weight lb, 20 lb")).toEqual(["led", "gfci", "lb"]);
  expect(wrong("by low-impedance-meter, with receptacle-tr-15 in box-B1")).toEqual([
    "receptacle-tr-15",
    "low-impedance-meter",
    "box-B1",
  ]);
  expect(wrong("jA joins in in B1, 4 mA")).toEqual(["in in"]);
  expect(wrong("A plug-in tester at the LED lamp of 12 AWG")).toEqual([]);
});

test("findings, proofs, what is energised, and all sheets of every drawing", () => {
  const wrong = [...drawings].flatMap(([name, draw]) => wrongInDrawing(name, draw()));
  expect([...new Set(wrong)].sort()).toEqual([]);
}, 120_000);

test("help pages, but for the names by which a value is amended", () => {
  for (const rule of rules) {
    const text = helpPage(rule)
      .replace(/`[^`]+`/g, "")
      .replace(/\{\w+\}/g, "0");
    expect(wrongIn(text, new Set(), []), rule.id).toEqual([]);
  }
});
