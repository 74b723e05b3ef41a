import { expect, test } from "vitest";
import { inSentence } from "../../shared-model/lib/in-sentence.ts";
import { LONGEST_TITLE, shorten } from "../../shared-model/lib/shorten.ts";
import { fixTogether } from "../../shared-model/rules/fix-parts.ts";
import { eitherOf } from "../../shared-model/rules/rule-parts.ts";
import { firstSentence } from "../../shared-model/sheets/lists/findings-words.ts";

test("a text that is too long ends after a word, with an ellipsis", () => {
  expect(shorten("Put one in each hole", 20)).toBe("Put one in each hole");
  expect(shorten("Put one in each hole.", 20)).toBe("Put one in each…");
  expect(shorten("Move R1, R2 and R3", 10)).toBe("Move R1…");
  expect(shorten("Move R1, R2 and R3", 9)).toBe("Move R1…");
  expect(shorten("Verschlechterungsverbot", 10)).toBe("Verschlec…");
  expect(shorten("an Überlandleitungsmast", 12)).toBe("an Überland…");
});

test("no character is cut in two", () => {
  for (let most = 2; most < 9; most += 1) expect(shorten("🔌🔌🔌🔌🔌", most)).not.toMatch(/\p{Surrogate}/u);
});

test("the step of a fix is called as its button, at a word where that is too long for a step", () => {
  const title = `Move ${Array.from({ length: 60 }, (_, i) => `C${i} BK`).join(", ")} to HL`;
  const fix = fixTogether(title, []);
  const { title: step } = fix.call.args as { readonly title: string };
  expect(fix.title).toBe(title);
  expect(step.length).toBeLessThanOrEqual(LONGEST_TITLE);
  expect(step).toMatch(/ (C\d+|BK)…$/);
  expect(title.startsWith(step.slice(0, -1))).toBe(true);
});

test("a title within a sentence keeps the letters of an abbreviation", () => {
  expect(["Rated LED load", "GFCI receptacle", "Luminaire, LED 9 W", "A lamp"].map(inSentence)).toEqual([
    "rated LED load",
    "GFCI receptacle",
    "luminaire, LED 9 W",
    "a lamp",
  ]);
});

test("alternatives are told with one word between the last two", () => {
  expect([[], [15], [15, 20], [15, 20, 30]].map(eitherOf)).toEqual(["", "15", "15 or 20", "15, 20 or 30"]);
});

test("the first sentence of a finding ends where it ends", () => {
  const whole = "TEST of G1 are 90 in. above the floor, 11 in. too high.";
  expect(firstSentence(`${whole} Move it.`)).toBe(whole);
  expect(firstSentence("It hangs on two No. 6 screws. Fit a box for it.")).toBe("It hangs on two No. 6 screws.");
  expect(firstSentence("It is 1-1/2 in. It needs more.")).toBe("It is 1-1/2 in.");
});
