import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { buildLoadside, LAUNDRY, loadside } from "./run-loadside.ts";

const folder = mkdtempSync(join(tmpdir(), "loadside-hostile-"));
const laundry = readFileSync(LAUNDRY, "utf8");
const within = (json: string): string => laundry.replace('"notes":', `"later": ${json}, "notes":`);

/** No JSON, or too much of it, whatever it was to be. */
const NOTHING: Readonly<Record<string, string | Uint8Array>> = {
  empty: "",
  "byte order mark alone": "\ufeff",
  spaces: " \n\n ",
  "random bytes": Uint8Array.from({ length: 5000 }, (_, index) => (index * 7919 + 251) % 256),
  words: "hello\nworld\n",
  "UTF-16": Buffer.from(laundry, "utf16le"),
  "cut short": laundry.slice(0, 20_000),
  "200,000 lists deep": "[".repeat(200_000) + "]".repeat(200_000),
  "100 MB of spaces": Buffer.alloc(100_000_000, " "),
  "100 MB in one text": `{"a":"${"x".repeat(100_000_000)}"}`,
  "60 MB of lists": `[${"[],".repeat(20_000_000)}1]`,
};

/** Documents that one thing is wrong with. */
const DOCUMENTS: Readonly<Record<string, string>> = {
  "200,000 deep inside": within("[".repeat(200_000) + "]".repeat(200_000)),
  "200,000 objects deep inside": within(`${'{"a":'.repeat(200_000)}1${"}".repeat(200_000)}`),
  "a prototype key": within('{"__proto__": {"polluted": true}}'),
  "a prototype key of a table": laundry.replace('"directory": {', '"directory": {"__proto__": "x", '),
  "an infinite number": within("1e999"),
  "half of a character": within('"\\ud800"'),
  "a key twice": laundry.replace('"notes":', '"notes": "", "notes":'),
  "an id twice": laundry.replaceAll("device-R2", "device-R1"),
  "a dangling splice": laundry.replace('"splice": "splice-X"', '"splice": "splice-gone"'),
  "a dangling enclosure": laundry.replace('"enclosure": "box-B1"', '"enclosure": "box-gone"'),
  "a name of every object": laundry.replace('"splice": "splice-X"', '"splice": "toString"'),
  "60 MB of numbers": within(`[${"1,".repeat(30_000_000)}1]`),
};

const MANY: ReadonlySet<string> = new Set(["a dangling enclosure", "an id twice"]);
const ONE_LINE = /^[^\n]+: [^\n]+[.]\n$/;

beforeAll(() => {
  buildLoadside();
  mkdirSync(join(folder, "a folder"));
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const HOSTILE: Readonly<Record<string, string | Uint8Array>> = { ...NOTHING, ...DOCUMENTS };

describe("each is refused within seconds: clear lines, status 2, no stack", () => {
  const cases = [
    ...Object.keys(NOTHING).flatMap((name) => [
      ["check", name],
      ["fill", name],
    ]),
    ...Object.keys(DOCUMENTS).map((name) => ["check", name]),
  ] as const;
  test.each(cases)("%s: %s", (verb = "", name = "") => {
    const file = join(folder, `${name}.loadside`);
    writeFileSync(file, HOSTILE[name] ?? "");
    const started = performance.now();
    const { status, stdout, stderr } = loadside([verb, file]);
    expect(performance.now() - started).toBeLessThan(15_000);
    rmSync(file);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).not.toMatch(/^\s+at |node:|undefined|\[object/m);
    const lines = stderr.trimEnd().split("\n");
    for (const line of lines) expect(line.startsWith(`${file}: `) && line.endsWith(".")).toBe(true);
    // A dangling enclosure leaves the ends in it without a home, and two ids in one place touch whatever named them.
    if (!MANY.has(name)) expect(lines).toHaveLength(1);
  });

  test("an endless file, a folder, a missing file, a file in a file, a name with a line end", () => {
    writeFileSync(join(folder, "file"), "x");
    for (const file of ["/dev/zero", join(folder, "a folder"), "no such file", join(folder, "file", "x"), "a\nb"]) {
      const { status, stdout, stderr } = loadside(["check", file]);
      expect([file, status, stdout]).toEqual([file, 2, ""]);
      expect(stderr).toMatch(ONE_LINE);
    }
  });

  test("the same through standard input", () => {
    for (const name of ["empty", "words", "200,000 deep inside", "100 MB of spaces"]) {
      const { status, stdout, stderr } = loadside(["check", "-"], { input: Buffer.from(HOSTILE[name] ?? "") });
      expect([name, status, stdout]).toEqual([name, 2, ""]);
      expect(stderr).toMatch(/^standard input: [^\n]+[.]\n$/);
    }
  });
});

test.each([
  [
    "a dangling splice",
    /: \/asFound\/enclosures\/box-B1\/places\/[^:]+: It names splice "splice-gone", which is not in B1\. Name one that exists/,
  ],
  ["a prototype key", /: \/later\/__proto__: The key "__proto__" is reserved/],
  ["an infinite number", /: \/later: The number 1e999 is too large/],
  ["words", /: Line 1, column 1 is not JSON: /],
  ["UTF-16", /: It is not a text in UTF-8\./],
] as const)("%s: the line names the place and the remedy", (name, line) => {
  const { stderr } = loadside(["check", "-"], { input: Buffer.from(HOSTILE[name] ?? "") });
  expect(stderr).toMatch(line);
});

describe("usage", () => {
  test.each([
    [[], "no verb is given"],
    [["chek", "x"], 'there is no verb "chek"'],
    [["check"], "missing required argument 'file'"],
    [["check", LAUNDRY, "--colour"], "unknown option '--colour'"],
    [["fill"], "missing required argument 'case'"],
    [["fill", "a", "b"], "too many arguments"],
    [["new", "--sample", "laundry-box"], "required option '--out <file>' not specified"],
  ] as const)("%j", (args, words) => {
    const { status, stdout, stderr } = loadside(args);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(/^loadside: [^\n]+ See loadside --help\.\n$/);
    expect(stderr).toContain(words);
  });

  test("help is on standard output, for the program and for every verb", () => {
    for (const args of [[], ["check"], ["fill"], ["samples"], ["new"], ["rules"], ["schema"]]) {
      const { status, stdout, stderr } = loadside([...args, "--help"]);
      expect([status, stderr]).toEqual([0, ""]);
      expect(stdout).toMatch(/^Usage: loadside /);
    }
  });
});

describe("what is printed", () => {
  const posix = process.platform === "win32" ? test.skip : test;

  posix("a reader that goes away early is no fault", () => {
    const program = new URL("../../dist/cli/loadside.mjs", import.meta.url).pathname;
    const command = `"${process.execPath}" "${program}" schema | head -c 10`;
    const ended = spawnSync("bash", ["-c", `set -o pipefail; ${command}`], { encoding: "utf8" });
    expect([ended.status, ended.stdout.length, ended.stderr]).toEqual([0, 10, ""]);
  });

  test("a fault of the program says so in one line, with the place of its log", () => {
    const plant = "data:text/javascript,JSON.parse=()=>{throw new Error('planted')}";
    const { status, stdout, stderr } = loadside(["check", LAUNDRY], { node: ["--import", plant] });
    expect([status, stdout]).toEqual([3, ""]);
    expect(stderr).toMatch(
      /^loadside: this is a fault of the program, not of the input: [^\n]+; the log is [^\n]+\.\n$/,
    );
    const log = stderr.slice(stderr.indexOf("the log is ") + "the log is ".length, -2);
    expect(readFileSync(log, "utf8")).toMatch(/^\s+at /m);
    rmSync(join(log, ".."), { recursive: true });
  });
});
