import "./survey.css";
import { useEffect, useRef } from "react";
import { findInstallation } from "../../../shared-model/queries/installation-of.ts";
import { documentStore } from "../../state/document-store.ts";
import { leaveSurvey, surveyStore } from "../../state/survey/survey-store.ts";
import { followSurvey, refresh } from "../../state/survey/surveying.ts";
import { useStore } from "../../state/use-store.ts";
import { BoxSurvey } from "./box-survey.tsx";
import { CircuitSurvey } from "./circuit-survey.tsx";
import { wording } from "./words.ts";

/** The opening that the focus was taken for. */
let focused = 0;

/** What is found out before work: which cable of a box is which, and which outlet hangs on which breaker. */
export default function SurveyPane() {
  const about = useStore(surveyStore, (state) => state.about);
  const opened = useStore(surveyStore, (state) => state.opened);
  const trouble = useStore(surveyStore, (state) => state.trouble);
  const head = useRef<HTMLHeadingElement>(null);
  const shown = about?.kind === "box" ? about.box : about?.kind;
  useEffect(() => {
    if (shown === undefined) return undefined;
    return followSurvey();
  }, [shown]);
  useEffect(() => {
    if (opened === focused) return;
    focused = opened;
    head.current?.focus();
  }, [opened]);
  const boxName = useStore(documentStore, ({ project }) =>
    about?.kind === "box" ? findInstallation(project, "as-found")?.enclosures[about.box]?.name : undefined,
  );
  if (about === undefined) return null;
  return (
    <div className="details survey">
      <div className="survey-top">
        <h2 ref={head} tabIndex={-1}>
          {about.kind === "map" ? wording.circuits : wording.whichCableIsWhich(boxName ?? "")}
        </h2>
        <span className="dim">{wording.asFound}</span>
        <button type="button" className="link" onClick={leave}>
          {wording.closeTheSurvey}
        </button>
      </div>
      {trouble !== undefined && (
        <div className="survey-warning" role="alert">
          <p>{trouble}</p>
          <button type="button" className="button small" onClick={refresh}>
            {wording.askAgain}
          </button>
        </div>
      )}
      {about.kind === "map" ? <CircuitSurvey /> : <BoxSurvey />}
    </div>
  );
}

/** The pane goes: the focus stays beside it. */
function leave(): void {
  leaveSurvey();
  requestAnimationFrame(() => {
    if (document.activeElement === document.body)
      document.querySelector<HTMLElement>('.pane [role="tab"][aria-selected="true"]')?.focus();
  });
}
