import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { dirname } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { openSession } from "../../shared-model/analysis/session.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import { laundryBoth, statesOf } from "../analysis/laundry-states.ts";
import { drawing, laundryDrawing } from "../builders/drawing.ts";
import { laundryAsFound } from "../rules/laundry.ts";
import { buildLoadside, LAUNDRY, loadside, ROOT, withFile } from "./run-loadside.ts";

beforeAll(buildLoadside, 120_000);

interface Answer {
  readonly file: string;
  readonly edition: number;
  readonly editionVerified: boolean;
  readonly state: string;
  readonly findings: readonly {
    readonly rule: string;
    readonly severity: string;
    readonly subjects: readonly { readonly name: string }[];
    readonly numbers: Readonly<Record<string, number>>;
    readonly standing: string | null;
    readonly existing: boolean;
    readonly acknowledged: { readonly by: string; readonly reason: string; readonly at: string } | null;
    readonly fix: string | null;
    readonly offers: readonly string[];
  }[];
  readonly checksRun: number;
  readonly couldNotTell: readonly unknown[];
}

const namesOf = ({ findings }: Answer, rule: string): readonly string[] =>
  findings.filter((finding) => finding.rule === rule).flatMap(({ subjects }) => subjects.map(({ name }) => name));

/**
 * By hand, NFPA 70 Table 314.16(B): 12 AWG takes 2.25 in³. Ten insulated conductors, clamps once, the yoke twice; five
 * grounds once up to the 2017 edition, from 2020 on once for four and a quarter for the fifth. The box is the 30.3 in³
 * one of Table 314.16(A).
 */
const INSULATED_CLAMPS_YOKE = 10 * 2.25 + 2.25 + 2 * 2.25;
const NEEDED = new Map([
  [2011, INSULATED_CLAMPS_YOKE + 2.25],
  [2014, INSULATED_CLAMPS_YOKE + 2.25],
  [2017, INSULATED_CLAMPS_YOKE + 2.25],
  [2020, INSULATED_CLAMPS_YOKE + 2.25 + 2.25 / 4],
  [2023, INSULATED_CLAMPS_YOKE + 2.25 + 2.25 / 4],
  [2026, INSULATED_CLAMPS_YOKE + 2.25 + 2.25 / 4],
]);

describe("the laundry box as found", () => {
  test.each([...NEEDED])("edition %d: overfull by the allowances of that edition", (edition, neededIn3) => {
    const { status, stdout, stderr } = loadside(["check", LAUNDRY, "--json", "--edition", String(edition)]);
    expect([status, stderr]).toEqual([1, ""]);
    const answer: Answer = JSON.parse(stdout);
    expect(answer).toMatchObject({ file: LAUNDRY, edition, editionVerified: edition !== 2026, state: "as-found" });
    expect(answer.findings.filter(({ rule }) => rule === "box-overfull")).toMatchObject([
      { severity: "violation", subjects: [{ kind: "enclosure", name: "B1" }], numbers: { neededIn3, volumeIn3: 30.3 } },
    ]);
    expect(answer.checksRun).toBeGreaterThan(0);
  });

  test.each([2017, 2020, 2023])("edition %d: R1, R2, R3 and R4 lack protection, R5 in the hall does not", (edition) => {
    const answer: Answer = JSON.parse(loadside(["check", LAUNDRY, "--json", "--edition", String(edition)]).stdout);
    const told = answer.findings.filter(({ rule }) => rule === "outlet-not-protected");
    expect(told.map(({ subjects }) => subjects[0]?.name)).toEqual(["R1"]);
    expect(told).toMatchObject([{ folded: 3, message: expect.stringContaining("same reason: R2, R3 and R4.") }]);
  });

  test("the edition is that of the drawing unless told, and 31.5 and 32.0625 are the sums", () => {
    const answer: Answer = JSON.parse(loadside(["check", LAUNDRY, "--json"]).stdout);
    expect(answer.edition).toBe(2020);
    expect([...NEEDED.values()]).toEqual([31.5, 31.5, 31.5, 32.0625, 32.0625, 32.0625]);
  });

  test("a person reads what, where, by how much, and how many checks stand behind it", () => {
    const { status, stdout, stderr } = loadside(["check", "laundry-box.loadside"], { cwd: dirname(LAUNDRY) });
    expect([status, stderr]).toEqual([1, ""]);
    expect(stdout).toMatch(
      /^laundry-box\.loadside: edition 2020, as found\n\nviolation {2}box-overfull {2}B1\n {2}B1 needs 32\.0625 in³/,
    );
    expect(stdout).toMatch(/\n\d+ findings in \d+ checks run, \d+ could not be told\.\n$/);
    expect(stdout).not.toMatch(/\bsafe\b|compliant/i);
    expect(loadside(["check", LAUNDRY, "--edition", "2026"]).stdout).toContain(
      "edition 2026 (2023 text, not verified)",
    );
  });

  test("standard input is a file like any other", () => {
    const { status, stdout } = loadside(["check", "-", "--json"], { input: readFileSync(LAUNDRY) });
    const { stdout: fromFile } = loadside(["check", LAUNDRY, "--json"]);
    expect(status).toBe(1);
    expect(JSON.parse(stdout)).toEqual({ ...JSON.parse(fromFile), file: "-" });
  });

  test("it runs through npm, from where the person stands", () => {
    const args = ["--prefix", ROOT, "run", "-s", "loadside", "--", "check", "laundry-box.loadside", "--json"];
    const ended = spawnSync("npm", args, { cwd: dirname(LAUNDRY), encoding: "utf8" });
    expect([ended.status, ended.stderr]).toEqual([1, ""]);
    expect(ended.stdout).toBe(loadside(["check", "laundry-box.loadside", "--json"], { cwd: dirname(LAUNDRY) }).stdout);
  });
});

describe("an edition that is not the whole of a verified text", () => {
  const by = (edition: string, ...more: readonly string[]) =>
    loadside(["check", LAUNDRY, "--edition", edition, ...more]);

  test("CSA C22.1 counts box fill and says once that nothing else is covered", () => {
    const { status, stdout } = by("CSA-C22.1", "--json");
    const answer = JSON.parse(stdout);
    expect(answer).toMatchObject({ edition: "CSA-C22.1", countingOnly: true, editionVerified: true });
    expect(answer.couldNotTell.map(({ rule }: { readonly rule: string }) => rule)).toEqual(["not-covered"]);
    // 13 × 1.75 in³ in a box that Table 23 credits with 30: it fits, where NFPA 70 finds it overfull.
    expect([status, namesOf(answer, "box-overfull")]).toEqual([0, []]);
    const text = by("CSA-C22.1").stdout;
    expect(text).toContain("edition CSA-C22.1 (for counting only)");
    expect(text).toContain("Not covered by this rule set");
  });

  test.each([
    ["2011", "edition 2011 (for counting only)", "by the 2017 text, not verified", 2017],
    ["2014", "edition 2014 (for counting only)", "by the 2017 text, not verified", 2017],
    ["2026", "edition 2026 (2023 text, not verified)", "by the 2023 text, not verified", 2023],
  ] as const)("%s says so at the head and on findings", (edition, head, note, textOf) => {
    expect(by(edition).stdout).toContain(head);
    expect(by(edition).stdout).toContain(note);
    const { findings } = JSON.parse(by(edition, "--json").stdout);
    const told = findings.map(({ textOf: one }: { readonly textOf: number | null }) => one);
    expect(new Set(told.filter((one: number | null) => one !== null))).toEqual(new Set([textOf]));
  });
});

describe("local amendments", () => {
  const amended = textToSave({
    ...drawing(2020, "Amended").project,
    amendments: [
      {
        rule: "box-overfull",
        change: { kind: "value", name: "clampAllowances", value: 2 },
        reason: "The county counts clamps twice.",
        by: "the county",
      },
      { rule: "cover-missing", change: { kind: "off" }, reason: "Covers come last." },
      { rule: "covers", change: { kind: "off" }, reason: "A slip." },
    ],
  });

  test("stand at the head of what is printed, with those that change nothing", () => {
    withFile(amended, (file) => {
      const { stdout } = loadside(["check", file]);
      expect(stdout).toContain(
        "Local amendment: box-overfull reads clampAllowances as 2, required by the county. Reason: The county counts clamps twice.",
      );
      expect(stdout).toContain("Local amendment: cover-missing is switched off. Reason: Covers come last.");
      expect(stdout).toContain('It changes nothing. There is no rule "covers".');
      expect(stdout).toContain("caution  rule-switched-off");
    });
  });

  test("are in the JSON, and on the findings that they touch", () => {
    withFile(amended, (file) => {
      const { amendments } = JSON.parse(loadside(["check", file, "--json"]).stdout);
      expect(amendments).toMatchObject([
        { rule: "box-overfull", by: "the county", takesEffect: true, problem: null },
        { rule: "cover-missing", change: { kind: "off" }, by: null, takesEffect: true },
        { rule: "covers", takesEffect: false, problem: 'There is no rule "covers".' },
      ]);
    });
    const laundry = JSON.parse(readFileSync(LAUNDRY, "utf8"));
    const amendments = JSON.parse(amended).amendments;
    withFile(JSON.stringify({ ...laundry, amendments }), (file) => {
      const { findings } = JSON.parse(loadside(["check", file, "--json"]).stdout);
      const [overfull] = findings.filter(({ rule }: { readonly rule: string }) => rule === "box-overfull");
      expect(overfull.amendments).toEqual([
        { value: "clampAllowances", is: 2, was: 1, reason: "The county counts clamps twice.", by: "the county" },
      ]);
      expect(loadside(["check", file]).stdout).toContain(
        "By local amendment of the county, clampAllowances is 2 in place of 1: The county counts clamps twice.",
      );
    });
  });
});

describe("what a check answers", () => {
  const empty = textToSave(drawing(2023, "Nothing drawn").project);

  test("nothing at danger or violation ends with status 0", () => {
    withFile(empty, (file) => {
      expect(loadside(["check", file]).stdout).toMatch(/\nNo findings in \d+ checks? run, 0 could not be told\.\n$/);
      const { status, stdout } = loadside(["check", file, "--json"]);
      expect([status, JSON.parse(stdout)]).toMatchObject([0, { edition: 2023, findings: [], couldNotTell: [] }]);
    });
  });

  test("a finding has every key, a missing fact has its name", () => {
    const unknown = drawing(2020)
      .box("B1", "square-4-2-1-8", { set: { volume: { kind: "unknown" } } })
      .device("R1", "receptacle-15", "B1")
      .outside("C1", "B1")
      .land("C1.bk@B1", "R1.H1").project;
    withFile(textToSave(unknown), (file) => {
      const answer = JSON.parse(loadside(["check", file, "--json"]).stdout);
      for (const finding of answer.findings)
        expect(Object.keys(finding).sort()).toEqual(
          "acknowledged amendments basis existing fix folded message numbers offers rule section sectionConfidence severity standing status subjects textOf".split(
            " ",
          ),
        );
      for (const missing of answer.couldNotTell)
        expect(Object.keys(missing).sort()).toEqual(["message", "missing", "rule", "subjects"]);
      expect([...answer.findings, ...answer.couldNotTell].map(({ rule }) => rule)).toContain("box-volume-unknown");
    });
  });

  test("several files, or both states, make an array in the order asked for", () => {
    const both = laundryDrawing().propose().project;
    withFile(textToSave(both), (file) => {
      const states = (args: readonly string[]) => JSON.parse(loadside(["check", "--json", ...args]).stdout);
      expect(states([file]).state).toBe("proposed");
      expect(states([file, "--state", "as-found"]).state).toBe("as-found");
      expect(states([file, "--state", "both"]).map((answer: Answer) => answer.state)).toEqual(["as-found", "proposed"]);
      const two = states([LAUNDRY, file]);
      expect(two.map((answer: Answer) => [answer.file, answer.state])).toEqual([
        [LAUNDRY, "as-found"],
        [file, "proposed"],
      ]);
    });
  });

  test("one bad file among several is told, the others are answered, and the status is 2", () => {
    const { status, stdout, stderr } = loadside(["check", "no-such.loadside", LAUNDRY, "--json"]);
    expect([status, JSON.parse(stdout).length]).toEqual([2, 1]);
    expect(stderr).toBe("no-such.loadside: There is no such file. Check its name and folder.\n");
  });

  test("a state that is not there, a state or an edition that is none", () => {
    const proposed = loadside(["check", LAUNDRY, "--state", "proposed"]);
    expect([proposed.status, proposed.stdout]).toEqual([2, ""]);
    expect(proposed.stderr).toMatch(/^.*laundry-box\.loadside: \/proposed: Nothing is proposed in it yet\. .*\n$/);
    for (const args of [
      ["--state", "found"],
      ["--edition", "2019"],
    ]) {
      const { status, stdout, stderr } = loadside(["check", LAUNDRY, ...args]);
      expect([status, stdout]).toEqual([2, ""]);
      expect(stderr).toMatch(/^loadside: .*Allowed choices are .*\n$/);
    }
  });

  test("a newer document is refused here even where a window may show it", () => {
    const newer = readFileSync(LAUNDRY, "utf8").replace('"version": 1', '"version": 2');
    withFile(newer, (file) => {
      const { status, stderr } = loadside(["check", file]);
      expect([status, stderr]).toEqual([
        2,
        `${file}: /version: It is of version 2 of the file format, newer than this program. Check it with a newer one.\n`,
      ]);
    });
  });
});

describe("as found and proposed", () => {
  const text = textToSave(laundryBoth());
  const check = (file: string, ...args: readonly string[]) => loadside(["check", file, "--json", ...args]);
  const told = ({ findings }: Answer, rule: string) =>
    findings
      .filter((finding) => finding.rule === rule)
      .map(({ subjects, standing, severity }) => `${subjects[0]?.name} ${standing} ${severity}`);

  test("both are an array, and before anything is proposed as found alone is one, too", () => {
    withFile(text, (file) => {
      const both: readonly Answer[] = JSON.parse(check(file, "--state", "both").stdout);
      expect(both.map(({ state }) => state)).toEqual(["as-found", "proposed"]);
    });
    const { status, stdout } = check(LAUNDRY, "--state", "both");
    expect([status, JSON.parse(stdout)]).toMatchObject([1, [{ state: "as-found" }]]);
    for (const { standing, existing } of JSON.parse(stdout)[0].findings)
      expect([standing, existing]).toEqual([null, false]);
  });

  test("findings say how they stand, whichever is asked for", () => {
    withFile(text, (file) => {
      const [asFound, proposed]: readonly Answer[] = JSON.parse(check(file, "--state", "both").stdout);
      if (asFound === undefined || proposed === undefined) throw new Error("Two answers were asked for.");
      expect(told(asFound, "outlet-not-protected")).toEqual(["R1 repaired violation"]);
      expect(told(asFound, "box-overfull")).toEqual(["B1 repaired violation"]);
      expect(told(proposed, "outlet-not-protected")).toEqual([]);
      expect(JSON.parse(check(file).stdout)).toEqual(proposed);
      expect(JSON.parse(check(file, "--state", "as-found").stdout)).toEqual(asFound);
    });
  });

  test("the edition that is asked for holds for both", () => {
    withFile(text, (file) => {
      const both: readonly Answer[] = JSON.parse(check(file, "--state", "both", "--edition", "2017").stdout);
      expect(both.map(({ edition }) => edition)).toEqual([2017, 2017]);
      // By hand, edition 2017: ten insulated, clamps, yoke, all grounds once: 31.5 in³ in 30.3.
      expect(both[0]?.findings.find(({ rule }) => rule === "box-overfull")?.numbers).toMatchObject({ neededIn3: 31.5 });
    });
  });

  test("what was there before, at a box that nobody opens, is told as a caution and does not count", () => {
    withFile(textToSave(statesOf(laundryAsFound(), laundryAsFound())), (file) => {
      const { status, stdout } = check(file);
      const answer: Answer = JSON.parse(stdout);
      expect(status).toBe(0);
      expect(told(answer, "box-overfull")).toEqual(["B1 inherited caution"]);
      expect(answer.findings.find(({ rule }) => rule === "box-overfull")?.existing).toBe(true);
      expect([check(file, "--state", "as-found").status, check(file, "--state", "both").status]).toEqual([1, 1]);
    });
  });

  test("a person reads the findings by how they stand to the plan", () => {
    const drawn = () => laundryAsFound().removeJumper("B2g");
    const plan = drawn().put({ "C5.wh@B6": "cap" }).jumper("n", "B1", "Z", "bond", { colour: "bare" });
    withFile(textToSave(statesOf(drawn(), plan)), (file) => {
      const proposed = loadside(["check", file]).stdout;
      const order = [
        "Introduced by the plan:",
        "open-neutral  R5",
        "Inherited, at boxes that the work opens:",
        "box-overfull  B1",
        "Inherited, not touched:",
        "device-egc-missing  R2",
        "a violation that was there before",
      ];
      expect(order.map((words) => proposed.indexOf(words))).toEqual(
        [...order.map((words) => proposed.indexOf(words))].sort((a, b) => a - b),
      );
      for (const words of order) expect(proposed).toContain(words);
      expect(proposed).not.toContain("Repaired by the plan:");
    });
    withFile(text, (file) => {
      const asFound = loadside(["check", file, "--state", "as-found"]).stdout;
      expect(asFound).toMatch(/\n\nRepaired by the plan:\n\n/);
      expect(asFound.indexOf("box-overfull")).toBeGreaterThan(asFound.indexOf("Repaired by the plan:"));
    });
    expect(loadside(["check", LAUNDRY]).stdout).not.toMatch(/ the plan:|Inherited|Stays:/);
  });

  test("a person's word is told and changes nothing of the status; it covers no finding that says something else", () => {
    const asFound = laundryAsFound().project();
    const [overfull] = openSession(asFound)
      .report()
      .findings.filter(({ rule }) => rule === "box-overfull");
    if (overfull === undefined) throw new Error("The box is overfull.");
    const word = { by: "A. Owner", reason: "new box is ordered", at: "2026-05-03T10:00:00.000Z" };
    const saved = (said: string) =>
      textToSave({
        ...asFound,
        acknowledgements: [{ finding: overfull.key, state: "as-found", said, ...word }],
      });
    withFile(saved(overfull.message), (file) => {
      const { status, stdout } = check(file);
      expect(status).toBe(1);
      const words = JSON.parse(stdout).findings.map(({ rule, acknowledged }: Answer["findings"][number]) => [
        rule,
        acknowledged,
      ]);
      expect(words).toContainEqual(["box-overfull", word]);
      expect(words.filter(([, acknowledged]: [string, unknown]) => acknowledged !== null)).toHaveLength(1);
      expect(loadside(["check", file]).stdout).toContain(
        "Acknowledged by A. Owner on 2026-05-03T10:00:00.000Z: new box is ordered",
      );
    });
    withFile(saved("B1 needs less."), (file) => {
      for (const { acknowledged } of JSON.parse(check(file).stdout).findings) expect(acknowledged).toBeNull();
    });
  });

  test("a fix is told in proposed only, by its command", () => {
    const doubled = () => laundryAsFound().jumper("extra", "B1", "X", "R1.H1");
    withFile(textToSave(statesOf(doubled(), doubled())), (file) => {
      const [asFound, proposed]: readonly Answer[] = JSON.parse(check(file, "--state", "both").stdout);
      const fixOf = (answer: Answer | undefined) =>
        answer?.findings.filter(({ rule }) => rule === "two-wires-one-screw").map(({ fix }) => fix);
      expect(fixOf(asFound)).toEqual([null]);
      expect(fixOf(proposed)).toEqual([expect.stringMatching(/^[a-z]+(-[a-z]+)+$/)]);
      expect(loadside(["check", file]).stdout).toContain("  Fix: ");
    });
  });
});
