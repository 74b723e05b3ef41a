import { describe, expect, test } from "vitest";
import { applyPatches, runCommand } from "../../shared-model/commands/run-command.ts";
import { asId, type OutletKey, type ReadingId } from "../../shared-model/model/ids.ts";
import type { Project, Reading } from "../../shared-model/model/project.ts";
import type { ExpectedTest, RecordedTest } from "../../shared-model/model/test-record.ts";
import { compareTest } from "../../shared-model/queries/compare-test.ts";
import { type RecordRow, testRecord } from "../../shared-model/queries/test-record.ts";
import { laundryDrawing } from "../builders/drawing.ts";
import { boxId, deviceId } from "../builders/ids.ts";
import { openSample } from "../builders/samples/open-sample.ts";

const line = (value: string, at: string, record: RecordedTest, more: Partial<Reading> = {}) => ({
  instrument: "meter" as const,
  points: [at],
  value,
  unit: "V",
  ...more,
  record,
});

function withReadings(project: Project, ...readings: readonly Omit<Reading, "id" | "order">[]): Project {
  const entries = readings.map((reading, order) => {
    const id = asId<ReadingId>(`m${order}`);
    return [id, { ...reading, id, order }] as const;
  });
  return { ...project, readings: Object.fromEntries(entries) };
}

const rowsOf = (project: Project): readonly RecordRow[] => testRecord(project).flatMap(({ rows }) => rows);
const inShort = (rows: readonly RecordRow[]): readonly string[] => rows.map(({ item, test }) => `${item} ${test}`);
const row = (project: Project, item: string, kind: string): RecordRow => {
  const found = rowsOf(project).find((one) => one.item === item && one.test === kind);
  if (found === undefined) throw new Error(`No line ${kind} of ${item}.`);
  return found;
};

describe("lines that the drawing calls for", () => {
  const job = openSample("laundry-proposed");

  test("by box, in the order of the drawing: dead first, then volts, tester and buttons, or whether it works", () => {
    const [first, second] = testRecord(job);
    expect([first?.box, second?.box]).toEqual(["B1", "B2"]);
    expect(inShort(first?.rows ?? [])).toEqual([
      "B1 dead",
      "R1b hot-neutral",
      "R1b hot-ground",
      "R1b neutral-ground",
      "R1b polarity",
      "R1b own-test",
      "R1b reset",
    ]);
    expect(inShort(testRecord(job).find(({ box }) => box === "B7")?.rows ?? [])).toEqual(["B7 dead", "L1 works"]);
    // A switch has nothing to be measured at.
    expect(inShort(testRecord(job).find(({ box }) => box === "B5")?.rows ?? [])).toEqual(["B5 dead"]);
  });

  test("a receptacle that was replaced has one line with the one that came for it, its buttons after the work only", () => {
    expect(row(job, "R1b", "hot-neutral").points).toEqual({ before: deviceId("R1"), after: deviceId("R1b") });
    expect(row(job, "R1b", "own-test").points).toEqual({ after: deviceId("R1b") });
    const measured = withReadings(
      job,
      line("121", deviceId("R1"), { test: "hot-neutral", stage: "before", item: "R1", box: "B1" }),
      line("122", deviceId("R1b"), { test: "hot-neutral", stage: "after", item: "R1b", box: "B1" }),
    );
    const { before, after } = row(measured, "R1b", "hot-neutral");
    expect([before?.value, after?.value]).toEqual(["121", "122"]);
    expect(rowsOf(measured)).toHaveLength(rowsOf(job).length);
  });

  test("the last of several readings shows; evidence that is no line of the record does not", () => {
    const record = { test: "hot-neutral", stage: "before", item: "R2", box: "B2" } as const;
    const { record: _none, ...evidence } = line("7", deviceId("R2"), record);
    const measured = withReadings(
      job,
      line("118", deviceId("R2"), record),
      line("121", deviceId("R2"), record),
      evidence,
    );
    expect(row(measured, "R2", "hot-neutral").before?.id).toBe("m1");
  });

  test("the panel has lines for breakers with a TEST alone", () => {
    const house = laundryDrawing().breaker("Q20", "P", { type: "breaker-gfci-1" });
    expect(inShort(testRecord(house.project).find(({ box }) => box === "P")?.rows ?? [])).toEqual([
      "Q20 own-test",
      "Q20 reset",
    ]);
  });
});

describe("what was recorded besides", () => {
  const job = openSample("laundry-proposed");

  test("stands at the end of its box; every note is a line of its own", () => {
    const note = (text: string) =>
      line(text, deviceId("R2"), { test: "note", stage: "after", item: "R2", box: "B2" }, { unit: "" });
    const measured = withReadings(
      job,
      line("0.3", deviceId("R2"), { test: "continuity", stage: "after", item: "R2", box: "B2" }, { unit: "ohm" }),
      note("warm"),
      note("cover cracked"),
    );
    const rows = testRecord(measured).find(({ box }) => box === "B2")?.rows ?? [];
    expect(inShort(rows.slice(-3))).toEqual(["R2 continuity", "R2 note", "R2 note"]);
    expect(rows.slice(-2).map(({ after }) => after?.value)).toEqual(["warm", "cover cracked"]);
  });

  test("a record does not go with the thing: it is read by the names of then, and undo brings the line back", () => {
    const record = { test: "hot-neutral", stage: "before", item: "R2", box: "B2" } as const;
    const measured = withReadings(openSample("laundry-box"), line("118", deviceId("R2"), record));
    const done = runCommand(measured, {
      command: "remove-items",
      args: { state: "as-found", items: [{ kind: "enclosure", id: boxId("B2") }] },
    });
    if (!done.ok) throw new Error(done.refusal.message);
    const last = testRecord(done.project).at(-1);
    expect(last).toMatchObject({ key: "gone B2", box: "B2" });
    expect(last).not.toHaveProperty("enclosure");
    expect(last?.rows).toMatchObject([{ item: "R2", test: "hot-neutral", points: {}, before: { value: "118" } }]);
    expect(rowsOf(applyPatches(done.project, done.inverse))).toEqual(rowsOf(measured));
  });

  test("what the work takes away keeps its line from before, and is asked for nothing after", () => {
    const proposed = structuredClone(job.proposed) as never as { enclosures: Record<string, { devices: object }> };
    const box = proposed.enclosures[boxId("B6")] as { devices: Record<string, object> };
    delete box.devices[deviceId("R5")];
    const without = { ...job, proposed: proposed as never };
    expect(row(without, "R5", "hot-neutral").points).toEqual({ before: deviceId("R5") });
  });
});

describe("compared", () => {
  const names = (key: OutletKey): string | undefined => (key === ("d9" as string) ? undefined : key.toUpperCase());
  const read = (value: string, unit?: string, outlets?: readonly string[]) => ({
    value,
    ...(unit !== undefined && { unit }),
    record: {
      test: "own-test",
      stage: "after",
      item: "R",
      ...(outlets && { outlets: outlets as never }),
    } as RecordedTest,
  });
  const volts = (value: number, within: number): ExpectedTest => ({ kind: "figure", value, within, unit: "V" });

  test.each([
    ["125", "agrees"],
    ["115", "agrees"],
    ["125.1", "5.1 V above what was expected"],
    ["114.9", "5.1 V below what was expected"],
    ["0", "120 V below what was expected"],
  ])("%s V where 120 V and 5 V either way are expected", (value, says) => {
    const outcome = compareTest(read(value, "V"), volts(120, 5), names);
    expect(outcome.kind === "differs" ? outcome.says : outcome.kind).toBe(says);
  });

  test("on the limit it agrees, whatever the last binary digit", () => {
    // In binary 128.02 less 123.02 is a little more than 5.
    for (const [value, figure] of [
      ["128.02", 123.02],
      ["2.14", 1.14],
    ] as const)
      expect(compareTest(read(value, "V"), volts(figure, figure > 100 ? 5 : 1), names).kind).toBe("agrees");
  });

  test("another unit, no figure, or nothing expected is not compared", () => {
    expect(compareTest(read("120", "mV"), volts(120, 5), names).kind).toBe("not-compared");
    expect(compareTest(read("high", "V"), volts(120, 5), names).kind).toBe("not-compared");
    expect(compareTest(read("120", "V"), undefined, names).kind).toBe("not-compared");
    const dark: ExpectedTest = { kind: "outlets", outlets: [], names: [] };
    expect(compareTest(read("nothing"), dark, names).kind).toBe("not-compared");
  });

  test("words", () => {
    expect(compareTest(read("correct"), { kind: "word", word: "correct" }, names).kind).toBe("agrees");
    expect(compareTest(read("open-hot"), { kind: "word", word: "correct" }, names)).toEqual({
      kind: "differs",
      says: "expected correct",
    });
  });

  test.each([
    [["d1", "d2"], "agrees"],
    [["d2", "d1"], "agrees"],
    [["d1"], "not D2"],
    [["d1", "d2", "d4"], "also D4"],
    [["d1", "d9"], "not D2, but d9"],
    [[], "not D1, D2"],
  ])("%j went dark where d1 and d2 are expected to", (outlets, says) => {
    const dark: ExpectedTest = { kind: "outlets", outlets: ["d1", "d2"] as never, names: ["One", "Two"] };
    const outcome = compareTest(read("x", undefined, outlets), dark, names);
    expect(outcome.kind === "differs" ? outcome.says : outcome.kind).toBe(says);
  });
});
