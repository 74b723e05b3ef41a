import { useId } from "react";
import { printStore } from "../../state/print/print-store.ts";
import { showPage } from "../../state/print/printing.ts";
import { useStore } from "../../state/use-store.ts";
import { wording } from "./words.ts";

/** Texts that are named one by one; of more there is a count. */
const MOST = 2;

/** Which texts paper cannot show as they were written, before anything is printed; a press shows the page. */
export function LostNote() {
  const id = useId();
  const lost = useStore(printStore, ({ laid }) => laid?.lost) ?? [];
  if (lost.length === 0) return null;
  return (
    <section className="print-lost" aria-labelledby={id}>
      <p id={id}>{wording.lettersAreLost}</p>
      <ul>
        {lost.slice(0, MOST).map(({ text, where, page }) => (
          <li key={`${where} ${text}`}>
            <button type="button" className="print-lost-text" onClick={() => showPage(page - 1)}>
              {wording.lostAt(text, where, page)}
            </button>
          </li>
        ))}
      </ul>
      {lost.length > MOST && <p className="dim">{wording.moreTexts(lost.length - MOST)}</p>}
    </section>
  );
}
