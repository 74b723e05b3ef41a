import { Fragment, useState } from "react";
import { RECORD_STAGES, type RecordStage } from "../../../shared-model/model/test-record.ts";
import type { RecordGroup, RecordRow } from "../../../shared-model/queries/test-record.ts";
import { expectedWords, RECORD_WORDS, STAGE_TITLES, TEST_TITLES } from "../../state/test-record-words.ts";
import { RecordCell } from "./record-cell.tsx";
import { RecordMore } from "./record-more.tsx";
import type { Seen } from "./record-props.ts";
import { wording } from "./words.ts";

/** The lines of one box. */
export function RecordTable({ group, seen }: { readonly group: RecordGroup; readonly seen: Seen }) {
  const [open, setOpen] = useState<string>();
  const title = group.enclosure === undefined ? `${group.box}, ${RECORD_WORDS.gone}`.replace(/^, /, "") : group.box;
  return (
    <table className="record-table">
      <caption>
        {title} {group.note !== undefined && <span className="dim">{group.note}</span>}
      </caption>
      <thead>
        <tr>
          <th scope="col">{wording.item}</th>
          <th scope="col">{wording.test}</th>
          <th scope="col">{RECORD_WORDS.expected}</th>
          {RECORD_STAGES.map((stage) => (
            <th key={stage} scope="col">
              {STAGE_TITLES[stage]}
            </th>
          ))}
          <td />
        </tr>
      </thead>
      <tbody>
        {group.rows.map((row, index) => {
          const isSame = group.rows[index - 1]?.item === row.item;
          const isOpen = open === row.key;
          return (
            <Fragment key={row.key}>
              <tr className={isSame ? undefined : "record-first"}>
                <th scope="row">
                  <span className={isSame ? "unseen" : undefined}>{row.item}</span>
                </th>
                <td>{TEST_TITLES[row.test]}</td>
                <td className="fig">
                  <Expected row={row} seen={seen} />
                </td>
                {RECORD_STAGES.map((stage) => (
                  <RecordCell key={stage} row={row} stage={stage} box={group.box} seen={seen} />
                ))}
                <td>
                  <button
                    type="button"
                    className="button small"
                    aria-expanded={isOpen}
                    aria-label={`${RECORD_WORDS.more}: ${row.item}, ${TEST_TITLES[row.test]}`}
                    onClick={() => setOpen(isOpen ? undefined : row.key)}
                  >
                    …
                  </button>
                </td>
              </tr>
              {isOpen && <RecordMore row={row} seen={seen} />}
            </Fragment>
          );
        })}
      </tbody>
    </table>
  );
}

/** What is expected after the work; where it is another before, or only then, that too. */
function Expected({ row, seen }: { readonly row: RecordRow; readonly seen: Seen }) {
  const words = (stage: RecordStage): string | undefined => {
    const stored = row[stage]?.record?.expected;
    if (row.points[stage] === undefined) return stored && expectedWords(stored, row.test);
    const answer = seen.expectedOf(row, stage);
    if (answer === undefined) return RECORD_WORDS.computing;
    return answer.expected === undefined ? RECORD_WORDS.notTold : expectedWords(answer.expected, row.test);
  };
  const [before, after] = [words("before"), words("after")];
  if (before === undefined || before === after || isAlike(row, seen)) return after ?? RECORD_WORDS.notTold;
  return (
    <>
      {after}
      <small className="record-as-found">
        {RECORD_WORDS.asFound} {before}
      </small>
    </>
  );
}

/** A reading that agrees with one of the two figures agrees with the other, or nearly: one of them is enough to show. */
function isAlike(row: RecordRow, { expectedOf }: Seen): boolean {
  const [before, after] = RECORD_STAGES.map((stage) => expectedOf(row, stage)?.expected);
  if (before?.kind !== "figure" || after?.kind !== "figure") return false;
  return Math.abs(before.value - after.value) < after.within / 2;
}
