import type { Subject } from "../../../shared-model/answers/finding.ts";
import type { StateName } from "../../../shared-model/model/project.ts";
import { findInstallation } from "../../../shared-model/queries/installation-of.ts";
import { documentStore } from "../../state/document-store.ts";
import { goTo, type Pane } from "../../state/session-store.ts";
import { goToIn, otherState } from "../../state/shown-state.ts";
import { findSubject } from "../../state/subject-target.ts";
import { wording } from "./words.ts";

interface Props {
  readonly subject: Subject;
  /** The account of the wiring that was checked; it is shown when the thing is not in the one that is shown. */
  readonly state: StateName;
  readonly pane?: Pane;
}

/** Name of what a finding is about; pressing it selects the thing and brings it into view. */
export function SubjectButton({ subject, state, pane }: Props) {
  const go = (): void => {
    const { project, state: shown } = documentStore.get();
    for (const where of [shown, otherState(shown)]) {
      const installation = findInstallation(project, where);
      const target = installation && findSubject(project, installation, subject);
      if (target === undefined) continue;
      if (where === shown) goTo(target, pane);
      else if (where === state) goToIn(where, target);
      return;
    }
  };
  if (subject.kind === "project") return <strong className="subject">{subject.name}</strong>;
  return (
    <button type="button" className="link subject" title={wording.showOnTheSheet(subject.name)} onClick={go}>
      {subject.name}
    </button>
  );
}
