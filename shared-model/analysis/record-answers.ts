import type { ExpectedAnswer, WantedTest } from "../answers/expected-test.ts";
import type { OutletKey } from "../model/ids.ts";
import type { Project, Reading } from "../model/project.ts";
import { type ExpectedTest, RECORD_STAGES, type RecordStage } from "../model/test-record.ts";
import { compareTest, type TestOutcome } from "../queries/compare-test.ts";
import { installationAt, type RecordGroup, type RecordRow, testRecord } from "../queries/test-record.ts";
import { drawnIn } from "./drawn-outlets.ts";
import { expectedTests } from "./expected-tests.ts";

/** One cell of the test record. */
export interface RecordCell {
  readonly expected?: ExpectedTest;
  readonly reading?: Reading;
  /** Absent where nothing was measured. */
  readonly outcome?: TestOutcome;
}

export interface ComparedRow extends RecordRow {
  /** Absent where the drawing of that stage does not have it and nothing was recorded. */
  readonly cells: Readonly<Partial<Record<RecordStage, RecordCell>>>;
}

export type ComparedGroup = Omit<RecordGroup, "rows"> & { readonly rows: readonly ComparedRow[] };

/** The whole test record, each line with what is expected and how what was found stands to it. */
export function comparedRecord(project: Project): readonly ComparedGroup[] {
  const groups = testRecord(project);
  const wanted = groups.flatMap(({ rows }) => rows.flatMap(wantedOf));
  const answers = new Map(expectedTests(project, wanted).map((answer) => [keyOf(answer), answer]));
  return groups.map((group) => ({
    ...group,
    rows: group.rows.map((row) => ({ ...row, cells: cellsOf(project, row, answers) })),
  }));
}

const wantedOf = ({ test, points }: RecordRow): readonly WantedTest[] =>
  RECORD_STAGES.flatMap((stage) => {
    const point = points[stage];
    return point === undefined ? [] : [{ stage, test, point }];
  });

const keyOf = ({ stage, test, point }: WantedTest): string => `${stage} ${test} ${point}`;

function cellsOf(project: Project, row: RecordRow, answers: ReadonlyMap<string, ExpectedAnswer>): ComparedRow["cells"] {
  const cells: Partial<Record<RecordStage, RecordCell>> = {};
  for (const stage of RECORD_STAGES) {
    const point = row.points[stage];
    const reading = row[stage];
    if (point === undefined && reading === undefined) continue;
    const now = point === undefined ? undefined : answers.get(keyOf({ stage, test: row.test, point }))?.expected;
    const expected = now ?? reading?.record?.expected;
    const { outlets } = drawnIn(installationAt(project, stage));
    const nameOf = (key: OutletKey): string | undefined => outlets.get(key)?.name;
    cells[stage] = {
      ...(expected !== undefined && { expected }),
      ...(reading !== undefined && { reading, outcome: compareTest(reading, expected, nameOf) }),
    };
  }
  return cells;
}
