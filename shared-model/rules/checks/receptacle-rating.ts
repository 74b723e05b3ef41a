import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { OutletStanding, Section } from "../../solver/section.ts";
import type { Amps } from "../../units/quantity.ts";
import { fixIn } from "../fix-parts.ts";
import { faceWith, replaceOffer } from "../replace-offers.ts";
import { defineRule } from "../rule.ts";
import { basisOf, eitherOf, everyEdition, fillIn, marksOn, sectionIn, subject } from "../rule-parts.ts";
import { cableLeadingOutside, hotOf } from "../section-parts.ts";

const messages = templates({
  rating:
    "{outlet} in {box} has a {rating} A face on {breaker} of {circuit} A in {panel}: a {circuit} A breaker takes {allowed} A faces only. {todo}",
  alone:
    "{outlet} in {box} is a single receptacle of {rating} A, alone on {breaker} of {circuit} A in {panel}: alone on its circuit it must be of {circuit} A or more. Fit one of {circuit} A.",
  ratingUnknown:
    "Cannot tell whether {outlet} in {box} suits {breaker} of {circuit} A: the rating of its face is not recorded. Read it off the face.",
  noRow:
    "Cannot tell whether {outlet} in {box} suits {breaker} of {circuit} A in {panel}: the table has no circuit of that rating for several receptacles. Judge it by hand.",
});

const wording = catalogue({
  face: (amps: Part) => `Fit a face of ${amps} A.`,
  judge: "Judge it by hand.",
  ratingOf: (outlet: Part, box: Part) => `the rating of ${outlet} in ${box}`,
  whichReceptacles: (amps: Part) => `which receptacles a ${amps} A circuit may have`,
});

/** A duplex is two receptacles, so one duplex alone on its circuit goes by the table. */
export const receptacleRating = defineRule({
  id: "receptacle-rating",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "The face of a receptacle must suit the breaker ahead of it.",
  why: "A 20 A face on a 15 A circuit invites a plug that the circuit cannot feed; a 15 A face on a 30 A circuit burns before the breaker opens. On a 20 A circuit both 15 and 20 A faces are in order where there are two or more receptacles, and a duplex is two. A single receptacle alone on its circuit must be rated for the whole of it. Where a cable of the circuit leads out of the drawing, nobody can see whether a receptacle is alone, so only the table is applied. A breaker whose rating is not recorded is asked for elsewhere.",
  messages,
  sections: everyEdition("210.21(B)", "from-memory"),
  values: ["receptacleAmps"],
  check({ section, edition, state, report, cannotTell }) {
    const table = edition.values.receptacleAmps;
    for (const { device: breaker, panel } of section.breakers()) {
      const circuit = breaker.breakerRatingA;
      if (circuit === undefined) continue;
      const keys = new Set(section.circuitOf(breaker.id).outlets);
      const fed = section.outlets().filter(({ outlet }) => keys.has(outlet.key));
      for (const { device, standing } of facesOf(fed)) {
        const subjects = [subject("outlet", { id: device.id, name: device.name }), subject("device", breaker)];
        const { enclosure } = standing;
        const shown = { outlet: device.name, box: enclosure.name, breaker: breaker.name, panel: panel.name, circuit };
        const rating = device.ratingA;
        if (rating === undefined) {
          const missing = wording.ratingOf(device.name, enclosure.name);
          cannotTell({
            subjects,
            message: fillIn(messages.ratingUnknown, shown),
            missing,
            enterAt: subject("device", device),
          });
          continue;
        }
        const alone = isAlone(section, fed, standing);
        const allowed = table.value[circuit];
        if (alone ? rating >= circuit : allowed?.includes(rating)) continue;
        if (!alone && allowed === undefined) {
          const missing = wording.whichReceptacles(circuit);
          cannotTell({
            subjects,
            message: fillIn(messages.noRow, shown),
            missing,
            toDo: wording.judge,
          });
          continue;
        }
        const wanted = alone ? circuit : fitting(allowed ?? [], rating);
        const words = {
          ...shown,
          rating,
          allowed: eitherOf(allowed ?? []),
          todo: wanted === undefined ? "" : wording.face(wanted),
        };
        const type = wanted === undefined ? undefined : faceWith(device, { ratingA: wanted });
        report({
          subjects,
          message: fillIn(alone ? messages.alone : messages.rating, words).trim(),
          section: alone
            ? sectionIn(edition, "210.21(B)(1)", "from-memory")
            : sectionIn(edition, table.section, table.confidence),
          data: { faceA: rating, circuitA: circuit },
          ...fixIn(state, () =>
            type === undefined ? undefined : replaceOffer(section, enclosure, device, type, state),
          ),
          ...basisOf(marksOn(device, "type", "ratingA"), marksOn(breaker, "breakerRatingA")),
        });
      }
    }
  },
});

/** Every receptacle once, also where a tab makes two outlets of it. */
function facesOf(
  fed: readonly OutletStanding[],
): readonly { readonly device: Device; readonly standing: OutletStanding }[] {
  const faces = new Map<string, { readonly device: Device; readonly standing: OutletStanding }>();
  for (const standing of fed)
    if (standing.outlet.receptacle && !faces.has(standing.outlet.device.id))
      faces.set(standing.outlet.device.id, { device: standing.outlet.device, standing });
  return [...faces.values()];
}

/** One contact device, nothing else on the circuit, and all of the circuit drawn. */
function isAlone(section: Section, fed: readonly OutletStanding[], standing: OutletStanding): boolean {
  const { family, outlets } = getDeviceType(standing.outlet.device.type);
  const isSingle = family === "receptacle" && outlets.length === 1;
  return isSingle && fed.length === 1 && cableLeadingOutside(section, hotOf(standing)) === undefined;
}

/** The greatest rating below that of the face, else the least above it. */
function fitting(allowed: readonly Amps[], rating: Amps): Amps | undefined {
  return allowed.findLast((one) => one < rating) ?? allowed[0];
}
