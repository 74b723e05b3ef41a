import { useState } from "react";
import type { Finding, Severity } from "../../../shared-model/answers/finding.ts";
import { documentStore } from "../../state/document-store.ts";
import { findingsStore, SEVERITIES, summaryOf } from "../../state/findings-store.ts";
import { useStore } from "../../state/use-store.ts";
import { SeveritySign } from "../severity-sign.tsx";
import { CannotTellList } from "./cannot-tell-list.tsx";
import { FindingRow } from "./finding-row.tsx";

/** Everything the checks said, worst first. */
export function Findings() {
  const findings = useStore(findingsStore, (state) => state.findings);
  return (
    <div className="findings">
      <Summary />
      {SEVERITIES.map((severity) => (
        <SeverityGroup key={severity} severity={severity} findings={findings} />
      ))}
      <CannotTellList />
    </div>
  );
}

function Summary() {
  const stale = useStore(documentStore, (state) => state.revision) > useStore(findingsStore, (state) => state.revision);
  const words = useStore(findingsStore, summaryOf);
  return (
    <p className={stale ? "findings-summary stale" : "findings-summary"}>
      {words}
      {stale && <span className="findings-stale"> Checking the last change.</span>}
    </p>
  );
}

const TITLES: Readonly<Record<Severity, string>> = {
  danger: "Danger",
  violation: "Violation",
  caution: "Caution",
  advice: "Advice",
};

/** A drawing with thousands of findings still opens at once. */
const STEP = 100;

function SeverityGroup({ severity, findings }: { readonly severity: Severity; readonly findings: readonly Finding[] }) {
  const [most, setMost] = useState(STEP);
  const mine = findings.filter((finding) => finding.severity === severity);
  if (mine.length === 0) return null;
  return (
    <section aria-label={TITLES[severity]}>
      <h3 className="findings-kind">
        <SeveritySign kind={severity} size={20} />
        {TITLES[severity]}
        <span className="fig">{mine.length}</span>
      </h3>
      <ul>
        {mine.slice(0, most).map((finding) => (
          <FindingRow key={finding.key} finding={finding} />
        ))}
      </ul>
      {mine.length > most && (
        <button type="button" className="link findings-more" onClick={() => setMost(most + STEP)}>
          {mine.length - most} more
        </button>
      )}
    </section>
  );
}
