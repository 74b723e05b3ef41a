import { useMemo, useRef, useState } from "react";
import { RECORD_STAGES, type RecordStage } from "../../../shared-model/model/test-record.ts";
import { compareTest } from "../../../shared-model/queries/compare-test.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import {
  installationAt,
  type RecordGroup,
  type RecordRow,
  testRecord,
} from "../../../shared-model/queries/test-record.ts";
import { closeDialog } from "../../state/dialog-store.ts";
import { documentStore } from "../../state/document-store.ts";
import { countRecord, outletNames } from "../../state/test-record.ts";
import { outcomeWords, RECORD_WORDS } from "../../state/test-record-words.ts";
import { useStore } from "../../state/use-store.ts";
import { Modal } from "../../ui/modal.tsx";
import { type AddedLine, AddLine, withAdded } from "./add-line.tsx";
import { focusNextLine } from "./next-line.ts";
import type { Seen } from "./record-props.ts";
import { RecordTable } from "./record-table.tsx";
import { TestedByForm } from "./tested-by.tsx";
import { useExpected } from "./use-expected.ts";
import "./record.css";
import { wording } from "./words.ts";

/** So many boxes are shown at first and at each further press: a house has hundreds of lines. */
const AT_ONCE = 20;

type Shown = "all" | "open" | "differing";

/** The test record: every line that the drawing calls for, with what is expected, was found before, and after. */
export default function RecordDialog({ at }: { readonly at: string | undefined }) {
  const project = useStore(documentStore, (document) => document.project);
  const readOnly = useStore(documentStore, (document) => document.readOnly);
  const [added, setAdded] = useState<readonly AddedLine[]>([]);
  const [shown, setShown] = useState<Shown>("all");
  const [count, setCount] = useState(AT_ONCE);
  const [said, setSaid] = useState<{ readonly text: string; readonly key: string; readonly stage: RecordStage }>();
  const body = useRef<HTMLFormElement>(null);
  /** What Enter wrote was not taken: the focus stays on it. */
  const isRefused = useRef(false);
  const record = useMemo(() => testRecord(project), [project]);
  const groups = useMemo(() => startingAt(withAdded(record, added), at), [record, added, at]);
  const page = groups.slice(0, count);
  const expectedOf = useExpected(page.flatMap(({ rows }) => rows));
  const names = useMemo(
    () => ({ before: outletNames(project, "before"), after: outletNames(project, "after") }),
    [project],
  );
  const seen: Seen = {
    readOnly,
    expectedOf,
    nameOf: (stage, key) => names[stage].get(key),
    outcomeOf: (row, stage) => outcomeOf(row, stage),
    onSaid: (text, refused, { key }, stage) => {
      isRefused.current = refused;
      setSaid({ text, key, stage });
    },
  };
  const kept = page
    .map((group) => ({ ...group, rows: group.rows.filter((row) => isShown(row)) }))
    .filter(({ rows }) => rows.length > 0);
  const { before, after, due } = countRecord(groups);
  const boxes = inOrder(installationAt(project, "after").enclosures);
  return (
    <Modal title={RECORD_WORDS.title} onClose={closeDialog} wide>
      <p>{RECORD_WORDS.about}</p>
      {!readOnly && <TestedByForm />}
      <div className="record-tools">
        <label>
          {RECORD_WORDS.show}{" "}
          <select className="field small" value={shown} onChange={({ target }) => setShown(target.value as Shown)}>
            <option value="all">{RECORD_WORDS.all}</option>
            <option value="open">{RECORD_WORDS.open}</option>
            <option value="differing">{RECORD_WORDS.differing}</option>
          </select>
        </label>
        <span className="dim">{wording.beforeMeasuredAfterOfMeasured(before, after, due)}</span>
      </div>
      <p className="unseen" role="status">
        {said && spoken(said.text, said.stage, said.key)}
      </p>
      <form
        ref={body}
        className="record-body"
        aria-label={RECORD_WORDS.lines}
        onSubmit={(event) => event.preventDefault()}
        onKeyDownCapture={() => {
          isRefused.current = false;
        }}
        onKeyDown={(event) => {
          if (event.key === "Enter" && body.current !== null) focusNextLine(body.current, event, isRefused.current);
        }}
      >
        {groups.length === 0 && <p className="dim">{RECORD_WORDS.nothing}</p>}
        {groups.length > 0 && kept.length === 0 && <p className="dim">{RECORD_WORDS.noneLeft}</p>}
        {kept.map((group) => (
          <RecordTable key={group.key} group={group} seen={seen} />
        ))}
      </form>
      {groups.length > count && (
        <button type="button" className="button" onClick={() => setCount(count + AT_ONCE)}>
          {wording.showMoreOfBoxes(Math.min(AT_ONCE, groups.length - count), groups.length - count)}
        </button>
      )}
      {!readOnly && boxes.length > 0 && <AddLine project={project} onAdd={(line) => setAdded([...added, line])} />}
    </Modal>
  );

  /** With how the result stands to what is expected, once it is in the document. */
  function spoken(text: string, stage: RecordStage, key: string): string {
    const row = page.flatMap(({ rows }) => rows).find((one) => one.key === key);
    return [text, row === undefined ? "" : outcomeWords(outcomeOf(row, stage))].filter(Boolean).join(": ");
  }

  function outcomeOf(row: RecordRow, stage: RecordStage) {
    const reading = row[stage];
    if (reading === undefined) return undefined;
    const expected = expectedOf(row, stage)?.expected ?? reading.record?.expected;
    return compareTest(reading, expected, (key) => names[stage].get(key));
  }

  function isShown(row: RecordRow): boolean {
    if (shown === "open") return row.after === undefined && row.points.after !== undefined;
    if (shown === "differing") return RECORD_STAGES.some((stage) => outcomeOf(row, stage)?.kind === "differs");
    return true;
  }
}

/** What the dialog was opened for stands first: the box, or the box of the device. */
function startingAt(groups: readonly RecordGroup[], at: string | undefined): readonly RecordGroup[] {
  if (at === undefined) return groups;
  const isWanted = ({ enclosure, rows }: RecordGroup): boolean =>
    enclosure === at || rows.some(({ points }) => Object.values(points).some((point) => point.split("/")[0] === at));
  return [...groups.filter(isWanted), ...groups.filter((group) => !isWanted(group))];
}
