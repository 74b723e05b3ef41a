import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { EndKey } from "../../../shared-model/model/ids.ts";
import { findEndFacts, nameOfEnd } from "../../../shared-model/queries/end-facts.ts";
import { dispatch, documentStore, installationOf } from "../../state/document-store.ts";
import { placeWords } from "../../state/place-words.ts";
import { goTo, hold, sessionStore } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { EvidenceSelect } from "./evidence-select.tsx";
import { LandingLists } from "./landing-lists.tsx";
import { Properties } from "./properties.tsx";
import { wording } from "./words.ts";

/** A conductor end: where it is, and everywhere it could be put. */
export function EndDetails({ enclosure, end }: { readonly enclosure: Enclosure; readonly end: EndKey }) {
  const installation = useStore(documentStore, installationOf);
  const held = useStore(sessionStore, (state) => state.held);
  const state = useStore(documentStore, (document) => document.state);
  const facts = findEndFacts(installation, enclosure, end);
  const place = enclosure.places[end];
  if (facts === undefined || place === undefined) return null;
  const free = place.at.kind === "capped" || place.at.kind === "loose";
  const args = { state, enclosure: enclosure.id, end };
  return (
    <>
      <header className="who">
        <h2>
          {nameOfEnd(installation, enclosure, end)} <small>{wording.endAt(enclosure.name)}</small>
        </h2>
        <p>{wording.awg2(facts.awg, facts.material, placeWords(enclosure, end))}</p>
        <div className="fact-line">
          <span className="dim">{wording.whereItIsLanded}</span>
          <EvidenceSelect
            target={{ kind: "end", enclosure: enclosure.id, id: end }}
            field="at"
            label={wording.whereItIsLanded2}
            mark={place.evidence?.at}
          />
        </div>
        <div className="actions">
          {held === undefined && (
            <button type="button" className="button small" onClick={() => hold({ enclosure: enclosure.id, end })}>
              {free ? wording.landIt : wording.moveIt}
            </button>
          )}
          {!free && (
            <button type="button" className="button small" onClick={() => dispatch({ command: "cap-end", args })}>
              {wording.capIt}
            </button>
          )}
          {place.at.kind === "capped" && (
            <button
              type="button"
              className="button small"
              aria-pressed={place.spare === true}
              onClick={() => dispatch({ command: "mark-spare", args: { ...args, spare: place.spare !== true } })}
            >
              {wording.spare}
            </button>
          )}
          <button type="button" className="link" onClick={() => goTo({ kind: "enclosure", id: enclosure.id })}>
            {enclosure.name}
          </button>
        </div>
      </header>
      {held?.end === end && <LandingLists />}
      <Properties title={wording.factsOfTheEnd} target={{ kind: "end", enclosure: enclosure.id, id: end }} />
      {facts.parsed.of === "cable" && (
        <Properties
          title={wording.factsOfTheConductor}
          target={{ kind: "conductor", cable: facts.parsed.cable, id: facts.parsed.conductor }}
        />
      )}
    </>
  );
}
