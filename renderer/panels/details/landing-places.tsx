import { Fragment, useId } from "react";
import type { Role } from "../../../shared-model/answers/circuit.ts";
import type { Finding } from "../../../shared-model/answers/finding.ts";
import { findingsStore } from "../../state/findings-store.ts";
import type { LandingChoice, LandingPlace } from "../../state/landing-choices.ts";
import { sessionStore } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { SeveritySign } from "../severity-sign.tsx";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

/** A place, and what the checks say of it. */
export interface JudgedPlace {
  readonly choice: LandingChoice;
  /** The worst that would follow. */
  readonly worst?: Pick<Finding, "severity" | "message">;
}

interface PlacesProps {
  readonly title: string;
  readonly note?: string;
  readonly places: readonly JudgedPlace[];
  readonly onLand: (choice: LandingChoice) => void;
}

/** Places of one judgement, by what they are. */
export function Places({ title, note, places, onLand }: PlacesProps) {
  if (places.length === 0) return null;
  const kinds = KINDS.map(([words, ...kinds]) => ({
    words,
    own: places.filter(({ choice }) => kinds.some((kind) => kind === choice.place.kind)),
  })).filter(({ own }) => own.length > 0);
  return (
    <Section title={title} note={note ?? places.length}>
      {kinds.map(({ words, own }) => (
        <Fragment key={words}>
          {kinds.length > 1 && <h4 className="landing-kind">{words}</h4>}
          <ul>
            {own.map((place) => (
              <Place key={place.choice.key} place={place} onLand={onLand} />
            ))}
          </ul>
        </Fragment>
      ))}
    </Section>
  );
}

const KINDS: readonly (readonly [words: string, ...kinds: LandingPlace["kind"][]])[] = [
  [wording.terminals, "terminal"],
  [wording.splices, "splice"],
  [wording.newSplices, "new-splice"],
  [wording.elsewhereInTheBox, "bond", "capped", "loose"],
];

/** What the checks say of the net that a splice belongs to. */
const ROLE_WORDS: Readonly<Record<Role, string>> = {
  ungrounded: wording.hot,
  switched: wording.switched,
  traveller: wording.traveller,
  grounded: wording.neutral,
  ground: wording.ground,
  signal: wording.signal,
  floating: wording.notConnectedToASupply,
  conflict: wording.hotAndNeutralAtOnce,
};

interface PlaceProps {
  readonly place: JudgedPlace;
  readonly onLand: (choice: LandingChoice) => void;
}

function Place({ place: { choice, worst }, onLand }: PlaceProps) {
  const held = useStore(sessionStore, (state) => state.held);
  const role = useStore(findingsStore, ({ roles }) => {
    if (choice.place.kind !== "splice" || held === undefined) return undefined;
    return roles[held.enclosure]?.splices[choice.place.splice];
  });
  const why = useId();
  return (
    <li>
      <button type="button" className="landing-place" aria-describedby={worst && why} onClick={() => onLand(choice)}>
        {worst === undefined ? <TargetRing /> : <SeveritySign kind={worst.severity} size={18} />}
        <span className="landing-name">{choice.name}</span>
        <span className="dim">
          {role && `${ROLE_WORDS[role]}, `}
          {choice.note}
        </span>
      </button>
      {worst && <Why id={why} name={choice.name} message={worst.message} />}
    </li>
  );
}

interface WhyProps {
  readonly id: string;
  readonly name: string;
  readonly message: string;
}

/** What would follow in one line; all of it on a press. */
function Why({ id, name, message }: WhyProps) {
  return (
    <details className="landing-why">
      <summary>
        <span className="unseen">{name}: </span>
        <span id={id}>{message}</span>
      </summary>
    </details>
  );
}

const TargetRing = () => (
  <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true" className="ring">
    <circle cx="9" cy="9" r="7" fill="none" stroke="currentColor" strokeWidth="1.6" />
    <circle cx="9" cy="9" r="3" fill="currentColor" />
  </svg>
);
