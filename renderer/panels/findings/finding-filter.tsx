import type { CannotTell, Finding, Severity } from "../../../shared-model/answers/finding.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import type { Project } from "../../../shared-model/model/project.ts";
import { SEVERITIES } from "../../../shared-model/model/severity.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { findInstallation } from "../../../shared-model/queries/installation-of.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { SEVERITY_WORDS } from "../../state/finding-groups.ts";
import { enclosuresOfSubject } from "../../state/subject-target.ts";
import { useStore } from "../../state/use-store.ts";
import { wording } from "./words.ts";

/** Which findings are shown. */
export interface Filter {
  readonly severity: Severity | "unknown" | undefined;
  readonly box: EnclosureId | undefined;
}

export const EVERYTHING: Filter = { severity: undefined, box: undefined };

/** Whether something that was found, or could not be told, passes the filter. */
export function passes(project: Project, { severity, box }: Filter, found: Finding | CannotTell): boolean {
  if (severity !== undefined && severity !== ("severity" in found ? found.severity : "unknown")) return false;
  if (box === undefined) return true;
  const installation = findInstallation(project, found.state);
  return (
    installation !== undefined &&
    found.subjects.some((subject) => enclosuresOfSubject(installation, subject).includes(box))
  );
}

interface Props {
  readonly filter: Filter;
  readonly onChange: (filter: Filter) => void;
}

/** Shows one severity, or one box, alone. */
export function FindingFilter({ filter, onChange }: Props) {
  const { enclosures } = useStore(documentStore, installationOf);
  const kinds = [...SEVERITIES, "unknown"] as const;
  return (
    <div className="findings-filter">
      <select
        className="field small"
        aria-label={wording.severityShown}
        value={filter.severity ?? ""}
        onChange={({ target }) => onChange({ ...filter, severity: kinds.find((kind) => kind === target.value) })}
      >
        <option value="">{wording.everySeverity}</option>
        {kinds.map((kind) => (
          <option key={kind} value={kind}>
            {kind === "unknown" ? wording.cannotTell : SEVERITY_WORDS[kind]}
          </option>
        ))}
      </select>
      <select
        className="field small"
        aria-label={wording.boxShown}
        value={filter.box !== undefined && filter.box in enclosures ? filter.box : ""}
        onChange={({ target }) => onChange({ ...filter, box: enclosures[target.value as EnclosureId]?.id })}
      >
        <option value="">{wording.everyBox}</option>
        {inOrder<Enclosure>(enclosures).map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
      {(filter.severity !== undefined || filter.box !== undefined) && (
        <button type="button" className="button small" onClick={() => onChange(EVERYTHING)}>
          {wording.showAll}
        </button>
      )}
    </div>
  );
}
