import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { scopeAnswer } from "../../shared-model/analysis/scope-answer.ts";
import { openSession } from "../../shared-model/analysis/session.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import { laundryDrawing } from "../builders/drawing.ts";
import { openSample } from "../builders/samples/open-sample.ts";
import { buildLoadside, LAUNDRY, loadside, ROOT, withFile } from "./run-loadside.ts";

const JOB = join(ROOT, "assets/samples/laundry-proposed.loadside");

beforeAll(buildLoadside, 120_000);

describe("scope", () => {
  test("--json has changes, steps, materials and labels, and is what the session answers", () => {
    const { status, stdout, stderr } = loadside(["scope", JOB, "--json"]);
    // The plan introduces a violation of its own: a new receptacle in a laundry asks for arc-fault protection.
    expect([status, stderr]).toEqual([1, ""]);
    const answer = JSON.parse(stdout);
    expect(Object.keys(answer)).toEqual(expect.arrayContaining(["changes", "steps", "materials", "labels"]));
    const own = scopeAnswer(openSession(openSample("laundry-proposed")));
    expect(answer.steps).toEqual(own?.steps);
    expect(answer.materials).toEqual(own?.materials);
    expect(answer.labels).toEqual(own?.labels);
    expect(answer.totals).toMatchObject({ detach: 13, attach: 19, newJoints: 3, devices: 2 });
    const told = answer.changes.filter(({ box }: { box: { name: string } | null }) => box?.name === "B1");
    expect(told.reduce((sum: number, one: { detach: number }) => sum + one.detach, 0)).toBe(10);
    expect(told.reduce((sum: number, one: { attach: number }) => sum + one.attach, 0)).toBe(16);
  });

  test("the text says by box what moves, then materials, labels and steps", () => {
    const { status, stdout } = loadside(["scope", JOB]);
    expect(status).toBe(1);
    for (const line of [
      "Open: Q14 20 A in P",
      "B1, laundry: 10 detach, 16 attach, 3 new joints, 1 device, 3 new jumpers",
      "  K  C1 C3 C4 BK: X is HL",
      "  M  C2 BK: X -> HD",
      "B4, freezer: 3 detach, 3 attach, 0 new joints, 1 device",
      "  5 x cable connector for 12/2: B1 (verify listing)",
    ])
      expect(stdout.split("\n")).toContain(line);
    expect(stdout).toMatch(/^ {2}\d+\. HP1 B1: verify dead with Q14 open\.$/m);
    expect(stdout).toMatch(/^ {2}\d+\. CM11 A heater/m);
    expect(stdout).not.toMatch(/\b(safe|compliant)\b/i);
  });

  test("--box tells of one box, by name or id, in both forms", () => {
    const { stdout } = loadside(["scope", JOB, "--box", "B4"]);
    expect(stdout).toContain("B4, freezer: 3 detach, 3 attach");
    expect(stdout).not.toContain("C2 BK");
    const answer = JSON.parse(loadside(["scope", JOB, "--box", "box-B4", "--json"]).stdout);
    expect(answer.boxes.map(({ name }: { name: string }) => name)).toEqual(["B4"]);
    expect(answer.totals).toMatchObject({ detach: 3, attach: 3, boxes: 1 });
    expect(answer.steps.every(({ box }: { box?: { name: string } }) => box?.name === "B4")).toBe(true);
    expect(answer.materials.map(({ what }: { what: string }) => what)).toContain("GFCI receptacle, 15 A face");
  });

  test("a drawing in which nothing is proposed: one line, no fault", () => {
    const text = loadside(["scope", LAUNDRY]);
    expect([text.status, text.stderr]).toEqual([0, ""]);
    expect(text.stdout).toMatch(/laundry-box\.loadside: nothing is proposed in it, so there is no scope\.\n$/);
    const json = loadside(["scope", LAUNDRY, "--json"]);
    expect(JSON.parse(json.stdout)).toMatchObject({
      nothingProposed: true,
      changes: [],
      steps: [],
      materials: [],
      labels: [],
    });
  });

  test("proposed as found: no work, and the status of what proposed is", () => {
    withFile(textToSave(laundryDrawing().propose().project), (path) => {
      const { status, stdout } = loadside(["scope", path]);
      // What is violated as found, at boxes that nobody opens, stands as a caution: as check tells it.
      expect(status).toBe(loadside(["check", path]).status);
      expect(stdout).toContain("Nothing is other than as found.");
      expect(stdout).not.toContain("Steps");
    });
  });

  test("reads standard input", () => {
    const { stdout } = loadside(["scope", "-", "--box", "B1"], { input: readFileSync(JOB) });
    expect(stdout).toContain("standard input: edition 2020, as found to proposed");
  });

  test.each([
    [
      "a box that is not there",
      ["scope", JOB, "--box", "B99"],
      /: It has no box "B99"\. Name one of its boxes in --box\.\n$/,
    ],
    ["a file that is not there", ["scope", "no-such.loadside"], /^no-such\.loadside: There is no such file/],
    ["no file", ["scope"], /^loadside: missing required argument/],
    ["an option that it has not", ["scope", JOB, "--state", "proposed"], /^loadside: unknown option/],
  ])("%s: one line and status 2", (_, args, line) => {
    const { status, stdout, stderr } = loadside(args);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(line);
    expect(stderr.trimEnd().split("\n")).toHaveLength(1);
  });

  test("--help says what it does and how it ends", () => {
    const { status, stdout } = loadside(["scope", "--help"]);
    expect(status).toBe(0);
    expect(stdout).toMatch(/Exit status: 0 nothing at danger/);
  });
});
