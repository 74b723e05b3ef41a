import type { Enclosure, Jumper } from "../../../shared-model/model/enclosure.ts";
import { jumperEnd } from "../../../shared-model/model/ids.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { placeWords } from "../../state/place-words.ts";
import { select } from "../../state/session-store.ts";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

/** The jumpers of an enclosure: they stay inside it and count nothing in box fill. */
export function JumperRows({ enclosure }: { readonly enclosure: Enclosure }) {
  const jumpers = inOrder<Jumper>(enclosure.jumpers);
  if (jumpers.length === 0) return null;
  return (
    <Section title={wording.jumpers} note={jumpers.length}>
      <ul className="rows">
        {jumpers.map(({ id, name, awg, colour }) => (
          <li key={id} className="row">
            <button type="button" className="link" onClick={() => select({ kind: "jumper", id })}>
              {name}
            </button>
            <span className="dim">
              {wording.awgTo(
                awg,
                colour,
                placeWords(enclosure, jumperEnd(id, "a")),
                placeWords(enclosure, jumperEnd(id, "b")),
              )}
            </span>
          </li>
        ))}
      </ul>
    </Section>
  );
}
