import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { openDialog } from "../../state/dialog-store.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { files } from "../../state/files.ts";
import { goTo } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { UnattachedPhotos } from "./photo-rows.tsx";
import { Properties } from "./properties.tsx";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

/** A house of a thousand boxes still shows its details at once. */
const MOST = 200;

/** The drawing as a whole, shown while nothing is selected; for an empty one, how to begin. */
export function DrawingDetails() {
  const title = useStore(documentStore, ({ project }) => project.title);
  const { enclosures, cables } = useStore(documentStore, installationOf);
  const sorted = inOrder<Enclosure>(enclosures);
  return (
    <>
      <header className="who">
        <h2>{title}</h2>
        <p>
          {wording.nothingIsSelected(
            countWords(sorted.length, "enclosure"),
            countWords(Object.keys(cables).length, "cable"),
          )}
        </p>
      </header>
      {sorted.length === 0 && <Beginning />}
      {sorted.length > 0 && (
        <Section title={wording.enclosures} note={sorted.length}>
          <ul className="rows">
            {sorted.slice(0, MOST).map(({ id, name, note, kind }) => (
              <li key={id} className="row">
                <button type="button" className="link" onClick={() => goTo({ kind: "enclosure", id })}>
                  {name}
                </button>
                <span className="dim">{note ?? kind}</span>
              </li>
            ))}
          </ul>
          {sorted.length > MOST && (
            <p className="empty">
              {wording.and}
              {sorted.length - MOST}
              {wording.moreFindThemInTheCommand}
            </p>
          )}
        </Section>
      )}
      <Properties target={{ kind: "project" }} />
      <UnattachedPhotos />
      <Amended />
    </>
  );
}

const countWords = (count: number, word: string): string => `${count} ${word}${count === 1 ? "" : "s"}`;

function Amended() {
  const amendments = useStore(documentStore, ({ project }) => project.amendments.length);
  return (
    <Section title={wording.localAmendments} note={amendments}>
      <div className="part-body row">
        <button type="button" className="button" onClick={() => openDialog({ kind: "amendments" })}>
          {wording.localAmendments}
        </button>
        <span className="dim">
          {amendments === 0 ? wording.everyRuleRunsAsTheEdition : wording.someRulesRunOtherwiseThanThe}
        </span>
      </div>
    </Section>
  );
}

function Beginning() {
  return (
    <Section title={wording.howToBegin}>
      <ol className="beginning">
        <li>{wording.pressABoxInTheStock}</li>
        <li>{wording.pressACableThenOneBox}</li>
        <li>{wording.pressAnEndAndThePlace}</li>
      </ol>
      <div className="part-body row">
        <button type="button" className="button" onClick={() => openDialog({ kind: "samples" })}>
          {wording.openASample}
        </button>
        <button type="button" className="button" onClick={files.open}>
          {wording.openADrawing}
        </button>
      </div>
    </Section>
  );
}
