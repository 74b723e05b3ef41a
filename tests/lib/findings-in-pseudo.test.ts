/** What the rules say in the language for tests: the same of the same things, and nothing of it is left in English. */
import { beforeAll, expect, test, vi } from "vitest";
import type { ScopeAnswers } from "../../shared-model/answers/finding.ts";

/** Modules of the core, loaded anew: their language is chosen by then. */
async function loadCore() {
  vi.resetModules();
  const { ruleExamples } = await import("../builders/rule-examples/index.ts");
  const { checkDocument } = await import("../rules/check-drawing.ts");
  const { rules } = await import("../../shared-model/rules/registry.ts");
  const answers = Object.entries(ruleExamples).flatMap(([rule, { wrong, right }]) =>
    [wrong(), right()].flatMap((drawn) => {
      // As proposed, since fixes are for that state; what is new there is told as well.
      const project = drawn.project();
      const proposed = { ...project, proposed: project.proposed ?? project.asFound };
      const names = new Set(namesIn(proposed));
      return saidIn(checkDocument(proposed, "proposed")).map((text) => ({ rule, text, names }));
    }),
  );
  return { answers, rules };
}

let english: Awaited<ReturnType<typeof loadCore>>;
let pseudo: Awaited<ReturnType<typeof loadCore>>;

beforeAll(async () => {
  english = await loadCore();
  vi.stubGlobal("name", "words of the rules pseudo");
  pseudo = await loadCore();
  vi.unstubAllGlobals();
}, 120_000);

/** A word as English writes it. Letter codes and marks are capitals, but for a conductor without insulation. */
const PLAIN = /(?!\bbare\b)\b[a-z]{2,}/g;
/** Names, letter codes and figures: what they begin with is a capital or a figure. */
const KEPT = /\b[A-Z]{1,4}\d+\w*|\d+(?:[.,/]\d+)*/g;

/** Labels that the code prescribes in these words. */
const PRESCRIBED = /“(No Equipment Ground|GFCI Protected)”/g;

/** Every word of a name or a line that a person wrote. */
function namesIn(value: unknown, key = ""): readonly string[] {
  if (typeof value === "string") return /^(name|title|by)$/.test(key) ? (value.match(PLAIN) ?? []) : [];
  if (typeof value !== "object" || value === null) return [];
  const lines = key === "directory" ? Object.values(value as Record<string, string>) : [];
  return [
    ...lines.flatMap((line) => line.match(PLAIN) ?? []),
    ...Object.entries(value).flatMap(([inner, one]) => namesIn(one, inner)),
  ];
}

/** All that a person reads of the answers. */
const saidIn = ({ findings, couldNotTell }: ScopeAnswers): readonly string[] =>
  [
    ...findings.flatMap(({ message, section, fix, offers }) => [
      message,
      section?.section ?? "",
      ...[fix, ...(offers ?? [])].map((one) => one?.title ?? ""),
    ]),
    ...couldNotTell.flatMap(({ message, missing, toDo }) => [message, missing, toDo ?? ""]),
  ].filter((text) => text !== "");

test("no English is left in what the drawings of the help pages are told", () => {
  const isLeft = (text: string, names: ReadonlySet<string>): boolean =>
    (text.replace(PRESCRIBED, "").match(PLAIN) ?? []).some((word) => !names.has(word));
  expect(english.answers.filter(({ text, names }) => isLeft(text, names)).length).toBeGreaterThan(150);
  expect(pseudo.answers.filter(({ text, names }) => isLeft(text, names)).map(({ rule, text }) => [rule, text])).toEqual(
    [],
  );
});

test("names and figures are the same in both languages", () => {
  const kept = (all: typeof english.answers) =>
    all.map(({ rule, text }) => `${rule}: ${[...(text.match(KEPT) ?? [])].sort().join(" ")}`);
  expect(kept(pseudo.answers)).toEqual(kept(english.answers));
});

test("a rule has its words in brackets once, not twice", () => {
  const texts = pseudo.rules.flatMap(({ summary, why, messages }) => [
    summary,
    why,
    ...Object.values<string>(messages),
  ]);
  expect(texts.filter((text) => !/^\[[^[].*[^\]]\]$/s.test(text))).toEqual([]);
});
