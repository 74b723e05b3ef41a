import { fixIn } from "../fix-parts.ts";
import { exchangeFix } from "../line-load-fixes.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";
import { lineLoadDevices, marksOnWay, outletsBehind, swappedPole } from "../section-parts.ts";

const messages = {
  half: "{device} in {box}: of its supply, the hot is on {hotSide} and the neutral on {neutralSide}. It sees twice the load as a leak, trips at once or not at all, and protects nothing. Exchange the {pole} conductors of LINE and LOAD, with the power off.",
  noNeutral:
    "{device} in {box}: the hot of its supply is on LOAD, and no neutral reaches it. It cannot work, and what is spliced to LOAD stays live. Land the supply on LINE, both conductors.",
};

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
  status: "draft",
  scope: "section",
  severity: "danger",
  summary: "Both conductors of the supply of a ground-fault device belong on LINE.",
  why: "With one of the two exchanged the current runs through the sensor twice the same way, so that every load looks like a leak. People then look for the fault in the appliance, or take the device out. Commonly the whites of the two pairs were mixed up when it was put in.",
  messages,
  sections: everyEdition("110.3(B)", "unconfirmed"),
  check({ section, state, report }) {
    for (const found of lineLoadDevices(section)) {
      const pole = swappedPole(found);
      if (pole === undefined) continue;
      const { device, enclosure } = found;
      const behind = outletsBehind(section, found).map(({ outlet }) => outlet.key);
      const line = { device: device.name, box: enclosure.name };
      report({
        subjects: [subject("device", device)],
        message:
          pole === "hot" && !found.lineGrounded
            ? fillIn(messages.noNeutral, line)
            : fillIn(messages.half, {
                ...line,
                pole,
                hotSide: pole === "hot" ? "LOAD" : "LINE",
                neutralSide: pole === "neutral" ? "LOAD" : "LINE",
              }),
        ...basisOf(
          marksOn(device, "type"),
          marksOnWay(section, section.wayFrom("ungrounded", pole === "hot" ? found.loadHot : found.lineHot, device.id)),
        ),
        ...fixIn(state, () =>
          pole === "hot" && !found.lineGrounded ? undefined : exchangeFix(section, found, [pole], state),
        ),
        hides: [
          ...OUTLET_CONSEQUENCES.map((rule) => ({ rule, subjects: behind })),
          ...DEVICE_CONSEQUENCES.map((rule) => ({ rule, subjects: [device.id] })),
        ],
      });
    }
  },
});
