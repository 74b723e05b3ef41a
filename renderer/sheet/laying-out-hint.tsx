import { cancelLayOut, type LayingOutState, layingOutStore } from "../state/laying-out.ts";
import { useStore } from "../state/use-store.ts";
import { laterWording } from "./later-words.ts";

const runningOf = ({ running }: LayingOutState) => running;

/** How far a long layout has come, and the way out of it. The sheet stays in use meanwhile. */
export function LayingOutHint() {
  const running = useStore(layingOutStore, runningOf);
  const { done, of } = running?.progress ?? { done: 0, of: 1 };
  return (
    <>
      <p role="status" className="unseen">
        {running && laterWording.workingEscapeCancels(running.title)}
      </p>
      {running && (
        <fieldset className="sheet-hint sheet-hint-work" aria-label={running.title}>
          <span className="sheet-hint-title">{running.title}</span>
          <progress aria-label={laterWording.boxesMeasured} value={done} max={of} />
          <span className="fig">{done < of ? laterWording.ofBoxes(done, of) : laterWording.fittingThemTogether}</span>
          <button type="button" className="button small" onClick={cancelLayOut}>
            {laterWording.cancel}
          </button>
        </fieldset>
      )}
    </>
  );
}
