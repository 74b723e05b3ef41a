import type { FitAlternative, MadeUp, NotMade } from "../../../shared-model/answers/make-up.ts";
import type { MakeUpJob, MakeUpTold } from "../../state/make-up/make-up-store.ts";
import { beginFit, changeMakeUp } from "../../state/make-up/making-up.ts";
import { Section } from "../details/section.tsx";
import { FillChange, FindingsChange, ProtectionChange } from "./outcome-changes.tsx";
import { Joints, Jumpers, Moves } from "./outcome-joints.tsx";
import { wording } from "./words.ts";

interface Props {
  readonly told: MakeUpTold;
  readonly job: MakeUpJob;
  readonly busy: boolean;
}

/** What would come of the answers, or why it cannot be and what would do instead. */
export function Outcome({ told, job, busy }: Props) {
  const { result } = told.answer;
  return (
    <div className={busy ? "make-up-outcome busy" : "make-up-outcome"} aria-busy={busy}>
      {"refused" in result ? (
        <Refusal
          refused={result.refused}
          alternatives={told.kind === "fit" ? told.answer.alternatives : []}
          job={job}
        />
      ) : (
        <Made made={result.made} />
      )}
    </div>
  );
}

function Made({ made }: { readonly made: MadeUp }) {
  const { moves, replaced, unprotects, labels } = made;
  return (
    <>
      <Section title={wording.changes}>
        <dl className="make-up-counts">
          <Count figure={moves.detach} word={wording.movesOff} />
          <Count figure={moves.attach} word={wording.movesOn} />
          <Count figure={moves.newSplices} word={wording.movesJoints} />
        </dl>
        <div className="part-body">
          {moves.ends.length === 0 && replaced.length === 0 && <p>{wording.alreadySo}</p>}
          {replaced.map(({ old, by }) => (
            <p key={old}>{wording.takesPlace(old, by)}</p>
          ))}
          {labels > 0 && <p>{wording.labelsCome(labels)}</p>}
          {unprotects.length > 0 && <p className="refused">{wording.unprotects(unprotects.join(", "))}</p>}
        </div>
      </Section>
      <FillChange fill={made.fill} />
      <ProtectionChange protection={made.protection} replaced={replaced} />
      <FindingsChange made={made} />
      <Joints groups={made.groups} />
      <Jumpers jumpers={made.jumpers} />
      <Moves moves={moves.ends} />
    </>
  );
}

function Count({ figure, word }: { readonly figure: number; readonly word: string }) {
  return (
    <div>
      <dt>{word}</dt>
      <dd className="fig">{figure}</dd>
    </div>
  );
}

interface RefusalProps {
  readonly refused: NotMade;
  readonly alternatives: readonly FitAlternative[];
  readonly job: MakeUpJob;
}

function Refusal({ refused, alternatives, job }: RefusalProps) {
  const take = (way: FitAlternative): void => {
    if (way.kind === "place") beginFit(way.outlet);
    else if (job.kind === "fit") changeMakeUp({ ...job, type: way.type });
  };
  return (
    <Section title={wording.notPossible}>
      <div className="part-body">
        <p className="refused" tabIndex={-1}>
          {refused.message}
        </p>
        {alternatives.length > 0 && <h4>{wording.anotherWay}</h4>}
        {alternatives.map((way) => (
          <button key={way.title} type="button" className="button small wide make-up-way" onClick={() => take(way)}>
            {way.kind === "place" ? wording.otherPlace(way.title) : wording.otherType(way.title)}
          </button>
        ))}
      </div>
    </Section>
  );
}
