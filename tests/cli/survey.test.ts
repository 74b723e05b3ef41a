import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { buildLoadside, LAUNDRY, loadside } from "./run-loadside.ts";

beforeAll(buildLoadside, 120_000);

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "loadside-survey-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const live = (cable: string, pair: string, value: number) => ({
  ...{ arrangement: "A2", instrument: "low-impedance-meter" },
  ...{ cable, pair, value },
});
const triple = (cable: string, [bw, bg, wg]: readonly [number, number, number]) => [
  live(cable, "black-white", bw),
  live(cable, "black-ground", bg),
  live(cable, "white-ground", wg),
];
const DEAD = ["C2", "C3", "C4", "C5"].flatMap((cable) => triple(cable, [0, 0, 0]));
const join_ = (joined: readonly string[], works: readonly string[]) => ({
  ...{ arrangement: "A3", instrument: "plug-in-tester" },
  ...{ joined, works, switches: { S1: "on" } },
});
const cold = (cable: string, value: number | "open") => ({
  ...{ arrangement: "A1", instrument: "continuity", nothingPlugged: true, switches: { S1: "on" } },
  ...{ cable, pair: "black-white", value },
});
const WORKED = [
  ...triple("C1", [122, 122, 0]),
  ...DEAD,
  ...["C2", "C3", "C5"].map((cable) => cold(cable, "open")),
  cold("C4", 18),
  join_(["C1", "C2", "C4"], ["R2", "R3", "L1"]),
  join_(["C1", "C2", "C3"], ["R2", "R3", "R4"]),
];
const WHO = { by: "Pat Example", takenAt: "2026-05-04" };

function run(readings: unknown, more: readonly string[] = [], file = LAUNDRY) {
  writeFileSync(join(folder, "r.json"), typeof readings === "string" ? readings : JSON.stringify(readings));
  return loadside(["survey", file, "--box", "B1", "--readings", "r.json", ...more], { cwd: folder });
}

interface Told {
  readonly left: number;
  readonly atStart: number;
  readonly cables: readonly { readonly name: string; readonly role?: { readonly words: string } }[];
  readonly rejected: readonly { readonly reason: string }[];
  readonly next?: { readonly words: string; readonly wanted: { readonly joined?: readonly string[] } };
}

test("the worked run: what is left, why the rest is not, and the next test; nothing is written", () => {
  const ended = run({ ...WHO, readings: WORKED }, ["--json"]);
  expect(ended.stderr).toBe("");
  expect(ended.status).toBe(0);
  const told: Told = JSON.parse(ended.stdout);
  expect(told).toMatchObject({ atStart: 120, left: 1 });
  expect(told.cables.slice(0, 4).map(({ role }) => role?.words)).toEqual([
    ...["supply", "feeds R2 and R3", "feeds R4", "feeds L1"],
  ]);
  expect(told.rejected.map(({ reason }) => reason)).toContain(
    "C3 cannot be supply: 0 V black to white by low-impedance meter in A2.",
  );
  expect(told.next).toMatchObject({
    words: "Join C5 to the supply C1 and list what works",
    wanted: { joined: ["cable-C1", "cable-C5"] },
  });
  expect(readdirSync(folder)).toEqual(["r.json"]);
});

test("as a person reads it: cables, reasons, the steps of the next test with their holds, and cautions", () => {
  const { status, stdout } = run({ readings: WORKED });
  expect(status).toBe(0);
  for (const words of [
    "1 of 120 possible wirings left",
    "feeds R2 and R3",
    "Next test: Join C5 to the supply C1",
    "A1 HOLD HP1 Breaker off",
    "Refused: Put a switch between the wires of C1",
    "WRK6 Never join or part conductors with power on.",
  ])
    expect(stdout).toContain(words);
});

test("with --out the readings and what is settled go into the drawing as found, and a survey goes on from there", () => {
  expect(run({ ...WHO, readings: WORKED }, ["--out", "out.loadside"]).status).toBe(0);
  const opened = parseProject(readFileSync(join(folder, "out.loadside"), "utf8"));
  if (!opened.ok) throw new Error("It does not open.");
  const { asFound, readings } = opened.value.project;
  expect(Object.keys(readings)).toHaveLength(WORKED.length);
  expect(Object.values(readings)[0]).toMatchObject({ by: "Pat Example", instrument: "low-impedance-meter", unit: "V" });
  expect(asFound.intent.boxes).toEqual({ "box-B1": { supply: "cable-C1" } });
  const places = Object.values(asFound.enclosures).find(({ name }) => name === "B1")?.places ?? {};
  const tags = Object.entries(places).flatMap(([end, { tag, evidence }]) =>
    tag === undefined ? [] : [[end, tag, evidence?.tag]],
  );
  expect(tags).toContainEqual(["cable-C1.bk.b", "C1 LINE", "measured"]);
  expect(tags).toContainEqual(["cable-C2.wh.a", "C2 to R2, R3", "measured"]);
  expect(tags.some(([end]) => String(end).startsWith("cable-C5"))).toBe(false);
  const last = run({ readings: [join_(["C1", "C5"], ["R5"])] }, ["--json"], join(folder, "out.loadside"));
  expect(JSON.parse(last.stdout)).toMatchObject({ settled: true, mismatches: [] });
});

test("readings that contradict each other end with status 1 and say what to look for", () => {
  const { status, stdout } = run({ readings: [...WORKED, join_(["C1", "C5"], ["R2"])] });
  expect(status).toBe(1);
  expect(stdout).toContain("These readings fit no arrangement known to the tool.");
  expect(stdout).toContain("Doubt first:");
  expect(stdout).toContain("Least bad:");
});

test("what a person lists goes in place of the drawing", () => {
  const facts = { groups: [["R2"], ["R4", "R5"], [{ name: "shed light", kind: "light", lamp: "led" }]] };
  const told = JSON.parse(run({ facts, readings: triple("C1", [122, 122, 0]) }, ["--json"]).stdout);
  expect(told.itemsFrom).toBe("person");
  expect(told.items.map(({ name }: { name: string }) => name)).toContain("shed light");
});

test("what a person knows is used, named as told, and the drawing is not", () => {
  const known = [{ cable: "C1", leadsTo: "panel", how: "followed along the joist" }];
  const start = run({ readings: [live("C2", "black-white", 0)] });
  expect(start.stdout).toContain("which of them leads where is not: a drawing is no reading.");
  const { stdout, status } = run({ facts: { known }, readings: [] });
  expect(status).toBe(0);
  expect(stdout).toContain("24 of 120 possible wirings left");
  expect(stdout).toContain("C1: told, not measured: it comes from the panel (followed along the joist)");
  expect(stdout).not.toMatch(/\bbits\b/);
  const told = JSON.parse(
    run({ facts: { known: [{ ...known[0], cable: "C3", leadsTo: ["R4"] }] }, readings: [] }, ["--json"]).stdout,
  );
  expect(told.left).toBe(24);
});

test("the circuits by breakers: seen dead, seen live and not looked at are three things, kept with --out", () => {
  const seen = { ...WHO, breakersOff: [{ breaker: "Q14", dead: ["R1", "R2"], live: ["R5"] }] };
  writeFileSync(join(folder, "r.json"), JSON.stringify(seen));
  const ask = (...more: readonly string[]) =>
    loadside(["survey", LAUNDRY, "--circuits", "--readings", "r.json", ...more], { cwd: folder });
  const { stdout, status } = ask();
  expect(status).toBe(0);
  expect(stdout).toContain("With Q14 off nobody looked at R3, R4 and L1: they may hang on it.");
  expect(stdout).toContain("R5 is drawn on Q14; it stayed live with Q14 off.");
  const { outlets } = JSON.parse(ask("--json", "--out", "map.loadside").stdout);
  const of = (name: string) => outlets.find((one: { name: string }) => one.name === name);
  expect([of("R1").breakers.length, of("R4").breakers.length, of("R4").live.length]).toEqual([1, 0, 0]);
  expect([of("R4").notLookedAt.length, of("R4").differs, of("R5").live.length]).toEqual([1, false, 1]);
  const again = loadside(["survey", join(folder, "map.loadside"), "--circuits"]);
  expect(again.stdout).toContain("2 of 6 outlets known");
});

test.each([
  [{ breakersOff: [{ breaker: "Q77", dead: ["R1"] }] }, "/breakersOff/0/breaker: Nothing as found"],
  [{ breakersOff: [{ breaker: "Q14", dead: ["R99"] }] }, "/breakersOff/0/dead/0: Nothing as found"],
  [{ breakersOff: [{ breaker: "Q14" }] }, "/breakersOff/0: Say of at least one outlet"],
  [{}, "/breakersOff: Give what was seen"],
])("bad lists of breakers: %j", (seen, words) => {
  writeFileSync(join(folder, "r.json"), JSON.stringify(seen));
  const { status, stderr } = loadside(["survey", LAUNDRY, "--circuits", "--readings", "r.json"], { cwd: folder });
  expect([status, stderr]).toEqual([2, expect.stringContaining(words)]);
});

describe("bad readings end with status 2, file, place and remedy", () => {
  test.each([
    [
      { readings: [live("C9", "black-white", 1)] },
      '/readings/0/cable: B1 has no one cable "C9"; it has C1, C2, C3, C4, C5.',
    ],
    [{ readings: [live("C1", "black-blue", 1)] }, '/readings/0/pair: C1 has no one wire "blue"'],
    [{ readings: [live("C1", "black", 1)] }, "/readings/0/pair: Give two wires"],
    [{ readings: [{ ...live("C1", "black-white", 1), value: "lots" }] }, "/readings/0/value: Give volts"],
    [
      { readings: [{ ...live("C1", "black-white", 1), arrangement: "A9" }] },
      '/readings/0/arrangement: Give one of "A0"',
    ],
    [{ readings: [{ ...live("C1", "black-white", 1), works: [] }] }, "/readings/0: Give one of"],
    [{ readings: [{ arrangement: "A3", instrument: "by-eye", works: ["R2"] }] }, "/readings/0/joined: Name the cables"],
    [{ readings: [{ ...live("C1", "black-white", 1), wat: 1 }] }, "/readings/0/wat: This field is not known here"],
    [{ facts: { groups: [["R2", "R2"]] }, readings: [] }, "/facts/groups: Something is listed twice."],
    [
      { facts: { groups: [["R77"]] }, readings: [] },
      '/facts/groups/0/0: No outlet or light as found has the id or name "R77"',
    ],
    [
      { facts: { known: [{ cable: "C1", leadsTo: "panel" }] }, readings: [] },
      "/facts/known/0/how: Say how it is known",
    ],
    [{ facts: { known: [{ cable: "C1", how: "seen" }] }, readings: [] }, '/facts/known/0/leadsTo: Give "panel"'],
    [{ facts: { switchesHere: 1.5 }, readings: [] }, "/facts/switchesHere: Give a whole number"],
    [{}, "/readings: Give the list of readings."],
    ["{", "r.json"],
    ["[]", "Give an object"],
  ])("%j", (readings, words) => {
    const { status, stdout, stderr } = run(readings);
    expect(status).toBe(2);
    expect(stdout).toBe("");
    expect(stderr.startsWith("r.json: ")).toBe(true);
    expect(stderr).toContain(words);
  });

  test("a box that is not there, a file that is not there, standard input twice", () => {
    const ask = (...args: readonly string[]) => loadside(["survey", ...args], { cwd: folder });
    expect(ask(LAUNDRY, "--box", "B99")).toMatchObject({ status: 2, stderr: expect.stringContaining('no box "B99"') });
    expect(ask(LAUNDRY, "--box", "B1", "--readings", "none.json")).toMatchObject({ status: 2 });
    expect(ask("-", "--box", "B1", "--readings", "-")).toMatchObject({ status: 2 });
    expect(ask(LAUNDRY)).toMatchObject({ status: 2, stderr: expect.stringContaining("--box") });
  });

  test("help tells the form of the file and the statuses", () => {
    const { status, stdout } = loadside(["survey", "--help"]);
    expect(status).toBe(0);
    for (const words of ["arrangement", "feedAtLight", "Exit status", "referenceProved"])
      expect(stdout).toContain(words);
  });
});
