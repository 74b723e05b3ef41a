import type { RecordCellLine, RecordLine, RecordLines, SheetInput } from "../../answers/sheet-input.ts";
import { RECORD_STAGES, type RecordStage } from "../../model/test-record.ts";
import { TEST_WORDS } from "../../queries/record-words.ts";
import type { Page } from "../display-list.ts";
import { TYPE } from "../page/flow-blocks.ts";
import { openListSheet } from "../page/list-sheet.ts";
import { dayWords } from "../page/page-words.ts";
import type { TableCell, TableRow } from "../page/table-blocks.ts";
import type { ListTable } from "../tables/table.ts";
import { isShown, nothingWords, sayNothing, writeCautions } from "./list-parts.ts";
import {
  HANDED_OVER,
  instrumentWords,
  OUTCOMES,
  ofStage,
  outcomeWords,
  RECORD,
  RECORD_TABLE,
  SIGNATURES,
  STAGES,
} from "./record-sheet-words.ts";

/** High enough to write in by hand. */
const ROW = 8;

/** @returns Why there is nothing to test; undefined where there is. */
export const noTests = (input: SheetInput): string | undefined =>
  shownGroups(input).length > 0 ? undefined : nothingWords(input, RECORD.noTests);

/** Every test with what is expected, what was found before and after, by what, when and by whom; blanks to write in. */
export function recordPages(input: SheetInput): readonly Page[] {
  const { flow, pages } = openListSheet(input, {
    kind: "test-record",
    title: RECORD.title,
    orientation: "landscape",
    difference: input.project.proposed !== undefined,
  });
  const nothing = noTests(input);
  if (nothing !== undefined) {
    sayNothing(flow, nothing);
    return pages();
  }
  flow.paragraph(RECORD.how, { size: TYPE.small });
  flow.table({
    grid: true,
    columns: [
      { head: RECORD.at, width: 24, weight: 700 },
      { head: RECORD.test, share: 1.1 },
      { head: RECORD.expectedBefore, share: 1.2 },
      { head: RECORD.foundBefore, width: 26, weight: 600 },
      { head: RECORD.expectedAfter, share: 1.2 },
      { head: RECORD.foundAfter, width: 26, weight: 600 },
      { head: RECORD.instrument, width: 27 },
      { head: RECORD.date, width: 22 },
      { head: RECORD.by, width: 24 },
    ],
    rows: shownGroups(input).flatMap(groupRows),
  });
  // Whoever signs has what is signed for before the eyes: the lines stand on no page of their own.
  flow.keepTogether((kept) => {
    writeCautions(kept, ["SIM1", "SIM2", "WRK1", "WRK7"]);
    kept.signOff(SIGNATURES);
    kept.signOff(HANDED_OVER);
  });
  return pages();
}

const shownGroups = (input: SheetInput): readonly RecordLines[] =>
  input.record.filter(({ enclosure, lines }) => lines.length > 0 && isShown(input, enclosure));

const groupRows = ({ name, lines }: RecordLines): readonly TableRow[] => [
  { cells: [{ text: name, span: 9 }], group: true },
  ...lines.map(rowOf),
];

function rowOf({ at, was, test, cells }: RecordLine): TableRow {
  const { before, after } = cells;
  const remarks = [before?.remark, after?.remark].filter((words) => words !== undefined && words !== "").join("; ");
  return {
    height: ROW,
    cells: [
      { text: at, ...(was !== undefined && { note: ofStage.before(was) }) },
      { text: TEST_WORDS[test], ...(remarks !== "" && { note: remarks }) },
      expectedWords(before),
      foundCell(before),
      expectedWords(after),
      foundCell(after),
      both(cells, instrumentWords),
      both(cells, ({ takenAt }) => takenAt && dayWords(takenAt)),
      both(cells, ({ by }) => by),
    ],
  };
}

/** Ruled out in a stage that the drawing does not have. */
const RULED_OUT = "–";

const expectedWords = (cell: RecordCellLine | undefined): string =>
  cell === undefined ? RULED_OUT : (cell.expected ?? "");

/** Nothing measured yet: white to write in. */
const foundCell = (cell: RecordCellLine | undefined): TableCell =>
  cell === undefined
    ? { text: RULED_OUT }
    : { text: cell.found ?? "", ...(cell.outcome !== undefined && { note: OUTCOMES[cell.outcome] }) };

/** One word where both stages have the same, else each with its stage. */
function both(cells: RecordLine["cells"], take: (cell: RecordCellLine) => string | undefined): string {
  const said = RECORD_STAGES.flatMap((stage): (readonly [RecordStage, string])[] => {
    const cell = cells[stage];
    const words = cell === undefined ? undefined : take(cell);
    return words === undefined || words === "" ? [] : [[stage, words]];
  });
  const [first, second] = said;
  if (first === undefined) return "";
  if (second === undefined || second[1] === first[1]) return first[1];
  return said.map(([stage, words]) => ofStage[stage](words)).join("\n");
}

/** One row a test and stage. */
export function recordTables(input: SheetInput): readonly ListTable[] {
  return [
    {
      name: RECORD_TABLE.name,
      columns: [
        { head: RECORD_TABLE.box, kind: "text", width: 10 },
        { head: RECORD_TABLE.at, kind: "text", width: 12 },
        { head: RECORD_TABLE.test, kind: "text", width: 24 },
        { head: RECORD_TABLE.stage, kind: "text", width: 8 },
        { head: RECORD_TABLE.expected, kind: "text", width: 30 },
        { head: RECORD_TABLE.found, kind: "text", width: 20 },
        { head: RECORD_TABLE.outcome, kind: "text", width: 14 },
        { head: RECORD_TABLE.instrument, kind: "text", width: 20 },
        { head: RECORD_TABLE.date, kind: "date", width: 12 },
        { head: RECORD_TABLE.by, kind: "text", width: 18 },
        { head: RECORD_TABLE.remark, kind: "text", width: 40 },
      ],
      rows: shownGroups(input).flatMap(({ name, lines }) =>
        lines.flatMap(({ at, was, test, cells }) =>
          RECORD_STAGES.flatMap((stage) => {
            const cell = cells[stage];
            if (cell === undefined) return [];
            const { expected, found, outcome, takenAt, by, remark } = cell;
            const date = takenAt?.slice(0, 10);
            return [
              [
                name,
                stage === "before" ? (was ?? at) : at,
                TEST_WORDS[test],
                STAGES[stage],
                expected,
                found,
                outcomeWords(outcome),
                instrumentWords(cell),
                date,
                by,
                remark,
              ],
            ];
          }),
        ),
      ),
    },
  ];
}
