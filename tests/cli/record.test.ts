import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { sampleText } from "../builders/samples/open-sample.ts";
import { buildLoadside, LAUNDRY, loadside, ROOT } from "./run-loadside.ts";

beforeAll(buildLoadside, 120_000);

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "loadside-record-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const JOB = join(ROOT, "assets/samples/laundry-proposed.loadside");
const inFolder = (name: string) => join(folder, name);
const WHO = { by: "Pat Example", takenAt: "2026-05-04", instrumentId: "M-17" };
const BEHIND = ["R1b", "R2", "R3", "R5"];
const GOOD = [
  { stage: "before", at: "R1", test: "hot-neutral", value: 121.8, remark: "loose in its box" },
  { stage: "before", at: "B1", test: "dead", value: "dead", instrument: "noncontact" },
  { stage: "after", at: "R2", test: "hot-neutral", value: 121.9 },
  { stage: "after", at: "R1b", test: "own-test", outlets: BEHIND },
  { stage: "after", at: "R1b", test: "reset", outlets: BEHIND },
  { stage: "after", at: "R4b", test: "plug-in-button", outlets: ["R4b"] },
  { stage: "after", at: "R3", test: "polarity", value: "correct" },
  { stage: "after", at: "L1", test: "works", value: "works" },
  { stage: "after", at: "R3", test: "continuity", value: 0.3 },
  { stage: "after", at: "Q14", test: "note", value: "retorqued" },
];

function run(readings: unknown, more: readonly string[] = [], file = JOB) {
  writeFileSync(inFolder("r.json"), typeof readings === "string" ? readings : JSON.stringify(readings));
  return loadside(["record", file, "--readings", "r.json", ...more], { cwd: folder });
}

interface Line {
  readonly id: string;
  readonly name: string;
  readonly box: string;
  readonly test: string;
  readonly before: Cell | null;
  readonly after: Cell | null;
}
interface Cell {
  readonly expected: object | null;
  readonly outcome: string;
  readonly differs: string | null;
  readonly reading: { readonly value: unknown; readonly instrument: string; readonly item: string } | null;
}
const linesOf = (stdout: string): readonly Line[] => JSON.parse(stdout).lines;
const lineOf = (stdout: string, name: string, kind: string): Line => {
  const found = linesOf(stdout).find((line) => line.name === name && line.test === kind);
  if (found === undefined) throw new Error(`No line ${kind} of ${name}.`);
  return found;
};

test("results are put in with what was expected, compared, and written whole", () => {
  const ended = run({ ...WHO, readings: GOOD }, ["--out", "out.loadside", "--json"]);
  expect([ended.status, ended.stderr]).toEqual([0, ""]);
  expect(JSON.parse(ended.stdout)).toMatchObject({ file: JOB, added: 10, alreadyRecorded: 0 });
  const { before, after } = lineOf(ended.stdout, "R1b", "hot-neutral");
  expect(before).toMatchObject({
    outcome: "agrees",
    differs: null,
    expected: { within: 5, unit: "V" },
    reading: { item: "R1", value: 121.8, unit: "V", instrument: "meter", remark: "loose in its box", ...WHO },
  });
  expect(after).toMatchObject({ outcome: "not-measured", reading: null });
  expect(lineOf(ended.stdout, "R1b", "own-test")).toMatchObject({
    before: null,
    after: {
      outcome: "agrees",
      expected: { outlets: BEHIND.map((name) => ({ name })) },
      reading: { instrument: "own-test", value: "R1b, R2, R3, R5 went dark" },
    },
  });
  expect(lineOf(ended.stdout, "R4b", "plug-in-button").after?.outcome).toBe("agrees");
  expect(lineOf(ended.stdout, "R3", "continuity").after).toMatchObject({ outcome: "not-compared", expected: null });
  expect(lineOf(ended.stdout, "B1", "dead").before?.reading?.instrument).toBe("noncontact");

  const written = JSON.parse(readFileSync(inFolder("out.loadside"), "utf8"));
  expect(Object.keys(written.readings)).toHaveLength(10);
  expect({ ...written, readings: {} }).toEqual(JSON.parse(sampleText("laundry-proposed")));
  // Again: nothing is put in twice, and the file stays what it is.
  const again = run({ ...WHO, readings: GOOD }, ["--out", "out.loadside", "--json"], "out.loadside");
  expect(JSON.parse(again.stdout)).toMatchObject({ added: 0, alreadyRecorded: 10 });
  expect(JSON.parse(readFileSync(inFolder("out.loadside"), "utf8"))).toEqual(written);
});

test("what differs ends with 1, in words a person reads", () => {
  const ended = run({
    readings: [
      { stage: "after", at: "R2", test: "neutral-ground", value: 3.5 },
      { stage: "after", at: "R1b", test: "own-test", outlets: ["R1b", "R2", "R3", "R4b"] },
      { stage: "after", at: "L1", test: "works", value: "does-not-work" },
    ],
  });
  expect([ended.status, ended.stderr]).toEqual([1, ""]);
  expect(ended.stdout).toMatch(/^.*: test record, 3 put in, not written: there is no --out\n/);
  expect(ended.stdout).toMatch(/R2 +Neutral to ground +0.04 V ± 1 +3.5 V +DIFFERS: 3.46 V above what was expected\n/);
  expect(ended.stdout).toMatch(/TEST pressed +R1b, R2, R3, R5 +R1b, R2, R3, R4b went dark +DIFFERS: not R5, but R4b\n/);
  expect(ended.stdout).toMatch(/L1 +Works +works +does not work +DIFFERS: expected works\n/);
  expect(readdirSync(folder)).toEqual(["r.json"]);
});

test("without readings the record is shown as it is; a drawing without proposed is tested as found", () => {
  const empty = loadside(["record", LAUNDRY]);
  expect([empty.status, empty.stderr]).toEqual([0, ""]);
  expect(empty.stdout).toMatch(/: test record\nNot measured after the work: \d+\.\n$/);
  const found = run({ readings: [{ stage: "after", at: "R1", test: "hot-neutral", value: 119 }] }, ["--json"], LAUNDRY);
  expect(found.status).toBe(0);
  expect(lineOf(found.stdout, "R1", "hot-neutral").after?.outcome).toBe("agrees");
});

test("one of drawing and readings may come from standard input", () => {
  const input = JSON.stringify({ readings: GOOD });
  expect(loadside(["record", JOB, "--readings", "-"], { input }).status).toBe(0);
  writeFileSync(inFolder("r.json"), input);
  const text = sampleText("laundry-proposed");
  expect(loadside(["record", "-", "--readings", "r.json"], { cwd: folder, input: text }).status).toBe(0);
  expect(loadside(["record", "-", "--readings", "-"])).toEqual({
    status: 2,
    stdout: "",
    stderr: "standard input: It can be read only once. Name - once.\n",
  });
});

const one = (fields: object) => ({ readings: [GOOD[2], { stage: "after", at: "R2", test: "hot-neutral", ...fields }] });

describe("bad input: one line each with its place, and nothing is written", () => {
  test.each<[string, unknown, RegExp]>([
    ["no JSON", "volts", /^r\.json: [^\n]+\n$/],
    ["a list", [], /^r\.json: Give an object; it is a list\.\n$/],
    ["no readings", {}, /^r\.json: \/readings: Give the list of readings\.\n$/],
    [
      "an unknown field",
      one({ volts: 120 }),
      /^r\.json: \/readings\/1\/volts: This field is not known here; [^\n]+\n$/,
    ],
    [
      "an unknown stage",
      one({ stage: "during", value: 120 }),
      /: \/readings\/1\/stage: Give one of "before", "after"; it is/,
    ],
    ["an unknown test", one({ test: "smell" }), /: \/readings\/1\/test: Give one of "hot-neutral"[^\n]+"smell"\.\n$/],
    [
      "what is not drawn then",
      one({ at: "R1", value: 120 }),
      /: \/readings\/1\/at: Nothing drawn in proposed has [^\n]+"R1"/,
    ],
    [
      "what is not drawn yet",
      one({ stage: "before", at: "R1b", value: 120 }),
      /: \/readings\/1\/at: Nothing drawn as found has [^\n]+"R1b"/,
    ],
    ["a switch", one({ at: "S1", value: 120 }), /: \/readings\/1\/at: S1 is no outlet, luminaire or appliance\.\n$/],
    ["no button", one({ test: "own-test", outlets: [] }), /: \/readings\/1\/at: R2 has no TEST and no RESET\.\n$/],
    [
      "volts in words",
      one({ value: "120" }),
      /: \/readings\/1\/value: Give volts from 0 to 1000[^\n]+it is "120"\.\n$/,
    ],
    ["no value", one({}), /: \/readings\/1\/value: Give volts [^\n]+missing\.\n$/],
    ["too many volts", one({ value: 1000.5 }), /: \/readings\/1\/value: Give volts from 0 to 1000/],
    [
      "outlets of what is measured",
      one({ value: 120, outlets: ["R2"] }),
      /: \/readings\/1\/outlets: "hot-neutral" has a value, no outlets\.\n$/,
    ],
    [
      "a button without outlets",
      one({ at: "R1b", test: "own-test" }),
      /: \/readings\/1\/outlets: List every outlet that went dark; an empty list where none did\.\n$/,
    ],
    [
      "an unknown outlet",
      one({ at: "R1b", test: "own-test", outlets: ["R2", "R9"] }),
      /: \/readings\/1\/outlets\/1: Nothing drawn in proposed has the id or name "R9": check it\.\n$/,
    ],
    [
      "a value of a button",
      one({ at: "R1b", test: "reset", value: "on", outlets: [] }),
      /: \/readings\/1\/value: "reset" has no value/,
    ],
    [
      "an instrument of a button",
      one({ at: "R1b", test: "reset", outlets: [], instrument: "meter" }),
      /: \/readings\/1\/instrument: "reset" is not measured: leave the instrument out\.\n$/,
    ],
    ["a day that is none", one({ value: 120, takenAt: "2026-02-31" }), /: \/readings\/1\/takenAt: Give a date such as/],
    [
      "a remark over two lines",
      one({ value: 120, remark: "a\nb" }),
      /: \/readings\/1\/remark: Give a text of at most 500/,
    ],
    [
      "who is no text",
      { ...one({ value: 120 }), by: 7 },
      /^r\.json: \/by: Give a text of at most 100 letters[^\n]+7\.\n$/,
    ],
    ["an empty note", one({ test: "note", value: " " }), /: \/readings\/1\/value: Write what is to be noted\.\n$/],
  ])("%s", (_name, readings, says) => {
    const { status, stdout, stderr } = run(readings, ["--out", "out.loadside"]);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(says);
    expect(stderr.trimEnd().split("\n")).toHaveLength(1);
    expect(readdirSync(folder)).toEqual(["r.json"]);
  });

  test("a half of a receptacle whose tab is off is to be named", () => {
    const drawing = JSON.parse(sampleText("laundry-box"));
    drawing.asFound.enclosures["box-B2"].devices["device-R2"].hotTab = "removed";
    writeFileSync(inFolder("k.loadside"), JSON.stringify(drawing));
    const reading = { stage: "before", test: "hot-neutral", value: 119 };
    const whole = run({ readings: [{ ...reading, at: "R2" }] }, [], "k.loadside");
    expect([whole.status, whole.stderr]).toEqual([
      2,
      'r.json: /readings/0/at: R2 is 2 outlets: name "R2/upper" or "R2/lower".\n',
    ]);
    expect(run({ readings: [{ ...reading, at: "R2/upper" }] }, [], "k.loadside").stderr).toBe("");
  });

  test("a name that several things have", () => {
    const twice = sampleText("laundry-proposed").replaceAll('"name": "R3"', '"name": "R2"');
    writeFileSync(inFolder("twice.loadside"), twice);
    const { status, stderr } = run(one({ value: 120 }), [], "twice.loadside");
    expect(status).toBe(2);
    expect(stderr).toContain('2 items are called "R2": give an id, one of "device-R2", "device-R3".');
  });

  test("--out without readings, and a file that is there", () => {
    expect(loadside(["record", JOB, "--out", "x"], { cwd: folder })).toMatchObject({ status: 2, stdout: "" });
    writeFileSync(inFolder("other.loadside"), "my work");
    const { status, stdout, stderr } = run({ readings: GOOD }, ["--out", "other.loadside"]);
    expect([status, stdout, stderr]).toEqual([
      2,
      "",
      "other.loadside: It is there already and stays as it is. Choose another name.\n",
    ]);
    expect(readFileSync(inFolder("other.loadside"), "utf8")).toBe("my work");
  });
});

test("a line that is read from a file of readings breaks nothing in the document", () => {
  run({ ...WHO, readings: GOOD }, ["--out", "out.loadside"]);
  const checked = loadside(["check", "out.loadside", "--json"], { cwd: folder });
  expect(checked.stderr).toBe("");
  expect(checked.stdout).toContain('"test-record-missing"');
});
