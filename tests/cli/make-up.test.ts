import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { buildLoadside, LAUNDRY, loadside, ROOT } from "./run-loadside.ts";

const folder = mkdtempSync(join(tmpdir(), "loadside-makeup-"));
const INTENT = {
  supply: "C1",
  downstream: [
    { cable: "C2", protect: true },
    { cable: "C3", protect: false },
    { cable: "C4" },
    { cable: "cable-C5", protect: true },
  ],
  replace: [{ device: "R1", type: "dual-function-receptacle-15", name: "R1b" }],
};

let count = 0;
function withIntent(intent: unknown): string {
  count += 1;
  const path = join(folder, `intent-${count}.json`);
  writeFileSync(path, typeof intent === "string" ? intent : JSON.stringify(intent));
  return path;
}

beforeAll(buildLoadside, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("makeup", () => {
  test("prints nets, splices, jumpers, moves and findings, and writes a drawing that check reads", () => {
    const out = join(folder, "made.loadside");
    const path = withIntent(INTENT);
    const { status, stdout, stderr } = loadside([
      "makeup",
      LAUNDRY,
      "--box",
      "B1",
      "--intent",
      path,
      "--out",
      out,
      "--json",
    ]);
    expect([status, stderr]).toEqual([0, ""]);
    const answer = JSON.parse(stdout);
    expect(Object.keys(answer)).toEqual(expect.arrayContaining(["groups", "splices", "jumpers", "moves", "findings"]));
    expect(answer.moves).toMatchObject({ detach: 10, attach: 16, newSplices: 3 });
    expect(answer.groups.map(({ name, ends }: { name: string; ends: unknown[] }) => [name, ends.length])).toEqual([
      ["HL", 3],
      ["NL", 3],
      ["HD", 2],
      ["ND", 2],
      ["E", 5],
    ]);
    expect(answer.moves.ends).toContainEqual({ id: "cable-C2.bk.a", name: "C2 BK", from: "X", to: "HD" });
    const proved = JSON.parse(loadside(["prove", out, "--json"]).stdout);
    const by = Object.fromEntries(
      proved.outlets.map(({ name, protectedBy }: { name: string; protectedBy: string[] }) => [name, protectedBy]),
    );
    expect(by).toMatchObject({ R1b: ["R1b"], R2: ["R1b"], R3: ["R1b"], R4: [], R5: ["R1b"], L1: [] });
  });

  test("as text: the card of the box", () => {
    const { status, stdout } = loadside(["makeup", LAUNDRY, "--box", "box-B1", "--intent", withIntent(INTENT)]);
    expect(status).toBe(0);
    expect(stdout).toMatch(/HD, new: a BK, C2 BK, C5 BK \(3, twist-medium\)/);
    expect(stdout).toMatch(/Moves: 10 off, 16 on, 3 new joints/);
  });

  test.each([
    ["the least work unless told", [], 0, "Take the internal clamps of B1 out and fit connectors outside"],
    ["the box as it is", ["--room", "as-it-is"], 0, null],
    ["a way that is none", ["--room", "a hammer"], 2, undefined],
  ])("room for an overfull box: %s", (_, more, wanted, room) => {
    const path = withIntent(INTENT);
    const args = ["makeup", LAUNDRY, "--box", "B1", "--intent", path, "--json", ...more];
    const { status, stdout, stderr } = loadside(args);
    expect(status).toBe(wanted);
    if (status === 0) expect(JSON.parse(stdout)).toMatchObject({ room, rooms: [{ taken: room !== null }, {}, {}] });
    else expect(stderr).toMatch(/"a hammer" is no way to give the box room. Give one of "Take the internal clamps/);
  });

  test("what would bring a violation is not made: one line, status 1, no file", () => {
    const out = join(folder, "not-made.loadside");
    const replace = [{ device: "R1", type: "gfci-receptacle-15" }];
    const path = withIntent({ ...INTENT, replace });
    const { status, stdout, stderr } = loadside([
      "makeup",
      LAUNDRY,
      "--box",
      "B1",
      "--intent",
      path,
      "--out",
      out,
      "--json",
    ]);
    expect(status).toBe(1);
    expect(stderr.trim().split("\n")).toEqual([expect.stringMatching(/dual-function.*\(replace-needs-afci\)$/)]);
    expect(JSON.parse(stdout).refused.findings).toMatchObject([{ rule: "replace-needs-afci", severity: "violation" }]);
    expect(existsSync(out)).toBe(false);
  });

  test.each([
    ["no JSON", "{", /intent-\d+\.json: .*/],
    ["not an object", [], /: Give an object; it is a list/],
    ["no supply", { downstream: [] }, /\/supply: Name the cable that feeds the box/],
    ["an unknown field", { ...INTENT, protect: [] }, /\/protect: This field is not known here/],
    [
      "a cable that is elsewhere",
      { ...INTENT, supply: "C7" },
      /\/supply: B1 has no cable "C7"; it has C1, C2, C3, C4, C5/,
    ],
    [
      "no flag",
      { ...INTENT, downstream: [{ cable: "C2", protect: "yes" }] },
      /\/downstream\/0\/protect: Give true or false; it is "yes"/,
    ],
    [
      "a cable left out",
      { supply: "C1", downstream: [{ cable: "C2" }] },
      /C3 enters B1 and the intent does not say what for/,
    ],
    [
      "a device that the stock has not",
      { ...INTENT, replace: [{ device: "R1", type: "gfci" }] },
      /\/replace\/0\/type: The stock has no device "gfci"/,
    ],
    [
      "a connector that the stock has not",
      { ...INTENT, connectors: ["clamp-9"] },
      /\/connectors\/0: The stock has no connector "clamp-9"/,
    ],
  ] as const)("bad input, %s: one line with its place, status 2", (_name, bad, line) => {
    const { status, stdout, stderr } = loadside(["makeup", LAUNDRY, "--box", "B1", "--intent", withIntent(bad)]);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr.trim().split("\n")).toEqual([expect.stringMatching(line)]);
  });

  test.each([
    ["a box that is not there", ["--box", "B99"], /It has no box "B99"/],
    ["a panel", ["--box", "P"], /"P" is a panel/],
  ] as const)("%s: status 2", (_name, options, line) => {
    const { status, stderr } = loadside(["makeup", LAUNDRY, ...options, "--intent", withIntent(INTENT)]);
    expect(status).toBe(2);
    expect(stderr).toMatch(line);
  });

  test("a file that is there stays as it is", () => {
    const out = join(folder, "there.loadside");
    writeFileSync(out, "mine");
    const { status, stderr } = loadside([
      "makeup",
      LAUNDRY,
      "--box",
      "B1",
      "--intent",
      withIntent(INTENT),
      "--out",
      out,
    ]);
    expect(status).toBe(2);
    expect(stderr).toMatch(/It is there already/);
    expect(readFileSync(out, "utf8")).toBe("mine");
  });
});

describe("fit", () => {
  test("the laundry and then its freezer: the plan of the job, and a check without danger or violation", () => {
    const [one, two] = [join(folder, "one.loadside"), join(folder, "two.loadside")];
    const first = loadside(["fit", LAUNDRY, "--outlet", "R1", "--out", one, "--json"]);
    expect([first.status, first.stderr]).toEqual([0, ""]);
    const answer = JSON.parse(first.stdout);
    expect(answer).toMatchObject({
      device: { name: "R1b", type: "dual-function-receptacle-15" },
      fill: {
        before: { totalIn3: 32.0625, verdict: "overfull" },
        after: { totalIn3: 29.8125, spareIn3: 0.4875, verdict: "fits" },
      },
      moves: { detach: 10, attach: 16, newSplices: 3 },
      notOffered: [{ type: "gfci-receptacle-15" }],
    });
    const second = loadside(["fit", one, "--outlet", "R4", "--out", two]);
    expect(second.status).toBe(0);
    expect(second.stdout).toMatch(/Moves: 3 off, 3 on, 0 new joints/);
    const checked = JSON.parse(loadside(["check", two, "--json"]).stdout);
    const serious = checked.findings.filter(
      ({ severity }: { severity: string }) => severity === "danger" || severity === "violation",
    );
    expect(serious).toEqual([]);
    const proved = JSON.parse(loadside(["prove", two, "--json"]).stdout);
    expect(
      Object.fromEntries(
        proved.outlets.map(({ name, protectedBy }: { name: string; protectedBy: string[] }) => [
          name,
          protectedBy[0] ?? null,
        ]),
      ),
    ).toEqual({
      R1b: "R1b",
      R2: "R1b",
      R3: "R1b",
      R4b: "R4b",
      R5: "R1b",
      L1: null,
    });
  });

  test("a cable that is named goes where it is told", () => {
    const { status, stdout } = loadside([
      "fit",
      LAUNDRY,
      "--outlet",
      "R1",
      "--protect",
      "C3",
      "--leave",
      "C5",
      "--json",
    ]);
    expect(status).toBe(0);
    const sides = JSON.parse(stdout).sides.map(({ cables, side }: { cables: { name: string }[]; side: string }) => [
      cables[0]?.name,
      side,
    ]);
    expect(Object.fromEntries(sides)).toEqual({ C1: "LINE", C2: "LOAD", C3: "LOAD", C4: "LINE", C5: "LINE" });
  });

  test.each([
    ["an outlet that is not there", ["--outlet", "R9"], 2, /It has no outlet "R9"/],
    [
      "a switch",
      ["--outlet", "S1"],
      1,
      /S1 is no receptacle \(single-pole switch\): a ground-fault receptacle does not do its work/,
    ],
    [
      "a type that is none",
      ["--outlet", "R1", "--type", "receptacle-15"],
      1,
      /"receptacle-15" is no ground-fault receptacle/,
    ],
    ["a cable that is none", ["--outlet", "R1", "--leave", "C99"], 2, /No cable is named "C99"/],
  ] as const)("%s", (_name, options, wanted, line) => {
    const out = join(folder, "never.loadside");
    const { status, stderr } = loadside(["fit", LAUNDRY, ...options, "--out", out]);
    expect(status).toBe(wanted);
    expect(stderr.trim().split("\n")).toEqual([expect.stringMatching(line)]);
    expect(existsSync(out)).toBe(false);
  });

  test("a device that protects already is told", () => {
    const { status, stderr } = loadside([
      "fit",
      join(ROOT, "assets/samples/laundry-proposed.loadside"),
      "--outlet",
      "R2",
    ]);
    expect(status).toBe(1);
    expect(stderr).toMatch(/R2 is protected already, by R1b/);
  });
});
