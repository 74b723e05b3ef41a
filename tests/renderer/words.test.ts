import { expect, test } from "vitest";
import { inPseudo, pseudo } from "../../shared-model/lib/pseudo.ts";

test("words of the language for tests are accented, longer and in brackets", () => {
  expect(pseudo("Open the box")).toBe("[Óþéñ~~ ţĥé~ ƀóẋ~]");
});

test("what a sentence is about stays as it is", () => {
  const words = inPseudo({ named: (name: string, n: number) => `Box ${name} has ${n} ends` });
  const { named } = words as { readonly named: (name: string, n: number) => string };
  expect(named("B12", 3)).toBe("[Ɓóẋ~~ B12 ĥáš~ 3 éñðš~]");
});
