import { templates } from "../../lib/catalogue.ts";
import type { Cable } from "../../model/cable.ts";
import type { Device } from "../../model/device.ts";
import type { Box, Enclosure } from "../../model/enclosure.ts";
import type { EnclosureId, EndKey, OutletKey } from "../../model/ids.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { findEndFacts } from "../../queries/end-facts.ts";
import { roomKindsOf } from "../../queries/outlets-of.ts";
import type { Section } from "../../solver/section.ts";
import { type SwitchEffect, switchEffects } from "../../solver/switch-effects.ts";
import { isLightOutlet } from "../circuit-uses.ts";
import { isNewCable, workAt } from "../new-work.ts";
import { defineRule, type SectionContext } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  existing:
    "No neutral comes to {switches} in {box}: a timer, sensor or dimmer that needs one cannot be fitted there. Existing loops need not be rewired.",
  added:
    "No neutral comes to {switches} in {box}, which is new work. Bring the neutral of {lights} along: a cable with one conductor more, its white capped there if nothing needs it yet.",
});

/**
 * A neutral is at hand where any insulated conductor in the box is one, capped or not. A box that a raceway enters is
 * left out, since a conductor can be drawn in later; so is one of several switches of a light where another has it.
 */
export const noNeutralAtSwitch = defineRule({
  id: "no-neutral-at-switch",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "A lighting switch in a room that people use must have a neutral at hand.",
  why: "Timers and sensors need a little current of their own; without a neutral they took it by way of the ground. New loops are therefore run with one conductor more. Left out are switches of receptacles, boxes that a raceway or an open wall still gives access to, and all but one of the switches that see the whole room; nobody records open walls, so look before you rewire. A box in no room is not judged.",
  messages,
  sections: everyEdition("404.2(C)", "from-memory", {
    2011: { section: "404.2(C)", confidence: "sourced" },
    2014: { section: "404.2(C)", confidence: "sourced" },
  }),
  values: ["neutralAtSwitchPlaces"],
  check(context) {
    const { section, edition, report } = context;
    const lights = new Set(section.outlets().flatMap((one) => (isLightOutlet(one) ? one.outlet.key : [])));
    if (lights.size === 0) return;
    const switching = switchEffects(section).filter(({ outlets }) => outlets.some((key) => lights.has(key)));
    const without = new Set(switching.map(({ enclosure }) => enclosure).filter((box) => !hasNeutral(section, box)));
    for (const box of without) {
      if (box.kind !== "box" || canDrawIn(section, box)) continue;
      const own = switching.filter(
        (one) =>
          one.enclosure === box && isListed(context, edition.values.neutralAtSwitchPlaces.value, box, one.device),
      );
      const devices = [...new Set(own.map(({ device }) => device))];
      const lit = [...new Set(own.flatMap(({ outlets }) => outlets))].filter((key) => lights.has(key)).sort();
      if (devices.length === 0 || isElsewhere(switching, box.id, lit, without)) continue;
      const isAdded =
        devices.some((device) => workAt(context, box, device).kind === "new") ||
        cablesOf(section, box).some((cable) => isNewCable(context, cable));
      report({
        subjects: [subject("enclosure", box)],
        severity: isAdded ? "violation" : "advice",
        message: fillIn(isAdded ? messages.added : messages.existing, {
          switches: listed(devices.map(({ name }) => name)),
          box: box.name,
          lights: listed(lit.map((key) => nameOf(section, key))),
        }),
        ...basisOf(
          devices.flatMap((device) => marksOn(device, "type")),
          Object.values(box.places).flatMap((place) => marksOn(place, "at")),
        ),
      });
    }
  },
});

const nameOf = (section: Section, key: OutletKey): string =>
  section.outlets().find(({ outlet }) => outlet.key === key)?.outlet.name ?? key;

const cablesOf = ({ installation }: Section, box: Enclosure): readonly Cable[] =>
  cablesInto(installation.cables, box.id).map(({ cable }) => cable);

const hasNeutral = (section: Section, box: Enclosure): boolean =>
  (Object.keys(box.places) as EndKey[]).some(
    (end) => findEndFacts(section.installation, box, end)?.grounding === false && section.reach().isGrounded({ end }),
  );

const canDrawIn = (section: Section, box: Box): boolean =>
  cablesOf(section, box).some(({ construction }) => construction === "raceway" || construction === "single-conductor");

function isListed({ project }: SectionContext, places: readonly string[], box: Box, device: Device): boolean {
  const kinds = roomKindsOf(project, box, device);
  return places.some((place) => kinds.has(place as never));
}

/** Every one of these lights is switched from another box as well, which has a neutral. */
const isElsewhere = (
  switching: readonly SwitchEffect[],
  box: EnclosureId,
  lit: readonly OutletKey[],
  without: ReadonlySet<Enclosure>,
): boolean =>
  lit.every((key) =>
    switching.some(
      ({ enclosure, outlets }) => enclosure.id !== box && outlets.includes(key) && !without.has(enclosure),
    ),
  );
