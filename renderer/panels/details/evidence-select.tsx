import type { PropertyTarget } from "../../../shared-model/commands/command-args.ts";
import { EVIDENCE_MARKS, type EvidenceMark } from "../../../shared-model/model/evidence.ts";
import { dispatch, documentStore } from "../../state/document-store.ts";
import { wording } from "./words.ts";

const MARK_WORDS: Readonly<Record<EvidenceMark, string>> = {
  measured: wording.measuredM,
  seen: wording.seenS,
  told: wording.toldT,
  assumed: wording.assumedA,
  unknown: wording.unknown,
};

interface Props {
  readonly target: PropertyTarget;
  readonly field: string;
  readonly label: string;
  readonly mark: EvidenceMark | undefined;
}

/** How a fact is known: a word and its letter, never a colour. */
export function EvidenceSelect({ target, field, label, mark }: Props) {
  const change = (chosen: string): void => {
    const { state } = documentStore.get();
    const evidence = EVIDENCE_MARKS.find((one) => one === chosen) ?? null;
    dispatch({ command: "mark-evidence", args: { state, target, field, evidence } });
  };
  return (
    <select
      className={`field small evidence known-${mark ?? "none"}`}
      aria-label={wording.howKnown(label)}
      value={mark ?? ""}
      onChange={({ target: control }) => change(control.value)}
    >
      <option value="">{wording.notSaid}</option>
      {EVIDENCE_MARKS.map((one) => (
        <option key={one} value={one}>
          {MARK_WORDS[one]}
        </option>
      ))}
    </select>
  );
}
