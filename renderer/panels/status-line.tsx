import type { Severity } from "../../shared-model/answers/finding.ts";
import { SEVERITIES } from "../../shared-model/model/severity.ts";
import { retryChecks } from "../analysis/checks.ts";
import { documentStore } from "../state/document-store.ts";
import { type FindingsState, findingsStore } from "../state/findings-store.ts";
import { showPane } from "../state/session-store.ts";
import { useStore } from "../state/use-store.ts";
import { LiveRegion } from "./live-region/live-region.tsx";
import { SeveritySign } from "./severity-sign.tsx";
import { StateTag } from "./state-switch.tsx";
import { wording } from "./words.ts";

/** The foot of the window: how many findings of each kind, and whether they belong to the drawing as it is now. */
export function StatusLine() {
  return (
    <footer className="status">
      <StateTag />
      <button type="button" className="status-counts" onClick={() => showPane("findings")}>
        <span className="unseen">{wording.showFindings}</span>
        {SEVERITIES.map((severity) => (
          <Count key={severity} kind={severity} />
        ))}
        <Count kind="unknown" />
      </button>
      <CheckState />
      <LiveRegion />
    </footer>
  );
}

const WORDS: Readonly<Record<Severity | "unknown", string>> = {
  danger: wording.danger,
  violation: wording.violation,
  caution: wording.caution,
  advice: wording.advice,
  unknown: wording.cannotTell2,
};

const countOf = (state: FindingsState, kind: Severity | "unknown"): number =>
  kind === "unknown" ? state.couldNotTell.length : state.findings.filter(({ severity }) => severity === kind).length;

function Count({ kind }: { readonly kind: Severity | "unknown" }) {
  const count = useStore(findingsStore, (state) => countOf(state, kind));
  return (
    <span className={count === 0 ? "count none" : "count"}>
      <SeveritySign kind={kind} size={18} />
      <span className="fig">{count}</span> {WORDS[kind]}
    </span>
  );
}

function CheckState() {
  const revision = useStore(documentStore, (state) => state.revision);
  const checked = useStore(findingsStore, (state) => state.revision);
  const checksRun = useStore(findingsStore, (state) => state.checksRun);
  const trouble = useStore(findingsStore, (state) => state.trouble);
  const stale = checked < revision;
  return (
    <div className="status-state">
      {trouble !== undefined && (
        <span role="alert" className="status-trouble">
          {trouble}{" "}
          <button type="button" className="link" onClick={retryChecks}>
            {wording.checkAgain}
          </button>
        </span>
      )}
      <span className="fig">
        {stale ? wording.checking : wording.run(checksRun, checksRun === 1 ? "check" : "checks")}
      </span>
      <span className="fig status-revision">{wording.revision(revision)}</span>
    </div>
  );
}
