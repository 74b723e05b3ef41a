import type { Fix } from "../../answers/finding.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { Project, StateName } from "../../model/project.ts";
import { findEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { landedAt } from "../../queries/landings.ts";
import { terminalsOf } from "../../queries/terminals-of.ts";
import { type FedOutlet, lostWithout, type NeutralNet } from "../../solver/neutral-shares.ts";
import { type Pole, polesOf } from "../../solver/poles.ts";
import type { Section } from "../../solver/section.ts";
import { modelOf } from "../../solver/sections.ts";
import { NOMINAL } from "../editions/product-values.ts";
import { fixIn } from "../fix-parts.ts";
import { unlikeKinds } from "../kinds-of-ends.ts";
import { titled } from "../line-load-fixes.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { multiwiresOf } from "../multiwire-parts.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  series:
    "The shared neutral runs through {device} in {box}: take it out, and {outlets} are left in series between two legs, up to {volts} V on whatever is lightest. Splice the whites there and bring one pigtail to {device}.",
  open: "The shared neutral runs through {device} in {box}: take it out, and {outlets} {keep} a live hot without a neutral. Splice the whites there and bring one pigtail to {device}.",
});

const wording = catalogue({
  keep: (count: number) => (count === 1 ? "keeps" : "keep"),
  splice: (ends: Part, device: Part) => `Splice ${ends} and bring one pigtail to ${device}`,
});

/** Beyond the point where the legs part each has a neutral of its own, and feeding through a device is as it is elsewhere. */
export const mwbcNeutralThroughDevice = defineRule({
  id: "mwbc-neutral-through-device",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "The shared neutral of a multiwire circuit must not depend on a device.",
  why: "Somebody exchanges a receptacle with the breaker on, or one of its screws works loose: the neutral of both legs is open, and what is plugged in there lies in series across them. A kettle holds its voltage down and a radio burns. A splice with one pigtail keeps the neutral whole whatever becomes of the device.",
  messages,
  sections: everyEdition("300.13(B)", "from-memory"),
  check({ section, project, state, report }) {
    for (const net of new Set(multiwiresOf(section).map((multiwire) => multiwire.net))) {
      for (const box of section.enclosures) {
        for (const device of inOrder(box.devices)) {
          if (neutralsOn(box, device).length < 2) continue;
          const lost = lostWithout(section, net, device.id);
          const poles = [...new Set(lost.flatMap((outlet) => outlet.poles))];
          const own = ownPoles(section, net, device);
          if (poles.length === 0 || (poles.length === 1 && poles.every((pole) => own.includes(pole)))) continue;
          const legs = new Set(poles.map(({ leg }) => leg));
          report({
            subjects: [subject("device", device)],
            message: fillIn(legs.size > 1 ? messages.series : messages.open, {
              device: device.name,
              box: box.name,
              outlets: listed(lost.map(({ standing }) => standing.outlet.name)),
              volts: Math.round(voltsBetweenLegs(project)),
              keep: wording.keep(lost.length),
            }),
            data: { outlets: lost.length, ...(legs.size > 1 && { volts: Math.round(voltsBetweenLegs(project)) }) },
            ...fixIn(state, () => pigtailFix(section, box, device, state)),
            ...basisOf(neutralsOn(box, device).flatMap(({ end }) => marksOn(box.places[end] ?? {}, "at"))),
          });
        }
      }
    }
  },
});

const neutralsOn = (box: Enclosure, device: Device) =>
  terminalsOf(device).flatMap(({ name, purpose }) =>
    purpose === "neutral" ? landedAt(box, device.id, name).map(({ end }) => ({ end, terminal: name })) : [],
  );

/** Poles that the device itself hangs on: of its outlets, or of its terminals where it has none. */
function ownPoles(section: Section, net: NeutralNet, device: Device): readonly Pole[] {
  const isOwn = ({ standing }: FedOutlet): boolean => standing.outlet.device.id === device.id;
  const ofOutlets = net.outlets.filter(isOwn).flatMap(({ poles }) => poles);
  if (ofOutlets.length > 0) return ofOutlets;
  const { graph } = modelOf(section);
  return terminalsOf(device).flatMap(({ name }) => {
    const node = graph.nodeOfDevice(device.id, name);
    return node === undefined ? [] : polesOf(section).at(node);
  });
}

/** Two legs of a single-phase supply are opposite; those of a three-phase one are a third of a turn apart. */
const voltsBetweenLegs = ({ supply: { system, nominalV = NOMINAL } }: Project): number =>
  nominalV * (system === "208Y/120" ? Math.sqrt(3) : 2);

/**
 * All whites of the device in a splice, and one pigtail; a device that senses would be bridged by that, and a ground that is
 * on its neutral would be in the splice for good.
 */
function pigtailFix(section: Section, box: Enclosure, device: Device, state: StateName): Fix | undefined {
  if (getDeviceType(device.type).sensing !== undefined || device.neutralTab === "removed") return undefined;
  const landed = neutralsOn(box, device);
  const [first] = landed;
  const facts = first === undefined ? undefined : findEndFacts(section.installation, box, first.end);
  if (first === undefined || facts === undefined) return undefined;
  const ends = landed.map(({ end }) => end);
  if (unlikeKinds(section.installation, box, ends) !== undefined) return undefined;
  const plan = new MakeUpPlan(section.installation, box, state);
  if (landed.every(({ terminal }) => terminal === first.terminal)) plan.pigtail(device.id, first.terminal);
  else {
    const splice = plan.splice(ends);
    const at = { kind: "terminal", device: device.id, terminal: first.terminal, hole: 1 } as const;
    plan.jumper({ kind: "splice", splice }, at, { awg: facts.awg, colour: "white" });
  }
  const names = listed(ends.map((end) => nameOfEnd(section.installation, box, end)));
  return plan.fix((words) => titled(wording.splice(names, device.name), words));
}
