import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import { fixIn } from "../fix-parts.ts";
import { outletsFedBeside, type PoleSides, sidesOf, toLineFix } from "../load-side.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import { lineLoadDevices, marksOnWay, outletsBehind, swappedPole } from "../section-parts.ts";

const messages = templates({
  half: "{device} in {box}: of its supply, the hot is on {hotSide} and the neutral on {neutralSide}. {effect}, and it protects nothing. {cure}, with the power off.",
  noNeutral:
    "{device} in {box}: the hot of its supply is on LOAD, and no neutral reaches it. It cannot work, and what is spliced to LOAD stays live. Land the supply on LINE, both conductors.",
});

const wording = catalogue({
  exchangeHots: "Exchange the hot conductors of LINE and LOAD",
  exchangeNeutrals: "Exchange the neutral conductors of LINE and LOAD",
  halfLeak:
    "Only one of the two conductors passes its sensor, so that every load it feeds looks like a leak: it trips as soon as something runs, or does not reset",
  lineHot: "LINE H",
  lineNeutral: "LINE N",
  moveAlone: (terminal: Part, fed: Part) =>
    `${terminal} is empty, and what is fed (${fed}) is on LOAD as well: move the supply alone to ${terminal}`,
  moveSupply: (terminal: Part) => `${terminal} is empty: move the supply to it`,
  twiceLeak: "It sees twice the current of what it feeds as a leak, so that it trips at once or not at all",
});

const OUTLET_CONSEQUENCES = [
  "outlet-not-protected",
  "wish-not-protected",
  "open-hot",
  "open-neutral",
  "downstream-neutral-on-line",
  "downstream-hot-on-line",
  "polarity-swapped",
  "replace-needs-gfci",
];
const DEVICE_CONSEQUENCES = ["gfci-no-neutral", "freezer-shares-trip"];

/** With the contacts open, a source reaches one pole on LOAD alone, and the other pole not. */
export const lineLoadHalfSwapped = defineRule({
  id: "line-load-half-swapped",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "Both conductors of the supply of a ground-fault device belong on LINE.",
  why: "With the two exchanged on one pole the current runs through the sensor twice the same way; with the supply and what it feeds both on LOAD it runs through it once and returns beside it. Either way every load looks like a leak. People then look for the fault in the appliance, or take the device out. Commonly the whites of the two pairs were mixed up when it was put in.",
  messages,
  sections: everyEdition("110.3(B)", "unconfirmed"),
  check({ section, state, report }) {
    for (const found of lineLoadDevices(section)) {
      const pole = swappedPole(found);
      if (pole === undefined) continue;
      const { device, enclosure } = found;
      const sides = sidesOf(section, found, pole);
      const behind = [
        ...outletsBehind(section, found).map(({ outlet }) => outlet.key),
        ...outletsFedBeside(section, found, [sides]),
      ];
      const line = { device: device.name, box: enclosure.name };
      report({
        subjects: [subject("device", device)],
        message:
          pole === "hot" && !found.lineGrounded
            ? fillIn(messages.noNeutral, line)
            : fillIn(messages.half, {
                ...line,
                effect: effectWords(sides, sidesOf(section, found, pole === "hot" ? "neutral" : "hot")),
                cure: cureWords(sides),
                hotSide: pole === "hot" ? "LOAD" : "LINE",
                neutralSide: pole === "neutral" ? "LOAD" : "LINE",
              }),
        ...basisOf(
          marksOn(device, "type"),
          marksOnWay(section, section.wayFrom("ungrounded", pole === "hot" ? found.loadHot : found.lineHot, device.id)),
        ),
        ...fixIn(state, () =>
          pole === "hot" && !found.lineGrounded ? undefined : toLineFix(section, found, [sides], state),
        ),
        hides: [
          ...OUTLET_CONSEQUENCES.map((rule) => ({ rule, subjects: behind })),
          ...DEVICE_CONSEQUENCES.map((rule) => ({ rule, subjects: [device.id] })),
        ],
      });
    }
  },
});

/** Current of what is fed by both poles passes the sensor out and back the same way; else by one of its conductors only. */
function effectWords({ onLine }: PoleSides, other: PoleSides): string {
  return onLine.length > 0 && other.onLoad.length > 0 ? wording.twiceLeak : wording.halfLeak;
}

function cureWords({ pole, onLine, fed }: PoleSides): string {
  if (onLine.length > 0) return pole === "hot" ? wording.exchangeHots : wording.exchangeNeutrals;
  const terminal = pole === "hot" ? wording.lineHot : wording.lineNeutral;
  return fed.length === 0 ? wording.moveSupply(terminal) : wording.moveAlone(terminal, listed(fed));
}
