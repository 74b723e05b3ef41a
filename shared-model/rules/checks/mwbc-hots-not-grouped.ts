import { isSingle } from "../../solver/neutral-shares.ts";
import type { Pole } from "../../solver/poles.ts";
import { fixBy, fixIn, fixTogether } from "../fix-parts.ts";
import { breakersOf, type Multiwire, multiwiresOf } from "../multiwire-parts.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = {
  spread:
    "The hots of {breakers} and the neutral that they share are not held together in {panel}. Put a cable tie round them there, where they end.",
  unknown:
    "Cannot tell whether the hots of {breakers} are held together with their shared neutral in {panel}: they come by a raceway with other circuits, and it is not recorded. Look, and record it at the breaker.",
};

/** In one cable they are grouped by it; so are conductors of a raceway that holds nothing else. */
export const mwbcHotsNotGrouped = defineRule({
  id: "mwbc-hots-not-grouped",
  status: "draft",
  scope: "section",
  severity: "caution",
  summary: "In the panel, the conductors of a multiwire circuit must be held together.",
  why: "In a full panel nobody sees which white belongs to which two hots, and the next who takes out a breaker parts them or puts both on one leg. Conductors of one cable, or of a raceway of their own, are plain to see; of a raceway that several circuits share they need a tie.",
  messages,
  sections: everyEdition("210.4(D)", "from-memory"),
  check({ section, state, report, cannotTell }) {
    for (const multiwire of multiwiresOf(section)) {
      const { back, poles } = multiwire;
      if (!isSingle(back.cable) || !isShared(multiwire)) continue;
      const breakers = breakersOf(poles);
      const shown = { breakers: listed(breakers.map(({ name }) => name)), panel: back.panel.name };
      const subjects = breakers.map((breaker) => subject("device", breaker));
      const spread = breakers.filter(({ groupedInPanel }) => groupedInPanel === false);
      const unknown = breakers.find(({ groupedInPanel }) => groupedInPanel === undefined);
      if (spread.length > 0) {
        report({
          subjects,
          message: fillIn(messages.spread, shown),
          ...basisOf(spread.flatMap((breaker) => marksOn(breaker, "groupedInPanel"))),
          ...fixIn(state, () => {
            const calls = spread.map(({ id }) => ({
              command: "set-property",
              args: { state, target: { kind: "device", id }, field: "groupedInPanel", value: true },
            }));
            const title = `Tie the conductors of ${shown.breakers} together in ${shown.panel}`;
            const [only] = calls;
            return calls.length === 1 && only !== undefined
              ? fixBy(title, only.command, only.args)
              : fixTogether(title, calls);
          }),
        });
      } else if (unknown !== undefined) {
        cannotTell({
          subjects,
          message: fillIn(messages.unknown, shown),
          missing: `whether the conductors of ${shown.breakers} are held together in ${shown.panel}`,
          enterAt: subject("device", unknown),
        });
      }
    }
  },
});

/** Hots of other circuits come by the same raceway. */
const isShared = ({ back, poles }: Multiwire): boolean => back.partners.some((pole: Pole) => !poles.includes(pole));
