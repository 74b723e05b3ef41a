import { useState } from "react";
import type { ScopeAnswer, WorkStep } from "../../../shared-model/answers/scope.ts";
import { goToScope } from "../../state/scope/go-to-scope.ts";
import { scopeStore } from "../../state/scope/scope-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Fold } from "./fold.tsx";
import { wording } from "./words.ts";

/** So many steps are shown at once; of more, each run of them is opened when it is wanted. */
const AT_ONCE = 120;
/** So many runs are listed, and as many more each time. */
const RUNS = 40;

interface Run {
  readonly key: string;
  readonly title: string;
  readonly steps: readonly WorkStep[];
}

/** The work in its order. Nothing is ticked here: what is done is signed where it is done, on paper. */
export function BySteps({ answer }: { readonly answer: ScopeAnswer }) {
  const { steps, cautions, assumptions } = answer;
  const [listed, setListed] = useState(RUNS);
  const working = useStore(scopeStore, (state) => state.working);
  if (working) return <p className="empty">{wording.workingItOut}</p>;
  if (steps.length === 0) return <p className="empty">{wording.nothingToDo}</p>;
  const runs = runsOf(steps);
  const words = new Map(cautions.map(({ id, text }) => [id, text]));
  const more = Math.min(RUNS, runs.length - listed);
  return (
    <>
      <p className="scope-note">{wording.noteSign}</p>
      {runs.slice(0, listed).map(({ key, title, steps: run }, i) => (
        <Fold
          key={key}
          title={title}
          note={spanOf(run)}
          open={steps.length <= AT_ONCE || (i === 0 && run.length <= AT_ONCE)}
        >
          {() => (
            <ol className="scope-steps">
              {run.map((step) => (
                <Step key={step.id} step={step} cautions={words} />
              ))}
            </ol>
          )}
        </Fold>
      ))}
      {more > 0 && (
        <p className="scope-more">
          <button type="button" className="button small" onClick={() => setListed(listed + RUNS)}>
            {wording.andMore(more)}
          </button>
        </p>
      )}
      {assumptions.length > 0 && (
        <Fold title={wording.restsOn} open={false}>
          {() => (
            <ul className="scope-sentences">
              {assumptions.map((sentence) => (
                <li key={sentence}>{sentence}</li>
              ))}
            </ul>
          )}
        </Fold>
      )}
    </>
  );
}

/** Steps under one heading: each box by itself, and all boxes together before, between and after the work in them. */
function runsOf(steps: readonly WorkStep[]): readonly Run[] {
  const runs: { key: string; title: string; steps: WorkStep[] }[] = [];
  for (const step of steps) {
    const title = headingOf(step);
    const last = runs[runs.length - 1];
    if (last !== undefined && last.title === title) last.steps.push(step);
    else runs.push({ key: step.id, title, steps: [step] });
  }
  return runs;
}

/** By the classes of instructions, in the order of the work. */
function headingOf({ stage, box }: WorkStep): string {
  if (stage <= 1) return wording.beforeTheWork;
  if (stage <= 11 && box !== undefined) return box.name;
  if (stage <= 13) return wording.closeUp;
  return stage === 14 ? wording.energiseAndTest : wording.handOver;
}

const spanOf = (steps: readonly WorkStep[]): string => {
  const [first] = steps;
  const last = steps[steps.length - 1];
  if (first === undefined || last === undefined) return "";
  return first === last ? `${first.number}` : `${first.number} – ${last.number}`;
};

function Step({ step, cautions }: { readonly step: WorkStep; readonly cautions: ReadonlyMap<string, string> }) {
  const { id, number, hold, text, details, readings, ifNot, test, box, items } = step;
  const isPressed = useStore(scopeStore, (state) => state.pressed.key === id);
  const goes = items.length > 0 || box !== undefined;
  return (
    <li className={hold === undefined ? "scope-step" : "scope-step scope-hold"} value={number}>
      <p className="scope-step-text">
        <span className="fig scope-step-number" aria-hidden="true">
          {number}
        </span>
        {hold !== undefined && (
          <strong className="scope-hold-tag">
            <span className="unseen">{wording.holdPoint(hold)}</span>
            <span aria-hidden="true">{hold}</span>
          </strong>
        )}
        {test !== undefined && <span className="scope-test">{test}</span>}
        {goes ? (
          <button
            type="button"
            className="scope-step-go"
            aria-current={isPressed || undefined}
            onClick={() => goToScope({ key: id, items, box: box?.id })}
          >
            {text}
          </button>
        ) : (
          <span>{text}</span>
        )}
      </p>
      {details.map((sentence) => (
        <p key={sentence} className="scope-step-more">
          {sentence}
        </p>
      ))}
      {step.cautions.map((caution) => {
        const words = cautions.get(caution);
        return words === undefined ? null : (
          <p key={caution} className="scope-step-caution">
            {words}
          </p>
        );
      })}
      {readings.length > 0 && (
        <ul className="scope-readings">
          {readings.map((reading) => (
            <li key={reading.id}>
              <span>{reading.what}</span>
              <span className="fig">
                <span className="unseen">{wording.expected} </span>
                {reading.expect}
              </span>
            </li>
          ))}
        </ul>
      )}
      {ifNot !== undefined && <p className="scope-step-more">{wording.ifNot(ifNot)}</p>}
    </li>
  );
}
