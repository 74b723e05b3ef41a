import type { Enclosure, Splice } from "../../../shared-model/model/enclosure.ts";
import { nameOfEnd } from "../../../shared-model/queries/end-facts.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { membersOf } from "../../../shared-model/queries/landings.ts";
import { documentStore, installationOf } from "../../state/document-store.ts";
import { select } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Section } from "./section.tsx";
import { ConnectorSelect } from "./splice-details.tsx";
import { wording } from "./words.ts";

/** The splices of an enclosure: who is joined, and by what. */
export function SpliceRows({ enclosure }: { readonly enclosure: Enclosure }) {
  const installation = useStore(documentStore, installationOf);
  const splices = inOrder<Splice>(enclosure.splices);
  if (splices.length === 0) return null;
  return (
    <Section title={wording.splices} note={splices.length}>
      <ul className="rows">
        {splices.map((splice) => {
          const members = membersOf(enclosure, splice.id);
          return (
            <li key={splice.id} className="row splice-row">
              <button type="button" className="link" onClick={() => select({ kind: "splice", id: splice.id })}>
                {splice.name}
              </button>
              <span className="dim">
                <span className="fig">{members.length}: </span>
                {members.map((end) => nameOfEnd(installation, enclosure, end)).join(", ")}
              </span>
              <ConnectorSelect splice={splice} enclosure={enclosure} />
            </li>
          );
        })}
      </ul>
    </Section>
  );
}
