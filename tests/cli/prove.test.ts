import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { buildLoadside, LAUNDRY, loadside, ROOT } from "./run-loadside.ts";

const folder = mkdtempSync(join(tmpdir(), "loadside-prove-"));
const PROPOSED = join(ROOT, "assets/samples/laundry-proposed.loadside");

beforeAll(buildLoadside, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Answer {
  readonly state: string;
  readonly outlets: readonly {
    readonly id: string;
    readonly name: string;
    readonly room: string | null;
    readonly requiredBy: string | null;
    readonly protectedBy: readonly string[];
    readonly device: string | null;
    readonly proof: Readonly<Record<string, string>>;
    readonly offenders: readonly { readonly name: string; readonly perAmpere: number }[];
    readonly reason: string;
  }[];
}

function prove(file: string, ...options: readonly string[]): readonly [status: number | null, answer: Answer] {
  const { status, stdout, stderr } = loadside(["prove", file, "--json", ...options]);
  expect(stderr).toBe("");
  return [status, JSON.parse(stdout)];
}

const PASSES = { P1: "pass", P2: "pass", P3: "pass", P4: "pass", P5: "pass", P6: "pass" };

/** The proposed laundry after one end was moved to where another lies. */
function withEndMoved(box: string, end: string, to: string): string {
  const document = JSON.parse(readFileSync(PROPOSED, "utf8"));
  const enclosure = Object.values(document.proposed.enclosures as Record<string, never>).find(
    ({ name }) => name === box,
  ) as unknown as { places: Record<string, { at: unknown }> };
  const [from, target] = [enclosure.places[end], enclosure.places[to]];
  if (from === undefined || target === undefined) throw new Error(`${box} has ${Object.keys(enclosure.places)}`);
  from.at = target.at;
  const path = join(folder, `${box}-${end}.loadside`);
  writeFileSync(path, JSON.stringify(document));
  return path;
}

describe("the proposed laundry", () => {
  test("every outlet whose protection is required or wished is proved, by the device that the plan means", () => {
    const [status, { state, outlets }] = prove(PROPOSED);
    expect([status, state]).toEqual([0, "proposed"]);
    const by = outlets.map(({ name, requiredBy, protectedBy }) => [name, requiredBy, protectedBy]);
    expect(by).toEqual([
      ["R1b", "210.8(A)", ["R1b"]],
      ["R2", "210.8(A)", ["R1b"]],
      ["R3", "210.8(A)", ["R1b"]],
      ["R4b", "210.8(A)", ["R4b"]],
      ["R5", "wish", ["R1b"]],
      ["L1", null, []],
    ]);
    for (const { name, proof } of outlets) if (name !== "L1") expect([name, proof]).toEqual([name, PASSES]);
    const light = outlets.find(({ name }) => name === "L1");
    expect([light?.proof.P1, light?.proof.P3, light?.room]).toEqual(["fail", "fail", "Stair"]);
    expect(light?.reason).toMatch(/C4 BK/);
  });

  test("with the white of C2 on LINE, R2 and R3 fail by their neutral, at that conductor, and set R1b off", () => {
    const [status, { outlets }] = prove(withEndMoved("B1", "cable-C2.wh.a", "cable-C1.wh.b"));
    expect(status).toBe(1);
    for (const name of ["R2", "R3"]) {
      const outlet = outlets.find((one) => one.name === name);
      expect(outlet).toMatchObject({
        protectedBy: [],
        device: "R1b",
        proof: { ...PASSES, P1: "fail", P2: "fail", P6: "fail" },
      });
      expect(outlet?.reason).toMatch(/^P1: its neutral goes round R1b: C2 WH leaves /);
      expect(outlet?.offenders).toMatchObject([
        { name: "R2", perAmpere: 1 },
        { name: "R3", perAmpere: 1 },
      ]);
    }
    expect(outlets.find(({ name }) => name === "R5")).toMatchObject({
      protectedBy: ["R1b"],
      proof: { P2: "pass", P6: "fail" },
    });
  });

  test("as text: a table and a sentence for each outlet", () => {
    const { status, stdout } = loadside(["prove", PROPOSED]);
    expect(status).toBe(0);
    expect(stdout).toMatch(/^outlet +box +room +required by +protected by +P1 +P2 +P3 +P4 +P5 +P6 +told of$/m);
    expect(stdout).toMatch(/^R3 +B3 +Porch +210\.8\(A\) +R1b( +pass){6} +R1b$/m);
    expect(stdout).toMatch(/^L1: P1: neither its hot nor its neutral is behind R1b: C4 BK leaves .*\.$/m);
    expect(stdout).toMatch(/^6 outlets; protection is required or wished for 5 of them and proved for 5 of these\.$/m);
    expect(stdout).toContain("nothing was measured");
    expect(stdout).not.toMatch(/\bsafe\b|compliant/i);
  });
});

describe("statuses", () => {
  test("as found nothing is proved: 1", () => {
    const [status, { outlets }] = prove(PROPOSED, "--state", "as-found");
    expect(status).toBe(1);
    expect(outlets.flatMap(({ protectedBy }) => protectedBy)).toEqual([]);
    expect(outlets[0]).toMatchObject({ device: null, reason: "No ground-fault device stands before it." });
    expect(loadside(["prove", LAUNDRY]).status).toBe(1);
  });

  test("nothing required or wished: 0, protected or not", () => {
    expect(loadside(["prove", join(ROOT, "assets/samples/three-way-stair.loadside")]).status).toBe(0);
  });

  test("bad input: 2 with a line that names the file", () => {
    const wrong: readonly (readonly string[])[] = [
      [join(folder, "gone.loadside")],
      [LAUNDRY, "--state", "proposed"],
      [LAUNDRY, "--state", "someday"],
      [],
    ];
    for (const args of wrong) {
      const { status, stdout, stderr } = loadside(["prove", ...args]);
      expect([status, stdout]).toEqual([2, ""]);
      expect(stderr).toMatch(/^[^\n]+\n$/);
    }
    const piped = loadside(["prove", "-"], { input: "{" });
    expect([piped.status, piped.stdout]).toEqual([2, ""]);
    expect(piped.stderr).toMatch(/^standard input: [^\n]+\n$/);
  });

  test("reads standard input, and its help tells the tests", () => {
    expect(loadside(["prove", "-"], { input: readFileSync(PROPOSED) }).status).toBe(0);
    const help = loadside(["prove", "--help"]);
    expect(help.status).toBe(0);
    for (const part of ["P1 isolation", "P6 quiet", "--state", "--json", "Exit status"])
      expect(help.stdout).toContain(part);
  });
});

test("outlets in a room that is not entered are counted, and leave the status as it is", () => {
  const document = JSON.parse(readFileSync(PROPOSED, "utf8"));
  const box = Object.values(document.proposed.enclosures as Record<string, { name: string; roomId?: string }>).find(
    ({ name }) => name === "B7",
  );
  if (box === undefined) throw new Error("There is no B7.");
  delete box.roomId;
  const file = join(folder, "no-room.loadside");
  writeFileSync(file, JSON.stringify(document));
  const { status, stdout } = loadside(["prove", file]);
  expect(stdout).toContain("Whether it is required for 1 more cannot be told: no room is entered.");
  expect(status).toBe(0);
  expect(loadside(["prove", PROPOSED]).stdout).not.toContain("cannot be told");
});
