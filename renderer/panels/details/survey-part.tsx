import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { documentStore } from "../../state/document-store.ts";
import { cableOffers } from "../../state/survey/survey-offers.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

/** The way to the assistant that finds out which cable of a box is which, where there is more than one. */
export function SurveyPart({ enclosure }: { readonly enclosure: Enclosure }) {
  const readOnly = useStore(documentStore, (document) => document.readOnly);
  const readings = useStore(documentStore, ({ project }) => project.readings);
  const offers = cableOffers(enclosure);
  if (readOnly || offers.length === 0) return null;
  const taken = Object.values(readings).filter(({ survey }) => survey?.box === enclosure.id).length;
  return (
    <Section title={wording.unknownCables} note={taken === 0 ? undefined : wording.readingsOfASurvey(taken)}>
      <div className="part-body">
        {offers.map(({ title, run }) => (
          <button key={title} type="button" className="button small" onClick={run}>
            {wording.whichCableIsWhich}
          </button>
        ))}
      </div>
    </Section>
  );
}
