import { findCableItem } from "../../../shared-model/catalog/cable-items.ts";
import type { Cable } from "../../../shared-model/model/cable.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import { cableEnd, type EnclosureId, type Side } from "../../../shared-model/model/ids.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { conductorKeys } from "../../state/conductor-keys.ts";
import { dispatch, documentStore, installationOf } from "../../state/document-store.ts";
import { freeSide } from "../../state/placing.ts";
import { goTo, notify } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { EndRow } from "./end-row.tsx";
import { FindingsAbout } from "./findings-about.tsx";
import { LabelRows } from "./label-rows.tsx";
import { Properties } from "./properties.tsx";
import { Section } from "./section.tsx";
import { Who } from "./who.tsx";

/** A cable: where it runs, and where each of its conductors ends. */
export function CableDetails({ cable }: { readonly cable: Cable }) {
  return (
    <>
      <Who item={{ kind: "cable", id: cable.id }} name={cable.name} kind="cable">
        <p>
          {findCableItem(cable.item)?.title ?? cable.item}
          {cable.lengthFt !== undefined && `, ${cable.lengthFt} ft`}.
        </p>
      </Who>
      <FindingsAbout item={{ kind: "cable", id: cable.id }} />
      <SideEnds cable={cable} side="a" />
      <SideEnds cable={cable} side="b" />
      <LabelRows on={{ cable: cable.id }} />
      <Properties target={{ kind: "cable", id: cable.id }} />
    </>
  );
}

function SideEnds({ cable, side }: { readonly cable: Cable; readonly side: Side }) {
  const installation = useStore(documentStore, installationOf);
  const where = cable.sides[side];
  if ("outside" in where) {
    return (
      <Section title="Beyond the drawing">
        <p className="empty">{where.outside}</p>
      </Section>
    );
  }
  const enclosure = installation.enclosures[where.enclosure];
  if (enclosure === undefined) return null;
  const go = (
    <button type="button" className="link" onClick={() => goTo({ kind: "enclosure", id: enclosure.id })}>
      {enclosure.name} <span className="unseen">details</span>
    </button>
  );
  return (
    <Section title={`Ends in ${enclosure.name}`} note={go}>
      <ul className="ends">
        {conductorKeys(cable).map((key) => (
          <EndRow key={key} enclosure={enclosure} end={cableEnd(cable.id, key, side)} />
        ))}
      </ul>
      <MoveSide cable={cable} side={side} now={enclosure.id} />
    </Section>
  );
}

/** Pulls this side of the cable into another enclosure; its ends arrive there capped. */
function MoveSide({ cable, side, now }: { readonly cable: Cable; readonly side: Side; readonly now: EnclosureId }) {
  const installation = useStore(documentStore, installationOf);
  const move = (chosen: string): void => {
    const far = Object.values(installation.enclosures).find(({ id }) => id === chosen);
    if (far === undefined) return;
    const { state } = documentStore.get();
    const args = { state, cable: cable.id, side, to: freeSide(installation, far) };
    const done = dispatch({ command: "move-cable-side", args });
    if (!done.ok) notify("problem", "Not moved", [done.refusal.message]);
  };
  return (
    <div className="part-body">
      <select
        className="field small"
        aria-label={`Move this side of ${cable.name}`}
        value=""
        onChange={({ target }) => move(target.value)}
      >
        <option value="">move this side to</option>
        {inOrder<Enclosure>(installation.enclosures)
          .filter(({ id }) => id !== now)
          .map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
      </select>
    </div>
  );
}
