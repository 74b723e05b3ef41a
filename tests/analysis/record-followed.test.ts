import { expect, test } from "vitest";
import { openSession } from "../../shared-model/analysis/session.ts";
import type { CommandCall } from "../../shared-model/answers/command-call.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import { deviceId } from "../builders/ids.ts";
import { openSample } from "../builders/samples/open-sample.ts";

/** A document followed edit by edit: what is said of the test record is what a copy from nothing says. */
test("the rule about the test record follows readings, the word that the work is done, and what is undone", () => {
  let project = openSample("laundry-proposed");
  const session = openSession(structuredClone(project));
  const said = (of = session): readonly string[] =>
    of
      .report("proposed")
      .findings.filter(({ rule }) => rule === "test-record-missing")
      .map(({ subjects, message }) => `${subjects[0]?.name} ${/RESET is not/.test(message) ? "no RESET" : "no TEST"}`)
      .sort();
  let revision = 0;
  const run = (call: CommandCall): readonly string[] => {
    const done = runCommand(project, call);
    if (!done.ok) throw new Error(done.refusal.message);
    project = done.project;
    session.applyPatches(structuredClone(done.patches), ++revision);
    expect(said()).toEqual(said(openSession(structuredClone(project))));
    return said();
  };
  const press = (id: string, test: "own-test" | "reset", stage = "after"): CommandCall => ({
    command: "add-reading",
    args: {
      id,
      reading: {
        instrument: test,
        points: [deviceId("R1b")],
        value: "R1b",
        record: { test, stage, item: "R1b", outlets: [deviceId("R1b")] },
      },
    },
  });
  const workDone = (value: boolean | null): CommandCall => ({
    command: "set-property",
    args: { state: "proposed", target: { kind: "project" }, field: "workDone", value },
  });
  expect(said()).toEqual([]);
  expect(run(workDone(true))).toEqual(["R1b no TEST", "R4b no TEST"]);
  expect(run(press("m1", "own-test"))).toEqual(["R1b no RESET", "R4b no TEST"]);
  expect(run(press("m2", "reset"))).toEqual(["R4b no TEST"]);
  expect(run({ command: "remove-reading", args: { id: "m1" } })).toEqual(["R1b no TEST", "R4b no TEST"]);
  // RESET was recorded after the work: that it is begun to be tested is known without the word.
  expect(run(workDone(null))).toEqual(["R1b no TEST", "R4b no TEST"]);
  expect(run({ command: "remove-reading", args: { id: "m2" } })).toEqual([]);
});
