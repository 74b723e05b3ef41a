import { useState } from "react";
import type { PreviewResult } from "../../../shared-model/analysis/protocol.ts";
import { SEVERITIES } from "../../../shared-model/model/severity.ts";
import { nameOfEnd } from "../../../shared-model/queries/end-facts.ts";
import { broughtEverywhere } from "../../state/brought-everywhere.ts";
import { shownInstallation } from "../../state/document-store.ts";
import { SEVERITY_WORDS } from "../../state/finding-groups.ts";
import { type LandingChoice, oneFreeHoleEach } from "../../state/landing-choices.ts";
import { type LandingState, landHeld, landingStore } from "../../state/landing-store.ts";
import { pickNewSplice } from "../../state/new-splice.ts";
import { hold, sessionStore } from "../../state/session-store.ts";
import { useStore } from "../../state/use-store.ts";
import { Refused } from "../refused.tsx";
import { SeveritySign } from "../severity-sign.tsx";
import { type JudgedPlace, Places } from "./landing-places.tsx";
import { Section } from "./section.tsx";
import { wording } from "./words.ts";

/** Where the held end may go: what fits, what would bring a finding, what is not possible and why. */
export function LandingLists() {
  const choices = useStore(landingStore, (state) => state.choices);
  const previews = useStore(landingStore, (state) => state.previews);
  const held = useStore(sessionStore, (state) => state.held);
  const [refusal, setRefusal] = useState<string>();
  const { fits, alike, brings, open, closed } = sorted(
    oneFreeHoleEach(choices),
    previews,
    broughtEverywhere(choices, previews, useStore(landingStore, nameOfHeld)),
  );
  const [everywhere] = alike.flatMap(({ worst }) => worst ?? []);
  const land = (choice: LandingChoice): void => {
    const done = landHeld(choice);
    setRefusal(done.ok ? undefined : done.refusal.message);
  };
  return (
    <section className="landing" aria-label={wording.placesForTheHeldEnd}>
      <p className="landing-hint">
        {wording.inTheHandPressAPlace}
        <button type="button" className="button small" onClick={() => hold(undefined)}>
          {wording.putItBack}
        </button>
      </p>
      <Refused message={refusal} />
      {held !== undefined && (
        <p className="landing-new">
          <button type="button" className="button small" onClick={() => pickNewSplice(held.enclosure, [held.end])}>
            {wording.newSpliceWithAnotherEnd}
          </button>
        </p>
      )}
      <Places title={wording.bringsNoNewFinding} places={fits} onLand={land} />
      {everywhere && (
        <p className="landing-everywhere">
          <SeveritySign kind={everywhere.severity} size={18} />
          <span>{wording.whereverItIsLanded(SEVERITY_WORDS[everywhere.severity], everywhere.message)}</span>
        </p>
      )}
      <Places
        title={wording.bringsNothingMoreThanThat}
        places={alike.map(({ choice }) => ({ choice }))}
        onLand={land}
      />
      <Places title={wording.possibleWithAFinding} places={brings} onLand={land} />
      <Places title={wording.possible} note={wording.askingTheChecks} places={open} onLand={land} />
      {closed.length > 0 && (
        <Section title={wording.notPossible} note={closed.length}>
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
      <p className="empty">{wording.thatNoRuleObjectsToA}</p>
    </section>
  );
}

/** "C1 BK"; empty where nothing is held. */
function nameOfHeld({ held }: LandingState): string {
  const installation = shownInstallation();
  const enclosure = held && installation.enclosures[held.enclosure];
  return held === undefined || enclosure === undefined ? "" : nameOfEnd(installation, enclosure, held.end);
}

function sorted(
  choices: readonly LandingChoice[],
  previews: ReadonlyMap<string, PreviewResult>,
  isEverywhere: ReturnType<typeof broughtEverywhere>,
) {
  const fits: JudgedPlace[] = [];
  /** With the worst of what follows everywhere. */
  const alike: JudgedPlace[] = [];
  const brings: JudgedPlace[] = [];
  const open: JudgedPlace[] = [];
  const closed: LandingChoice[] = [];
  for (const choice of choices) {
    const preview = previews.get(choice.key);
    if (choice.refusal !== undefined) closed.push(choice);
    else if (preview === undefined) open.push({ choice });
    else if ("refused" in preview) closed.push({ ...choice, refusal: { code: "refused", message: preview.refused } });
    else {
      const byWeight = SEVERITIES.flatMap((severity) =>
        preview.introduces.filter((finding) => finding.severity === severity),
      );
      const worst = byWeight.find((each) => !isEverywhere(each));
      if (worst !== undefined) brings.push({ choice, worst });
      else if (byWeight[0] === undefined) fits.push({ choice });
      else alike.push({ choice, worst: byWeight[0] });
    }
  }
  // The gentlest first.
  const rank = ({ worst }: JudgedPlace): number => (worst ? -SEVERITIES.indexOf(worst.severity) : 0);
  brings.sort((a, b) => rank(a) - rank(b));
  return { fits, alike, brings, open, closed };
}

const StruckRing = () => (
  <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true" className="ring struck">
    <circle cx="9" cy="9" r="7" fill="none" stroke="currentColor" strokeWidth="1.4" />
    <path d="M4 14L14 4" stroke="currentColor" strokeWidth="1.4" />
  </svg>
);
