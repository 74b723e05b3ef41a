/** What commands say in the language for tests: nothing of it is left in English. */
import { beforeAll, expect, test, vi } from "vitest";

async function loadCommands() {
  vi.resetModules();
  return import("./said-of-commands.ts");
}

type Loaded = Awaited<ReturnType<typeof loadCommands>>;
type Said = ReturnType<Loaded["walk"]>;

/** Enough for every command to be done and refused. */
const ROUNDS = 20;
let english: Loaded;
let pseudo: Loaded;
let inEnglish: Said;
let inPseudo: Said;

beforeAll(async () => {
  english = await loadCommands();
  inEnglish = english.walk(1, 3);
  vi.stubGlobal("name", "words of commands pseudo");
  pseudo = await loadCommands();
  vi.unstubAllGlobals();
  inPseudo = pseudo.walk(1, ROUNDS);
}, 120_000);

/** A word as English writes it. Letter codes and marks are capitals, but for a conductor without insulation. */
const PLAIN = /(?!\bbare\b)\b[A-Za-z]*[a-z][A-Za-z]*\b/g;

const plainIn = (text: string, names: ReadonlySet<string> = new Set()): readonly string[] =>
  (text.match(PLAIN) ?? []).filter((word) => word.length > 1 && !names.has(word));

const leftIn = (said: Said) =>
  said
    .filter(({ text, names, ids }) => {
      if (plainIn(text).length === 0) return false;
      const left = ids().reduce((rest, id) => rest.replaceAll(id, ""), text);
      return plainIn(left, names()).length > 0;
    })
    .map(({ command, what, text }) => [command, what, text]);

const commandsThat = (said: Said, what: "step" | "refusal") =>
  [...new Set(said.flatMap((one) => (one.what === what ? [one.command] : [])))].sort();

test("the walk does every command, and is refused by each that refuses anything", () => {
  expect(commandsThat(inPseudo, "step")).toEqual(pseudo.commandIds.toSorted());
  // An edition that there is can always be set; commands in commands are asked for below.
  const never = ["set-edition"];
  expect([...new Set([...commandsThat(inPseudo, "refusal"), "run-together"])].sort()).toEqual(
    pseudo.commandIds.filter((id) => !never.includes(id)).sort(),
  );
});

test("no English is left in the names of steps and in refusals", () => {
  expect(inEnglish.filter(({ text }) => plainIn(text).length > 1).length).toBeGreaterThan(inEnglish.length / 2);
  expect(leftIn(inPseudo)).toEqual([]);
  expect(plainIn(english.nested?.message ?? "").length).toBeGreaterThan(10);
  expect(plainIn(pseudo.nested?.message ?? "")).toEqual([]);
});

test("no English is left in what is wrong with arguments, but the names of their parts", () => {
  const left = (said: readonly string[]) =>
    said.filter((text) => plainIn(text.replace(/\bargs[.\w]*/g, "")).length > 0);
  expect(english.malformed.length).toBeGreaterThan(100);
  expect(left(english.malformed)).toEqual(english.malformed);
  expect(left(pseudo.malformed)).toEqual([]);
});

test("no English is left in titles of commands and keys, in fields and in what they take", () => {
  const left = (listed: typeof english.listed) => listed.filter(([, text]) => plainIn(text).length > 0);
  expect(left(english.listed).length).toBeGreaterThan(400);
  expect(left(pseudo.listed)).toEqual([]);
});
