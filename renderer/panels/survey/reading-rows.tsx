import type { SurveyAnswer } from "../../../shared-model/answers/survey.ts";
import { documentStore } from "../../state/document-store.ts";
import { surveyReadings, takeBack } from "../../state/survey/write-reading.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "../details/section.tsx";
import { howWords, readingWords } from "./answer-words.ts";
import { wording } from "./words.ts";

/** Every reading of this box, newest first; each can be taken back. */
export function ReadingRows({ answer }: { readonly answer: SurveyAnswer }) {
  const readings = useStore(documentStore, ({ project }) => project.readings);
  const readOnly = useStore(documentStore, (document) => document.readOnly);
  const own = surveyReadings(readings, answer.box.id);
  const aside = new Map(
    answer.setAside.flatMap(({ reading, reason }) => (reading ? [[reading, reason] as const] : [])),
  );
  return (
    <Section title={wording.readings} note={own.length === 0 ? wording.noneYet : own.length}>
      <ol className="survey-readings" reversed>
        {own.toReversed().map((reading) => {
          const words = readingWords(answer, reading);
          return (
            <li key={reading.id}>
              <span>{words}</span>
              <small className="dim">{howWords(reading)}</small>
              {aside.has(reading.id) && (
                <small className="survey-aside">{wording.setAside(aside.get(reading.id) ?? "")}</small>
              )}
              {!readOnly && (
                <button
                  type="button"
                  className="button small"
                  aria-label={wording.takeBackReading(words)}
                  onClick={(event) => {
                    const list = event.currentTarget.closest("ol");
                    takeBack(reading.id);
                    requestAnimationFrame(() => list?.querySelector<HTMLElement>("button")?.focus());
                  }}
                >
                  {wording.takeBack}
                </button>
              )}
            </li>
          );
        })}
      </ol>
    </Section>
  );
}
