import type { RecordCellLine, RecordLines } from "../answers/sheet-input.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { OutletKey } from "../model/ids.ts";
import type { Project, Reading } from "../model/project.ts";
import { type ExpectedTest, RECORD_STAGES, type RecordStage, type RecordTest } from "../model/test-record.ts";
import { RESULT_TITLES } from "../queries/record-words.ts";
import { outletsValue } from "../queries/recorded-value.ts";
import { installationAt } from "../queries/test-record.ts";
import { drawnIn } from "./drawn-outlets.ts";
import { comparedRecord, type RecordCell } from "./record-answers.ts";

const wording = catalogue({
  within: (figure: Part, within: Part, unit: Part) => `${figure}, within ${within} ${unit}`,
  none: "none",
});

const NONE = wording.none;

/** The whole test record in words, for a sheet: what is expected, what was found, and blanks where nothing was measured. */
export const recordLines = (project: Project): readonly RecordLines[] =>
  comparedRecord(project).map(({ box, enclosure, rows }) => ({
    ...(enclosure !== undefined && { enclosure }),
    name: box,
    lines: rows.map(({ test, item, points, cells }) => ({
      test,
      at: item,
      ...wasBefore(project, points.before, item),
      cells: Object.fromEntries(
        RECORD_STAGES.flatMap((stage): (readonly [RecordStage, RecordCellLine])[] => {
          const cell = cells[stage];
          return cell === undefined ? [] : [[stage, cellLine(test, cell)]];
        }),
      ),
    })),
  }));

/** The name before the work of what is tested, where another stands in its place since. */
function wasBefore(project: Project, point: string | undefined, item: string): { readonly was?: string } {
  const { outlets } = drawnIn(installationAt(project, "before"));
  const was = point === undefined ? undefined : outlets.get(point as OutletKey)?.name;
  return was === undefined || was === item ? {} : { was };
}

function cellLine(test: RecordTest, { expected, reading, outcome }: RecordCell): RecordCellLine {
  return {
    ...(expected !== undefined && { expected: expectedWords(test, expected) }),
    ...(reading !== undefined && foundIn(reading)),
    ...(outcome !== undefined && { outcome: outcome.kind }),
  };
}

function expectedWords(test: RecordTest, expected: ExpectedTest): string {
  switch (expected.kind) {
    case "figure":
      return wording.within(figureWords(expected), expected.within, expected.unit);
    case "word":
      return RESULT_TITLES[expected.word] ?? expected.word;
    case "outlets":
      return expected.names.length === 0 ? NONE : outletsValue(test, expected.names);
  }
}

/** As the instrument shows it: a voltage with one place after the point. */
const figureWords = ({ value, unit }: Extract<ExpectedTest, { kind: "figure" }>): string =>
  `${unit === "V" && value !== 0 ? value.toFixed(1) : value} ${unit}`;

function foundIn({ value, unit, instrument, instrumentId, takenAt, by, remark }: Reading): RecordCellLine {
  const words = RESULT_TITLES[value] ?? value;
  return {
    found: unit === undefined ? words : `${words} ${unit}`,
    instrument,
    ...(instrumentId !== undefined && { instrumentId }),
    ...(takenAt !== undefined && { takenAt }),
    ...(by !== undefined && { by }),
    ...(remark !== undefined && { remark }),
  };
}
