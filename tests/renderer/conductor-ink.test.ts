import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { CONDUCTOR_MARKS } from "../../shared-model/geometry/conductor-marks.ts";
import { COLOURS, type Colour, colourCode, colourKey } from "../../shared-model/units/colour.ts";

type Rgb = readonly [number, number, number];
type Vision = (colour: Rgb) => Rgb;

const css = readFileSync(new URL("../../renderer/ui/tokens.css", import.meta.url), "utf8");
const themes = { light: tokensOf('[data-theme="light"]'), dark: tokensOf('[data-theme="dark"]') };

function tokensOf(selector: string): ReadonlyMap<string, string> {
  const from = css.indexOf(selector);
  const block = css.slice(from, css.indexOf("\n}", from));
  return new Map([...block.matchAll(/--([a-z-]+): (#[0-9a-f]{6})/g)].map(([, name = "", value = ""]) => [name, value]));
}

/** Linear light of a token. */
function colourOf(tokens: ReadonlyMap<string, string>, name: string): Rgb {
  const text = tokens.get(name);
  if (text === undefined) throw new Error(`There is no token --${name}.`);
  const channel = (at: number): number => {
    const value = Number.parseInt(text.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return [channel(1), channel(3), channel(5)];
}

const times = (rows: readonly Rgb[]): Vision => {
  const row = (at: number, [r, g, b]: Rgb): number => {
    const [x = 0, y = 0, z = 0] = rows[at] ?? [];
    return Math.min(1, Math.max(0, x * r + y * g + z * b));
  };
  return (colour) => [row(0, colour), row(1, colour), row(2, colour)];
};

/**
 * Full-strength simulations of Machado, Oliveira and Fernandes, "A physiologically-based model for simulation of color
 * vision deficiency", IEEE TVCG 15 (2009), on linear light; matrices from memory. Grey: luminance of IEC 61966-2-1.
 */
const VISIONS: Readonly<Record<string, Vision>> = {
  usual: (colour) => colour,
  grey: times([
    [0.2126, 0.7152, 0.0722],
    [0.2126, 0.7152, 0.0722],
    [0.2126, 0.7152, 0.0722],
  ]),
  protan: times([
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ]),
  deutan: times([
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ]),
  tritan: times([
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ]),
};

/** CIE L*a*b*, D65. */
function lab([r, g, b]: Rgb): Rgb {
  const f = (t: number): number => (t > 0.008856 ? Math.cbrt(t) : 7.787 * t + 16 / 116);
  const x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
  const y = f(0.2126 * r + 0.7152 * g + 0.0722 * b);
  const z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

const apart = (a: Rgb, b: Rgb): number => {
  const [p, q] = [lab(a), lab(b)];
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
};

/** Judgement of ours: difference of two cores, or casings, side by side, and of a mark on its core, that nobody overlooks. */
const TOLD = { core: 20, casing: 40, mark: 30 } as const;

/** How a conductor is told from another one, letters apart; undefined where it is not. */
function told(tokens: ReadonlyMap<string, string>, see: Vision, a: Colour, b: Colour): string | undefined {
  const ink = (colour: Colour, part: string): Rgb => see(colourOf(tokens, colourKey(colour) + part));
  if (apart(ink(a, ""), ink(b, "")) >= TOLD.core) return "core";
  if (apart(ink(a, "-case"), ink(b, "-case")) >= TOLD.casing) return "casing";
  const shows = (colour: Colour): boolean =>
    CONDUCTOR_MARKS[colour] !== undefined && apart(ink(colour, "-mark"), ink(colour, "")) >= TOLD.mark;
  const [markA, markB] = [shows(a) ? CONDUCTOR_MARKS[a] : undefined, shows(b) ? CONDUCTOR_MARKS[b] : undefined];
  return JSON.stringify(markA) === JSON.stringify(markB) ? undefined : "mark";
}

for (const [theme, tokens] of Object.entries(themes))
  test(`no two kinds of conductors look alike in the ${theme} theme, in grey and to people who see fewer colours`, () => {
    for (const [name, see] of Object.entries(VISIONS))
      for (const [i, a] of COLOURS.entries())
        for (const b of COLOURS.slice(i + 1)) expect(told(tokens, see, a, b), `${name}: ${a} and ${b}`).toBeDefined();
  });

test("in one ink the marks alone tell all colours with a mark apart, and letters tell every one", () => {
  const marks = COLOURS.flatMap((colour) => {
    const mark = CONDUCTOR_MARKS[colour];
    return mark === undefined ? [] : [JSON.stringify(mark)];
  });
  expect(new Set(marks).size).toBe(marks.length);
  expect(new Set(COLOURS.map(colourCode)).size).toBe(COLOURS.length);
});

test("every conductor stands out from the paper by its casing or its core", () => {
  for (const tokens of Object.values(themes))
    for (const colour of COLOURS) {
      const paper = colourOf(tokens, "paper");
      const [core, casing] = ["", "-case"].map((part) => apart(colourOf(tokens, colourKey(colour) + part), paper));
      expect(Math.max(core ?? 0, casing ?? 0), colour).toBeGreaterThan(TOLD.mark);
    }
});
