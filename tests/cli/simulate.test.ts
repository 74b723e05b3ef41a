import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { getNgspice, NO_NGSPICE } from "../get-ngspice.mjs";
import { runNgspice } from "../solver/network/run-ngspice.ts";
import { buildLoadside, LAUNDRY, loadside, ROOT } from "./run-loadside.ts";

const folder = mkdtempSync(join(tmpdir(), "loadside-simulate-"));
const PROPOSED = join(ROOT, "assets/samples/laundry-proposed.loadside");
const MULTIWIRE = join(ROOT, "assets/samples/kitchen-multiwire.loadside");
const program = getNgspice();
if (program === undefined) console.error(`SKIPPED, proves nothing here: ${NO_NGSPICE}`);

beforeAll(buildLoadside, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Answer {
  readonly state: string;
  readonly nodes: Readonly<
    Record<string, { readonly re: number; readonly im: number; readonly places: readonly string[] }>
  >;
  readonly assumptions: readonly string[];
  readonly outlets: readonly {
    readonly name: string;
    readonly hn: number;
    readonly hg: number | null;
    readonly ng: number | null;
    readonly floating: readonly string[];
    readonly tester: string | null;
    readonly dropPercent: number | null;
    readonly atStatedLoad: {
      readonly load?: string;
      readonly dropV?: number;
      readonly dropPercent?: number;
      readonly limitPercent?: number;
      readonly longest?: string;
      readonly lengthsNotRecorded?: readonly string[];
    } | null;
  }[];
  readonly devices: readonly {
    readonly name: string;
    readonly residualMa: number;
    readonly trips: string;
    readonly powered: boolean;
    readonly why: string;
  }[];
  readonly breakers: readonly { readonly name: string; readonly amps: number; readonly trips: string }[];
  readonly liveAfter: readonly { readonly name: string; readonly contact: string; readonly volts: number }[];
}

let files = 0;
function settingFile(setting: unknown): string {
  const path = join(folder, `setting-${files++}.json`);
  writeFileSync(path, typeof setting === "string" ? setting : JSON.stringify(setting));
  return path;
}

function simulate(file: string, ...options: readonly string[]): Answer {
  const { status, stdout, stderr } = loadside(["simulate", file, "--json", ...options]);
  expect([status, stderr]).toEqual([0, ""]);
  return JSON.parse(stdout);
}

/** Volts against earth at a place, by its name in the answer. */
function voltsAt({ nodes }: Answer, place: string): number {
  const node = Object.values(nodes).find(({ places }) => places.includes(place));
  if (node === undefined) throw new Error(`No place ${place}.`);
  return Math.hypot(node.re, node.im);
}

describe("nodes", () => {
  test("have volts against earth, and every place of a node is named once", () => {
    const answer = simulate(LAUNDRY);
    expect(answer.state).toBe("as-found");
    expect(voltsAt(answer, "P bus A")).toBeGreaterThan(119);
    expect(voltsAt(answer, "R5.UH")).toBeGreaterThan(115);
    expect(voltsAt(answer, "R5.UN")).toBeLessThan(1);
    const places = Object.values(answer.nodes).flatMap((node) => node.places);
    expect(new Set(places).size).toBe(places.length);
    expect(places).toContain("C5.bk at B6");
    expect(answer.assumptions).toEqual(["No length of 16 jumpers is known: 6 in. each assumed."]);
  });

  test("follow the setting", () => {
    const off = simulate(LAUNDRY, "--setting", settingFile({ off: ["Q14"] }));
    expect(voltsAt(off, "R5.UH")).toBeLessThan(0.01);
    const dark = simulate(LAUNDRY, "--setting", settingFile({ switches: { S1: "off" }, unplugged: ["Freezer"] }));
    expect(voltsAt(dark, "L1.H")).toBeLessThan(0.1);
    expect(voltsAt(dark, "R5.UH")).toBeGreaterThan(119.9);
  });

  test("a state that is not there is refused; the setting may come by standard input, but not both", () => {
    expect(loadside(["simulate", LAUNDRY, "--state", "proposed"])).toMatchObject({ status: 2, stdout: "" });
    const piped = loadside(["simulate", LAUNDRY, "--json", "--setting", "-"], { input: '{"off": ["Q14"]}' });
    expect(voltsAt(JSON.parse(piped.stdout), "R5.UH")).toBeLessThan(0.01);
    expect(loadside(["simulate", "-", "--setting", "-"], { input: "{}" })).toMatchObject({ status: 2, stdout: "" });
  });
});

describe("what people measure and what trips", () => {
  test("as found, the laundry reads correct everywhere, and the freezer and the lamp take 2 A", () => {
    const { outlets, devices, breakers } = simulate(LAUNDRY);
    expect(outlets.map(({ name }) => name)).toEqual(["R1", "R2", "R3", "R4", "R5", "L1"]);
    for (const { hn, ng, floating, tester, dropPercent } of outlets) {
      expect([hn > 119 && hn < 120, (ng ?? 9) < 0.5, floating, tester]).toEqual([true, true, [], "correct"]);
      expect(dropPercent).toBeLessThan(1);
    }
    expect(devices).toEqual([]);
    // By hand: 120 V over 80 ohm and over 240 ohm, less what the wires take.
    expect(breakers).toMatchObject([{ name: "Q14", trips: "no" }]);
    expect(Math.abs((breakers[0]?.amps ?? 0) - (120 / 80 + 120 / 240))).toBeLessThan(0.02);
  });

  test("voltage drop at the stated load: 16 A over 95 ft of 12 AWG to R3; nothing where a length is not recorded", () => {
    const at = (answer: Answer, name: string) => answer.outlets.find((one) => one.name === name)?.atStatedLoad;
    const stated = at(simulate(LAUNDRY), "R3");
    // By hand: 1.588 ohm in 1000 ft, there and back, a contact of 1 milliohm, a foot or so of jumpers each way.
    expect(Math.abs((stated?.dropV ?? 0) - 16 * (2 * 0.0955 * 1.588 + 0.001))).toBeLessThan(0.05);
    expect(stated?.dropPercent).toBeCloseTo((stated?.dropV ?? 0) / 1.2, 6);
    expect(stated).toMatchObject({ limitPercent: 3, longest: "C1" });
    expect(stated?.load).toBe("16 A (80 % of the 20 A of Q14) and nothing else on");
    const file = join(folder, "unmeasured.loadside");
    writeFileSync(file, readFileSync(LAUNDRY, "utf8").replace('"lengthFt": 18,', ""));
    const unmeasured = simulate(file);
    expect(at(unmeasured, "R3")).toEqual({ lengthsNotRecorded: ["C2"] });
    expect(at(unmeasured, "R2")).toEqual({ lengthsNotRecorded: ["C2"] });
    expect(at(unmeasured, "R5")?.dropV).toBeGreaterThan(4);
    expect(loadside(["simulate", file]).stdout).toMatch(/\nR3 [^\n]+ length of C2 not recorded\n/);
  });

  test("proposed, a leak of 19 kilohms at R3 opens R1b; what is not behind it stays live", () => {
    const { devices, liveAfter } = simulate(PROPOSED, "--setting", settingFile({ leaks: [{ at: "R3" }] }));
    const r1b = devices.find(({ name }) => name === "R1b");
    expect(r1b).toMatchObject({ trips: "yes", powered: true });
    expect(Math.abs((r1b?.residualMa ?? 0) - 6.3)).toBeLessThan(0.1);
    expect(devices.find(({ name }) => name === "R4b")?.trips).toBe("no");
    expect(liveAfter.map(({ name, contact }) => `${name} ${contact}`)).toEqual(["R4b hot", "L1 hot"]);
  });

  test("a person reads a table, what opens, what stays live, and that nothing was measured", () => {
    const options = ["--setting", settingFile({ leaks: [{ at: "R3" }] })];
    const { status, stdout, stderr } = loadside(["simulate", PROPOSED, ...options]);
    expect([status, stderr]).toEqual([0, ""]);
    expect(stdout).toMatch(
      /^[^\n]+laundry-proposed\.loadside: proposed\n\noutlet +H-N +H-G +N-G +plug-in tester +voltage drop +at stated load\n/,
    );
    expect(stdout).toMatch(/\nR3 +119\.\d +119\.\d +0\.\d +correct +0\.\d V, 0\.\d % +4\.9 V, 4\.1 %, past 3 %\n/);
    expect(stdout).toMatch(/\nStated load at R1b, [^\n]*: 16 A \(80 % of the 20 A of Q14\) and nothing else on\.\n/);
    expect(stdout).toMatch(/\nR1b +6\.3 mA +yes +[^\n]+\n/);
    expect(stdout).toContain("\nOpens: R1b.\nStill live after that: R4b, L1.\n");
    expect(stdout).toContain("nothing was measured, and it authorises no work on energised parts.\n");
    expect(stdout).not.toMatch(/\b(safe|compliant)\b/i);
  });

  test("on wrong drawings nothing is said that is no number", () => {
    const { stdout } = loadside(["simulate", join(ROOT, "assets/samples/wrong-on-purpose.loadside")]);
    expect(stdout).toMatch(/\nQ7 +\d+\.\d\d A +yes\n/);
    expect(stdout).not.toMatch(/NaN|Infinity|undefined|null/);
  });
});

describe("the netlist", () => {
  test.skipIf(program === undefined).each([
    ["the laundry", LAUNDRY, {}],
    ["the laundry with a leak and a switch off", LAUNDRY, { switches: { S1: "off" }, leaks: [{ at: "R3" }] }],
    ["two legs on one neutral", MULTIWIRE, {}],
  ])("%s: ngspice finds the same at every node", (_, file, setting) => {
    const out = join(folder, "same.cir");
    const answer = simulate(file, "--setting", settingFile(setting), "--netlist", out);
    const deck = readFileSync(out, "utf8");
    const theirs = runNgspice(program as string, deck);
    const names = Object.keys(answer.nodes);
    expect(names.length).toBeGreaterThan(40);
    for (const name of names) {
      const [re, im] = theirs.get(name) ?? [Number.NaN, Number.NaN];
      const node = answer.nodes[name] as Answer["nodes"][string];
      const scale = Math.max(Math.hypot(re, im), 0.001);
      expect(Math.hypot(node.re - re, node.im - im) / scale).toBeLessThan(1e-6);
      expect(deck).toContain(`\n* node ${name} = ${node.places.join(", ")}`);
    }
  });

  test("needs a file, and says so by the name of its own option", () => {
    for (const none of ["-", ""]) {
      const { status, stderr } = loadside(["simulate", LAUNDRY, "--netlist", none]);
      expect([status, stderr]).toEqual([2, "loadside: --netlist needs the name of a file. Give one.\n"]);
    }
  });

  test("replaces a netlist, and no other file", () => {
    const out = join(folder, "again.cir");
    for (let time = 0; time < 2; time++) expect(loadside(["simulate", LAUNDRY, "--netlist", out]).status).toBe(0);
    const notes = join(folder, "notes.txt");
    writeFileSync(notes, "mine");
    const refused = loadside(["simulate", LAUNDRY, "--netlist", notes]);
    expect(refused).toMatchObject({ status: 2, stdout: "" });
    expect(refused.stderr).toMatch(/notes\.txt: It is there already[^\n]*\n$/);
    expect(readFileSync(notes, "utf8")).toBe("mine");
    const drawn = join(folder, "drawing.cir");
    writeFileSync(drawn, readFileSync(LAUNDRY));
    expect(loadside(["simulate", drawn, "--netlist", drawn]).status).toBe(2);
    expect(readFileSync(drawn, "utf8")).toBe(readFileSync(LAUNDRY, "utf8"));
    expect(readdirSync(folder).filter((name) => name.endsWith(".saving"))).toEqual([]);
  });
});

describe("bad settings: a line for each problem with file and place, status 2", () => {
  test.each([
    ["not JSON", "{", /^[^\n]+: [^\n]+\n$/],
    ["an infinite number", '{"leaks": [{"at": "R3", "ohm": 1e999}]}', /^[^\n]+: \/leaks\/0\/ohm: [^\n]+\n$/],
    ["a key twice", '{"off": [], "off": []}', /^[^\n]+: \/off: [^\n]+\n$/],
    ["unknown names", { off: ["Q99"], tripped: ["R1"] }, /^[^\n]+: \/off\/0: [^\n]+\n[^\n]+: \/tripped\/0: [^\n]+\n$/],
    ["a contradiction", { off: ["Q14"], tripped: ["Q14"] }, /^[^\n]+: \/tripped\/0: [^\n]+\n$/],
  ])("%s", (_, setting, lines) => {
    const { status, stdout, stderr } = loadside(["simulate", LAUNDRY, "--setting", settingFile(setting)]);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(lines);
  });
});
