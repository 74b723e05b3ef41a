import { useId } from "react";
import type { SurveyAnswer } from "../../../shared-model/answers/survey.ts";
import {
  SURVEY_INSTRUMENTS,
  type SurveyArrangement,
  type SurveyInstrument,
  type SurveySwitch,
} from "../../../shared-model/model/survey.ts";
import { findDevice } from "../../../shared-model/queries/find-item.ts";
import { documentStore } from "../../state/document-store.ts";
import { INSTRUMENT_WORDS } from "../../state/item-actions/reading-action.ts";
import { Choice } from "./choice.tsx";
import { wording } from "./words.ts";

interface Props {
  readonly answer: SurveyAnswer;
  readonly arrangement: SurveyArrangement;
  readonly instrument: SurveyInstrument;
  readonly onInstrument: (instrument: SurveyInstrument) => void;
  readonly switches: readonly SurveySwitch[];
  readonly onSwitches: (switches: readonly SurveySwitch[]) => void;
  readonly nothingPlugged: boolean;
  readonly onNothingPlugged: (nothing: boolean) => void;
}

/** With what it was read, how switches elsewhere stood, and whether anything was plugged in. */
export function CircumstanceRows(props: Props) {
  const id = useId();
  const { answer, arrangement, instrument, onInstrument, switches, onSwitches } = props;
  const elsewhere = switchesElsewhere(answer);
  return (
    <div className="survey-around">
      <label htmlFor={id}>{wording.readWith}</label>
      <select
        id={id}
        className="field small"
        value={instrument}
        onChange={({ target }) => onInstrument(target.value as SurveyInstrument)}
      >
        {SURVEY_INSTRUMENTS.map((one) => (
          <option key={one} value={one}>
            {one === "continuity" ? wording.ohmmeter : INSTRUMENT_WORDS[one]}
          </option>
        ))}
      </select>
      {elsewhere.map((one) => (
        <Choice
          key={one}
          title={wording.switchStands(nameOfSwitch(one))}
          options={[
            ["on", wording.on],
            ["off", wording.switchOff],
          ]}
          chosen={chosenOf(switches, one)}
          onChoose={(key) =>
            onSwitches([...switches.filter((each) => each.switch !== one), { switch: one, on: key === "on" }])
          }
        />
      ))}
      {arrangement === "A1" && (
        <label className="check">
          <input
            type="checkbox"
            checked={props.nothingPlugged}
            onChange={({ target }) => props.onNothingPlugged(target.checked)}
          />
          {wording.nothingIsPluggedIn}
        </label>
      )}
    </div>
  );
}

/** Switches away from the box that something behind its cables hangs on. */
export const switchesElsewhere = ({ items }: Pick<SurveyAnswer, "items">): readonly string[] => [
  ...new Set(items.flatMap((item) => item.switches ?? [])),
];

const chosenOf = (switches: readonly SurveySwitch[], one: string): "on" | "off" | undefined => {
  const found = switches.find((each) => each.switch === one);
  return found === undefined ? undefined : found.on ? "on" : "off";
};

/** A switch of the drawing by its name; one that a person named as it was named. */
function nameOfSwitch(id: string): string {
  return findDevice(documentStore.get().project.asFound, id as never)?.device.name ?? id;
}
