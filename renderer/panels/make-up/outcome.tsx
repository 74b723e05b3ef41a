import type { MadeUp, NotMade } from "../../../shared-model/answers/make-up.ts";
import { withReplacing } from "../../state/make-up/intent-edits.ts";
import type { MakeUpJob, MakeUpTold } from "../../state/make-up/make-up-store.ts";
import { beginFit, changeMakeUp } from "../../state/make-up/making-up.ts";
import { Section } from "../details/section.tsx";
import { FillChange, FindingLines, FindingsChange, ProtectionChange } from "./outcome-changes.tsx";
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
        <Refusal refused={result.refused} ways={waysOf(told, job)} />
      ) : (
        <Made made={result.made} room={told.answer.room} />
      )}
    </div>
  );
}

function Made({ made, room }: { readonly made: MadeUp; readonly room: string | undefined }) {
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
          {moves.ends.length === 0 && replaced.length === 0 && (
            <p>{room === undefined ? wording.alreadySo : wording.onlyTheBox}</p>
          )}
          {replaced.map(({ old, by }) => (
            <p key={old}>{wording.takesPlace(old, by)}</p>
          ))}
          {room !== undefined && <p>{room}.</p>}
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

/** What would do instead, as a button. */
interface Way {
  readonly title: string;
  readonly take: () => void;
}

function waysOf(told: MakeUpTold, job: MakeUpJob): readonly Way[] {
  if (told.kind === "make-up") {
    if (job.kind !== "make-up") return [];
    const intent = job.intent ?? told.answer.intent;
    return told.answer.alternatives.map(({ device, name, type, title }) => ({
      title: wording.otherDevice(title, name),
      take: () => changeMakeUp({ ...job, intent: withReplacing(intent, device, type) }),
    }));
  }
  return told.answer.alternatives.flatMap((way): readonly Way[] => {
    if (way.kind === "place") return [{ title: wording.otherPlace(way.title), take: () => beginFit(way.outlet) }];
    if (job.kind !== "fit") return [];
    return [{ title: wording.otherType(way.title), take: () => changeMakeUp({ ...job, type: way.type }) }];
  });
}

function Refusal({ refused, ways }: { readonly refused: NotMade; readonly ways: readonly Way[] }) {
  const { findings = [], message } = refused;
  return (
    <>
      <Section title={wording.notPossible}>
        <div className="part-body">
          <p className="refused" tabIndex={-1}>
            {message}
          </p>
          {ways.length > 0 && <h4>{wording.anotherWay}</h4>}
          {ways.map(({ title, take }) => (
            <button key={title} type="button" className="button small wide make-up-way" onClick={take}>
              {title}
            </button>
          ))}
        </div>
      </Section>
      {findings.length > 1 && <FindingLines title={wording.newFindings} findings={findings} />}
    </>
  );
}
