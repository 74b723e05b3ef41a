import { useId, useState } from "react";
import type { SurveyAnswer, SurveyWanted } from "../../../shared-model/answers/survey.ts";
import type { SurveyInstrument, SurveySwitch } from "../../../shared-model/model/survey.ts";
import {
  type Entered,
  isComplete,
  NOTHING_ENTERED,
  readsOhms,
  resultsOf,
  unreadable,
} from "../../state/survey/outcomes.ts";
import { writeResults } from "../../state/survey/write-reading.ts";
import { CircumstanceRows, switchesElsewhere } from "./circumstance-rows.tsx";
import { OutcomeRow } from "./outcome-row.tsx";
import { QuickOutcomes } from "./quick-outcomes.tsx";
import { wording } from "./words.ts";

interface Props {
  readonly answer: SurveyAnswer;
  readonly wanted: SurveyWanted;
  /** Hold points that nobody has ticked yet: nothing is written down before. */
  readonly holdsLeft: number;
  /** What the form is called, where it is not the one of the proposed test. */
  readonly name?: string;
  /** The steps of the test set the switches away from the box to on. */
  readonly switchesOn?: boolean;
}

/** What came of a test: one press for what is likely, or figures; a second one writes it down as one step. */
export function OutcomeForm({ answer, wanted, holdsLeft, name = wording.whatCameOfIt, switchesOn = false }: Props) {
  const [entered, setEntered] = useState<Entered>(NOTHING_ENTERED);
  const [instrument, setInstrument] = useState<SurveyInstrument>(wanted.instrument);
  const [switches, setSwitches] = useState<readonly SurveySwitch[]>(() =>
    switchesOn ? switchesElsewhere(answer).map((one) => ({ switch: one, on: true })) : [],
  );
  const [nothingPlugged, setNothingPlugged] = useState(false);
  const [tried, setTried] = useState(false);
  const [refusal, setRefusal] = useState<string>();
  const reason = useId();
  const odd = unreadable(wanted, entered);
  const whyNot =
    holdsLeft > 0
      ? wording.tickHoldPointsFirst(holdsLeft)
      : odd !== undefined
        ? readsOhms(wanted)
          ? wording.giveOhms(odd)
          : wording.giveVolts(odd)
        : !isComplete(wanted, entered)
          ? wording.enterWhatCameOfIt
          : wanted.nothingPlugged === true && !nothingPlugged
            ? wording.sayThatNothingIsPluggedIn
            : undefined;
  const write = (): void => {
    setTried(whyNot !== undefined);
    setRefusal(undefined);
    if (whyNot !== undefined) return;
    const { arrangement, joined } = wanted;
    const around = { box: answer.box.id, arrangement, instrument, switches, nothingPlugged };
    const done = writeResults({ ...around, ...(joined && { joined }) }, resultsOf(wanted, entered));
    setRefusal(done.ok ? undefined : done.refusal.message);
    if (done.ok) setEntered(NOTHING_ENTERED);
  };
  // What is missing is said while there is something missing, and no longer.
  const wrong = refusal ?? (tried ? whyNot : undefined);
  return (
    <form
      className="survey-outcome"
      aria-label={name}
      onSubmit={(event) => {
        event.preventDefault();
        write();
      }}
    >
      <h4>{wording.whatCameOfIt}</h4>
      <QuickOutcomes answer={answer} wanted={wanted} entered={entered} onEnter={setEntered} />
      {wanted.tests.map((test, at) => (
        <OutcomeRow
          key={JSON.stringify(test)}
          answer={answer}
          wanted={wanted}
          test={test}
          at={at}
          entered={entered}
          onEnter={setEntered}
        />
      ))}
      <CircumstanceRows
        answer={answer}
        arrangement={wanted.arrangement}
        instrument={instrument}
        onInstrument={setInstrument}
        switches={switches}
        onSwitches={setSwitches}
        nothingPlugged={nothingPlugged}
        onNothingPlugged={setNothingPlugged}
      />
      <button
        type="submit"
        className="button main"
        aria-disabled={whyNot !== undefined}
        {...(whyNot !== undefined && { "aria-describedby": reason })}
      >
        {wording.writeItDown}
      </button>
      <div className="survey-said">
        <p className={wrong === undefined ? "unseen" : "refused"} role="status">
          {wrong}
        </p>
        {whyNot !== undefined && (
          <span id={reason} className={wrong === undefined ? "dim" : "unseen"}>
            {whyNot}
          </span>
        )}
      </div>
    </form>
  );
}
