import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { DeviceId } from "../../model/ids.ts";
import {
  arcFaultFace,
  arcFaultOffers,
  arcFaultPlacesOf,
  breakerWords,
  hasArcFault,
  isFed,
  isOnListedCircuit,
} from "../arc-fault.ts";
import { workAt } from "../new-work.ts";
import { oncePerCause } from "../one-cause.ts";
import { whereWords } from "../place-words.ts";
import { isReceptacle } from "../receptacle-kinds.ts";
import { requirementOf } from "../required-protection.ts";
import { defineRule, type Report } from "../rule.ts";
import { basisOf, everyJudgedEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";
import { breakersFeeding } from "../section-parts.ts";
import { supplyNotDrawn } from "../supply-not-drawn.ts";

const messages = templates({
  open: "{outlet} in {box} takes the place of {old}, and {places} is on the arc-fault list: the new receptacle must have arc-fault protection, and nothing before it gives any.{others} Choose {face} for it.{why}{breaker}",
  notFed:
    "Cannot tell whether {outlet} in {box} ({places}), which takes the place of {old}, has arc-fault protection: its supply is not drawn.",
});

const wording = catalogue({
  alsoFor: (outlets: Part) => ` The same holds for ${outlets} beside it.`,
  drawSupply: (outlet: Part) => `Draw where ${outlet} gets its supply.`,
  protectionOf: (outlet: Part) => `the arc-fault protection of ${outlet}`,
  supplyOf: (outlet: Part) => `the supply of ${outlet}`,
});

/** By the receptacle itself, by one before it, or by its breaker. Those of one box on one circuit are told as one. */
export const replaceNeedsAfci = defineRule({
  id: "replace-needs-afci",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "A receptacle that is replaced in a room of the arc-fault list must get arc-fault protection.",
  why: "A plain ground-fault receptacle put into a laundry, a kitchen or a hall settles one question and opens another: these rooms are on the arc-fault list too, and replacing a receptacle there calls for it. A dual-function receptacle has the same terminals and the same make-up and gives both. Bathrooms, garages, outdoors and unfinished basements are not on the list; a room that is only similar to those of the list must be given its kind. The way out for places without a ground, where neither a breaker nor a receptacle of the kind can be had, is not held: such receptacles are sold.",
  messages,
  sections: everyJudgedEdition("406.4(D)(4)", "from-memory"),
  values: ["arcFaultPlaces", "arcFaultToA"],
  check(context) {
    const { section, project, installation, edition, state, report, cannotTell } = context;
    if (state === "as-found") return;
    const seen = new Set<DeviceId>();
    const open = new Map<string, { readonly name: string; reportWith(others: readonly string[]): Report }[]>();
    for (const standing of section.outlets()) {
      const { outlet, enclosure } = standing;
      if (!outlet.receptacle || seen.has(outlet.device.id)) continue;
      seen.add(outlet.device.id);
      const work = workAt(context, enclosure, outlet.device);
      if (work.kind !== "replaces" || !isReceptacle(work.device)) continue;
      const places = arcFaultPlacesOf(project, enclosure, outlet.device, edition);
      if (places.length === 0 || !isOnListedCircuit(standing, edition) || hasArcFault(section, standing)) continue;
      const room = enclosure.roomId === undefined ? undefined : project.rooms[enclosure.roomId];
      const subjects = [subject("device", outlet.device)];
      const shown = {
        outlet: outlet.device.name,
        box: enclosure.name,
        old: work.device.name,
        places: whereWords(room, places),
      };
      if (!isFed(section, standing)) {
        const shared = supplyNotDrawn(section, installation, wording.protectionOf(outlet.device.name));
        cannotTell({
          subjects,
          message: fillIn(messages.notFed, shown),
          missing: wording.supplyOf(outlet.device.name),
          toDo: wording.drawSupply(outlet.device.name),
          ...(shared !== undefined && { shared }),
        });
        continue;
      }
      const reportWith = (others: readonly string[]): Report => {
        const face = arcFaultFace(section, standing, requirementOf(project, standing, edition).required === true);
        return {
          subjects,
          message: fillIn(messages.open, {
            ...shown,
            others: others.length === 0 ? "" : wording.alsoFor(listed(others)),
            face: face.words,
            why: face.why,
            breaker: breakerWords(section, standing),
          }),
          data: { places: places.join(" ") },
          offers: arcFaultOffers(section, standing, face.type, state),
          ...basisOf(marksOn(enclosure, "roomId"), marksOn(outlet.device, "zones")),
        };
      };
      const circuit = [enclosure.id, ...breakersFeeding(section, standing).map(({ device }) => device.id)].join(" ");
      open.set(circuit, [...(open.get(circuit) ?? []), { name: outlet.device.name, reportWith }]);
    }
    const found = [...open].flatMap(([cause, group]) =>
      group.map(({ reportWith }, index) => ({
        cause,
        report: reportWith(index > 0 ? [] : group.slice(1).map(({ name }) => name)),
      })),
    );
    for (const one of oncePerCause("replace-needs-afci", found)) report(one);
  },
});
