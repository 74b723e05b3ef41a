import type { CircuitMap } from "../../../shared-model/answers/survey.ts";
import type { SurveyTest, SurveyTold } from "../../../shared-model/model/survey.ts";
import { documentStore } from "../../state/document-store.ts";
import { breakersOf } from "../../state/survey/breakers.ts";
import { surveyReadings, takeBack } from "../../state/survey/write-reading.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "../details/section.tsx";
import { wording } from "./words.ts";

/** What was written down of the circuits, newest first; each can be taken back. */
export function MapReadings({ map }: { readonly map: CircuitMap }) {
  const readings = useStore(documentStore, ({ project }) => project.readings);
  const asFound = useStore(documentStore, ({ project }) => project.asFound);
  const readOnly = useStore(documentStore, (document) => document.readOnly);
  const own = surveyReadings(readings);
  if (own.length === 0) return null;
  const names = new Map<string, string>([
    ...map.outlets.map(({ outlet, name }) => [outlet, name] as const),
    ...breakersOf(asFound).map(({ id, name }) => [id as string, name] as const),
  ]);
  return (
    <Section title={wording.writtenDownSoFar} note={own.length}>
      <ol className="survey-readings" reversed>
        {own.toReversed().map(({ id, by, survey: { test } }) => {
          const words = wordsOf(test, (key) => names.get(key) ?? key);
          return (
            <li key={id}>
              <span>{words}</span>
              {by !== undefined && <small className="dim">{by}</small>}
              {!readOnly && (
                <button
                  type="button"
                  className="button small"
                  aria-label={wording.takeBackReading(words)}
                  onClick={(event) => {
                    const list = event.currentTarget.closest(".survey");
                    takeBack(id);
                    requestAnimationFrame(() => {
                      if (document.activeElement === document.body)
                        list?.querySelector<HTMLElement>("h2, .survey-readings button")?.focus();
                    });
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

function wordsOf(test: SurveyTest | SurveyTold, nameOf: (key: string) => string): string {
  const list = (keys: readonly string[]): string => (keys.length === 0 ? wording.nothing : keys.map(nameOf).join(", "));
  switch (test.kind) {
    case "breaker-off":
      return [
        wording.offDead(nameOf(test.breaker), list(test.dead)),
        ...(test.stillLive === undefined ? [] : [wording.seenLive(list(test.stillLive))]),
      ].join(", ");
    case "drop":
      return wording.dropWords(nameOf(test.loadAt), nameOf(test.at), test.volts);
    case "opened":
      return wording.openedWords(nameOf(test.at), list(test.dead));
    default:
      return test.kind;
  }
}
