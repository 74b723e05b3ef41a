/**
 * In the language for tests every word of a catalogue bears accents: a plain word in what is said of a drawing is one
 * that a translation could not reach, unless it is the drawing's own.
 */
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import type { Project } from "../../shared-model/model/project.ts";

type Core = typeof import("./said-of-drawings.ts");

async function coreIn(language: "en" | "pseudo"): Promise<Core> {
  vi.resetModules();
  vi.stubGlobal("name", language === "pseudo" ? "test pseudo" : "test");
  return import("./said-of-drawings.ts");
}

let english: Core;
let other: Core;
beforeAll(async () => {
  english = await coreIn("en");
  other = await coreIn("pseudo");
}, 120_000);
afterAll(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

/** Letters that are the same in every language: units, colours by IEC 60757, names of the tests of a proof. */
const SIGNS = new Set("A V W mA BK WH RD BU YE BN OG GY VT PK GN P".split(" "));

/** Labels that the code prescribes in these words: NFPA 70, 406.4(D)(2). */
const PRESCRIBED = ["No Equipment Ground", "GFCI Protected"];

/** What a person wrote in a drawing: names, labels, where a cable leads, reasons. */
function ownTexts(project: Project): readonly string[] {
  const found = new Set<string>();
  const collect = (value: unknown, key: string): void => {
    if (typeof value === "string") {
      if (WRITTEN.has(key)) found.add(value);
    } else if (typeof value === "object" && value !== null)
      for (const [field, one] of Object.entries(value)) collect(one, Array.isArray(value) ? key : field);
  };
  collect(project, "");
  // The directory of a panel is a table of lines.
  for (const { directory } of [project.asFound, project.proposed].flatMap((one) => one ?? []))
    for (const line of Object.values(directory)) found.add(line);
  return [...found].filter((text) => /[A-Za-z]/.test(text));
}

const WRITTEN = new Set(["name", "title", "outside", "wording", "reason", "by", "note", "route", "text"]);

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

/** Words without accents in a text that are neither the drawing's own nor signs. @param own The longest first. */
function plainWords(text: string, own: readonly string[]): readonly string[] {
  let rest = text;
  for (const one of own)
    if (rest.includes(one)) rest = rest.replace(new RegExp(`(?<![\\p{L}\\d])${escaped(one)}(?![\\p{L}~])`, "gu"), "·");
  return (rest.match(/(?<!\p{L})[A-Za-z]+(?![\p{L}~])/gu) ?? []).filter((word) => !SIGNS.has(word));
}

/** Each plain word with where it stands first. */
function leaks(core: Core, read: (name: string, project: Project) => Core["helpSaid"]) {
  const found = new Map<string, string>();
  const same = [...core.ruleIds.map((id) => `"${id}"`), ...PRESCRIBED, ...core.marks];
  let texts = 0;
  for (const [name, draw] of core.drawings) {
    const project = draw();
    const own = [...same, ...ownTexts(project)].sort((one, two) => two.length - one.length);
    for (const [where, text] of read(name, project)) {
      texts += 1;
      for (const word of plainWords(text, own))
        if (!found.has(`${where} ${word}`)) found.set(`${where} ${word}`, `${word} | ${where} | ${name} | ${text}`);
    }
  }
  return { leaks: [...found.values()].sort(), texts };
}

describe("no word in a sentence about a drawing stands outside a catalogue", () => {
  test("findings, their fixes and offers, and what cannot be told", () => {
    const { leaks: found, texts } = leaks(other, (name, project) => other.findingsIn(name, project).said);
    expect(texts).toBeGreaterThan(500);
    expect(found).toEqual([]);
  });

  test("why an outlet is protected or not", () => {
    const { leaks: found, texts } = leaks(other, other.proofsIn);
    expect(texts).toBeGreaterThan(100);
    expect(found).toEqual([]);
  });

  test("what stands beside a drawing that is energised", () => {
    const { leaks: found, texts } = leaks(other, other.energisedIn);
    expect(texts).toBeGreaterThan(500);
    expect(found).toEqual([]);
  });
});

test("a drawing is judged alike in every language", () => {
  const judged = (core: Core): readonly string[] =>
    [...core.drawings].flatMap(([name, draw]) => {
      const { findings, open } = core.findingsIn(name, draw());
      const told = findings.map(({ key, severity, state, fix, offers = [], folded }) =>
        [name, state, key, severity, fix?.call.command, offers.map(({ call }) => call.command), folded].join(" "),
      );
      return [...told, ...open.map((key) => `${name} cannot tell ${key}`)].sort();
    });
  expect(judged(other)).toEqual(judged(english));
});

test("every rule is broken in some drawing", () => {
  const broken = new Set(
    [...other.drawings].flatMap(([name, draw]) => other.findingsIn(name, draw()).findings.map(({ rule }) => rule)),
  );
  expect(other.ruleIds.filter((id) => !broken.has(id))).toEqual([]);
});

test("what rules say of themselves, and what stands beside their examples", () => {
  expect(other.helpSaid.length).toBeGreaterThan(5 * other.ruleIds.length);
  const own = [...PRESCRIBED, ...other.marks].sort((one, two) => two.length - one.length);
  expect(other.helpSaid.flatMap(([where, text]) => plainWords(text, own).map((word) => `${word} | ${where}`))).toEqual(
    [],
  );
});

test("what is looked for is found", () => {
  const own = ["Kitchen", "B1"];
  expect(plainWords("[B1 ĥáš~ ţóó~ ṁáñý~ kitchen 120 V]", own)).toEqual(["kitchen"]);
  expect(plainWords("[B1 ĥáš~]s", own)).toEqual(["s"]);
  expect(plainWords("[Kitchen] ñ Kitchens", own)).toEqual(["Kitchens"]);
});
