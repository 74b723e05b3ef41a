import { useState } from "react";
import type { CircuitMap } from "../../../shared-model/answers/survey.ts";
import type { DeviceId } from "../../../shared-model/model/ids.ts";
import { dispatch, documentStore } from "../../state/document-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "../details/section.tsx";
import { Refused } from "../refused.tsx";
import { wording } from "./words.ts";

/** Lines of the panel directory as the map would have them; each is written by a press. */
export function DirectoryOffers({ directory }: Pick<CircuitMap, "directory">) {
  const [refusal, setRefusal] = useState<string>();
  const readOnly = useStore(documentStore, (document) => document.readOnly);
  if (directory.length === 0) return null;
  const write = (breaker: string, text: string): void => {
    const done = dispatch({
      command: "set-directory-line",
      args: { state: "as-found", device: breaker as DeviceId, text },
    });
    setRefusal(done.ok ? undefined : done.refusal.message);
  };
  return (
    <Section title={wording.panelDirectory} note={directory.length}>
      <ul className="survey-directory">
        {directory.map(({ breaker, name, was, words, notLookedAt }) => (
          <li key={breaker}>
            <strong>{name}</strong>
            <span>
              {was === "" ? <span className="dim">{wording.noLine}</span> : <del>{was}</del>} {words}
              {notLookedAt > 0 && <small className="survey-seen dim">{wording.lineMayLack(notLookedAt)}</small>}
            </span>
            {!readOnly && (
              <button
                type="button"
                className="button small"
                aria-label={wording.writeTheLineOf(name, words)}
                onClick={(event) => {
                  const list = event.currentTarget.closest("section");
                  write(breaker, words);
                  requestAnimationFrame(() => {
                    if (document.activeElement === document.body)
                      (
                        list?.querySelector<HTMLElement>("button") ?? document.querySelector<HTMLElement>(".survey h2")
                      )?.focus();
                  });
                }}
              >
                {wording.write}
              </button>
            )}
          </li>
        ))}
      </ul>
      <Refused message={refusal} />
    </Section>
  );
}
