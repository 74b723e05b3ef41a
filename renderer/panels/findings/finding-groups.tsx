import { useMemo, useState } from "react";
import type { Finding } from "../../../shared-model/answers/finding.ts";
import { SEVERITIES } from "../../../shared-model/model/severity.ts";
import { acknowledgementOf } from "../../../shared-model/queries/acknowledgement-of.ts";
import { documentStore, hasProposed } from "../../state/document-store.ts";
import { type FindingGroup, groupFindings, SEVERITY_WORDS } from "../../state/finding-groups.ts";
import { findingsOf, findingsStore } from "../../state/findings-store.ts";
import { useStore } from "../../state/use-store.ts";
import { SeveritySign } from "../severity-sign.tsx";
import { type Filter, passes } from "./finding-filter.tsx";
import { FindingRow } from "./finding-row.tsx";
import { wording } from "./words.ts";

/** The findings that pass the filter, under their headings. */
export function FindingGroups({ filter }: { readonly filter: Filter }) {
  const findings = useStore(findingsStore, (state) => state.findings);
  const asFound = useStore(findingsStore, (state) => findingsOf(state, "as-found")?.findings ?? NONE);
  const state = useStore(documentStore, (document) => document.state);
  const project = useStore(documentStore, (document) => document.project);
  const compared = useStore(documentStore, hasProposed);
  const groups = useMemo(() => {
    const pass = (finding: Finding): boolean => passes(project, filter, finding);
    return groupFindings({
      state,
      compared,
      findings: findings.filter(pass),
      asFound: asFound.filter(pass),
      isAcknowledged: (finding) => acknowledgementOf(project, finding)?.covers === true,
    });
  }, [findings, asFound, state, project, compared, filter]);
  return groups.map((group) => <Group key={`${state} ${group.id}`} group={group} shown={state} />);
}

const NONE: readonly Finding[] = [];

/** A drawing with thousands of findings still opens at once. */
const STEP = 100;

function Group({ group, shown }: { readonly group: FindingGroup; readonly shown: Finding["state"] }) {
  const { title, about, quiet, oneSeverity, findings } = group;
  const [open, setOpen] = useState(!quiet);
  const [most, setMost] = useState(STEP);
  const first = findings[0];
  const head = (
    <>
      {oneSeverity && first && <SeveritySign kind={first.severity} size={20} />}
      <span className="findings-title">{title}</span>
      {!oneSeverity && <SeverityCounts findings={findings} />}
      <span className="fig findings-count">{findings.length}</span>
    </>
  );
  return (
    <section aria-label={title}>
      <h3 className="findings-kind">
        {quiet ? (
          <button type="button" className="findings-fold" aria-expanded={open} onClick={() => setOpen(!open)}>
            <Arrow open={open} />
            {head}
          </button>
        ) : (
          head
        )}
      </h3>
      {open && about !== undefined && <p className="findings-note">{about}</p>}
      {open && (
        <ul>
          {findings.slice(0, most).map((finding) => (
            <FindingRow
              key={`${finding.state} ${finding.key}`}
              finding={finding}
              withSeverity={!oneSeverity}
              onlyRead={finding.state !== shown}
            />
          ))}
        </ul>
      )}
      {open && findings.length > most && (
        <button type="button" className="link findings-more" onClick={() => setMost(most + STEP)}>
          {findings.length - most}
          {wording.more}
        </button>
      )}
    </section>
  );
}

/** How many of each severity, by sign and figure; severities without a finding are left out. */
export function SeverityCounts({ findings }: { readonly findings: readonly Finding[] }) {
  return (
    <span className="findings-counts">
      {SEVERITIES.map((severity) => {
        const count = findings.filter((finding) => finding.severity === severity).length;
        if (count === 0) return null;
        return (
          <span key={severity} className="fig">
            <SeveritySign kind={severity} size={16} />
            {count}
            <span className="unseen"> {SEVERITY_WORDS[severity].toLowerCase()}</span>
          </span>
        );
      })}
    </span>
  );
}

const Arrow = ({ open }: { readonly open: boolean }) => (
  <svg width="10" height="10" viewBox="0 0 14 14" aria-hidden="true">
    <path d={open ? "M2 5L7 10L12 5" : "M5 2L10 7L5 12"} fill="none" stroke="currentColor" strokeWidth="1.8" />
  </svg>
);
