import { useId } from "react";
import type { FitAnswer, FitQuestion } from "../../../shared-model/answers/make-up.ts";
import type { CableId } from "../../../shared-model/model/ids.ts";
import type { MakeUpJob } from "../../state/make-up/make-up-store.ts";
import { changeMakeUp } from "../../state/make-up/making-up.ts";
import { Section } from "../details/section.tsx";
import { LeftFields } from "./left-fields.tsx";
import { RoomChoice } from "./room-choice.tsx";
import { SideChoice } from "./side-choice.tsx";
import { wording } from "./words.ts";

type FitJob = Extract<MakeUpJob, { readonly kind: "fit" }>;

interface Props {
  readonly job: FitJob;
  readonly answer: FitAnswer;
}

/** The few questions of a ground-fault device in the place of a receptacle: which kind, what hangs behind it, and the room. */
export function FitForm({ job, answer }: Props) {
  const { questions, types, rooms } = answer;
  if (types.length === 0) return null;
  return (
    <>
      <Section title={wording.device} note={wording.inBox(answer.box.name)}>
        <div className="part-body">
          <TypeChoice job={job} answer={answer} />
        </div>
      </Section>
      {questions.length > 0 && (
        <Section title={wording.whatItFeeds} note={questions.length}>
          <div className="make-up-questions">
            {questions.map((question) => (
              <Question key={keyOf(question)} question={question} job={job} />
            ))}
          </div>
        </Section>
      )}
      <RoomChoice rooms={rooms} take={(room) => changeMakeUp({ ...job, room })} />
    </>
  );
}

function TypeChoice({ job, answer }: Props) {
  const id = useId();
  const set = (type: string): void => {
    const { type: _, ...others } = job;
    changeMakeUp(type === "" ? others : { ...others, type });
  };
  return (
    <>
      <div className="pick">
        <label htmlFor={id}>{wording.kindOf}</label>
        <select
          id={id}
          className="field small"
          aria-label={wording.device}
          value={job.type ?? answer.type ?? ""}
          onChange={({ target }) => set(target.value)}
        >
          {answer.type === undefined && job.type === undefined && <option value="">{wording.typeUnsaid}</option>}
          {answer.types.map((type) => (
            <option key={type.id} value={type.id}>
              {type.id === "gfci-blank" ? wording.receptacleGoes(type.name) : type.name}
            </option>
          ))}
        </select>
      </div>
      {answer.notOffered.map(({ type, title, why }) => (
        <p key={type} className="make-up-note">
          {wording.notOffered(title, why)}
        </p>
      ))}
    </>
  );
}

const keyOf = ({ cables, others }: FitQuestion): string => [...cables.map(({ id }) => id), ...others].join(" ");

function Question({ question, job }: { readonly question: FitQuestion; readonly job: FitJob }) {
  const { cables, others, feeds, side, why, fixed, wanting } = question;
  const name = [...cables.map((one) => one.name), ...others].join(", ");
  const decide = (protect: boolean): void => {
    const ids = new Set<CableId>(cables.map(({ id }) => id));
    const kept = job.decided.filter(([id]) => !ids.has(id));
    const left = protect ? job.left.filter(({ cable }) => !ids.has(cable)) : job.left;
    changeMakeUp({ ...job, left, decided: [...kept, ...[...ids].map((id) => [id, protect] as const)] });
  };
  const [first] = cables;
  return (
    <div className="make-up-question">
      <p className="make-up-what">
        <strong>{name}</strong> {feeds.length > 0 && wording.cableFeeds(feeds.join(", "))}
      </p>
      <SideChoice name={name} protect={side === "LOAD"} disabled={fixed || cables.length === 0} onChange={decide} />
      <p className="make-up-note">{why}</p>
      {side === "LINE" && wanting.length > 0 && first !== undefined && (
        <LeftFields
          cable={first.id}
          name={name}
          wanting={wanting}
          left={job.left}
          onChange={(left) => changeMakeUp({ ...job, left })}
        />
      )}
    </div>
  );
}
