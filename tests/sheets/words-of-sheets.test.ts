/**
 * Every word that a sheet says comes from a catalogue. In the language for tests each letter of a catalogue has an accent,
 * and here a person wrote in foreign letters: a plain word on paper stands in the code, or is the same in every language.
 */
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { SHEET_KINDS, type SheetInput, type SheetKind } from "../../shared-model/answers/sheet-input.ts";
import { pseudo } from "../../shared-model/lib/pseudo.ts";
import type { Box } from "../../shared-model/model/enclosure.ts";
import type { Installation, Project } from "../../shared-model/model/project.ts";
import type { ListTable } from "../../shared-model/sheets/tables/table.ts";

/** The core as it speaks in the language for tests: nothing that has words may be loaded before that is chosen. */
const loadCore = async () => ({
  ...(await import("./sheet-inputs.ts")),
  ...(await import("../../shared-model/analysis/sheet-input.ts")),
  ...(await import("../../shared-model/geometry/draw-box.ts")),
  ...(await import("../../shared-model/sheets/cards/card-facts.ts")),
  ...(await import("../../shared-model/sheets/cards/card-frame.ts")),
  ...(await import("../../shared-model/sheets/cards/card-lists.ts")),
  ...(await import("../../shared-model/sheets/page/number-pages.ts")),
  ...(await import("../../shared-model/sheets/registry.ts")),
  ...(await import("../../shared-model/sheets/text-boxes.ts")),
  ...(await import("../../shared-model/units/colour.ts")),
});

/** The whole core is loaded anew, twice: on a busy machine that takes a while. */
const PATIENCE = 60_000;

type Core = Awaited<ReturnType<typeof loadCore>>;
let english: Core;
let core: Core;

beforeAll(async () => {
  vi.resetModules();
  english = await loadCore();
  vi.resetModules();
  vi.stubGlobal("name", "test pseudo");
  core = await loadCore();
}, PATIENCE);

/** Files that share modules with this one get them in English. */
afterAll(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

/** Fields in which a person writes words of their own. */
const WRITTEN = new Set(
  "by caption instrumentId name note notes outside reason remark requiredBy tag title wording".split(" "),
);

/** What stands in a document for a far end that nobody has named: no word that a person wrote. */
const UNSAID = "not drawn";

const [LATIN, CYRILLIC] = ["a".charCodeAt(0), "а".charCodeAt(0)];

/** A text in letters of another alphabet, large and small. */
const foreign = (text: string): string =>
  text.replace(/[A-Za-z]/g, (letter) => {
    const other = String.fromCharCode(letter.toLowerCase().charCodeAt(0) - LATIN + CYRILLIC);
    return letter === letter.toLowerCase() ? other : other.toUpperCase();
  });

/** A document in which all that a person wrote is in foreign letters: no word of it can pass for one of the program. */
function inForeign<T>(value: T, key = "", owner: object = {}): T {
  if (typeof value === "string") {
    const isWritten = WRITTEN.has(key) || key === "directory" || (key === "item" && "test" in owner);
    return (isWritten && value !== UNSAID ? foreign(value) : value) as T;
  }
  if (Array.isArray(value)) return value.map((each: unknown) => inForeign(each, key, owner)) as T;
  if (typeof value !== "object" || value === null) return value;
  // The lines of a panel directory stand under the ids of its breakers.
  const keyOf = (field: string): string => (key === "directory" ? key : field);
  return Object.fromEntries(
    Object.entries(value).map(([field, each]) => [field, inForeign(each, keyOf(field), value)]),
  ) as T;
}

/** Labels that a code wants in these very words: 406.4(D)(2) of NFPA 70, as the checks of them say. */
const PRESCRIBED = ["No Equipment Ground", "GFCI Protected"];

/** As devices are marked in the market of these codes, and as the trade writes sizes. */
const MARKS = ["LINE", "LOAD", "AWG", "mm"];

/** Letters before the number of a hold point, and of a test at commissioning. */
const NUMBERED = ["HP", "CM"];

/** Words of two letters or more without an accent on any: paper has none for a few letters, but they make no word. */
const plainIn = (text: string): readonly string[] =>
  (text.match(/\p{L}{2,}/gu) ?? []).filter((word) => /^[A-Za-z]+$/.test(word));

/** What is the same in every language: sections of a code, ids of rules, codes of colours, marks and prescribed words. */
function sameEverywhere({ findings, couldNotTell, fill, protection, rules }: SheetInput): ReadonlySet<string> {
  const told = [...findings.asFound, ...(findings.proposed ?? [])];
  const untold = [...couldNotTell.asFound, ...(couldNotTell.proposed ?? [])];
  const ledgers = [...fill.asFound, ...(fill.proposed ?? [])].map(({ ledger }) => ledger);
  const sections = [
    rules.edition,
    rules.directory?.section ?? "",
    ...told.flatMap(({ section }) => section?.section ?? []),
    ...ledgers.flatMap(({ lines }) => lines.map(({ section }) => section)),
    ...protection.rows.flatMap(({ requiredBy = "" }) => (/\d/.test(requiredBy) ? [requiredBy] : [])),
  ];
  const ids = [...told, ...untold].map(({ rule }) => rule);
  const colours = core.COLOURS.map(core.colourCode);
  return new Set([...sections, ...ids, ...colours, ...MARKS, ...NUMBERED, ...PRESCRIBED].flatMap(plainIn));
}

/** Keys of changes, which the list of them shows for whoever compares two of them. */
const keysOf = ({ scope }: SheetInput): ReadonlySet<string> =>
  new Set(
    [...(scope?.boxes ?? []).flatMap(({ changes }) => changes), ...(scope?.elsewhere ?? [])].map(({ key }) => key),
  );

const textsOfTables = (tables: readonly ListTable[]): readonly string[] =>
  tables.flatMap(({ name, columns, rows }) => [
    name,
    ...columns.map(({ head }) => head),
    ...rows.flat().filter((cell) => typeof cell === "string"),
  ]);

/** All that a sheet says, on its pages and in its lists. */
function textsOfSheet(kind: SheetKind, input: SheetInput): readonly string[] {
  const sheet = core.findSheet(kind);
  if (sheet === undefined) throw new Error(`There is no sheet ${kind}.`);
  const pages = core.numberFolder([sheet.make(input)]);
  return [
    sheet.title,
    sheet.nothing(input) ?? "",
    ...pages.flatMap(({ title, marks }) => [title, ...core.textsOf(marks).map(({ written }) => written)]),
    ...textsOfTables(sheet.tables?.(input) ?? []),
  ];
}

/** Plain words of a sheet that are not the same in every language, each with the text in which it stands. */
function plainWords(texts: readonly string[], input: SheetInput): readonly string[] {
  const [known, keys] = [sameEverywhere(input), keysOf(input)];
  return texts
    .filter((text) => !keys.has(text))
    .flatMap((text) => plainIn(text).flatMap((word) => (known.has(word) ? [] : [`${word} in: ${text}`])));
}

/** What sheets are made of, in each state. */
const inputsOf = (project: Project, { statesOf, sheetInput } = core): readonly SheetInput[] =>
  statesOf(project).map((state) => sheetInput(project, { state, paper: "a3", date: "2026-05-04", fileName: "1" }));

/** A drawing shows a box from near only by itself. */
function withBoxes(whole: SheetInput): readonly SheetInput[] {
  const { asFound, proposed } = whole.project;
  const { enclosures } = (whole.state === "proposed" ? proposed : undefined) ?? asFound;
  return [whole, ...Object.values(enclosures).map(({ id }) => ({ ...whole, box: id }))];
}

test("the core speaks in the language for tests, and a word from elsewhere is found", () => {
  const project = inForeign(core.sampleProject("laundry-proposed.loadside"));
  expect(project.title).toMatch(/^[\P{L}\p{Script=Cyrillic}]+$/u);
  const [input] = inputsOf(project);
  if (input === undefined) throw new Error("There is no state.");
  const texts = textsOfSheet("make-up", input);
  expect(texts[0]).toMatch(/^\[[^A-Za-z]+\]$/);
  expect(plainWords(["[Ɓóx~~] B1, WH 12 AWG", "ţó~ the [þáñéļ~~~]"], input)).toEqual(["the in: ţó~ the [þáñéļ~~~]"]);
});

const SAMPLES = ["laundry-proposed.loadside", "two-wire-bedroom.loadside", "wrong-on-purpose.loadside"];

describe.each(SAMPLES)("%s", (name) => {
  let inputs: readonly SheetInput[];
  beforeAll(() => {
    inputs = inputsOf(inForeign(core.sampleProject(name)));
  }, PATIENCE);

  test.each(SHEET_KINDS)("%s says no word that stands in the code", (kind) => {
    const shown = kind === "drawing" ? inputs.flatMap(withBoxes) : inputs;
    const said = shown.flatMap((input) => plainWords(textsOfSheet(kind, input), input));
    expect([...new Set(said)]).toEqual([]);
  });
});

/** Plain letters by the accented ones of the language for tests. */
const PLAIN = new Map(
  [..."ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"].map((letter) => [pseudo(letter)[1] ?? "", letter]),
);

/** A text of the language for tests in English again. */
const inEnglish = (text: string): string =>
  [...text.replace(/[[\]~]/g, "")].map((letter) => PLAIN.get(letter) ?? letter).join("");

/** What the head of a card says of a box, and its hold points without the ends of their lines. */
function factsOfBox(input: SheetInput, installation: Installation, box: Box, spoken: Core): readonly unknown[] {
  const { marks } = spoken.holdPointMarks(input, installation, box, 190);
  const holds = spoken.textsOf(marks).map(({ written }) => written);
  return [spoken.makeOf(installation, box), spoken.fillLine(input, box), holds.join(" ")];
}

/** What is told in words of a drawing before it is set on pages: lists, boxes seen from near, facts of cards. */
function told(project: Project, spoken: Core): readonly string[] {
  return inputsOf(project, spoken).flatMap((input) => {
    const { asFound, proposed } = project;
    const installation = (input.state === "proposed" ? proposed : undefined) ?? asFound;
    const boxes = Object.values(installation.enclosures);
    return [
      ...spoken.SHEETS.flatMap(({ tables, nothing }) => [
        nothing(input) ?? "",
        ...textsOfTables(tables?.(input) ?? []),
      ]),
      ...boxes.flatMap((box) => {
        const { header, sheaths, splices, devices, rings } = spoken.boxDrawing(project, installation, box.id);
        const facts = [
          spoken.breakersOf(input, installation, box),
          spoken.cardLists(installation, box, input.shownRoles[box.id]),
          ...(box.kind === "box" ? factsOfBox(input, installation, box, spoken) : []),
        ];
        return [
          header.note,
          ...sheaths.flatMap(({ captionTitle, captionNote }) => [captionTitle, captionNote]),
          ...[...splices, ...devices].map(({ caption }) => caption),
          ...rings.map(({ text }) => text),
          ...facts.map((fact) => JSON.stringify(fact) ?? ""),
        ];
      }),
    ];
  });
}

/** Longer words are cut off where there is no room for them; brackets stand before what would have a capital. */
function isSame(one: string, other: string): boolean {
  const [a, b] = [one.toLowerCase(), other.toLowerCase()];
  return a.endsWith("…") ? b.startsWith(a.slice(0, -1).trimEnd()) : a === b;
}

test.each(SAMPLES)("what is told of %s does not hang on English words", (name) => {
  const project = inForeign(core.sampleProject(name));
  const [asItIs, inTests] = [english, core].map((spoken) => told(project, spoken).map(inEnglish));
  if (asItIs === undefined || inTests === undefined) throw new Error("There are two languages.");
  expect(asItIs.length).toBeGreaterThan(100);
  expect(inTests).toHaveLength(asItIs.length);
  const differing = asItIs.flatMap((text, i) => (isSame(inTests[i] ?? "", text) ? [] : [[text, inTests[i]]]));
  expect(differing).toEqual([]);
});
