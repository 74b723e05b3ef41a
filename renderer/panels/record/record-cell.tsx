import { useState } from "react";
import { RESULT_TITLES } from "../../../shared-model/queries/record-words.ts";
import { RESULT_WORDS, VALUE_KINDS } from "../../../shared-model/queries/recorded-value.ts";
import { type Entered, enterTest } from "../../state/test-record.ts";
import { cellName, foundWords, outcomeWords } from "../../state/test-record-words.ts";
import { CommitField } from "../../ui/commit-field.tsx";
import { ButtonCell } from "./button-cell.tsx";
import { ENTRY } from "./next-line.ts";
import type { CellProps, EntryProps } from "./record-props.ts";

/** What was found at one stage: written, chosen or ticked here, and how it stands to what was expected. */
export function RecordCell({ row, stage, box, seen }: CellProps) {
  const [wrong, setWrong] = useState<string>();
  const reading = row[stage];
  const outcome = seen.outcomeOf(row, stage);
  const enter = (entered: Entered): boolean => {
    const done = enterTest({ row, stage, box, expected: seen.expectedOf(row, stage)?.expected }, entered);
    // Word for word what is there already is no mistake.
    const isFine = done.ok || done.refusal.code === "nothing-to-change";
    setWrong(isFine ? undefined : done.refusal.message);
    seen.onSaid(
      done.ok || isFine ? cellName(row.item, row.test, stage) : `${row.item}: ${done.refusal.message}`,
      !isFine,
      row,
      stage,
    );
    return isFine;
  };
  const found = reading && foundWords(reading, (key) => seen.nameOf(stage, key) ?? key);
  if (row.points[stage] === undefined || seen.readOnly)
    return (
      <td className="fig">
        {found ?? <span className="dim">–</span>}
        <Outcome text={outcomeWords(outcome)} differs={outcome?.kind === "differs"} />
      </td>
    );
  return (
    <td {...{ [ENTRY]: stage }}>
      <Entry row={row} stage={stage} box={box} seen={seen} wrong={wrong !== undefined} found={found} onEnter={enter} />
      {wrong !== undefined && <small className="refused">{wrong}</small>}
      <Outcome text={outcomeWords(outcome)} differs={outcome?.kind === "differs"} />
    </td>
  );
}

const Outcome = ({ text, differs }: { readonly text: string; readonly differs: boolean }) =>
  text === "" ? null : <small className={differs ? "record-differs" : "record-agrees"}>{text}</small>;

function Entry(props: EntryProps) {
  const { row, stage, wrong, onEnter } = props;
  const kind = VALUE_KINDS[row.test];
  const name = cellName(row.item, row.test, stage);
  const value = row[stage]?.value ?? "";
  if (kind === "outlets") return <ButtonCell {...props} />;
  if (kind === "word")
    return (
      <select
        className="field small"
        aria-label={name}
        value={value}
        onChange={({ target }) => onEnter({ text: target.value })}
      >
        <option value=""> </option>
        {(RESULT_WORDS[row.test] ?? []).map((word) => (
          <option key={word} value={word}>
            {RESULT_TITLES[word] ?? word}
          </option>
        ))}
      </select>
    );
  return (
    <span className="record-figure">
      <CommitField
        value={value}
        invalid={wrong}
        numeric={kind !== "text"}
        label={name}
        onCommit={(text) => onEnter({ text })}
      />
      {kind !== "text" && <span className="dim">{kind === "volts" ? "V" : "Ω"}</span>}
    </span>
  );
}
