import { describe, expect, test } from "vitest";
import type { CommandArgs, TypedCall } from "../../shared-model/commands/command-args.ts";
import { applyPatches, runCommand } from "../../shared-model/commands/run-command.ts";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import { asId, type ReadingId } from "../../shared-model/model/ids.ts";
import type { Project } from "../../shared-model/model/project.ts";
import type { RecordedTest } from "../../shared-model/model/test-record.ts";
import { laundryDrawing } from "../builders/drawing.ts";
import { deviceId } from "../builders/ids.ts";
import { refused, titleOf } from "./asking.ts";

type Taken = CommandArgs["add-reading"]["reading"];

const ID = asId<ReadingId>("m1");
const R2 = deviceId("R2");
const line = (record: Partial<RecordedTest> = {}, more: Partial<Taken> = {}): Taken => ({
  instrument: "meter",
  points: [R2],
  value: "121.8",
  unit: "V",
  state: "as-found",
  takenAt: "2026-05-04",
  by: "Pat Example",
  instrumentId: "M-17",
  remark: "by the door",
  ...more,
  record: { test: "hot-neutral", stage: "before", item: "R2", box: "B2", ...record },
});
const added = (reading: Taken = line()) => laundryDrawing().run("add-reading", { id: ID, reading });

function thereAndBack(project: Project, call: TypedCall) {
  const result = runCommand(project, call);
  if (!result.ok) throw new Error(result.refusal.message);
  return { done: result.project, undone: applyPatches(result.project, result.inverse) };
}

describe("a line of the test record", () => {
  test("is kept word for word, and the file brings it back", () => {
    const expected = { kind: "figure", value: 119.6, within: 5, unit: "V" } as const;
    const reading = line({ expected });
    const { project } = added(reading);
    expect(project.readings[ID]).toEqual({ ...reading, id: ID, order: 0 });
    const opened = parseProject(textToSave(project));
    expect(opened.ok && opened.value.project.readings).toEqual(project.readings);
    expect(titleOf(laundryDrawing().project, "add-reading", { id: ID, reading })).toBe("Record “Hot to neutral” of R2");
  });

  test.each<[string, Partial<RecordedTest>, Partial<Taken>]>([
    ["volts that are no figure", {}, { value: "about 120" }],
    ["volts below nothing", {}, { value: "-1" }],
    ["volts beyond any dwelling", {}, { value: "1001" }],
    ["volts in another unit", {}, { unit: "mV" }],
    ["a word that no tester shows", { test: "polarity" }, { value: "fine" }],
    ["a word of another test", { test: "works" }, { value: "dead" }],
    ["a button without what went dark", { test: "own-test" }, { value: "opened" }],
    ["ohms that are no figure", { test: "continuity" }, { value: "low", unit: "ohm" }],
    ["a note without words", { test: "note" }, { value: "  " }],
  ])("%s: refused", (_name, record, more) => {
    expect(refused(laundryDrawing().project, "add-reading", { id: ID, reading: line(record, more) })).toBe(
      "not-a-result",
    );
  });

  test.each<[string, Partial<RecordedTest>, Partial<Taken>]>([
    ["no volts", {}, { value: "0" }],
    ["the most volts", {}, { value: "1000" }],
    ["open", { test: "continuity" }, { value: "open" }],
    ["no ohms", { test: "continuity" }, { value: "0.3", unit: "ohm" }],
    ["nothing went dark", { test: "own-test", outlets: [] }, { value: "nothing went dark" }],
    ["dead", { test: "dead" }, { value: "dead" }],
    ["a note", { test: "note" }, { value: "warm" }],
  ])("%s: taken", (_name, record, more) => {
    expect(added(line(record, more)).project.readings[ID]?.record).toMatchObject(record);
  });

  test("what was computed is no test", () => {
    const reading = line({}, { computed: true });
    expect(refused(laundryDrawing().project, "add-reading", { id: ID, reading })).toBe("computed-is-no-test");
    const { project } = added();
    expect(refused(project, "change-reading", { id: ID, reading })).toBe("computed-is-no-test");
  });
});

describe("corrected and removed", () => {
  test("a correction keeps the place in the order and what a newer program wrote; what is left out goes", () => {
    const house = added();
    house.run("add-reading", { id: asId<ReadingId>("m2"), reading: line({ stage: "after" }) });
    const { project } = house;
    const newer = {
      ...project,
      readings: { ...project.readings, [ID]: { ...project.readings[ID], fromElsewhere: 7 } },
    };
    const { remark: _gone, ...reading } = line({}, { value: "118" });
    const args = { id: ID, reading };
    expect(titleOf(newer as never, "change-reading", args)).toBe("Correct “Hot to neutral” of R2");
    const { done, undone } = thereAndBack(newer as never, { command: "change-reading", args });
    expect(done.readings[ID]).toEqual({ ...reading, id: ID, order: 0, fromElsewhere: 7 });
    expect(undone.readings).toEqual(newer.readings);
  });

  test("nothing changed, and what is not there, are told", () => {
    const { project } = added();
    expect(refused(project, "change-reading", { id: ID, reading: line() })).toBe("nothing-to-change");
    const gone = asId<ReadingId>("m9");
    expect(refused(project, "change-reading", { id: gone, reading: line() })).toBe("no-such-reading");
    expect(refused(project, "remove-reading", { id: gone })).toBe("no-such-reading");
  });

  test("removed, and brought back by undo", () => {
    const house = added();
    expect(titleOf(house.project, "remove-reading", { id: ID })).toBe("Remove “Hot to neutral” of R2");
    const { done, undone } = thereAndBack(house.project, { command: "remove-reading", args: { id: ID } });
    expect(done.readings).toEqual({});
    expect(undone.readings).toEqual(house.project.readings);
  });

  test("the record outlives what was tested, proposed, and a new proposed", () => {
    const house = added(line({ stage: "after" }));
    const { readings } = house.project;
    house.remove({ kind: "device", id: R2 });
    expect(house.project.readings).toEqual(readings);
    house.run("start-proposed", {}).run("discard-proposed", {});
    expect(house.project.readings).toEqual(readings);
  });
});
