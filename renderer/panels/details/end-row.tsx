import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { EndKey } from "../../../shared-model/model/ids.ts";
import { findEndFacts, nameOfEnd } from "../../../shared-model/queries/end-facts.ts";
import type { Colour } from "../../../shared-model/units/colour.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { placeWords } from "../../state/place-words.ts";
import { hold, select } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";

/** A conductor end: its name and where it is. The name selects it, the place takes it into the hand. */
export function EndRow({ enclosure, end }: { readonly enclosure: Enclosure; readonly end: EndKey }) {
  const installation = useStore(documentStore, installationOf);
  const name = nameOfEnd(installation, enclosure, end);
  const colour = findEndFacts(installation, enclosure, end)?.colour;
  const where = placeWords(enclosure, end);
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
        Move<span className="unseen"> {name}</span>
      </button>
    </li>
  );
}

const VARIABLES: Readonly<Record<Colour, string>> = {
  black: "bk",
  white: "wh",
  red: "rd",
  blue: "bu",
  yellow: "ye",
  brown: "bn",
  orange: "og",
  grey: "gy",
  violet: "vt",
  pink: "pk",
  green: "gn",
  bare: "cu",
};

/** A short piece of the conductor as made; its letters stand in the name beside it. */
function Swatch({ colour }: { readonly colour: Colour }) {
  const name = VARIABLES[colour];
  return (
    <svg width="18" height="8" viewBox="0 0 18 8" aria-hidden="true" className="swatch">
      <rect width="18" height="8" fill={`var(--${name}-case)`} />
      <rect y="1.4" width="18" height="5.2" fill={`var(--${name})`} />
    </svg>
  );
}
