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
import { wording } from "./words.ts";

/** A splice: what holds it, and who is in it. */
export function SpliceDetails({ splice, enclosure }: { readonly splice: Splice; readonly enclosure: Enclosure }) {
  const members = membersOf(enclosure, splice.id);
  return (
    <>
      <Who item={{ kind: "splice", id: splice.id }} name={splice.name} kind="splice">
        <p>
          {wording.inWord2}
          <button type="button" className="link" onClick={() => goTo({ kind: "enclosure", id: enclosure.id })}>
            {enclosure.name}
          </button>
        </p>
      </Who>
      <FindingsAbout item={{ kind: "splice", id: splice.id }} />
      <Section title={wording.connector}>
        <div className="part-body">
          <ConnectorSelect splice={splice} enclosure={enclosure} />
          <p className="dim">{wording.whatAConnectorTakesIsTypical}</p>
        </div>
      </Section>
      <Section title={wording.endsJoined} note={members.length}>
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
            {wording.pigtailFromHere}
          </button>
          {canSplit(enclosure, splice.id) && (
            <button type="button" className="button small" onClick={() => splitSplice(splice.id)}>
              {wording.splitInTwo(splice.name)}
            </button>
          )}
        </div>
      </Section>
      <Properties target={{ kind: "splice", id: splice.id }} />
    </>
  );
}

const OTHER: readonly (readonly [id: string, words: string])[] = [
  ["none", wording.noConnector],
  ["taped", wording.tapedOnly],
  ["soldered", "soldered"],
  ["unknown", wording.notKnown],
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
      aria-label={wording.connectorOf(splice.name)}
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
