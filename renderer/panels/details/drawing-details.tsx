import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { openDialog } from "../../state/dialog-store.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { files } from "../../state/files.ts";
import { goTo } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Properties } from "./properties.tsx";
import { Section } from "./section.tsx";

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
          {countWords(sorted.length, "enclosure")}, {countWords(Object.keys(cables).length, "cable")}. Nothing is
          selected.
        </p>
      </header>
      {sorted.length === 0 && <Beginning />}
      {sorted.length > 0 && (
        <Section title="Enclosures" note={sorted.length}>
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
            <p className="empty">and {sorted.length - MOST} more: find them in the command field</p>
          )}
        </Section>
      )}
      <Properties target={{ kind: "project" }} />
      <Amended />
    </>
  );
}

const countWords = (count: number, word: string): string => `${count} ${word}${count === 1 ? "" : "s"}`;

function Amended() {
  const amendments = useStore(documentStore, ({ project }) => project.amendments.length);
  return (
    <Section title="Local amendments" note={amendments}>
      <div className="part-body row">
        <button type="button" className="button" onClick={() => openDialog({ kind: "amendments" })}>
          Local amendments
        </button>
        <span className="dim">
          {amendments === 0
            ? "Every rule runs as the edition has it."
            : "Some rules run otherwise than the edition has it."}
        </span>
      </div>
    </Section>
  );
}

function Beginning() {
  return (
    <Section title="How to begin">
      <ol className="beginning">
        <li>Press a box in the stock, then press the sheet.</li>
        <li>Press a cable, then one box and the other. Every end arrives capped.</li>
        <li>Press an end and the place where it lands. The checks follow every step.</li>
      </ol>
      <div className="part-body row">
        <button type="button" className="button" onClick={() => openDialog({ kind: "samples" })}>
          Open a sample
        </button>
        <button type="button" className="button" onClick={files.open}>
          Open a drawing
        </button>
      </div>
    </Section>
  );
}
