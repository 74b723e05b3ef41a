import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { Weight } from "../../shared-model/sheets/display-list.ts";
import { TABULAR_FIGURE } from "../../shared-model/sheets/page/face-widths.ts";
import { measure } from "../../shared-model/sheets/page/measure.ts";
import { readFace } from "./face-files.ts";

const WEIGHTS: readonly Weight[] = [400, 600, 700];
const FILE = "shared-model/sheets/page/face-widths.ts";

/** Characters that a line of text is made of: no controls, no marks that stand over another letter. */
const isWanted = (code: number): boolean => code < 0xfffe && !/[\p{C}\p{M}]/u.test(String.fromCodePoint(code));

/** The table as the font files have it: each character with its widths in the three cuts, in 1/1000 em. */
function widthsOfFiles(): ReadonlyMap<string, readonly number[]> {
  const found = new Map<string, readonly number[]>();
  for (const subset of ["latin", "latin-ext"] as const) {
    const faces = WEIGHTS.map((weight) => readFace(subset, weight));
    for (const code of faces[0]?.characterSet ?? []) {
      const character = String.fromCodePoint(code);
      if (!isWanted(code) || found.has(character)) continue;
      found.set(
        character,
        faces.map((face) => face.layout(character).advanceWidth),
      );
    }
  }
  return found;
}

test("the table of widths is that of the font files", () => {
  const widths = widthsOfFiles();
  if (process.env.LOADSIDE_WRITE === "1") {
    writeFileSync(FILE, asSource(widths));
    execFileSync("npx", ["biome", "check", "--write", FILE]);
  }
  const off = [...widths].flatMap(([character, each]) =>
    WEIGHTS.filter((weight, i) => Math.abs(measure(character, 1000, weight) - (each[i] ?? 0)) > 0.01).map(
      (weight) => `${character} ${weight}`,
    ),
  );
  expect(off).toEqual([]);
  expect(widths.size).toBeGreaterThan(300);
});

test("figures of one width are as wide as the font's own", () => {
  for (const weight of WEIGHTS)
    for (const figure of "0123456789")
      expect(readFace("latin", weight).layout(figure, ["tnum"]).advanceWidth).toBe(TABULAR_FIGURE);
});

test("what a writer sets is no wider than what was measured, and hardly narrower", () => {
  const words = readFileSync("README.md", "utf8")
    .split(/\s+/)
    .filter((word) => /^[\x21-\x7e]+$/.test(word));
  expect(words.length).toBeGreaterThan(500);
  for (const weight of WEIGHTS) {
    const face = readFace("latin", weight);
    for (let i = 0; i < words.length; i += 6) {
      const line = words.slice(i, i + 6).join(" ");
      const set = face.layout(line).advanceWidth;
      const measured = measure(line, 1000, weight);
      expect(set, line).toBeLessThanOrEqual(measured * 1.01);
      expect(set, line).toBeGreaterThan(measured * 0.93);
    }
  }
});

function asSource(widths: ReadonlyMap<string, readonly number[]>): string {
  const sorted = [...widths].sort(([a], [b]) => (a.codePointAt(0) ?? 0) - (b.codePointAt(0) ?? 0));
  const column = (i: number): string => JSON.stringify(sorted.map(([, each]) => each[i]));
  const parts =
    sorted
      .map(([character]) => character)
      .join("")
      .match(/.{1,90}/gsu) ?? [];
  return `${SOURCE_HEAD}
export const FACE_CHARACTERS: string = [${parts.map((part) => JSON.stringify(part)).join(",")}].join("");

/** Those of them that stand in the file latin-ext alone. */
export const EXTENDED_CHARACTERS: string = ${JSON.stringify(extendedOf(sorted.map(([character]) => character)))};

export const FACE_WIDTHS: Readonly<Record<Weight, readonly number[]>> = {
  400: ${column(0)},
  600: ${column(1)},
  700: ${column(2)},
};

/** Every figure set in one width, in all cuts. */
export const TABULAR_FIGURE = ${readFace("latin", 400).layout("0", ["tnum"]).advanceWidth};
`;
}

function extendedOf(characters: readonly string[]): string {
  const inLatin = new Set(readFace("latin", 400).characterSet);
  return characters.filter((character) => !inLatin.has(character.codePointAt(0) ?? 0)).join("");
}

const SOURCE_HEAD = `import type { Weight } from "../display-list.ts";

/**
 * Advance widths of the static cuts of Atkinson Hyperlegible Next in 1/1000 em, without kerning: read from the files
 * latin and latin-ext of \`@fontsource/atkinson-hyperlegible-next\` 5.3.0 by tests/sheets/face-widths.test.ts, which writes
 * this file. Characters in the order of their code points, the widths of each cut in the same order.
 */`;
