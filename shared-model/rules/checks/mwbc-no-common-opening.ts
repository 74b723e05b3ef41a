import { templates } from "../../lib/catalogue.ts";
import type { Pole } from "../../solver/poles.ts";
import { areOnSameLeg, groupsByHandle, marksOfPoles, multiwiresOf, tieIn } from "../multiwire-parts.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, subject } from "../rule-parts.ts";

const messages = templates({
  apart:
    "{breakers} in {panel} share the neutral in {cable} and can be opened one at a time: with one off, the neutral still carries the current of the other. Fit a two-pole breaker, or tie the handles.",
});

/** Poles on one leg are no multiwire circuit, whatever their handles do: that is told as what it is. */
export const mwbcNoCommonOpening = defineRule({
  id: "mwbc-no-common-opening",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "The breakers of a multiwire circuit must open together.",
  why: "Somebody turns off the one breaker that the outlet is on, opens the shared neutral, and has the current of the other leg in hand; what is connected to it is in series across both legs. Handle ties or a two-pole breaker have been asked for since 2008, before that only where both legs ended on one yoke of a dwelling.",
  messages,
  sections: everyEdition("210.4(B)", "from-memory"),
  check({ section, state, report }) {
    for (const { back, poles } of multiwiresOf(section)) {
      const onLegs = poles.filter((pole) => poles.some((other) => other !== pole && !isSame(pole, other)));
      const groups = groupsByHandle(onLegs);
      if (groups.length < 2) continue;
      const breakers = groups.flat();
      report({
        subjects: breakers.map((breaker) => subject("device", breaker)),
        message: fillIn(messages.apart, {
          breakers: listed(breakers.map(({ name }) => name)),
          panel: back.panel.name,
          cable: back.cable.name,
        }),
        ...tieIn(onLegs, state),
        ...basisOf(marksOfPoles(onLegs)),
      });
    }
  },
});

const isSame = (one: Pole, other: Pole): boolean => areOnSameLeg(one, other) === true;
