import { useId } from "react";
import type { SurveyAnswer, SurveyWanted } from "../../../shared-model/answers/survey.ts";
import type { DeviceId } from "../../../shared-model/model/ids.ts";
import type { SurveyTest } from "../../../shared-model/model/survey.ts";
import { documentStore } from "../../state/document-store.ts";
import { breakersOf } from "../../state/survey/breakers.ts";
import { type Entered, NOT_LISTED, OPEN, readsOhms } from "../../state/survey/outcomes.ts";
import { useStore } from "../../state/use-store.ts";
import { nameOf, pairWords, testWords } from "./answer-words.ts";
import { Choice } from "./choice.tsx";
import { wording } from "./words.ts";

interface Props {
  readonly answer: SurveyAnswer;
  readonly wanted: SurveyWanted;
  readonly test: SurveyTest;
  /** Its place in the form. */
  readonly at: number;
  readonly entered: Entered;
  readonly onEnter: (entered: Entered) => void;
}

/** One result: a figure with the usual ones beside it, a yes or no, or what worked. */
export function OutcomeRow(props: Props) {
  switch (props.test.kind) {
    case "pair":
    case "current":
      return <FigureRow {...props} />;
    case "test-lamp":
      return (
        <>
          <FigureRow {...props} />
          <SeenRow {...props} yes={wording.theLightBeyondGlowed} no={wording.itStayedDark} />
        </>
      );
    case "look":
      return <SeenRow {...props} yes={wording.theFeedIsThere} no={wording.noFeedThere} />;
    case "breaker":
      return (
        <>
          <BreakerRow {...props} />
          <SeenRow {...props} yes={wording.wentDead} no={wording.stayedLive} />
        </>
      );
    case "works":
      return <WorksRow {...props} />;
  }
}

function FigureRow({ answer, wanted, test, at, entered, onEnter }: Props) {
  const id = useId();
  const ohms = readsOhms(wanted);
  const set = (value: string): void => onEnter({ ...entered, figures: { ...entered.figures, [at]: value } });
  const usual: readonly string[] = test.kind !== "pair" ? [] : ohms ? [OPEN, "0"] : ["120", "0"];
  const label = test.kind === "pair" ? pairWords(answer, test) : testWords(answer, test);
  const unit = test.kind === "current" ? wording.amperes : ohms ? wording.ohms : wording.volts;
  return (
    <div className="survey-figure">
      <label htmlFor={id}>{label}</label>
      <span className="survey-usual">
        {usual.map((value) => (
          <button
            key={value}
            type="button"
            className="button small"
            aria-label={`${label}: ${value === OPEN ? wording.open : `${value} ${unit}`}`}
            aria-pressed={entered.figures[at] === value}
            onClick={() => set(value)}
          >
            {value === OPEN ? wording.open : value}
          </button>
        ))}
      </span>
      <input
        id={id}
        className="field small"
        autoComplete="off"
        inputMode={ohms ? "text" : "decimal"}
        value={entered.figures[at] ?? ""}
        onChange={({ target }) => set(target.value)}
      />
      <span className="dim" aria-hidden="true">
        {unit}
      </span>
    </div>
  );
}

function SeenRow({
  answer,
  test,
  at,
  entered,
  onEnter,
  yes,
  no,
}: Props & { readonly yes: string; readonly no: string }) {
  const set = (seen: boolean): void => onEnter({ ...entered, seen: { ...entered.seen, [at]: seen } });
  return (
    <Choice
      title={testWords(answer, test)}
      options={[
        ["yes", yes],
        ["no", no],
      ]}
      chosen={entered.seen[at] === undefined ? undefined : entered.seen[at] ? "yes" : "no"}
      onChoose={(key) => set(key === "yes")}
    />
  );
}

/** Which breaker was turned off: the box does not tell. */
function BreakerRow({ answer, test, at, entered, onEnter }: Props) {
  const id = useId();
  const breakers = useStore(documentStore, ({ project }) => breakersOf(project.asFound), sameNames);
  if (test.kind !== "breaker") return null;
  const set = (breaker: string): void =>
    onEnter({ ...entered, breakers: { ...entered.breakers, [at]: breaker as DeviceId } });
  return (
    <div className="survey-around">
      <label htmlFor={id}>{wording.breakerOffFor(nameOf(answer, test.cable))}</label>
      <select
        id={id}
        className="field small"
        value={entered.breakers[at] ?? ""}
        onChange={({ target }) => set(target.value)}
      >
        <option value="" disabled>
          {wording.choose}
        </option>
        {breakers.map((one) => (
          <option key={one.id} value={one.id}>
            {one.name}
          </option>
        ))}
      </select>
    </div>
  );
}

const sameNames = <T extends { readonly id: string; readonly name: string }>(p: readonly T[], q: readonly T[]) =>
  p.length === q.length && p.every(({ id, name }, at) => id === q[at]?.id && name === q[at]?.name);

/** Every outlet and light that the cables may lead to: pressed is what works. */
function WorksRow({ answer, entered, onEnter }: Props) {
  const works = entered.works ?? new Set<string>();
  const turn = (id: string): void => {
    const next = new Set(works);
    if (!next.delete(id)) next.add(id);
    onEnter({ ...entered, works: next });
  };
  return (
    <fieldset className="survey-works">
      <legend>{wording.pressWhatWorks}</legend>
      {answer.items.map(({ id, name }) => (
        <button key={id} type="button" className="button small" aria-pressed={works.has(id)} onClick={() => turn(id)}>
          {name}
        </button>
      ))}
      <button
        type="button"
        className="button small"
        aria-pressed={works.has(NOT_LISTED)}
        onClick={() => turn(NOT_LISTED)}
      >
        {wording.somethingNotListed}
      </button>
      <button
        type="button"
        className="button small"
        aria-pressed={entered.works !== undefined && works.size === 0}
        onClick={() => onEnter({ ...entered, works: new Set() })}
      >
        {wording.nothingWorks}
      </button>
      <small className="dim">{wording.whatIsNotPressed}</small>
    </fieldset>
  );
}
