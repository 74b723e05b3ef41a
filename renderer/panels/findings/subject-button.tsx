import type { Subject } from "../../../shared-model/answers/finding.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { goTo, type Pane } from "../../state/session-store.ts";
import { findSubject } from "../../state/subject-target.ts";

/** Name of what a finding is about; pressing it selects the thing and brings it into view. */
export function SubjectButton({ subject, pane }: { readonly subject: Subject; readonly pane?: Pane }) {
  const go = (): void => {
    const state = documentStore.get();
    const target = findSubject(state.project, installationOf(state), subject);
    if (target !== undefined) goTo(target, pane);
  };
  if (subject.kind === "project") return <strong className="subject">{subject.name}</strong>;
  return (
    <button type="button" className="link subject" title={`Show ${subject.name} on the sheet`} onClick={go}>
      {subject.name}
    </button>
  );
}
