import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { openDialog } from "../../state/dialog-store.ts";
import { documentStore } from "../../state/document-store.ts";
import { boxOffers } from "../../state/make-up/make-up-offers.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

/** The way to the make-up of a box, and to its card on paper. */
export function MakeUpPart({ enclosure }: { readonly enclosure: Enclosure }) {
  const readOnly = useStore(documentStore, (document) => document.readOnly);
  const offers = boxOffers(enclosure);
  if (readOnly || offers.length === 0) return null;
  return (
    <Section title={wording.makeUpWord}>
      <div className="part-body part-buttons">
        {offers.map(({ title, run }) => (
          <button key={title} type="button" className="button small" data-make-up="" onClick={run}>
            {wording.makeUpThisBox}
          </button>
        ))}
        <button
          type="button"
          className="button small"
          onClick={() => openDialog({ kind: "print", card: enclosure.id })}
        >
          {wording.printMakeUpCard}
        </button>
      </div>
    </Section>
  );
}
