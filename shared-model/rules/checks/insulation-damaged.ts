import { catalogue, templates } from "../../lib/catalogue.ts";
import type { EndKey } from "../../model/ids.ts";
import type { EndCondition } from "../../model/place.ts";
import { getEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  damaged:
    "The insulation of {ends} in {box} is {condition}. Switch off; cut back to sound insulation where the length allows, sleeve it, or replace the conductor.",
  bare: "{ends} in {box} {is} {condition}, and bare: its strength and size are what counts. Cut back to sound metal where the length allows, or replace the conductor.",
});

const wording = catalogue({
  is: (count: number) => (count === 1 ? "is" : "are"),
});

const CONDITIONS: readonly Exclude<EndCondition, "good">[] = ["burnt", "brittle", "nicked"];

const CONDITION_WORDS: Readonly<Record<Exclude<EndCondition, "good">, string>> = catalogue({
  brittle: "brittle",
  burnt: "burnt",
  nicked: "nicked",
});

/** One finding for each kind of damage in an enclosure: in an old box it is seldom one conductor alone. */
export const insulationDamaged = defineRule({
  id: "insulation-damaged",
  status: "stable",
  scope: "box",
  severity: "danger",
  summary: "Conductors in a box have sound insulation.",
  why: "Insulation that is brittle cracks when the conductors are folded back, a nick or a burn lets them touch the box or each other: a shock or an arc behind a closed cover. Old rubber and cloth above a hot luminaire is the usual case. A burnt end also tells of a joint that was loose; look for it. Nothing is said of an end whose condition is not recorded.",
  messages,
  sections: everyEdition("110.12(B)", "unconfirmed"),
  check({ enclosure, installation, report }) {
    const damaged = (Object.keys(enclosure.places) as EndKey[])
      .filter((end) => (enclosure.places[end]?.condition ?? "good") !== "good")
      .sort();
    for (const condition of CONDITIONS) {
      const having = damaged.filter((end) => enclosure.places[end]?.condition === condition);
      const isBare = (end: EndKey): boolean => getEndFacts(installation, enclosure, end).colour === "bare";
      for (const [kind, ends] of [
        ["damaged", having.filter((end) => !isBare(end))],
        ["bare", having.filter(isBare)],
      ] as const) {
        if (ends.length === 0) continue;
        const named = ends.map((end) => ({ id: end, name: nameOfEnd(installation, enclosure, end) }));
        report({
          subjects: [...named.map((end) => subject("end", end)), subject("enclosure", enclosure)],
          message: fillIn(messages[kind], {
            ends: listed(named.map(({ name }) => name)),
            is: wording.is(named.length),
            box: enclosure.name,
            condition: CONDITION_WORDS[condition],
          }),
          ...(kind === "bare" && { severity: "caution" }),
          data: { conductors: ends.length, condition },
          ...basisOf(ends.flatMap((end) => marksOn(enclosure.places[end] ?? {}, "condition"))),
        });
      }
    }
  },
});
