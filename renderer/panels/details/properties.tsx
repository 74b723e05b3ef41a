import { useState } from "react";
import type { PropertyTarget, PropertyValue } from "../../../shared-model/commands/command-args.ts";
import { dispatch, documentStore } from "../../state/document-store.ts";
import { putInNewRoom } from "../../state/new-room.ts";
import { type PropertyFact, propertyFacts } from "../../state/property-facts.ts";
import { useStore } from "../../state/use-store.ts";
import { Refused } from "../refused.tsx";
import { newRoomKind } from "../rooms/new-room-options.tsx";
import { ROOM_KIND_WORDS } from "../rooms/room-kind-words.ts";
import { EvidenceSelect } from "./evidence-select.tsx";
import { PropertyControl } from "./property-control.tsx";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

/**
 * Facts of a thing and how each is known. Those that are empty and may stay so are folded away, except the room: most of
 * what an outlet needs hangs on it.
 */
export function Properties({
  target,
  title = wording.facts,
}: {
  readonly target: PropertyTarget;
  readonly title?: string;
}) {
  const document = useStore(documentStore, (state) => state);
  const facts = propertyFacts(document, target);
  const [more, setMore] = useState(false);
  const isFilled = ({ property, value, mark }: PropertyFact): boolean =>
    !property.optional || property.takes.kind === "room" || value !== undefined || mark !== undefined;
  const filled = facts.filter(isFilled);
  const rest = facts.filter((fact) => !isFilled(fact));
  if (facts.length === 0) return null;
  return (
    <Section
      title={title}
      note={target.kind === "room" || target.kind === "project" ? undefined : wording.andHowEachIsKnown}
    >
      <div className="facts">
        {filled.map((fact) => (
          <Fact key={fact.property.field} target={target} fact={fact} />
        ))}
        {rest.length > 0 && (
          <button type="button" className="link" aria-expanded={more} onClick={() => setMore(!more)}>
            {more ? wording.hideFactsNotEntered : wording.enterMoreNotEntered(rest.length)}
          </button>
        )}
        {more && rest.map((fact) => <Fact key={fact.property.field} target={target} fact={fact} />)}
      </div>
    </Section>
  );
}

function Fact({ target, fact }: { readonly target: PropertyTarget; readonly fact: PropertyFact }) {
  const { property, value, mark } = fact;
  const [refusal, setRefusal] = useState<string>();
  const hasMark = target.kind !== "room" && target.kind !== "project" && value !== undefined;
  const change = (next: PropertyValue): void => {
    const kind = property.takes.kind === "room" && typeof next === "string" ? newRoomKind(next) : undefined;
    if (kind !== undefined && target.kind === "enclosure") {
      putInNewRoom(target.id, kind, ROOM_KIND_WORDS[kind]);
      return;
    }
    const { state } = documentStore.get();
    const done = dispatch({ command: "set-property", args: { state, target, field: property.field, value: next } });
    setRefusal(done.ok ? undefined : done.refusal.message);
  };
  return (
    <div className={hasMark ? "fact" : "fact unmarked"}>
      <PropertyControl property={property} value={value} onChange={change} invalid={refusal !== undefined} />
      {hasMark && <EvidenceSelect target={target} field={property.field} label={property.label} mark={mark} />}
      <Refused message={refusal} />
    </div>
  );
}
