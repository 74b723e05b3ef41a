import { useState } from "react";
import type { ScopeAnswer, ScopeBox, ScopeLabel, ScopeLine } from "../../../shared-model/answers/scope.ts";
import { type OutletKey, parseOutlet } from "../../../shared-model/model/ids.ts";
import { Counters } from "./counters.tsx";
import { Fold } from "./fold.tsx";
import { ScopeFindingsPart } from "./scope-findings.tsx";
import { type Row, ScopeRow } from "./scope-row.tsx";
import { wording } from "./words.ts";

/** So many lines are shown at once; of more, each box is opened when it is wanted. */
const AT_ONCE = 160;
/** So many boxes are listed, and as many more each time. */
const BOXES = 60;

/** What changes, box by box, then what lies in no box, and how the findings stand. */
export function ByBox({ answer }: { readonly answer: ScopeAnswer }) {
  const [listed, setListed] = useState(BOXES);
  const { boxes, labels, totals } = answer;
  const elsewhere = besidesLabels(answer);
  const lines = boxes.reduce((sum, box) => sum + box.lines.length, 0);
  const more = Math.min(BOXES, boxes.length - listed);
  return (
    <>
      <Counters totals={totals} />
      {boxes.length + answer.elsewhereLines.length === 0 && <p className="empty">{wording.nothingChanges}</p>}
      {boxes.slice(0, listed).map((box, i) => (
        <BoxPart key={box.enclosure} box={box} open={lines <= AT_ONCE || i === 0} />
      ))}
      {more > 0 && (
        <p className="scope-more">
          <button type="button" className="button small" onClick={() => setListed(listed + BOXES)}>
            {wording.andMore(more)}
          </button>
        </p>
      )}
      {elsewhere.length > 0 && (
        <Fold title={wording.cablesAndLoads} note={elsewhere.length} open={elsewhere.length <= AT_ONCE}>
          {() => (
            <ul className="scope-rows">
              {elsewhere.map((line) => (
                <ScopeRow key={line.key} row={line} />
              ))}
            </ul>
          )}
        </Fold>
      )}
      <LabelsPart labels={labels} />
      <ScopeFindingsPart findings={answer.findings} />
    </>
  );
}

/** Labels that are drawn stand among the labels. */
function besidesLabels({ elsewhereLines, labels }: ScopeAnswer): readonly ScopeLine[] {
  const listed = new Set<string>(labels.flatMap(({ label }) => label ?? []));
  return elsewhereLines.filter(({ items }) => !items.every(({ kind, id }) => kind === "label" && listed.has(id)));
}

function BoxPart({ box, open }: { readonly box: ScopeBox; readonly open: boolean }) {
  const { enclosure, name, note, lines } = box;
  return (
    <Fold
      title={
        <>
          {name}
          {note !== undefined && note !== "" && <span className="scope-box-note">, {note}</span>}
        </>
      }
      note={boxWords(box)}
      open={open}
    >
      {() => (
        <ul className="scope-rows">
          {lines.map((line) => (
            <ScopeRow key={line.key} row={line} box={enclosure} />
          ))}
        </ul>
      )}
    </Fold>
  );
}

function boxWords({ breakers, counts, work }: ScopeBox): string {
  const names = [...new Set(breakers.map(({ name }) => name))];
  const [only] = names;
  const off =
    only === undefined
      ? undefined
      : names.length === 1
        ? wording.breakerOff(only)
        : wording.breakersOff(names.join(", "));
  const kind =
    work === "new"
      ? wording.workNew
      : work === "removed"
        ? wording.workGone
        : work === "not-opened"
          ? wording.workNotOpened
          : undefined;
  const moves = counts.detach + counts.attach > 0 ? wording.offAndOn(counts.detach, counts.attach) : undefined;
  return [kind, off, moves].filter((part) => part !== undefined).join(", ");
}

function LabelsPart({ labels }: { readonly labels: readonly ScopeLabel[] }) {
  if (labels.length === 0) return null;
  return (
    <Fold title={wording.labels} note={labels.length} open={labels.length <= AT_ONCE}>
      {() => (
        <ul className="scope-rows">
          {labels.map((label) => (
            <ScopeRow key={label.key} row={rowOf(label)} box={label.box?.id} />
          ))}
        </ul>
      )}
    </Fold>
  );
}

const rowOf = ({ key, wording: title, on, because }: ScopeLabel): Row => ({
  key,
  kind: "new",
  title,
  will: on.name,
  note: because,
  // An outlet is gone to by its device.
  items: [
    on.kind === "outlet"
      ? { ...on, kind: "device", id: parseOutlet(on.id as OutletKey).device }
      : { ...on, kind: on.kind },
  ],
});
