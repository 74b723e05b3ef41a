import { useState } from "react";
import type { PreviewResult } from "../../../shared-model/analysis/protocol.ts";
import type { Role } from "../../../shared-model/answers/circuit.ts";
import type { Severity } from "../../../shared-model/answers/finding.ts";
import { findingsStore, SEVERITIES } from "../../state/findings-store.ts";
import type { LandingChoice } from "../../state/landing-choices.ts";
import { landHeld, landingStore } from "../../state/landing-store.ts";
import { hold, sessionStore } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Refused } from "../refused.tsx";
import { SeveritySign } from "../severity-sign.tsx";
import { Section } from "./section.tsx";

/** Where the held end may go: what fits, what would bring a finding, what is not possible and why. */
export function LandingLists() {
  const choices = useStore(landingStore, (state) => state.choices);
  const previews = useStore(landingStore, (state) => state.previews);
  const [refusal, setRefusal] = useState<string>();
  const { fits, brings, open, closed } = sorted(choices, previews);
  const land = (choice: LandingChoice): void => {
    const done = landHeld(choice);
    setRefusal(done.ok ? undefined : done.refusal.message);
  };
  return (
    <section className="landing" aria-label="Places for the held end">
      <p className="landing-hint">
        In the hand. Press a place below or on the sheet.
        <button type="button" className="button small" onClick={() => hold(undefined)}>
          Put it back
        </button>
      </p>
      <Refused message={refusal} />
      {fits.length > 0 && (
        <Section title="Brings no new finding" note={fits.length}>
          <ul>
            {fits.map((choice) => (
              <Place key={choice.key} choice={choice} onLand={land} />
            ))}
          </ul>
        </Section>
      )}
      {brings.length > 0 && (
        <Section title="Possible, with a finding" note={brings.length}>
          <ul>
            {brings.map(({ choice, severity, message }) => (
              <Place key={choice.key} choice={choice} severity={severity} why={message} onLand={land} />
            ))}
          </ul>
        </Section>
      )}
      {open.length > 0 && (
        <Section title="Possible" note="asking the checks">
          <ul>
            {open.map((choice) => (
              <Place key={choice.key} choice={choice} onLand={land} />
            ))}
          </ul>
        </Section>
      )}
      {closed.length > 0 && (
        <Section title="Not possible" note={closed.length}>
          <ul>
            {closed.map(({ key, name, refusal: why }) => (
              <li key={key} className="landing-place closed">
                <StruckRing />
                <span>{name}</span>
                <span className="dim">{why?.message}</span>
              </li>
            ))}
          </ul>
        </Section>
      )}
      <p className="empty">That no rule objects to a place does not prove it right: look at what is joined there.</p>
    </section>
  );
}

interface Bringing {
  readonly choice: LandingChoice;
  readonly severity: Severity;
  readonly message: string;
}

function sorted(choices: readonly LandingChoice[], previews: ReadonlyMap<string, PreviewResult>) {
  const fits: LandingChoice[] = [];
  const brings: Bringing[] = [];
  const open: LandingChoice[] = [];
  const closed: LandingChoice[] = [];
  for (const choice of choices) {
    const preview = previews.get(choice.key);
    if (choice.refusal !== undefined) closed.push(choice);
    else if (preview === undefined) open.push(choice);
    else if ("refused" in preview) closed.push({ ...choice, refusal: { code: "refused", message: preview.refused } });
    else {
      const worst = SEVERITIES.flatMap((severity) =>
        preview.introduces.filter((finding) => finding.severity === severity),
      )[0];
      if (worst === undefined) fits.push(choice);
      else brings.push({ choice, severity: worst.severity, message: worst.message });
    }
  }
  brings.sort((a, b) => SEVERITIES.indexOf(b.severity) - SEVERITIES.indexOf(a.severity));
  return { fits, brings, open, closed };
}

/** What the checks say of the net that a splice belongs to. */
const ROLE_WORDS: Readonly<Record<Role, string>> = {
  ungrounded: "hot",
  switched: "switched",
  traveller: "traveller",
  grounded: "neutral",
  ground: "ground",
  signal: "signal",
  floating: "not connected to a supply",
  conflict: "hot and neutral at once",
};

interface PlaceProps {
  readonly choice: LandingChoice;
  readonly severity?: Severity;
  readonly why?: string;
  readonly onLand: (choice: LandingChoice) => void;
}

function Place({ choice, severity, why, onLand }: PlaceProps) {
  const held = useStore(sessionStore, (state) => state.held);
  const role = useStore(findingsStore, ({ roles }) => {
    if (choice.place.kind !== "splice" || held === undefined) return undefined;
    return roles[held.enclosure]?.splices[choice.place.splice];
  });
  return (
    <li>
      <button type="button" className="landing-place" onClick={() => onLand(choice)}>
        {severity === undefined ? <TargetRing /> : <SeveritySign kind={severity} size={18} />}
        <span className="landing-name">{choice.name}</span>
        <span className="dim">
          {role && `${ROLE_WORDS[role]}, `}
          {choice.note}
          {why && <span className="landing-why">{why}</span>}
        </span>
      </button>
    </li>
  );
}

const TargetRing = () => (
  <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true" className="ring">
    <circle cx="9" cy="9" r="7" fill="none" stroke="currentColor" strokeWidth="1.6" />
    <circle cx="9" cy="9" r="3" fill="currentColor" />
  </svg>
);

const StruckRing = () => (
  <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true" className="ring struck">
    <circle cx="9" cy="9" r="7" fill="none" stroke="currentColor" strokeWidth="1.4" />
    <path d="M4 14L14 4" stroke="currentColor" strokeWidth="1.4" />
  </svg>
);
