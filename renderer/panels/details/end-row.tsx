import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { EndKey } from "../../../shared-model/model/ids.ts";
import { findEndFacts, nameOfEnd } from "../../../shared-model/queries/end-facts.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { placeWords } from "../../state/place-words.ts";
import { hold, select } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Swatch } from "../swatch.tsx";
import { wording } from "./words.ts";

/** A conductor end: its name and where it is. The name selects it, the place takes it into the hand. */
export function EndRow({ enclosure, end }: { readonly enclosure: Enclosure; readonly end: EndKey }) {
  const installation = useStore(documentStore, installationOf);
  const name = nameOfEnd(installation, enclosure, end);
  const colour = findEndFacts(installation, enclosure, end)?.colour;
  const where = placeWords(enclosure, end);
  const kind = enclosure.places[end]?.at.kind;
  const isLanded = kind !== "capped" && kind !== "loose";
  return (
    <li className="end-row">
      {colour && <Swatch colour={colour} />}
      <button
        type="button"
        className="link end-name"
        onClick={() => select({ kind: "end", enclosure: enclosure.id, id: end })}
      >
        {name}
      </button>
      <span className="end-place">{where}</span>
      <button type="button" className="button small" onClick={() => hold({ enclosure: enclosure.id, end })}>
        {isLanded ? wording.move : wording.land}
        <span className="unseen"> {name}</span>
      </button>
    </li>
  );
}
