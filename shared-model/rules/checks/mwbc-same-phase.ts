import type { Fix } from "../../answers/finding.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { StateName } from "../../model/project.ts";
import type { Pole } from "../../solver/poles.ts";
import type { WireSize } from "../../units/wire-size.ts";
import { fixTogether } from "../fix-parts.ts";
import {
  areOnSameLeg,
  breakersOf,
  isLegKnown,
  type Multiwire,
  marksOfPoles,
  multiwiresOf,
  tieOf,
} from "../multiwire-parts.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  sum: "{breakers} in {panel} stand on the same leg and share the neutral in {cable}: it can carry {sum} A on {awg} AWG, and no breaker sees it. Move one of them to the other leg.",
  noSum:
    "{breakers} in {panel} stand on the same leg and share the neutral in {cable} of {awg} AWG: their currents add up in it, and no breaker sees the sum. Move one of them to the other leg.",
  legUnknown:
    "Cannot tell whether {breakers} in {panel}, which share the neutral in {cable}, stand on different legs: nobody has recorded the leg of {unknown}. Look which spaces they take, or have a qualified person measure between the two hots: clearly more than the voltage to neutral on two legs, nothing on one.",
});

const wording = catalogue({
  legOf: (breakers: Part) => `the leg of ${breakers}`,
  move: (breaker: Part, leg: Part) => `Move ${breaker} to a space on leg ${leg}`,
  moveAndTie: (breaker: Part, leg: Part) => `Move ${breaker} to a space on leg ${leg}, and tie it to its partner`,
  sections: (section: Part, article: Part) => `${section}, Article ${article} (multiwire branch circuit)`,
  unknownSize: "unknown",
});

/** On different legs the neutral carries the difference of the two currents, on one leg their sum. */
export const mwbcSamePhase = defineRule({
  id: "mwbc-same-phase",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "Hots that share a neutral must be on different legs.",
  why: "It happens when a panel is tidied up or a breaker is changed for one that takes another space. Everything works; the shared neutral carries what both breakers allow together, behind no breaker of its own, and burns at its weakest joint.",
  messages,
  sections: everyEdition(wording.sections("210.4", 100), "unconfirmed"),
  check({ section, state, report, cannotTell }) {
    for (const multiwire of multiwiresOf(section)) {
      const { back, poles } = multiwire;
      const awg = awgOf(multiwire);
      const together = poles.filter((pole) =>
        poles.some((other) => other !== pole && areOnSameLeg(pole, other) === true),
      );
      const breakers = breakersOf(together.length > 0 ? together : poles);
      const shown = {
        breakers: listed(breakers.map(({ name }) => name)),
        panel: back.panel.name,
        cable: back.cable.name,
        awg: awg ?? wording.unknownSize,
      };
      const subjects = breakers.map((breaker) => subject("device", breaker));
      if (together.length > 0) {
        const sum = sumOf(together);
        report({
          subjects,
          message: fillIn(sum === undefined ? messages.noSum : messages.sum, { ...shown, sum: sum ?? "" }),
          data: { ...(sum !== undefined && { sumA: sum }), awg: awg ?? "unknown" },
          ...(state === "proposed" && { offers: moveOffers(together, state) }),
          ...basisOf(
            marksOfPoles(together),
            breakers.flatMap((breaker) => marksOn(breaker, "legs")),
          ),
          hides: [{ rule: "mwbc-no-common-opening", subjects: breakers.map(({ id }) => id) }],
        });
      } else if (
        poles.some((pole) => poles.some((other) => other !== pole && areOnSameLeg(pole, other) === undefined))
      ) {
        const unknown = breakersOf(poles.filter((pole) => !isLegKnown(pole)));
        const [first] = unknown;
        cannotTell({
          subjects,
          message: fillIn(messages.legUnknown, { ...shown, unknown: listed(unknown.map(({ name }) => name)) }),
          missing: wording.legOf(listed(unknown.map(({ name }) => name))),
          ...(first !== undefined && { enterAt: subject("device", first) }),
        });
      }
    }
  },
});

/** Their ratings together, in A; undefined while one is not recorded. */
function sumOf(poles: readonly Pole[]): number | undefined {
  let sum = 0;
  for (const { breaker } of poles) {
    if (breaker.breakerRatingA === undefined) return undefined;
    sum += breaker.breakerRatingA;
  }
  return sum;
}

/** Size of the shared neutral where it leaves the panel. */
function awgOf({ back: { cable, end } }: Multiwire): WireSize | undefined {
  const key = Object.keys(cable.conductors).find((one) => end.startsWith(`${cable.id}.${one}.`));
  return cable.conductors[key as keyof typeof cable.conductors]?.awg;
}

/** Two one-pole breakers: either goes to the other leg, tied to its partner where that is not done yet. */
function moveOffers(poles: readonly Pole[], state: StateName): readonly Fix[] {
  if (poles.length !== 2 || breakersOf(poles).length !== 2) return [];
  const tie = tieOf(poles, state);
  return poles.map(({ breaker, leg }) => {
    const to = leg === "A" ? "B" : "A";
    const args = { state, target: { kind: "device", id: breaker.id }, field: "legs", value: [to] };
    const calls = [{ command: "set-property", args }, ...(tie === undefined ? [] : [tie.fix.call])];
    return fixTogether((tie === undefined ? wording.move : wording.moveAndTie)(breaker.name, to), calls);
  });
}
