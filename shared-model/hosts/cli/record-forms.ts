import type { ComparedGroup, RecordCell } from "../../analysis/record-answers.ts";
import { onOneLine } from "../../format/json-path.ts";
import type { ExpectedTest } from "../../model/test-record.ts";
import { RESULT_TITLES, STAGE_WORDS, TEST_WORDS } from "../../queries/record-words.ts";
import { figureOf } from "../../queries/recorded-value.ts";
import { inputName } from "./read-input.ts";
import { table } from "./table.ts";

/** The record of a file, with what was put into it. */
export interface Recorded {
  readonly file: string;
  readonly added: number;
  /** Given again, word for word. */
  readonly alreadyRecorded: number;
  readonly groups: readonly ComparedGroup[];
}

/** As scripts read it: every line that the drawing calls for, measured or not. What there is none of is null. */
export function recordAsJson({ file, added, alreadyRecorded, groups }: Recorded): object {
  return {
    file,
    added,
    alreadyRecorded,
    lines: groups.flatMap(({ box, rows }) =>
      rows.map(({ points, item, test, cells }) => ({
        id: points.after ?? points.before ?? null,
        name: item,
        box,
        test,
        before: cellAsJson(item, cells.before),
        after: cellAsJson(item, cells.after),
      })),
    ),
  };
}

function cellAsJson(item: string, cell: RecordCell | undefined): object | null {
  if (cell === undefined) return null;
  const { expected, reading, outcome } = cell;
  return {
    expected: expectedAsJson(expected),
    outcome: outcome?.kind ?? "not-measured",
    differs: outcome?.kind === "differs" ? outcome.says : null,
    reading:
      reading === undefined
        ? null
        : {
            id: reading.id,
            item: reading.record?.item ?? item,
            value: reading.unit === undefined ? reading.value : (figureOf(reading.value) ?? reading.value),
            unit: reading.unit ?? null,
            outlets: reading.record?.outlets ?? null,
            instrument: reading.instrument,
            instrumentId: reading.instrumentId ?? null,
            takenAt: reading.takenAt ?? null,
            by: reading.by ?? null,
            remark: reading.remark ?? null,
          },
  };
}

function expectedAsJson(expected: ExpectedTest | undefined): object | null {
  if (expected === undefined) return null;
  switch (expected.kind) {
    case "figure":
      return { value: expected.value, within: expected.within, unit: expected.unit };
    case "word":
      return { value: expected.word };
    case "outlets":
      return { outlets: expected.outlets.map((id, index) => ({ id, name: expected.names[index] ?? id })) };
  }
}

/** As a person reads it: what was measured, then how much of the record is still empty. */
export function recordAsText({ file, added, alreadyRecorded, groups }: Recorded, out: string | undefined): string {
  const lines: string[][] = [];
  let empty = 0;
  for (const { box, rows } of groups)
    for (const { item, test, cells } of rows)
      for (const stage of ["before", "after"] as const) {
        const cell = cells[stage];
        if (cell?.reading === undefined || cell.outcome === undefined) {
          if (cell !== undefined && stage === "after") empty++;
          continue;
        }
        const { kind } = cell.outcome;
        const outcome = cell.outcome.kind === "differs" ? `DIFFERS: ${cell.outcome.says}` : OUTCOMES[kind];
        lines.push(
          [
            STAGE_WORDS[stage],
            box,
            cell.reading.record?.item ?? item,
            TEST_WORDS[test],
            expectedText(cell.expected),
            foundText(cell),
            outcome,
          ].map(onOneLine),
        );
      }
  const head = [`${inputName(file)}: test record`];
  if (added > 0) head.push(`${added} put in${out === undefined ? ", not written: there is no --out" : ""}`);
  if (alreadyRecorded > 0) head.push(`${alreadyRecorded} there already`);
  return [
    head.join(", "),
    ...table([["stage", "box", "item", "test", "expected", "found", ""], ...lines]),
    empty === 0 ? "Every line after the work is measured." : `Not measured after the work: ${empty}.`,
    "",
  ].join("\n");
}

const OUTCOMES = { agrees: "agrees", differs: "differs", "not-compared": "not compared" } as const;

const unitText = (unit: string | undefined): string => (unit === "ohm" ? " Ω" : unit === undefined ? "" : ` ${unit}`);

function expectedText(expected: ExpectedTest | undefined): string {
  if (expected === undefined) return "-";
  switch (expected.kind) {
    case "figure":
      return `${expected.value}${unitText(expected.unit)} ± ${expected.within}`;
    case "word":
      return RESULT_TITLES[expected.word] ?? expected.word;
    case "outlets":
      return expected.names.join(", ") || "none";
  }
}

const foundText = ({ reading }: RecordCell): string =>
  reading === undefined ? "-" : `${RESULT_TITLES[reading.value] ?? reading.value}${unitText(reading.unit)}`;
