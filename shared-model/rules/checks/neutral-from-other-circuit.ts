import { templates } from "../../lib/catalogue.ts";
import { type FedOutlet, type NeutralNet, type NeutralReturn, neutralNetsOf } from "../../solver/neutral-shares.ts";
import type { Pole } from "../../solver/poles.ts";
import type { Section } from "../../solver/section.ts";
import { breakersOf, marksOfPoles } from "../multiwire-parts.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, subject } from "../rule-parts.ts";
import { marksOnWay, neutralOf } from "../section-parts.ts";

const messages = templates({
  borrowed:
    "{outlets}: the hot is of {own}, the neutral of {other} and comes back by {cable}. With {other} off that neutral still carries current and shocks whoever opens it, and nothing limits what it carries. Bring the neutral that runs with the hot.",
});

/** Told by the cable that the neutral comes back to the panel in: whose hots are in it too. */
export const neutralFromOtherCircuit = defineRule({
  id: "neutral-from-other-circuit",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "An outlet must return its current by the neutral that runs with its hot.",
  why: "A borrowed neutral works, so it stays for years, commonly in stair lights fed from two floors. Turn off the circuit whose neutral it is, open a joint, and the current of the other one is on the white. Hot and neutral run apart, the neutral may carry the sum of two breakers, and no ground-fault or arc-fault device holds on either circuit.",
  messages,
  sections: everyEdition("200.4(A), 300.3(B)", "unconfirmed"),
  check({ section, report }) {
    for (const net of neutralNetsOf(section)) {
      if (net.spoilt) continue;
      for (const { pole, back, outlets } of borrowedBy(net)) {
        const others = breakersOf(back.partners);
        report({
          subjects: [subject("device", pole.breaker), ...others.map((one) => subject("device", one))],
          message: fillIn(messages.borrowed, {
            outlets: listed(outlets.map(({ standing }) => standing.outlet.name)),
            own: pole.breaker.name,
            other: listed(others.map(({ name }) => name)),
            cable: back.cable.name,
          }),
          data: { outlets: outlets.length },
          ...basisOf(marksOfPoles([pole, ...back.partners]), marksToFirst(section, outlets)),
          hides: [
            ...["downstream-hot-on-line", "downstream-neutral-on-line"].map((rule) => ({
              rule,
              subjects: outlets.map(({ standing }) => standing.outlet.key),
            })),
            { rule: "shared-neutral-upstream-gfci", subjects: devicesBefore(section, outlets) },
            { rule: "gfci-breaker-neutral-on-bar", subjects: [pole.breaker, ...others].map(({ id }) => id) },
          ],
        });
      }
    }
  },
});

interface Borrowed {
  readonly pole: Pole;
  readonly back: NeutralReturn;
  readonly outlets: readonly FedOutlet[];
}

/** By pole: its outlets of which no return has that pole beside it, while some return has another. */
function borrowedBy({ returns, outlets }: NeutralNet): readonly Borrowed[] {
  const back = returns.find(({ partners }) => partners.length > 0);
  if (back === undefined) return [];
  const isOwn = (pole: Pole): boolean => returns.some(({ partners }) => partners.includes(pole));
  const found = new Map<Pole, FedOutlet[]>();
  for (const outlet of outlets) {
    const [pole] = outlet.poles;
    if (pole === undefined || outlet.poles.some(isOwn)) continue;
    found.set(pole, [...(found.get(pole) ?? []), outlet]);
  }
  return [...found].map(([pole, fed]) => ({ pole, back, outlets: fed }));
}

function marksToFirst(section: Section, [first]: readonly FedOutlet[]) {
  return first === undefined ? [] : marksOnWay(section, section.wayFrom("grounded", neutralOf(first.standing)));
}

/** Ground-fault devices that the neutral of some of these outlets comes back through. */
const devicesBefore = (section: Section, outlets: readonly FedOutlet[]): readonly string[] =>
  section
    .sensingDevices()
    .map(({ device }) => device.id)
    .filter((id) => outlets.some(({ standing }) => !section.sensorCut(id).isGrounded(neutralOf(standing))));
