import type { Reading } from "../../../shared-model/model/project.ts";
import { RECORD_STAGES, type RecordStage } from "../../../shared-model/model/test-record.ts";
import type { RecordRow } from "../../../shared-model/queries/test-record.ts";
import { INSTRUMENT_WORDS } from "../../state/item-actions/reading-action.ts";
import { remarkOn, removeTest } from "../../state/test-record.ts";
import { cellName, foundWords, RECORD_WORDS, STAGE_TITLES, whoWords } from "../../state/test-record-words.ts";
import { CommitField } from "../../ui/commit-field.tsx";
import type { Seen } from "./record-props.ts";
import { wording } from "./words.ts";

/** Who found what with which instrument, a remark on it, and the way to take it out again. */
export function RecordMore({ row, seen }: { readonly row: RecordRow; readonly seen: Seen }) {
  const read = RECORD_STAGES.flatMap((stage) => {
    const reading = row[stage];
    return reading === undefined ? [] : [{ stage, reading }];
  });
  return (
    <tr>
      <td colSpan={6} className="record-more">
        {read.length === 0 && <p className="dim">{RECORD_WORDS.notRead}</p>}
        {read.map(({ stage, reading }) => (
          <Read key={reading.id} row={row} stage={stage} reading={reading} seen={seen} />
        ))}
      </td>
    </tr>
  );
}

interface ReadProps {
  readonly row: RecordRow;
  readonly stage: RecordStage;
  readonly reading: Reading;
  readonly seen: Seen;
}

function Read({ row, stage, reading, seen }: ReadProps) {
  const name = cellName(row.item, row.test, stage);
  const item = reading.record?.item ?? row.item;
  const say = (done: ReturnType<typeof removeTest>): void =>
    seen.onSaid(done.ok ? name : done.refusal.message, !done.ok, row, stage);
  return (
    <div className="record-read">
      <span>
        {STAGE_TITLES[stage]}
        {item === row.item ? "" : wording.at(item)}:{" "}
        <strong>{foundWords(reading, (key) => seen.nameOf(stage, key) ?? key)}</strong>
        <span className="dim">, {whoWords(reading, INSTRUMENT_WORDS[reading.instrument])}</span>
      </span>
      {seen.readOnly ? (
        <span>{reading.remark}</span>
      ) : (
        <>
          <CommitField
            value={reading.remark ?? ""}
            invalid={false}
            label={`${RECORD_WORDS.remark}: ${name}`}
            placeholder={RECORD_WORDS.remark}
            onCommit={(text) => say(remarkOn(reading, text))}
          />
          <button
            type="button"
            className="button small"
            aria-label={`${RECORD_WORDS.remove}: ${name}`}
            onClick={() => say(removeTest(reading.id))}
          >
            {RECORD_WORDS.remove}
          </button>
        </>
      )}
    </div>
  );
}
