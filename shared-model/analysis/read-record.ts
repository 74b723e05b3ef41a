import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Result } from "../lib/result.ts";
import type { Project, Reading, ReadingInstrument } from "../model/project.ts";
import { RECORD_STAGES, RECORD_TESTS, type RecordStage, type RecordTest } from "../model/test-record.ts";
import { outletsValue, RESULT_WORDS, recordedProblem, VALUE_KINDS } from "../queries/recorded-value.ts";
import { isMeasured, MEASURING, readingOfTest } from "../queries/taken-test.ts";
import { shown } from "../solver/circuit/json-reader.ts";
import { expectedTests } from "./expected-tests.ts";
import { TestedItemReader } from "./tested-items.ts";

const wording = catalogue({
  giveReadings: "Give the list of readings",
  notMeasured: (test: Part) => `"${test}" is not measured: leave the instrument out`,
  giveText: (most: Part, is: Part) => `Give a text of at most ${most} letters on one line; it is ${is}`,
  giveDate: (is: Part) =>
    `Give a date such as "2026-05-04", or a date and time such as "2026-05-04T14:30:00Z"; it is ${is}`,
  valueNoOutlets: (test: Part) => `"${test}" has a value, no outlets`,
  writeNote: "Write what is to be noted",
  problemAndValue: (problem: Part, is: Part) => `${problem}; it is ${is}`,
  listOutlets: (test: Part) => `"${test}" has no value: list the outlets that followed`,
  listThatCameOn: "List every outlet that came on; an empty list where none did",
  listThatWentDark: "List every outlet that went dark; an empty list where none did",
});

type Taken = Omit<Reading, "id" | "order">;

/** Who tested, when and with what; for all readings of a file, or for one. */
const WHO = ["by", "takenAt", "instrument", "instrumentId"] as const;
const OF_ONE = ["stage", "at", "test", "value", "outlets", "remark", ...WHO] as const;

/** Letters that a document takes of each. */
const MOST = { by: 100, takenAt: 40, instrumentId: 100, remark: 500, value: 200 } as const;

/**
 * Reads results of tests from parsed JSON: `{by, takenAt, instrument, instrumentId, readings: [...]}`. Items are named by id
 * or by a name that only one of them has, before the work in as found and after it in proposed. What the drawing leads to
 * expect is added. Every problem is told with its place.
 */
export function readRecord(input: unknown, project: Project): Result<readonly Taken[]> {
  const reader = new RecordReader(project);
  const taken = reader.read(input);
  return reader.problems.length === 0 ? { ok: true, value: taken } : { ok: false, problems: reader.problems };
}

interface Who {
  readonly by?: string;
  readonly takenAt?: string;
  readonly instrument?: ReadingInstrument;
  readonly instrumentId?: string;
}

class RecordReader extends TestedItemReader {
  read(input: unknown): readonly Taken[] {
    const it = this.record(input, "", [...WHO, "readings"]);
    const who = this.who(it, "");
    if (it.readings === undefined && this.problems.length === 0)
      this.refuse("missing", "/readings", wording.giveReadings);
    const all = this.list(it.readings, "/readings").flatMap(([item, path]) => this.reading(item, path, who) ?? []);
    return this.problems.length > 0 ? [] : this.withExpected(all);
  }

  private reading(input: unknown, path: string, who: Who): Taken | undefined {
    const before = this.problems.length;
    const it = this.record(input, path, OF_ONE);
    if (this.problems.length > before) return undefined;
    const stage = this.oneOf(it.stage, `${path}/stage`, RECORD_STAGES);
    const test = this.oneOf(it.test, `${path}/test`, RECORD_TESTS);
    if (stage === undefined || test === undefined) return undefined;
    const found = this.find(it.at, `${path}/at`, stage, test);
    const result =
      VALUE_KINDS[test] === "outlets"
        ? this.outlets(it, path, stage, test)
        : { value: this.value(it, path, test), outlets: undefined };
    if (it.instrument !== undefined && !isMeasured(test))
      this.refuse("contradiction", `${path}/instrument`, wording.notMeasured(test));
    const own = this.who(it, path);
    const remark = this.words(it.remark, `${path}/remark`, MOST.remark);
    if (this.problems.length > before || found === undefined || result.value === undefined) return undefined;
    return readingOfTest(this.project, {
      stage,
      test,
      ...found,
      value: result.value,
      ...(result.outlets !== undefined && { outlets: result.outlets }),
      ...who,
      ...own,
      ...(remark !== undefined && { remark }),
    });
  }

  private who(it: Partial<Record<(typeof WHO)[number], unknown>>, path: string): Who {
    const by = this.words(it.by, `${path}/by`, MOST.by);
    const takenAt = this.when(it.takenAt, `${path}/takenAt`);
    const instrumentId = this.words(it.instrumentId, `${path}/instrumentId`, MOST.instrumentId);
    const instrument =
      it.instrument === undefined ? undefined : this.oneOf(it.instrument, `${path}/instrument`, MEASURING);
    return {
      ...(by !== undefined && { by }),
      ...(takenAt !== undefined && { takenAt }),
      ...(instrument !== undefined && { instrument }),
      ...(instrumentId !== undefined && { instrumentId }),
    };
  }

  private words(input: unknown, at: string, most: number): string | undefined {
    if (input === undefined) return undefined;
    if (typeof input === "string" && input.length <= most && !/\p{Surrogate}|\p{Cc}/u.test(input)) return input;
    this.refuse("not-a-text", at, wording.giveText(most, shown(input)));
    return undefined;
  }

  private when(input: unknown, at: string): string | undefined {
    if (input === undefined) return undefined;
    if (typeof input === "string" && isMoment(input)) return input;
    this.refuse("not-a-date", at, wording.giveDate(shown(input)));
    return undefined;
  }

  private value(
    it: Partial<Record<(typeof OF_ONE)[number], unknown>>,
    path: string,
    test: RecordTest,
  ): string | undefined {
    const at = `${path}/value`;
    const { value: input } = it;
    if (it.outlets !== undefined) this.refuse("contradiction", `${path}/outlets`, wording.valueNoOutlets(test));
    const words = RESULT_WORDS[test];
    if (words !== undefined) return this.oneOf(input, at, words);
    const kind = VALUE_KINDS[test];
    if (kind === "text") {
      const text = this.words(input ?? "", at, MOST.value);
      if (text?.trim() === "") this.refuse("missing", at, wording.writeNote);
      return text;
    }
    const text = typeof input === "number" ? String(Number(input.toFixed(3))) : kind === "ohms" ? input : undefined;
    const line = { test, stage: "after", item: "" } as const;
    const wrong =
      typeof text === "string"
        ? recordedProblem(line, text, kind === "volts" ? "V" : "ohm")
        : recordedProblem(line, "", "");
    if (wrong === undefined) return text as string;
    this.refuse(
      "not-a-result",
      at,
      wording.problemAndValue(wrong.replaceAll("“", '"').replaceAll("”", '"').replace(/[.]$/, ""), shown(input)),
    );
    return undefined;
  }

  private outlets(
    it: Partial<Record<(typeof OF_ONE)[number], unknown>>,
    path: string,
    stage: RecordStage,
    test: RecordTest,
  ) {
    if (it.value !== undefined) this.refuse("contradiction", `${path}/value`, wording.listOutlets(test));
    if (it.outlets === undefined)
      this.refuse("missing", `${path}/outlets`, test === "reset" ? wording.listThatCameOn : wording.listThatWentDark);
    const found = this.list(it.outlets, `${path}/outlets`).flatMap(([item, at]) => {
      const text = this.text(item, at);
      return (text !== undefined && this.outlet(text, at, stage)) || [];
    });
    const unique = [...new Map(found.map((outlet) => [outlet.key, outlet])).values()];
    const names = unique.map(({ name }) => name);
    return { value: outletsValue(test, names), outlets: unique.map(({ key }) => key) };
  }

  private withExpected(all: readonly Taken[]): readonly Taken[] {
    const answers = expectedTests(
      this.project,
      all.flatMap(({ points, record }) =>
        record === undefined ? [] : [{ stage: record.stage, test: record.test, point: points[0] ?? "" }],
      ),
    );
    return all.map((reading, index) => {
      const expected = answers[index]?.expected;
      return reading.record === undefined || expected === undefined
        ? reading
        : { ...reading, record: { ...reading.record, expected } };
    });
  }
}

/** A day of the calendar, with or without a time of it. */
function isMoment(text: string): boolean {
  const [, day] = /^(\d{4}-\d{2}-\d{2})(T\d{2}:\d{2}(:\d{2}([.]\d{1,3})?)?(Z|[+-]\d{2}:\d{2})?)?$/.exec(text) ?? [];
  if (day === undefined || Number.isNaN(Date.parse(text))) return false;
  // Date.parse takes the 31st of February for a day of March.
  return new Date(`${day}T00:00:00Z`).toISOString().startsWith(day);
}

/** Results that are already in a document, word for word: what was expected may be other now. */
export const isRecorded = ({ readings }: Project, taken: Taken): boolean =>
  Object.values<Reading>(readings).some((one) => {
    const [a, b] = [one, taken].map(({ points, value, takenAt, by, remark, instrument, instrumentId, record }) =>
      JSON.stringify([
        // Outlets say which they are; the words for them are of the language in which they were recorded.
        [points, record?.outlets === undefined ? value : "", takenAt, by, remark, instrument, instrumentId],
        [record?.test, record?.stage, record?.outlets],
      ]),
    );
    return one.record !== undefined && a === b;
  });
