import { useId } from "react";
import type { SurveyAnswer } from "../../../shared-model/answers/survey.ts";
import type { SurveyPoint } from "../../../shared-model/model/survey.ts";
import { wording } from "./words.ts";

interface Props {
  readonly label: string;
  readonly answer: SurveyAnswer;
  readonly point: SurveyPoint;
  readonly onPoint: (point: SurveyPoint) => void;
  /** Whether the grounds of the box may be chosen. */
  readonly ground: boolean;
}

const GROUND = "ground";

/** One wire of the box, or its grounds: where a lead is put. */
export function PointSelect({ label, answer, point, onPoint, ground }: Props) {
  const id = useId();
  const points = answer.cables.flatMap(({ id: cable, name, conductors }) =>
    conductors.map(({ key, code, words }) => ({
      key: `${cable}.${key}`,
      words: `${name} ${code}, ${words}`,
      point: { cable, conductor: key },
    })),
  );
  return (
    <>
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        className="field small"
        value={point === "ground" ? GROUND : `${point.cable}.${point.conductor}`}
        onChange={({ target }) => onPoint(points.find(({ key }) => key === target.value)?.point ?? "ground")}
      >
        {points.map(({ key, words }) => (
          <option key={key} value={key}>
            {words}
          </option>
        ))}
        {ground && <option value={GROUND}>{wording.groundsOfTheBox}</option>}
      </select>
    </>
  );
}
