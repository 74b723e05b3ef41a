import type { SurveyAnswer, SurveyWanted } from "../../../shared-model/answers/survey.ts";
import type { CableId } from "../../../shared-model/model/ids.ts";
import {
  cablesRead,
  type Entered,
  figuresOfOneLive,
  likelyWorks,
  OPEN,
  readsOhms,
} from "../../state/survey/outcomes.ts";
import { percentWords } from "./answer-words.ts";
import { wording } from "./words.ts";

interface Props {
  readonly answer: SurveyAnswer;
  readonly wanted: SurveyWanted;
  readonly entered: Entered;
  readonly onEnter: (entered: Entered) => void;
}

/** What a person reads off as live at the supply; the figure can be corrected before it is written down. */
const LIVE_VOLTS = 120;
const MOST = 8;

/** Results that are likely, each by one press. They fill the form, and nothing is written down by them. */
export function QuickOutcomes(props: Props) {
  const { answer, wanted } = props;
  if (wanted.tests.length === 1 && wanted.tests[0]?.kind === "works") return <LikelyWork {...props} />;
  const cables = cablesRead(wanted);
  if (cables.length < 2) return null;
  if (readsOhms(wanted)) return <AllOpen {...props} />;
  return <OneLive {...props} cables={answer.cables.filter(({ id }) => cables.includes(id))} />;
}

function LikelyWork({ answer, wanted, entered, onEnter }: Props) {
  const likely = likelyWorks(answer, wanted.joined).slice(0, MOST);
  if (likely.length === 0) return null;
  const names = new Map(answer.items.map(({ id, name }) => [id, name]));
  const now = entered.works && [...entered.works].sort().join(" ");
  return (
    <fieldset className="survey-quick">
      <legend>{wording.likely}</legend>
      {likely.map(({ key, items, weight }) => (
        <button
          key={key}
          type="button"
          className="button small"
          aria-pressed={now === [...items].sort().join(" ")}
          onClick={() => onEnter({ ...entered, works: new Set(items) })}
        >
          {items.length === 0 ? wording.nothingWorks : wording.work(items.map((id) => names.get(id) ?? id).join(", "))}
          <span className="fig dim">{percentWords(weight)}</span>
        </button>
      ))}
    </fieldset>
  );
}

function AllOpen({ wanted, entered, onEnter }: Props) {
  const figures = Object.fromEntries(wanted.tests.map((_, at) => [at, OPEN]));
  return (
    <fieldset className="survey-quick">
      <legend>{wording.likely}</legend>
      <button type="button" className="button small" onClick={() => onEnter({ ...entered, figures })}>
        {wording.allOpen}
      </button>
    </fieldset>
  );
}

function OneLive({ wanted, entered, onEnter, cables }: Props & { readonly cables: SurveyAnswer["cables"] }) {
  const set = (live: CableId | undefined): void =>
    onEnter({ ...entered, figures: figuresOfOneLive(wanted, cables, live, LIVE_VOLTS) });
  return (
    <fieldset className="survey-quick">
      <legend>{wording.likely}</legend>
      {cables.map(({ id, name }) => (
        <button key={id} type="button" className="button small" onClick={() => set(id)}>
          {wording.onlyLive(name)}
        </button>
      ))}
      <button type="button" className="button small" onClick={() => set(undefined)}>
        {wording.noneLive}
      </button>
    </fieldset>
  );
}
