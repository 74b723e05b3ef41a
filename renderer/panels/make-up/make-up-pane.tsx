import "./make-up.css";
import { useEffect, useRef } from "react";
import { isMakingUp, type MakeUpState, madeOf, makeUpStore } from "../../state/make-up/make-up-store.ts";
import { acceptMakeUp, askAgain, leaveMakeUp, showPreview } from "../../state/make-up/making-up.ts";
import { useStore } from "../../state/use-store.ts";
import { FitForm } from "./fit-form.tsx";
import { MakeUpForm } from "./make-up-form.tsx";
import { Outcome } from "./outcome.tsx";
import { spokenOutcome } from "./spoken-outcome.ts";
import { wording } from "./words.ts";

/** A make-up that is being asked for: the questions, what would come of the answers, and the way to take it or leave it. */
export default function MakeUpPane() {
  const state = useStore(makeUpStore, (all) => all);
  const { job, told, busy, trouble } = state;
  const head = useRef<HTMLHeadingElement>(null);
  const about = job === undefined ? undefined : job.kind === "fit" ? job.outlet : job.box;
  useEffect(() => {
    if (about !== undefined) head.current?.focus();
  }, [about]);
  if (job === undefined) return null;
  return (
    <section
      className="make-up"
      aria-label={titleOf(state)}
      onKeyDown={(event) => {
        if (event.key !== "Escape" || event.defaultPrevented) return;
        event.stopPropagation();
        leaveMakeUp();
      }}
    >
      <div className="make-up-body">
        <header className="who">
          <h2 ref={head} tabIndex={-1}>
            {titleOf(state)}
          </h2>
          <p>{wording.atOnce}</p>
        </header>
        {told?.kind === "make-up" && job.kind === "make-up" && <MakeUpForm job={job} answer={told.answer} />}
        {told?.kind === "fit" && job.kind === "fit" && <FitForm job={job} answer={told.answer} />}
        <p className="unseen" role="status">
          {busy ? "" : spokenOutcome(told, trouble)}
        </p>
        {trouble !== undefined && (
          <div className="part-body make-up-trouble">
            <p className="refused">{trouble}</p>
            <button type="button" className="button small" onClick={askAgain}>
              {wording.askAgain}
            </button>
          </div>
        )}
        {told === undefined && trouble === undefined && <p className="empty">{wording.working}</p>}
        {told !== undefined && <Outcome told={told} job={job} busy={busy} />}
      </div>
      <Buttons state={state} />
    </section>
  );
}

function titleOf({ told, job }: MakeUpState): string {
  if (told?.kind === "make-up") return wording.makeUpTitle(told.answer.name);
  if (told?.kind === "fit") return wording.fitTitle(told.answer.old.name);
  return job?.kind === "fit" ? wording.fitTitle("") : wording.makeUpTitle("");
}

/** What came of it in a few words, in sight while the questions are answered. */
function sumOf({ told }: MakeUpState): string {
  if (told === undefined) return "";
  const { result } = told.answer;
  if ("refused" in result) return wording.notPossible;
  const { detach, attach, newSplices } = result.made.moves;
  return wording.moves(detach, attach, newSplices);
}

const isRefused = ({ told }: MakeUpState): boolean => told !== undefined && "refused" in told.answer.result;

/** The reason may lie far below the questions. */
function showWhy(): void {
  const why = document.querySelector<HTMLElement>(".make-up-outcome .refused");
  why?.scrollIntoView({ block: "center" });
  why?.focus({ preventScroll: true });
}

/** What is pressed last stays in sight, however long the questions are. */
function Buttons({ state }: { readonly state: MakeUpState }) {
  const made = madeOf(state);
  const isNothing =
    made !== undefined &&
    made.moves.ends.length === 0 &&
    made.replaced.length === 0 &&
    state.told?.answer.room === undefined;
  const ready = made !== undefined && !state.busy && isMakingUp(state);
  return (
    <div className="make-up-foot">
      <p className={state.busy ? "make-up-sum busy" : "make-up-sum"}>
        {sumOf(state)}
        {isRefused(state) && (
          <button type="button" className="link" onClick={showWhy}>
            {wording.seeWhy}
          </button>
        )}
      </p>
      <button type="button" className="button main" disabled={!ready || isNothing} onClick={acceptMakeUp}>
        {wording.accept}
      </button>
      <button
        type="button"
        className="button"
        aria-pressed={state.preview}
        disabled={made === undefined}
        onClick={() => showPreview(!state.preview)}
      >
        {wording.showOnSheet}
      </button>
      <button type="button" className="button" onClick={leaveMakeUp}>
        {wording.cancel}
      </button>
    </div>
  );
}
