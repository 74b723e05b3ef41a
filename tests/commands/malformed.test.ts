import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CommandCall } from "../../shared-model/answers/command-call.ts";
import { commands } from "../../shared-model/commands/registry.ts";
import { refusalOf, runCommand } from "../../shared-model/commands/run-command.ts";
import { invariantProblems } from "../../shared-model/queries/invariants.ts";
import { boxId, laundryAsFound } from "../builders/drawing.ts";
import { callOf } from "../builders/random-commands.ts";

const project = laundryAsFound();
const IDS = Object.keys(commands) as (keyof typeof commands)[];
const NEEDS_NOTHING = new Set<string>(["start-proposed", "reset-proposed", "discard-proposed"]);
const LONG = process.env.LOADSIDE_LONG !== undefined && process.env.LOADSIDE_LONG !== "";
const RUNS = LONG ? 50_000 : 5_000;

/** Never throws; what it does not refuse leaves a sound document. */
function survives(call: CommandCall): void {
  const done = runCommand(project, call);
  if (done.ok) expect(invariantProblems(done.project)).toEqual([]);
  else expect(done.refusal.message).toMatch(/[.]$/);
}

describe("arguments from anywhere", () => {
  test("an unknown command is refused", () => {
    for (const command of ["", "explode", "toString", "__proto__", "constructor"])
      expect(refusalOf(project, { command, args: {} })?.code).toBe("unknown-command");
    for (const call of [null, undefined, 7, {}, { command: 7 }])
      expect(refusalOf(project, call as unknown as CommandCall)?.code).toBe("unknown-command");
  });

  test.each(IDS)("%s refuses arguments that are none", (command) => {
    const needsSome = !NEEDS_NOTHING.has(command);
    for (const args of [undefined, null, 7, "x", [], ...(needsSome ? [{}] : []), { state: "tomorrow" }])
      expect(refusalOf(project, { command, args })?.code).toBe("malformed-arguments");
  });

  test("the refusal names the place", () => {
    const args = { state: "as-found", enclosure: boxId("B1"), end: "cable-C1.bk.a", at: { kind: "splice", splice: 7 } };
    expect(refusalOf(project, { command: "land-end", args })?.message).toContain("args.at.splice is not an id");
    expect(refusalOf(project, { command: "land-end", args: { ...args, extra: 1 } })?.message).toContain("args.extra");
  });

  test("names of what every object inherits are no ids", () => {
    const args = { state: "as-found", enclosure: "toString", end: "constructor.a" };
    expect(refusalOf(project, { command: "cap-end", args })?.code).toBe("malformed-arguments");
  });

  test("anything at all as arguments", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...IDS),
        fc.anything({ withNullPrototype: true, withBigInt: true }),
        (command, args) => {
          survives({ command, args });
        },
      ),
      { numRuns: RUNS },
    );
  });

  test("good arguments with one value exchanged", () => {
    const seed = fc.integer({ min: 0, max: 0x7fff_ffff });
    const strange = fc.oneof(
      fc.anything(),
      fc.constantFrom<unknown>(
        "__proto__",
        "toString",
        "\ud800",
        "",
        "as-found",
        Number.NaN,
        Number.POSITIVE_INFINITY,
        -1,
        1e300,
        2 ** 53,
        null,
        [],
        {},
        "box-B1",
        "x".repeat(100_000),
      ),
    );
    fc.assert(
      fc.property(fc.constantFrom(...IDS), seed, fc.nat(), strange, (command, from, where, value) => {
        const { args } = callOf(project, { command, seed: from }, 1);
        survives({ command, args: exchange(args, where, value) });
      }),
      { numRuns: RUNS },
    );
  });
});

/** A copy of plain data in which one leaf, counted around, is another value. */
function exchange(data: unknown, where: number, value: unknown): unknown {
  const leaves = countLeaves(data);
  let left = leaves === 0 ? -1 : where % leaves;
  const walk = (one: unknown): unknown => {
    if (typeof one !== "object" || one === null) return left-- === 0 ? value : one;
    if (Array.isArray(one)) return one.map(walk);
    return Object.fromEntries(Object.entries(one).map(([key, item]) => [key, walk(item)]));
  };
  return walk(data);
}

function countLeaves(data: unknown): number {
  if (typeof data !== "object" || data === null) return 1;
  return Object.values(data).reduce<number>((sum, item) => sum + countLeaves(item), 0);
}
