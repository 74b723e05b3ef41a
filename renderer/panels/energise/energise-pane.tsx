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

/** Everything that is operated and read while the drawing is energised. That it is computed stays in sight. */
export default function EnergisePane() {
  const answer = useStore(energiseStore, (state) => state.answer);
  const state = useStore(documentStore, (document) => STATE_WORDS[document.state].toLowerCase());
  const trouble = useStore(energiseStore, (state) => state.trouble);
  return (
    <div className="details energise">
      <div className="energise-top">
        <p>
          <strong>Computed circuit, {state}.</strong> The simulator never authorises live work.
        </p>
        <button type="button" className="button small" onClick={allOn}>
          All on and reset
        </button>
        <button type="button" className="link" onClick={leaveEnergise}>
          Open breaker, leave
        </button>
      </div>
      <Statement supplyV={answer?.supplyV} />
      {trouble !== undefined && (
        <div className="energise-warning" role="alert">
          <p>{trouble}</p>
          <button type="button" className="button small" onClick={compute}>
            Compute again
          </button>
        </div>
      )}
      {answer === undefined && trouble === undefined && (
        <p className="empty" role="status">
          Computing.
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
        {supplyV !== undefined && `Supply ${supplyV} V. `}It is computed from the drawing: nothing was measured, and
        nothing here says that a wall is dead.
      </p>
      <details>
        <summary>What it leaves out</summary>
        <p>
          Computed for an ideal circuit with stated assumptions. Real readings vary with load, meter and length.
          Unexpected reading: stop, do not adjust the drawing to suit it.
        </p>
      </details>
    </div>
  );
}

function Assumptions({ sentences }: { readonly sentences: readonly string[] }) {
  if (sentences.length === 0) return null;
  return (
    <section className="part">
      <h3>
        <span>Assumed</span>
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
