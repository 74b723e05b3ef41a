import { documentStore } from "../../state/document-store.ts";
import { nameOfSelected } from "../../state/name-of-selected.ts";
import { isItem, keyOf, type Selected } from "../../state/selection.ts";
import { select } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { RemoveButton } from "../remove-button.tsx";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

/** Several things at once: what they are, and what can be done with all of them. */
export function SeveralDetails({ selection }: { readonly selection: readonly Selected[] }) {
  const document = useStore(documentStore, (state) => state);
  const items = selection.filter(isItem);
  return (
    <>
      <header className="who">
        <div className="who-line">
          <h2>{wording.selected(selection.length)}</h2>
          {items.length > 0 && <RemoveButton items={items} what={wording.items(items.length)} />}
        </div>
      </header>
      <Section title={wording.selected2}>
        <ul className="rows">
          {selection.map((item) => (
            <li key={keyOf(item)} className="row">
              <button type="button" className="link" onClick={() => select(item)}>
                {nameOfSelected(document, item)}
              </button>
              <span className="dim">{item.kind}</span>
            </li>
          ))}
        </ul>
      </Section>
    </>
  );
}
