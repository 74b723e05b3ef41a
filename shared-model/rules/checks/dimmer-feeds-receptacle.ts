import { getDeviceType } from "../../catalog/device-types.ts";
import { templates } from "../../lib/catalogue.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";
import { hotOf, marksOnWay, needsNeutral } from "../section-parts.ts";

const messages = templates({
  dimmed:
    "{dimmer} in {dimmerBox} dims the receptacle {outlet} in {box}: a motor or electronics plugged in there can burn, and a plugged-in load can burn {dimmer}. Feed {outlet} undimmed, or put an ordinary switch in place of {dimmer}.",
});

/** The hot of a receptacle comes through the path of a dimmer. */
export const dimmerFeedsReceptacle = defineRule({
  id: "dimmer-feeds-receptacle",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "A receptacle that takes any plug must not be fed through a dimmer.",
  why: "A dimmer is listed for luminaires that are wired in. Somebody plugs a fan, a vacuum cleaner or a charger into the half that the wall dimmer controls. It commonly comes about when a switch for a half-switched receptacle is replaced by a dimmer. Receptacles that take only the plug of a dimmed lamp are not held: judge them by hand.",
  messages,
  sections: everyEdition("404.14(E), 406.15", "unconfirmed"),
  check({ section, report }) {
    const dimmers = new Map(
      section.enclosures.flatMap((enclosure) =>
        Object.values(enclosure.devices).flatMap((device) =>
          getDeviceType(device.type).family === "dimmer" ? [[device.id, { device, enclosure }] as const] : [],
        ),
      ),
    );
    if (dimmers.size === 0) return;
    for (const standing of section.outlets()) {
      const { outlet, enclosure } = standing;
      if (!outlet.receptacle || !standing.live || !needsNeutral(standing)) continue;
      const way = section.wayFrom("ungrounded", hotOf(standing));
      const through = way?.find((step) => step.kind === "device" && dimmers.has(step.device));
      const found = through?.kind === "device" ? dimmers.get(through.device) : undefined;
      // A hot that is there whatever the dimmer does comes another way as well: not dimmed, but joined around.
      if (found === undefined || section.reach().isAlwaysLive(hotOf(standing))) continue;
      report({
        subjects: [subject("outlet", { id: outlet.key, name: outlet.name }), subject("device", found.device)],
        message: fillIn(messages.dimmed, {
          dimmer: found.device.name,
          dimmerBox: found.enclosure.name,
          outlet: outlet.name,
          box: enclosure.name,
        }),
        ...basisOf(marksOn(found.device, "type"), marksOn(outlet.device, "type", "hotTab"), marksOnWay(section, way)),
        hides: [{ rule: "gfci-switched-supply", subjects: [outlet.device.id] }],
      });
    }
  },
});
