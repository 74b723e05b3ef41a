import { documentStore } from "../../state/document-store.ts";
import { energiseStore } from "../../state/energise/energise-store.ts";
import { keepAsEvidence } from "../../state/energise/instruments.ts";
import { copyLog } from "../../state/energise/log-text.ts";
import { useStore } from "../../state/use-store.ts";
import { whenWords } from "../../state/when-words.ts";
import { Section } from "../details/section.tsx";
import { wording } from "./words.ts";

/** What was read and done, newest first. What an instrument read can be kept in the document. */
export function LogPart() {
  const log = useStore(energiseStore, (state) => state.log);
  const readings = useStore(documentStore, ({ project }) => project.readings);
  const readOnly = useStore(documentStore, (document) => document.readOnly);
  return (
    <Section title={wording.log} note={log.length === 0 ? wording.nothingYet : wording.computedCircuit2}>
      {log.length > 0 && (
        <div className="part-body">
          <button type="button" className="button small" onClick={() => void copyLog()}>
            {wording.copyLog}
          </button>
        </div>
      )}
      <ol className="energise-log">
        {log.map((line) => {
          const kept = line.kept !== undefined && line.kept in readings;
          return (
            <li key={line.serial}>
              <span className="energise-when fig">{whenWords(line.at).replace("today ", "")}</span>
              <span className="energise-what">{line.title}</span>
              <span className="energise-value fig">{line.value}</span>
              {line.setting !== undefined && <small className="energise-setting">{line.setting}</small>}
              {line.reading !== undefined && !readOnly && (
                <button
                  type="button"
                  className="button small"
                  aria-disabled={kept}
                  aria-label={kept ? wording.kept(line.title) : wording.keepAsEvidence(line.title, line.value)}
                  onClick={() => !kept && keepAsEvidence(line)}
                >
                  {kept ? wording.kept2 : wording.keepAsEvidence2}
                </button>
              )}
            </li>
          );
        })}
      </ol>
    </Section>
  );
}
