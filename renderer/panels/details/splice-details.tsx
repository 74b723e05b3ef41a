import { connectors } from "../../../shared-model/catalog/connectors.ts";
import type { Enclosure, Splice } from "../../../shared-model/model/enclosure.ts";
import { membersOf } from "../../../shared-model/queries/landings.ts";
import { dispatch, documentStore } from "../../state/document-store.ts";
import { addJumperFrom } from "../../state/item-actions/jumper-action.ts";
import { goTo } from "../../state/session-store.ts";
import { canSplit, splitSplice } from "../../state/split-splice.ts";
import { EndRow } from "./end-row.tsx";
import { FindingsAbout } from "./findings-about.tsx";
import { Properties } from "./properties.tsx";
import { Section } from "./section.tsx";
import { Who } from "./who.tsx";

/** A splice: what holds it, and who is in it. */
export function SpliceDetails({ splice, enclosure }: { readonly splice: Splice; readonly enclosure: Enclosure }) {
  const members = membersOf(enclosure, splice.id);
  return (
    <>
      <Who item={{ kind: "splice", id: splice.id }} name={splice.name} kind="splice">
        <p>
          in{" "}
          <button type="button" className="link" onClick={() => goTo({ kind: "enclosure", id: enclosure.id })}>
            {enclosure.name}
          </button>
        </p>
      </Who>
      <FindingsAbout item={{ kind: "splice", id: splice.id }} />
      <Section title="Connector">
        <div className="part-body">
          <ConnectorSelect splice={splice} enclosure={enclosure} />
          <p className="dim">What a connector takes is typical: the table on its package governs.</p>
        </div>
      </Section>
      <Section title="Ends joined" note={members.length}>
        <ul className="ends">
          {members.map((end) => (
            <EndRow key={end} enclosure={enclosure} end={end} />
          ))}
        </ul>
        <div className="part-body part-buttons">
          <button
            type="button"
            className="button small"
            onClick={() => addJumperFrom(enclosure, { kind: "splice", splice: splice.id })}
          >
            Pigtail from here…
          </button>
          {canSplit(enclosure, splice.id) && (
            <button type="button" className="button small" onClick={() => splitSplice(splice.id)}>
              Split {splice.name} in two
            </button>
          )}
        </div>
      </Section>
      <Properties target={{ kind: "splice", id: splice.id }} />
    </>
  );
}

const OTHER: readonly (readonly [id: string, words: string])[] = [
  ["none", "no connector"],
  ["taped", "taped only"],
  ["soldered", "soldered"],
  ["unknown", "not known"],
];

/** Chooses what holds a splice. */
export function ConnectorSelect({ splice, enclosure }: { readonly splice: Splice; readonly enclosure: Enclosure }) {
  const change = (connector: string): void => {
    const { state } = documentStore.get();
    dispatch({ command: "change-connector", args: { state, enclosure: enclosure.id, splice: splice.id, connector } });
  };
  return (
    <select
      className="field small"
      aria-label={`Connector of ${splice.name}`}
      value={splice.connector}
      onChange={({ target }) => change(target.value)}
    >
      {connectors.map(({ id, title }) => (
        <option key={id} value={id}>
          {title}
        </option>
      ))}
      {OTHER.map(([id, words]) => (
        <option key={id} value={id}>
          {words}
        </option>
      ))}
    </select>
  );
}
