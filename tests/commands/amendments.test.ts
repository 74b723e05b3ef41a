import { describe, expect, test } from "vitest";
import { amendableRules } from "../../shared-model/catalog/amendable-rules.ts";
import type { CommandArgs } from "../../shared-model/commands/command-args.ts";
import { refusalOf, runCommand } from "../../shared-model/commands/run-command.ts";
import type { Amendment, Project } from "../../shared-model/model/project.ts";
import { takesFractions, unitOfValue, valueWords } from "../../shared-model/model/value-unit.ts";
import { laundryAsFound } from "../builders/drawing.ts";

type Set = CommandArgs["set-amendment"];

const OFF: Set = { rule: "cover-missing", change: { kind: "off" }, reason: "Covers come last.", by: "the site office" };
const value = (name: string, number: number, rule = "box-overfull"): Set => ({
  rule,
  change: { kind: "value", name, value: number },
  reason: "By-law 12 counts otherwise.",
  by: "the county",
});

function set(project: Project, args: Set): Project {
  const done = runCommand(project, { command: "set-amendment", args });
  if (!done.ok) throw new Error(done.refusal.message);
  return done.project;
}
const refused = (args: Set, project = laundryAsFound()) => refusalOf(project, { command: "set-amendment", args });

describe("a local amendment", () => {
  test("is written down with its reason and who asks for it, without the blanks around them", () => {
    const project = set(laundryAsFound(), { ...OFF, reason: " Covers come last. ", by: " the site office " });
    expect(project.amendments).toEqual([OFF]);
  });

  test("of another value stands beside it; of the same takes its place and keeps its order", () => {
    const two = set(set(laundryAsFound(), value("clampAllowances", 2)), OFF);
    const changed = set(two, { ...value("clampAllowances", 3), reason: "Corrected." });
    expect(changed.amendments.map(({ change }) => change)).toEqual([
      { kind: "value", name: "clampAllowances", value: 3 },
      { kind: "off" },
    ]);
    expect(changed.amendments[0]?.reason).toBe("Corrected.");
    expect(set(changed, value("loopAllowances", 3)).amendments.length).toBe(3);
  });

  test("takes the place of all that a file holds of the same", () => {
    const old: Amendment = { rule: "cover-missing", change: { kind: "off" }, reason: "old" };
    const project: Project = { ...laundryAsFound(), amendments: [old, value("clampAllowances", 2), old] };
    expect(set(project, OFF).amendments).toEqual([OFF, value("clampAllowances", 2)]);
  });

  test.each<[string, Set, string, RegExp]>([
    ["a rule that does not exist", { ...OFF, rule: "covers" }, "unknown-rule", /no rule “covers”/],
    ["a name of the language", { ...OFF, rule: "constructor" }, "unknown-rule", /no rule/],
    ["a value of no such rule", value("clampAllowances", 1, "gone"), "unknown-rule", /no rule “gone”/],
    ["a value that it does not read", value("wiresPerScrew", 2), "unknown-value", /It reads “loopLengthIn”, /],
    ["a table", value("conductorAllowance", 2), "unknown-value", /no number “conductorAllowance”/],
    ["a value of a rule without any", value("x", 2, "cover-missing"), "no-value", /can only be switched off/],
    ["less than nothing", value("clampAllowances", -1), "not-a-value", /0 or more/],
    ["half of a count", value("clampAllowances", 0.5), "not-a-value", /“Clamp allowances” is a count/],
    ["no reason", { ...OFF, reason: " \n" }, "reason-required", /Say why/],
    ["nobody who asks for it", { ...OFF, by: " " }, "name-required", /Say who/],
  ])("is refused with a kind sentence: %s", (_what, args, code, words) => {
    const refusal = refused(args);
    expect(refusal?.code).toBe(code);
    expect(refusal?.message).toMatch(words);
    expect(refusal?.message).toMatch(/\.$/);
  });

  test("half an inch is no half of a count", () => {
    expect(refused(value("loopLengthIn", 10.5))).toBeUndefined();
  });

  test("the same again changes nothing, and says so", () => {
    const project = set(laundryAsFound(), OFF);
    expect(refused(OFF, project)?.code).toBe("nothing-to-change");
    expect(refused({ ...OFF, reason: "Another." }, project)).toBeUndefined();
    // One of an older file does not tell who asked: it can be told now.
    const { by: _by, ...older } = OFF;
    expect(refused(OFF, { ...laundryAsFound(), amendments: [older] })).toBeUndefined();
  });

  test("is taken back: the value alone, or the switching off alone", () => {
    const project = set(set(laundryAsFound(), value("clampAllowances", 2)), { ...OFF, rule: "box-overfull" });
    const without = (args: CommandArgs["remove-amendment"]) => {
      const done = runCommand(project, { command: "remove-amendment", args });
      return done.ok ? done.project.amendments.map(({ change }) => change.kind) : done.refusal.code;
    };
    expect(without({ rule: "box-overfull", value: "clampAllowances" })).toEqual(["off"]);
    expect(without({ rule: "box-overfull" })).toEqual(["value"]);
    expect(without({ rule: "box-overfull", value: "loopAllowances" })).toBe("unknown-item");
    expect(without({ rule: "cover-missing" })).toBe("unknown-item");
  });

  test("one of a rule that is gone can be taken back too", () => {
    const project: Project = { ...laundryAsFound(), amendments: [{ ...OFF, rule: "gone" }] };
    expect(refusalOf(project, { command: "remove-amendment", args: { rule: "gone" } })).toBeUndefined();
  });
});

test("every number that can be amended has a name in words, and is a count or has a unit", () => {
  for (const name of new Set(Object.values(amendableRules).flat())) {
    expect(valueWords(name)).toMatch(/^[A-Z][a-z-]+( ([a-z-]+|\d+|AWG))*$/);
    expect(takesFractions(name)).toBe(unitOfValue(name) !== undefined);
  }
  expect(valueWords("loopLengthIn")).toBe("Loop length");
  expect(valueWords("deepDeviceMlPerCm")).toBe("Room that a deep device takes");
  expect([unitOfValue("loopLengthIn"), unitOfValue("protectedUpToA"), unitOfValue("clampAllowances")]).toEqual([
    "in.",
    "A",
    undefined,
  ]);
});
