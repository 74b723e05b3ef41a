import type { Subject } from "../../../shared-model/answers/finding.ts";
import type { CableId } from "../../../shared-model/model/ids.ts";
import type { StateName } from "../../../shared-model/model/project.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { findingsStore } from "../../state/findings-store.ts";
import { useStore } from "../../state/use-store.ts";
import { SeveritySign } from "../severity-sign.tsx";
import { type Filter, passes } from "./finding-filter.tsx";
import { SubjectButton } from "./subject-button.tsx";
import { wording } from "./words.ts";

const MOST = 100;

/** What could not be judged, with the fact that is missing; the name leads to where it is entered. */
export function CannotTellList({ filter }: { readonly filter: Filter }) {
  const all = useStore(findingsStore, (state) => state.couldNotTell);
  const project = useStore(documentStore, (document) => document.project);
  const list = all.filter((open) => passes(project, filter, open));
  if (list.length === 0) return null;
  return (
    <section aria-label={wording.cannotTell}>
      <h3 className="findings-kind">
        <SeveritySign kind="unknown" size={20} />
        <span className="findings-title">{wording.cannotTell}</span>
        <span className="fig findings-count">{list.length}</span>
      </h3>
      <ul>
        {list.slice(0, MOST).map(({ key, state, subjects, message, missing, enterAt = subjects[0], toDo }) => (
          <li key={key} className="finding">
            <p className="finding-who">
              {subjects.map((subject) => (
                <SubjectButton key={`${subject.kind} ${subject.id}`} subject={subject} state={state} pane="details" />
              ))}
            </p>
            <p className="finding-message">{message}</p>
            <p className="finding-meta">
              <span>
                {wording.missing(missing)}
                {toDo ?? (
                  <>
                    {wording.enterItInTheDetailsOf}
                    {enterAt === undefined ? (
                      wording.theDrawing
                    ) : (
                      <SubjectButton subject={enterAt} state={state} pane="details" />
                    )}
                    .
                  </>
                )}
              </span>
              <DrawPanel subject={subjects[0]} state={state} />
            </p>
          </li>
        ))}
      </ul>
      {list.length > MOST && (
        <p className="empty">
          {wording.and}
          {list.length - MOST}
          {wording.more}
        </p>
      )}
    </section>
  );
}

/** Where what is missing is the panel at the other side of a cable, it is drawn in one step. */
function DrawPanel({ subject, state }: { readonly subject: Subject | undefined; readonly state: StateName }) {
  const cable = useStore(documentStore, (document) =>
    subject?.kind === "cable" && document.state === state && !document.readOnly
      ? installationOf(document).cables[subject.id as CableId]
      : undefined,
  );
  if (cable === undefined || !("outside" in cable.sides.a || "outside" in cable.sides.b)) return null;
  const draw = async (): Promise<void> => (await import("../../state/draw-panel.ts")).drawPanelOf(cable);
  return (
    <button type="button" className="button" onClick={draw}>
      {wording.drawThePanelOf(cable.name)}
    </button>
  );
}
