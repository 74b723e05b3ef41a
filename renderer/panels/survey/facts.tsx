import { useId, useState } from "react";
import type { SurveyAnswer } from "../../../shared-model/answers/survey.ts";
import type { SurveyLamp } from "../../../shared-model/model/survey.ts";
import { documentStore } from "../../state/document-store.ts";
import { type FactsSaid, factsOf, writeFacts } from "../../state/survey/write-reading.ts";
import { useStore } from "../../state/use-store.ts";
import { CommitField } from "../../ui/commit-field.tsx";
import { Section } from "../details/section.tsx";
import { Refused } from "../refused.tsx";
import { Choice } from "./choice.tsx";
import { GroupsForm } from "./groups-form.tsx";
import { KnownForm } from "./known-form.tsx";
import { wording } from "./words.ts";

const LAMPS: readonly (readonly [SurveyLamp, string])[] = [
  ["filament", wording.filament],
  ["led", wording.led],
  ["none", wording.noLamp],
];

/** What no reading tells: how the reference to ground was proved, which lamps are in, how many switches are here. */
export function Facts({ answer }: { readonly answer: SurveyAnswer }) {
  const id = useId();
  const [refusal, setRefusal] = useState<string>();
  const box = answer.box.id;
  // The facts stand in a reading: another document has others.
  useStore(documentStore, ({ project }) => project.readings);
  const facts = factsOf(box)?.facts ?? {};
  const say = (more: FactsSaid): void => {
    const done = writeFacts(box, more);
    setRefusal(done.ok ? undefined : done.refusal.message);
  };
  const lights = answer.items.filter(({ kind }) => kind === "light");
  return (
    <Section title={wording.knownWithoutAReading}>
      <div className="part-body survey-facts">
        <KnownForm
          answer={answer}
          known={facts.known ?? []}
          onKnown={(known) => say({ known: known.length === 0 ? undefined : known })}
        />
        <p>{wording.aboutReference}</p>
        <label htmlFor={`${id}reference`}>{wording.referenceProvedBy}</label>
        <CommitField
          id={`${id}reference`}
          value={facts.referenceProved ?? ""}
          invalid={false}
          placeholder={wording.waterPipe}
          onCommit={(text) => say({ referenceProved: text === "" ? undefined : text })}
        />
        {lights.map(({ id: light, name }) => (
          <Choice
            key={light}
            title={wording.lampIn(name)}
            options={LAMPS}
            chosen={facts.lamps?.find(({ item }) => item === light)?.lamp}
            onChoose={(lamp) =>
              say({ lamps: [...(facts.lamps ?? []).filter(({ item }) => item !== light), { item: light, lamp }] })
            }
          />
        ))}
        <label htmlFor={`${id}switches`}>{wording.switchesHere}</label>
        <CommitField
          id={`${id}switches`}
          value={facts.switchesHere === undefined ? "" : String(facts.switchesHere)}
          invalid={false}
          numeric
          onCommit={(text) => {
            const count = Number(text);
            if (text.trim() === "") say({ switchesHere: undefined });
            else if (Number.isInteger(count) && count >= 0 && count <= 100) say({ switchesHere: count });
            else setRefusal(wording.giveSwitches);
          }}
        />
        <GroupsForm from={answer.itemsFrom} groups={facts.groups} onGroups={(groups) => say({ groups })} />
        <Refused message={refusal} />
      </div>
    </Section>
  );
}
