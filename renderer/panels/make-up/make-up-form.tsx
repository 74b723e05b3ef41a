import { useId } from "react";
import type { MakeUpAnswer } from "../../../shared-model/answers/make-up.ts";
import type { CableId, ConductorKey, DeviceId } from "../../../shared-model/model/ids.ts";
import { withSupply } from "../../state/make-up/intent-edits.ts";
import { changeMakeUp } from "../../state/make-up/making-up.ts";
import { Section } from "../details/section.tsx";
import type { BoxForm, BoxJob } from "./box-form.ts";
import { CableQuestion } from "./cable-question.tsx";
import { DeviceQuestion } from "./device-question.tsx";
import { RoomChoice } from "./room-choice.tsx";
import { StyleChoices } from "./style-choices.tsx";
import { wording } from "./words.ts";

/** What a box is to do: filled in from what the drawing knows, so that only what is otherwise is answered. */
export function MakeUpForm({ job, answer }: { readonly job: BoxJob; readonly answer: MakeUpAnswer }) {
  const intent = job.intent ?? answer.intent;
  const form: BoxForm = {
    job,
    answer,
    intent,
    hasGuard: intent.replace.length > 0 || answer.devices.some(({ kind }) => kind === "ground-fault"),
    change: (next) => changeMakeUp({ ...job, intent: next }),
  };
  const others = answer.cables.filter(({ id }) => id !== intent.supply.cable);
  return (
    <>
      <Section title={wording.supply}>
        <div className="part-body">
          <SupplyChoice form={form} />
        </div>
      </Section>
      {answer.devices.length > 0 && (
        <Section title={wording.devicesHere} note={answer.devices.length}>
          <div className="make-up-questions">
            {answer.devices.map((device) => (
              <DeviceQuestion key={device.id} form={form} device={device} />
            ))}
          </div>
        </Section>
      )}
      {others.length > 0 && (
        <Section title={wording.cablesFrom} note={others.length}>
          <div className="make-up-questions">
            {others.map((cable) => (
              <CableQuestion key={cable.id} form={form} cable={cable} />
            ))}
          </div>
        </Section>
      )}
      <RoomChoice
        rooms={answer.rooms}
        leave={() => changeMakeUp({ ...job, room: false })}
        take={(room) => changeMakeUp({ ...job, room })}
      />
      <StyleChoices form={form} />
    </>
  );
}

const AS = {
  feed: wording.supplyFeed,
  "two-hots": wording.supplyTwoHots,
  "switch-loop": wording.supplyLoop,
  travellers: wording.supplyTravellers,
};

function SupplyChoice({ form: { answer, intent, change } }: { readonly form: BoxForm }) {
  const id = useId();
  const { supply } = intent;
  const hots = answer.cables.find((cable) => cable.id === supply.cable)?.hots ?? [];
  const switches = answer.devices.filter(({ kind }) => kind === "switch");
  const set = (as: keyof typeof AS): void => {
    const [only] = switches;
    change({
      ...intent,
      supply: {
        cable: supply.cable,
        as,
        ...(as !== "feed" && as !== "two-hots" && only !== undefined && { switch: only.id as DeviceId }),
      },
    });
  };
  return (
    <>
      <div className="pick">
        <label htmlFor={id}>{wording.supplyBy}</label>
        <select
          id={id}
          className="field small"
          value={supply.cable}
          onChange={({ target }) => change(withSupply(intent, target.value as CableId))}
        >
          {answer.cables.map((cable) => (
            <option key={cable.id} value={cable.id}>
              {`${cable.name}, ${wording.comesFrom(cable.leadsTo)}`}
            </option>
          ))}
        </select>
      </div>
      {answer.supplyGuess === supply.cable && (
        <p className="make-up-note make-up-guess" role="note">
          {wording.supplyGuessed}
        </p>
      )}
      {switches.length > 0 && (
        <div className="pick">
          <label htmlFor={`${id}-as`}>{wording.supplyAs}</label>
          <select
            id={`${id}-as`}
            className="field small"
            value={supply.as}
            onChange={({ target }) => set(target.value as keyof typeof AS)}
          >
            {Object.entries(AS).map(([as, words]) => (
              <option key={as} value={as}>
                {words}
              </option>
            ))}
          </select>
        </div>
      )}
      {hots.length > 1 && supply.as === "feed" && (
        <div className="pick">
          <label htmlFor={`${id}-leg`}>{wording.leg}</label>
          <select
            id={`${id}-leg`}
            className="field small"
            value={supply.leg ?? hots[0]?.id}
            onChange={({ target }) => change({ ...intent, supply: { ...supply, leg: target.value as ConductorKey } })}
          >
            {hots.map((hot) => (
              <option key={hot.id} value={hot.id}>
                {hot.name}
              </option>
            ))}
          </select>
        </div>
      )}
    </>
  );
}
