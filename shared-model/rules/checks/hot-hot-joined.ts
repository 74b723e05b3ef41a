import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import { type Pole, type PolesJoined, polesOf } from "../../solver/poles.ts";
import type { PathStep, Section } from "../../solver/section.ts";
import { fixBy, fixIn } from "../fix-parts.ts";
import { areOnSameLeg } from "../multiwire-parts.ts";
import { enclosuresOfStep, joinWords, positionWords } from "../path-words.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import { marksOnWay, nameOfStep } from "../section-parts.ts";

const messages = templates({
  sameLeg:
    "{breakers} feed one wire{when}: {piece}. With one of them off the wire stays live, and the two together let through more than either is for. Part the two.",
  otherLeg:
    "{breakers} stand on different legs and are joined{when}: {piece}. It is a short circuit of full voltage as soon as both are on. Part the two.",
  unknownLeg:
    "{breakers} feed one wire{when}: {piece}. On one leg the wire stays live with either of them off; on two legs it is a short circuit. Part the two.",
  bothPoles:
    "Both poles of {breakers} are joined{when}: {piece}. It is a short circuit as soon as it is switched on. Part the two.",
});

const wording = catalogue({
  aBox: "a box",
  inBox: (box: Part) => `in ${box}`,
  tabInPlace: (device: Part) => `the tab between the hot screws of ${device} is in place`,
  takeOutTab: (device: Part) => `Take out the tab between the hot screws of ${device}`,
  when: (positions: Part) => ` with ${positions}`,
});

/** Found at what parts the two poles with the least taken out. */
export const hotHotJoined = defineRule({
  id: "hot-hot-joined",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "The hots of two breakers must not meet.",
  why: "Whoever turns one breaker off believes the wire to be dead, and the other feeds it. Commonly a duplex was split for two circuits and its tab left in, or all blacks of a box that holds two circuits went into one joint.",
  messages,
  sections: everyEdition("240, 210", "unconfirmed"),
  check({ section, state, report }) {
    for (const joined of polesOf(section).joined) {
      const { one, other, when } = joined;
      const tab = tabOn(section, joined);
      const breakers = one.breaker.id === other.breaker.id ? [one.breaker] : [one.breaker, other.breaker];
      const positions = positionWords(section, when);
      report({
        subjects: breakers.map((breaker) => subject("device", breaker)),
        message: fillIn(messages[kindOf(one, other)], {
          breakers: listed(breakers.map(({ name }) => name)),
          piece: tab === undefined ? pieceWords(section, joined) : wording.tabInPlace(tab.name),
          when: when.length === 0 ? "" : wording.when(positions),
        }),
        ...(when.length > 0 && { data: { positions } }),
        ...basisOf(marksOnWay(section, joined.by), tab === undefined ? [] : marksOn(tab, "hotTab")),
        ...fixIn(state, () => {
          if (tab === undefined) return undefined;
          const args = { state, target: { kind: "device", id: tab.id }, field: "hotTab", value: "removed" };
          return fixBy(wording.takeOutTab(tab.name), "set-property", args);
        }),
      });
    }
  },
});

function kindOf(one: Pole, other: Pole): keyof typeof messages {
  if (one.breaker.id === other.breaker.id) return "bothPoles";
  const same = areOnSameLeg(one, other);
  return same === undefined ? "unknownLeg" : same ? "sameLeg" : "otherLeg";
}

/** The device whose intact tab the way leads over. */
function tabOn(section: Section, { way }: PolesJoined): Device | undefined {
  for (const step of way) {
    if (step.kind !== "device") continue;
    const device = section.installation.enclosures[step.enclosure]?.devices[step.device];
    const isTab =
      device !== undefined &&
      getDeviceType(device.type).paths.some(
        ({ a, b, when }) => when === "hot-tab" && [a, b].includes(step.from) && [a, b].includes(step.to),
      );
    if (isTab) return device;
  }
  return undefined;
}

/** Where no conductor parts them, the box that the way leads through is named. */
function pieceWords(section: Section, { by, way }: PolesJoined): string {
  const [piece] = by;
  if (piece !== undefined) return joinWords(section, piece, nameOfStep(section, piece));
  const middle: PathStep | undefined = way[Math.floor(way.length / 2)];
  const [id] = middle === undefined ? [] : enclosuresOfStep(middle);
  return wording.inBox(id === undefined ? wording.aBox : (section.installation.enclosures[id]?.name ?? id));
}
