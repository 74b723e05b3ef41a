import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { countOfPlaywright, countOfVitest, secondTries } from "./test-counts.mjs";

describe("the count of npm test", () => {
  const file = (status: string, assertionResults: { status: string }[]) => ({ status, assertionResults });

  test("adds up what the runners report", () => {
    const report = { numPassedTests: 5, numFailedTests: 0, numPendingTests: 0, numTodoTests: 0, testResults: [] };
    expect(countOfVitest(report, 0)).toEqual({ passed: 5, failed: 0, skipped: 0 });
    expect(countOfVitest({ ...report, numFailedTests: 2, numPendingTests: 1, numTodoTests: 1 }, 1)).toEqual({
      passed: 5,
      failed: 2,
      skipped: 2,
    });
    expect(countOfPlaywright({ stats: { expected: 3, unexpected: 1, flaky: 1, skipped: 1 } }, 1)).toEqual({
      passed: 4,
      failed: 1,
      skipped: 1,
    });
  });

  test("names what passed only when it was tried again, with the first reason", () => {
    const spec = (title: string, status: string, ...messages: (string | undefined)[]) => ({
      title,
      file: "a.spec.ts",
      line: 7,
      tests: [{ status, results: messages.map((message) => (message === undefined ? {} : { error: { message } })) }],
    });
    const suites = [
      {
        specs: [spec("one", "expected", undefined)],
        suites: [
          {
            specs: [
              spec("two", "flaky", "\u001b[31mToo late\u001b[39m\nand more", undefined),
              spec("three", "unexpected", "No", "No"),
            ],
          },
        ],
      },
    ];
    expect(secondTries({ suites })).toEqual([{ name: "a.spec.ts:7 two", why: "Too late" }]);
    expect(secondTries(undefined)).toEqual([]);
  });

  test("takes a file that cannot be loaded, a silent end and a run without tests for failures", () => {
    const broken = { numPassedTests: 5, numFailedTests: 0, testResults: [file("failed", []), file("passed", [])] };
    expect(countOfVitest(broken, 1).failed).toBe(1);
    expect(countOfVitest({ numPassedTests: 5, testResults: [] }, 1).failed).toBe(1);
    expect(countOfVitest(undefined, 0).failed).toBe(1);
    expect(countOfVitest({ numPassedTests: 0 }, 0).failed).toBe(1);
    expect(countOfPlaywright(undefined, 1).failed).toBe(1);
    expect(countOfPlaywright({ stats: {} }, 0).failed).toBe(1);
  });

  test("stands in the last line, and nothing run is no success", () => {
    const runner = fileURLToPath(new URL("./run.mjs", import.meta.url));
    const { status, stdout } = spawnSync(process.execPath, [runner, "--only=nothing"], { encoding: "utf8" });
    expect(stdout.trimEnd().split("\n").at(-1)).toBe("0 passed, 1 failed");
    expect(status).toBe(1);
  });
});
