import { useId, useState } from "react";
import type { SurveyAnswer } from "../../../shared-model/answers/survey.ts";
import type { SurveyGroup, SurveyItem } from "../../../shared-model/model/survey.ts";
import { wording } from "./words.ts";

interface Props {
  readonly from: SurveyAnswer["itemsFrom"];
  readonly groups: readonly SurveyGroup[] | undefined;
  readonly onGroups: (groups: readonly SurveyGroup[] | undefined) => void;
}

/** What the cables may lead to, listed by a person where the drawing does not tell: one entry for what hangs on one cable. */
export function GroupsForm({ from, groups, onGroups }: Props) {
  const id = useId();
  const [outlets, setOutlets] = useState("");
  const [lights, setLights] = useState("");
  const items = [...itemsOf(outlets, "outlet"), ...itemsOf(lights, "light")];
  const add = (): void => {
    if (items.length === 0) return;
    onGroups([...(groups ?? []), items]);
    setOutlets("");
    setLights("");
  };
  return (
    <fieldset className="survey-order">
      <legend>{wording.whatTheyMayLeadTo}</legend>
      <p>{FROM_WORDS[from]}</p>
      {groups !== undefined && (
        <ul className="survey-directory">
          {groups.map((group, at) => (
            <li key={group.map((item) => item.id).join(" ")}>
              <span>{namesOf(group)}</span>
              <span />
              <button
                type="button"
                className="button small"
                aria-label={wording.takeOffTheList(namesOf(group))}
                onClick={() => {
                  const rest = groups.filter((_, other) => other !== at);
                  onGroups(rest.length === 0 ? undefined : rest);
                }}
              >
                {wording.takeOff}
              </button>
            </li>
          ))}
        </ul>
      )}
      <label htmlFor={`${id}outlets`}>{wording.outletsOnOneCable}</label>
      <input
        id={`${id}outlets`}
        className="field small"
        autoComplete="off"
        placeholder={wording.forExampleOutlets}
        value={outlets}
        onChange={({ target }) => setOutlets(target.value)}
      />
      <label htmlFor={`${id}lights`}>{wording.lightsOnThatCable}</label>
      <input
        id={`${id}lights`}
        className="field small"
        autoComplete="off"
        placeholder={wording.forExampleLights}
        value={lights}
        onChange={({ target }) => setLights(target.value)}
      />
      <button type="button" className="button small" aria-disabled={items.length === 0} onClick={add}>
        {wording.addToTheList}
      </button>
    </fieldset>
  );
}

const FROM_WORDS: Readonly<Record<SurveyAnswer["itemsFrom"], string>> = {
  drawing: wording.listFromTheDrawing,
  person: wording.listFromAPerson,
  nowhere: wording.listFromNowhere,
};

const namesOf = (group: SurveyGroup): string => group.map(({ name }) => name).join(", ");

/** Names between commas; each once. */
function itemsOf(text: string, kind: SurveyItem["kind"]): readonly SurveyItem[] {
  const names = text.split(",").map((name) => name.trim().slice(0, 60));
  return [...new Set(names.filter(Boolean))].map((name) => ({ id: name, name, kind }));
}
