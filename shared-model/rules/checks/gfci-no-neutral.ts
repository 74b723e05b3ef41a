import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, templates } from "../../lib/catalogue.ts";
import type { Section, Spot } from "../../solver/section.ts";
import { causeAt, type OfCause, oncePerCause } from "../one-cause.ts";
import { isBeingSurveyed, marksAtStop, stopWords } from "../path-words.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import type { LineLoadDevice } from "../section-parts.ts";
import { cableLeadingOutside, LeadingOutside, lineLoadDevices, marksOnWay, outletsBehind } from "../section-parts.ts";

const messages = templates({
  noNeutral:
    "{device} in {box} cannot trip: no neutral reaches its LINE, so that its electronics have no supply, and its hot goes through to {outlets}.{place} Land the neutral of the supply on LINE N.",
  outside:
    "Cannot tell whether {outlets} have a neutral on LINE: cable {cable} leads out of the drawing, and nothing here says what is at its other end. Draw where it goes.",
});

const wording = catalogue({
  ownFace: "its own face",
  ownLoad: "its LOAD terminals",
});

const CONSEQUENCES = ["outlet-not-protected", "wish-not-protected", "open-neutral", "replace-needs-gfci"];

/** LINE is live and its neutral reaches nothing, in any switch position. */
export const gfciNoNeutral = defineRule({
  id: "gfci-no-neutral",
  status: "stable",
  scope: "section",
  severity: "danger",
  summary: "A ground-fault device must have the neutral of its supply on LINE.",
  why: "It looks like protection and passes the hot on, but its electronics work between LINE hot and LINE neutral: without the neutral it never trips, and its TEST button does nothing. Commonly a white was left under its cap, or it broke off.",
  messages,
  sections: everyEdition("110.3(B)", "unconfirmed"),
  check({ section, report, cannotTell }) {
    const outside = new LeadingOutside();
    const found: OfCause[] = [];
    for (const one of lineLoadDevices(section)) {
      const lineNeutral = lineNeutralOf(one);
      if (lineNeutral === undefined || !hasNoNeutral(section, one, lineNeutral)) continue;
      const { device, enclosure } = one;
      const cable = cableLeadingOutside(section, lineNeutral);
      if (cable !== undefined) {
        outside.add(cable, device.name);
        continue;
      }
      if (isBeingSurveyed(section, enclosure.id)) continue;
      const behind = outletsBehind(section, one);
      const others = behind.filter(({ outlet }) => outlet.device.id !== device.id);
      const names = (others.length > 0 ? others : behind).map(({ outlet }) => outlet.name);
      const [nearest] = behind;
      const place = nearest === undefined ? undefined : section.whereNeutralStops(nearest.outlet.key);
      const where = stopWords(section, place, enclosure.id);
      if (where === "being-surveyed") continue;
      const report = {
        subjects: [subject("device", device)],
        message: fillIn(messages.noNeutral, {
          device: device.name,
          box: enclosure.name,
          outlets: others.length > 0 ? listed(names) : names.length > 0 ? wording.ownFace : wording.ownLoad,
          place: place === undefined ? "" : ` ${where}`,
        }),
        ...basisOf(
          marksOn(device, "type"),
          marksOnWay(section, section.wayFrom("ungrounded", one.lineHot)),
          marksAtStop(section, place),
        ),
        hides: [
          ...CONSEQUENCES.map((rule) => ({ rule, subjects: behind.map(({ outlet }) => outlet.key) })),
          { rule: "capped-neutral-forgotten", subjects: place?.ends ?? [] },
        ],
      };
      found.push({ cause: causeAt(place), report });
    }
    for (const each of oncePerCause("gfci-no-neutral", found)) report(each);
    outside.ask(messages.outside, cannotTell);
  },
});

function lineNeutralOf({ device }: LineLoadDevice): Spot | undefined {
  const node = getDeviceType(device.type).sensing?.line.neutral;
  return node === undefined ? undefined : { device: device.id, node };
}

/** A neutral terminal that is on a hot or on the equipment ground is another fault, told at the outlets. */
function hasNoNeutral(section: Section, found: LineLoadDevice, lineNeutral: Spot): boolean {
  const reach = section.reach();
  if (!found.lineLive) return false;
  return !reach.isGrounded(lineNeutral) && !reach.isLive(lineNeutral) && !reach.isOnGround(lineNeutral);
}
