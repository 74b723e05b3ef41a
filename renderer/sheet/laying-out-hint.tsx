import { cancelLayOut, type LayingOutState, layingOutStore } from "../state/laying-out.ts";
import { useStore } from "../state/use-store.ts";
import { wording } from "./words.ts";

const runningOf = ({ running }: LayingOutState) => running;

/** How far a long layout has come, and the way out of it. The sheet stays in use meanwhile. */
export function LayingOutHint() {
  const running = useStore(layingOutStore, runningOf);
  const { done, of } = running?.progress ?? { done: 0, of: 1 };
  return (
    <>
      <p role="status" className="unseen">
        {running && wording.workingEscapeCancels(running.title)}
      </p>
      {running && (
        <fieldset className="sheet-hint sheet-hint-work" aria-label={running.title}>
          <span className="sheet-hint-title">{running.title}</span>
          <progress aria-label={wording.boxesMeasured} value={done} max={of} />
          <span className="fig">{done < of ? wording.ofBoxes(done, of) : wording.fittingThemTogether}</span>
          <button type="button" className="button small" onClick={cancelLayOut}>
            {wording.cancel}
          </button>
        </fieldset>
      )}
    </>
  );
}
