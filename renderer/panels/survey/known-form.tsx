import { useId, useState } from "react";
import type { SurveyAnswer } from "../../../shared-model/answers/survey.ts";
import type { CableId } from "../../../shared-model/model/ids.ts";
import type { SurveyKnown } from "../../../shared-model/model/survey.ts";
import { nameOf } from "./answer-words.ts";
import { wording } from "./words.ts";

interface Props {
  readonly answer: SurveyAnswer;
  readonly known: readonly SurveyKnown[];
  readonly onKnown: (known: readonly SurveyKnown[]) => void;
}

/** "I know that C1 comes from the panel", and how it is known: what no reading tells and no drawing proves. */
export function KnownForm({ answer, known, onKnown }: Props) {
  const id = useId();
  const [cable, setCable] = useState<string>(answer.cables[0]?.id ?? "");
  const [where, setWhere] = useState(PANEL);
  const [how, setHow] = useState("");
  const [why, setWhy] = useState<string>();
  const leads = waysOf(answer);
  const whereWords = (leadsTo: SurveyKnown["leadsTo"]): string =>
    leadsTo === "panel" ? wording.comesFromThePanel : wording.goesTo(itemNames(answer, leadsTo));
  const add = (): void => {
    setWhy(how.trim() === "" ? wording.sayHowItIsKnown : undefined);
    if (how.trim() === "") return;
    const leadsTo = leads.find(({ key }) => key === where)?.leadsTo ?? "panel";
    const others = known.filter((one) => one.cable !== cable);
    onKnown([...others, { cable: cable as CableId, leadsTo, how: how.trim().slice(0, MOST_HOW) }]);
    setHow("");
  };
  return (
    <fieldset className="survey-order survey-known">
      <legend>{wording.knownOfACable}</legend>
      {known.length > 0 && (
        <ul className="survey-directory">
          {known.map((one) => {
            const words = `${nameOf(answer, one.cable)} ${whereWords(one.leadsTo)}`;
            return (
              <li key={one.cable}>
                <span>
                  {words} <small className="dim">{one.how}</small>
                </span>
                <span />
                <button
                  type="button"
                  className="button small"
                  aria-label={wording.takeOffTheList(words)}
                  onClick={() => onKnown(known.filter((other) => other !== one))}
                >
                  {wording.takeOff}
                </button>
              </li>
            );
          })}
        </ul>
      )}
      <label htmlFor={`${id}cable`}>{wording.whichCable}</label>
      <select id={`${id}cable`} className="field small" value={cable} onChange={({ target }) => setCable(target.value)}>
        {answer.cables.map((one) => (
          <option key={one.id} value={one.id}>
            {one.name}
          </option>
        ))}
      </select>
      <label htmlFor={`${id}where`}>{wording.whereItLeads}</label>
      <select id={`${id}where`} className="field small" value={where} onChange={({ target }) => setWhere(target.value)}>
        {leads.map(({ key, leadsTo }) => (
          <option key={key} value={key}>
            {whereWords(leadsTo)}
          </option>
        ))}
      </select>
      <label htmlFor={`${id}how`}>{wording.fromWhat}</label>
      <input
        id={`${id}how`}
        className="field small"
        autoComplete="off"
        maxLength={MOST_HOW}
        placeholder={wording.fromWhatExample}
        value={how}
        onChange={({ target }) => setHow(target.value)}
      />
      <button type="button" className="button small" aria-disabled={how.trim() === ""} onClick={add}>
        {wording.addThis}
      </button>
      <p className="survey-said" role="status">
        {why !== undefined && <span className="refused">{why}</span>}
      </p>
    </fieldset>
  );
}

const PANEL = "panel";
const MOST_HOW = 200;

/** What a cable may be known to lead to: the panel, or what the drawing or a person lists. */
function waysOf({ items, groups }: Pick<SurveyAnswer, "items" | "groups">) {
  const listed = groups.map((ids) => ({ key: ids.join(" "), leadsTo: ids }));
  return [{ key: PANEL, leadsTo: "panel" as const }, ...(items.length === 0 ? [] : listed)];
}

const itemNames = ({ items }: Pick<SurveyAnswer, "items">, ids: readonly string[]): string =>
  ids.map((id) => items.find((item) => item.id === id)?.name ?? id).join(", ");
