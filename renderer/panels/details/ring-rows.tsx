import type { Box, Ring } from "../../../shared-model/model/enclosure.ts";
import type { RingId } from "../../../shared-model/model/ids.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { dispatch, documentStore } from "../../state/document-store.ts";
import { mintId } from "../../state/mint-id.ts";
import { Properties } from "./properties.tsx";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

const KINDS: readonly (readonly [Ring["kind"], string])[] = [
  ["plaster-ring", wording.plasterRing],
  ["raised-cover", wording.raisedCover],
  ["extension", "extension"],
];

/** Rings and extensions of a box; one adds volume only by its marking or its standard size. */
export function RingRows({ box }: { readonly box: Box }) {
  const { state } = documentStore.get();
  const rings = inOrder<Ring>(box.rings);
  const at = { state, enclosure: box.id };
  const add = (chosen: string): void => {
    const kind = KINDS.find(([one]) => one === chosen)?.[0];
    if (kind !== undefined)
      dispatch({ command: "add-ring", args: { ...at, id: mintId<RingId>("g"), kind, volume: { kind: "unknown" } } });
  };
  return (
    <Section title={wording.ringsAndExtensions} note={rings.length}>
      <div className="part-body">
        {rings.map(({ id, kind }) => (
          <div key={id} className="ring-fact">
            <p className="row">
              <span>{KINDS.find(([one]) => one === kind)?.[1]}</span>
              <button
                type="button"
                className="button small"
                onClick={() => dispatch({ command: "remove-ring", args: { ...at, id } })}
              >
                {wording.takeOff}
                <span className="unseen">{wording.the(kind)}</span>
              </button>
            </p>
            <Properties title={wording.factsOfTheRing} target={{ kind: "ring", enclosure: box.id, id }} />
          </div>
        ))}
        <select
          className="field small"
          aria-label={wording.addARingOrExtension}
          value=""
          onChange={({ target }) => add(target.value)}
        >
          <option value="">{wording.addOne}</option>
          {KINDS.map(([one, words]) => (
            <option key={one} value={one}>
              {words}
            </option>
          ))}
        </select>
      </div>
    </Section>
  );
}
