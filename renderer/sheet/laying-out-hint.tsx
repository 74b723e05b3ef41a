import { cancelLayOut, type LayingOutState, layingOutStore } from "../state/laying-out.ts";
import { useStore } from "../state/use-store.ts";

const runningOf = ({ running }: LayingOutState) => running;

/** How far a long layout has come, and the way out of it. The sheet stays in use meanwhile. */
export function LayingOutHint() {
  const running = useStore(layingOutStore, runningOf);
  const { done, of } = running?.progress ?? { done: 0, of: 1 };
  return (
    <>
      <p role="status" className="unseen">
        {running && `${running.title}: working. Escape cancels.`}
      </p>
      {running && (
        <fieldset className="sheet-hint sheet-hint-work" aria-label={running.title}>
          <span className="sheet-hint-title">{running.title}</span>
          <progress aria-label="Boxes measured" value={done} max={of} />
          <span className="fig">{done < of ? `${done} of ${of} boxes` : "fitting them together"}</span>
          <button type="button" className="button small" onClick={cancelLayOut}>
            Cancel
          </button>
        </fieldset>
      )}
    </>
  );
}
