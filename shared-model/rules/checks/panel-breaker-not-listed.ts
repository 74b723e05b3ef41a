import { findDeviceType, getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, templates } from "../../lib/catalogue.ts";
import { inOrder } from "../../queries/in-order.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  marking:
    "{breaker} in {panel} is of the type “{type}”, and the marking of the panel lists {list}. That it clips in is no listing: fit one of a type that is listed.",
  recorded:
    "{breaker} in {panel} is recorded as not listed for this panel. That it clips in is no listing: fit one of a type that is listed.",
});

const wording = catalogue({
  none: "none",
});

const BREAKERS: ReadonlySet<string> = new Set(["breaker", "fuse"]);

/** Where neither the panel's list nor the breaker's own fact is recorded, nothing is said. */
export const panelBreakerNotListed = defineRule({
  id: "panel-breaker-not-listed",
  status: "stable",
  scope: "box",
  severity: "violation",
  summary: "A breaker must be of a type that the marking of its panel lists.",
  why: "Breakers of other makes snap into many panels and grip the bus badly: the contact heats, and the breaker may not clear a fault as tested. The door or the label of the panel says which types belong in it. A panel whose list is not recorded is not judged, since a survey seldom copies it.",
  messages,
  sections: everyEdition("110.3(B), 408", "unconfirmed"),
  check({ enclosure, report }) {
    if (enclosure.kind !== "panel") return;
    for (const device of inOrder(enclosure.devices)) {
      if (!BREAKERS.has(getDeviceType(device.type).family) || device.listedForPanel === true) continue;
      const list = enclosure.listedBreakers;
      const isOff = list !== undefined && !list.includes(device.type);
      if (!isOff && device.listedForPanel !== false) continue;
      const shown = { breaker: device.name, panel: enclosure.name };
      report({
        subjects: [subject("device", device)],
        message: isOff
          ? fillIn(messages.marking, { ...shown, type: titleOf(device.type), list: listWords(list) })
          : fillIn(messages.recorded, shown),
        ...basisOf(marksOn(device, "type", "listedForPanel"), marksOn(enclosure, "listedBreakers")),
      });
    }
  },
});

const titleOf = (type: string): string => findDeviceType(type)?.title ?? type;

const listWords = (types: readonly string[]): string =>
  types.length === 0 ? wording.none : listed(types.map((type) => `“${titleOf(type)}”`));
