import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { deviceTypes } from "../../shared-model/catalog/device-types.ts";
import { GLYPH_LINES, type GlyphLine } from "../../shared-model/sheets/draw/glyph-lines.ts";

const FILE = "shared-model/sheets/draw/glyph-lines.ts";

const numberOf = (element: string, name: string): number =>
  Number(new RegExp(` ${name}="([^"]*)"`).exec(element)?.[1] ?? 0);

function pathOf(element: string): string {
  if (element.startsWith("<path")) return / d="([^"]*)"/.exec(element)?.[1] ?? "";
  if (element.startsWith("<circle")) {
    const [x, y, r] = [numberOf(element, "cx"), numberOf(element, "cy"), numberOf(element, "r")];
    return `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`;
  }
  const [x, y, w, h, r] = ["x", "y", "width", "height", "rx"].map((name) => numberOf(element, name)) as [
    number,
    number,
    number,
    number,
    number,
  ];
  const arc = (dx: number, dy: number): string => (r === 0 ? "" : `a${r} ${r} 0 0 1 ${dx} ${dy}`);
  return `M${x + r} ${y}h${w - 2 * r}${arc(r, r)}v${h - 2 * r}${arc(-r, r)}h${-(w - 2 * r)}${arc(-r, -r)}v${-(h - 2 * r)}${arc(r, -r)}Z`;
}

/** Glyphs of devices as the window has them; signs with letters or turned parts are drawn elsewhere. */
function glyphsOfWindow(): Readonly<Record<string, readonly GlyphLine[]>> {
  const sheet = readFileSync("renderer/ui/glyphs.svg", "utf8");
  const found: Record<string, readonly GlyphLine[]> = {};
  for (const [whole, id = ""] of sheet.matchAll(/<symbol id="([^"]+)".*?<\/symbol>/gs)) {
    if (/<text|<use|transform|dasharray/.test(whole)) continue;
    found[id] = [...whole.matchAll(/<(?:path|circle|rect)[^>]*>/g)].map(([element]) => {
      const width = / stroke-width="([^"]*)"/.exec(element)?.[1];
      return {
        d: pathOf(element),
        ...(/ fill="currentColor"/.test(element) && { filled: true as const }),
        ...(width !== undefined && { width: Number(width) }),
      };
    });
  }
  return found;
}

test("glyphs on paper are those of the window (LOADSIDE_WRITE=1 writes them anew)", () => {
  const glyphs = glyphsOfWindow();
  if (process.env.LOADSIDE_WRITE === "1") {
    writeFileSync(
      FILE,
      `${HEAD}\nexport const GLYPH_LINES: Readonly<Record<string, readonly GlyphLine[]>> = ${JSON.stringify(glyphs)};\n`,
    );
    execFileSync("npx", ["biome", "check", "--write", FILE]);
  } else expect(GLYPH_LINES).toEqual(glyphs);
});

test("every type of device has a glyph on paper", () => {
  for (const { glyph } of deviceTypes) expect(GLYPH_LINES[glyph], glyph).toBeDefined();
});

const HEAD = `/** One line or filled outline of a glyph, in a square of 24; lines are 1.6 wide where nothing else is told. */
export interface GlyphLine {
  readonly d: string;
  readonly filled?: true;
  readonly width?: number;
}

/** Glyphs of devices as path data: written from renderer/ui/glyphs.svg by tests/sheets/glyph-lines.test.ts. */`;
