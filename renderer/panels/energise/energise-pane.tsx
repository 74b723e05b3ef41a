import "./energise.css";
import { documentStore } from "../../state/document-store.ts";
import { energiseStore } from "../../state/energise/energise-store.ts";
import { compute, leaveEnergise } from "../../state/energise/energising.ts";
import { allOn } from "../../state/energise/operating.ts";
import { STATE_WORDS } from "../../state/shown-state.ts";
import { useStore } from "../../state/use-store.ts";
import { LastActPart } from "./last-act-part.tsx";
import { LogPart } from "./log-part.tsx";
import { MeterPart } from "./meter-part.tsx";
import { OperatedPart } from "./operated-part.tsx";
import { OutletPart } from "./outlet-part.tsx";
import { wording } from "./words.ts";

/** Everything that is operated and read while the drawing is energised. That it is computed stays in sight. */
export default function EnergisePane() {
  const answer = useStore(energiseStore, (state) => state.answer);
  const state = useStore(documentStore, (document) => STATE_WORDS[document.state].toLowerCase());
  const trouble = useStore(energiseStore, (state) => state.trouble);
  return (
    <div className="details energise">
      <div className="energise-top">
        <p>
          <strong>{wording.computedCircuit(state)}</strong>
          {wording.theSimulatorNeverAuthorisesLiveWork}
        </p>
        <button type="button" className="button small" onClick={allOn}>
          {wording.allOnAndReset}
        </button>
        <button type="button" className="link" onClick={leaveEnergise}>
          {wording.openBreakerLeave}
        </button>
      </div>
      <Statement supplyV={answer?.supplyV} />
      {trouble !== undefined && (
        <div className="energise-warning" role="alert">
          <p>{trouble}</p>
          <button type="button" className="button small" onClick={compute}>
            {wording.computeAgain}
          </button>
        </div>
      )}
      {answer === undefined && trouble === undefined && (
        <p className="empty" role="status">
          {wording.computing}
        </p>
      )}
      {answer !== undefined && (
        <>
          <LastActPart answer={answer} />
          <OperatedPart operables={answer.operables} />
          <MeterPart answer={answer} />
          <OutletPart answer={answer} />
        </>
      )}
      <LogPart />
      {answer !== undefined && <Assumptions sentences={answer.assumptions} />}
    </div>
  );
}

/** What is to be made of it. */
function Statement({ supplyV }: { readonly supplyV: number | undefined }) {
  return (
    <div className="energise-statement">
      <p>
        {supplyV !== undefined && wording.supplyV(supplyV)}
        {wording.itIsComputedFromTheDrawing}
      </p>
      <details>
        <summary>{wording.whatItLeavesOut}</summary>
        <p>{wording.computedForAnIdealCircuitWith}</p>
      </details>
    </div>
  );
}

function Assumptions({ sentences }: { readonly sentences: readonly string[] }) {
  if (sentences.length === 0) return null;
  return (
    <section className="part">
      <h3>
        <span>{wording.assumed}</span>
        <small>{sentences.length}</small>
      </h3>
      <ul className="energise-sentences">
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  );
}
