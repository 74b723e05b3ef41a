import { beforeEach, describe, expect, test } from "vitest";
import { documentStore, openDocument, undo } from "../../renderer/state/document-store.ts";
import { countRecord, enterTest, remarkOn, removeTest, testedByStore } from "../../renderer/state/test-record.ts";
import { expectedWords, foundWords, outcomeWords, whoWords } from "../../renderer/state/test-record-words.ts";
import type { Reading } from "../../shared-model/model/project.ts";
import type { ExpectedTest, RecordStage } from "../../shared-model/model/test-record.ts";
import { type RecordRow, testRecord } from "../../shared-model/queries/test-record.ts";
import { deviceId, outlet } from "../builders/ids.ts";
import { openSample } from "../builders/samples/open-sample.ts";

const rows = (): readonly RecordRow[] => testRecord(documentStore.get().project).flatMap((group) => group.rows);
const row = (item: string, kind: string): RecordRow => {
  const found = rows().find((one) => one.item === item && one.test === kind);
  if (found === undefined) throw new Error(`No line ${kind} of ${item}.`);
  return found;
};
const readings = (): readonly Reading[] =>
  Object.values(documentStore.get().project.readings).sort((p, q) => p.order - q.order);
const place = (item: string, kind: string, stage: RecordStage = "after", expected?: ExpectedTest) => ({
  row: row(item, kind),
  stage,
  box: "B",
  expected,
});

beforeEach(() => {
  openDocument({ project: openSample("laundry-proposed") });
  testedByStore.set({ by: "Pat Example", day: "2026-05-04", instrument: "low-impedance-meter", instrumentId: "M-17" });
});

describe("what is typed", () => {
  test.each([
    ["121.8", "121.8"],
    ["121,8", "121.8"],
    [" 121.8 V ", "121.8"],
    ["121.80v", "121.8"],
    ["0", "0"],
  ])("%j volts are kept as %s, with who, when and what", (typed, value) => {
    const expected = { kind: "figure", value: 119.6, within: 5, unit: "V" } as const;
    expect(enterTest(place("R2", "hot-neutral", "after", expected), { text: typed })).toEqual({ ok: true });
    expect(readings()).toMatchObject([
      {
        instrument: "low-impedance-meter",
        points: [deviceId("R2")],
        value,
        unit: "V",
        state: "proposed",
        by: "Pat Example",
        takenAt: "2026-05-04",
        instrumentId: "M-17",
        record: { test: "hot-neutral", stage: "after", item: "R2", box: "B", expected },
      },
    ]);
  });

  test.each(["a lot", "1.2.3", "12 A", "-5", "1001"])("%j is refused, and nothing is kept", (typed) => {
    expect(enterTest(place("R2", "hot-neutral"), { text: typed })).toMatchObject({ ok: false });
    expect(readings()).toEqual([]);
  });

  test("another value corrects the reading, with its remark; nothing at all takes it away", () => {
    enterTest(place("R2", "hot-neutral"), { text: "12" });
    remarkOn(readings()[0] as Reading, " by the door ");
    enterTest(place("R2", "hot-neutral"), { text: "120" });
    expect(readings()).toMatchObject([{ value: "120", remark: "by the door" }]);
    enterTest(place("R2", "hot-neutral"), { text: " " });
    expect(readings()).toEqual([]);
    expect(undo()).toContain("Remove “Hot to neutral” of R2");
    expect(readings()).toMatchObject([{ value: "120" }]);
    remarkOn(readings()[0] as Reading, "");
    expect(readings()[0]).not.toHaveProperty("remark");
    removeTest((readings()[0] as Reading).id);
    expect(readings()).toEqual([]);
  });

  test("nothing where nothing is, does nothing", () => {
    const { revision } = documentStore.get();
    expect(enterTest(place("R2", "hot-neutral"), { text: "" })).toEqual({ ok: true });
    expect(documentStore.get().revision).toBe(revision);
  });

  test("before the work it is R1 that is tested, on the line of R1b", () => {
    enterTest(place("R1b", "hot-neutral", "before"), { text: "120" });
    expect(readings()).toMatchObject([{ points: [deviceId("R1")], state: "as-found", record: { item: "R1" } }]);
    expect(row("R1b", "hot-neutral").before?.value).toBe("120");
  });

  test("a button keeps the outlets, and their names as words; its instrument is the button", () => {
    const outlets = ["R1b", "R2"].map((name) => outlet(name));
    enterTest(place("R1b", "own-test"), { outlets });
    enterTest(place("R1b", "reset"), { outlets: [] });
    expect(readings()).toMatchObject([
      { instrument: "own-test", value: "R1b, R2 went dark", record: { outlets } },
      { instrument: "reset", value: "nothing came on", record: { outlets: [] } },
    ]);
    expect(readings()[0]).not.toHaveProperty("unit");
  });

  test("who is not told is left out", () => {
    testedByStore.set({ by: "", day: "", instrument: "meter", instrumentId: " " });
    enterTest(place("L1", "works"), { text: "works" });
    expect(Object.keys(readings()[0] as Reading).sort()).toEqual([
      "id",
      "instrument",
      "order",
      "points",
      "record",
      "state",
      "value",
    ]);
    expect(readings()[0]?.instrument).toBe("by-eye");
  });
});

test("how much is measured, of how much", () => {
  const groups = () => testRecord(documentStore.get().project);
  const { due } = countRecord(groups());
  expect(countRecord(groups())).toEqual({ before: 0, after: 0, due });
  enterTest(place("R2", "hot-neutral"), { text: "120" });
  enterTest(place("R1b", "hot-neutral", "before"), { text: "120" });
  expect(countRecord(groups())).toEqual({ before: 1, after: 1, due });
  // Seven boxes, five receptacles with four lines each, two devices with two buttons, one light.
  expect(due).toBe(7 + 5 * 4 + 2 * 2 + 1);
});

test("words", () => {
  const dark: ExpectedTest = { kind: "outlets", outlets: [], names: ["R1b", "R2"] };
  expect(expectedWords({ kind: "figure", value: 119.55, within: 5, unit: "V" }, "hot-neutral")).toBe("119.5 V ± 5");
  expect(expectedWords({ kind: "figure", value: 0.169, within: 1, unit: "V" }, "neutral-ground")).toBe("0.17 V ± 1");
  expect(expectedWords(dark, "own-test")).toBe("R1b, R2 dark");
  expect(expectedWords({ ...dark, names: [] }, "reset")).toBe("none on");
  expect(expectedWords({ kind: "word", word: "open-hot" }, "polarity")).toBe("open hot / dead");
  enterTest(place("R1b", "own-test"), { outlets: [outlet("R1b")] });
  const reading = readings()[0] as Reading;
  expect(foundWords(reading, () => "Rx")).toBe("Rx dark");
  expect(whoWords(reading, "TEST of the device")).toBe("TEST of the device M-17, Pat Example, 2026-05-04");
  expect(outcomeWords({ kind: "not-compared" })).toBe("");
  expect(outcomeWords({ kind: "differs", says: "not R5" })).toBe("differs: not R5");
});
