import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Cable } from "../../model/cable.ts";
import type { Box } from "../../model/enclosure.ts";
import type { Installation } from "../../model/project.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { luminairesOn } from "../box-parts.ts";
import { LEAST_INSULATION_C } from "../editions/product-values.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  tooCool:
    "{lum} is marked for supply conductors of {wanted} °C, and {cables} in {box} {is} for {has} °C: over the lamps the insulation bakes hard and falls off. Choose a luminaire for the wire that is there, or end the old cable in a box of its own and run {wanted} °C wire from there, as far off as the marking of the luminaire asks.",
  notRecorded:
    "Cannot tell whether {cables} in {box} may stand the heat of {lum}, which is marked for supply conductors of {wanted} °C: for what temperature {cables} {is} made is not recorded. Cable for dwellings was commonly made for 60 °C until the middle of the 1980s.",
});

const wording = catalogue({
  is: (count: number) => (count === 1 ? "is" : "are"),
  temperatureOf: (cables: Part, count: number) =>
    `the temperature that ${cables} ${count === 1 ? "is" : "are"} made for`,
});

/** What enters the box of a luminaire sits under its canopy, whether it feeds it or not. */
export const canopyHeatOldCable = defineRule({
  id: "canopy-heat-old-cable",
  status: "stable",
  scope: "box",
  severity: "caution",
  summary: "Conductors in the box of a luminaire must stand the temperature that the luminaire is marked for.",
  why: "A closed luminaire heats the box above it. Today's cable stands 90 °C; that of old houses stands 60 °C, and under a new luminaire its insulation turns brittle in a few years. The marking stands inside the canopy. Nothing is said where it is not recorded or asks for no more than 60 °C. The age of cables is common practice, not a rule.",
  messages,
  sections: everyEdition("410.21, 110.3(B)", "unconfirmed"),
  check({ enclosure, installation, report, cannotTell }) {
    if (enclosure.kind !== "box") return;
    for (const luminaire of luminairesOn(enclosure)) {
      const { supplyC: wanted } = luminaire;
      if (wanted === undefined || wanted <= LEAST_INSULATION_C) continue;
      const cables = cablesIn(installation, enclosure);
      const cool = cables.filter(({ insulationC }) => insulationC !== undefined && insulationC < wanted);
      const unknown = cables.filter(({ insulationC }) => insulationC === undefined);
      const shown = { lum: luminaire.name, box: enclosure.name, wanted };
      const about = (which: readonly Cable[]) => [
        subject("device", luminaire),
        ...which.map((cable) => subject("cable", cable)),
      ];
      if (cool.length > 0) {
        const has = Math.min(...cool.map(({ insulationC = 0 }) => insulationC));
        report({
          subjects: about(cool),
          message: fillIn(messages.tooCool, { ...shown, ...named(cool), has }),
          data: { wantedC: wanted, hasC: has },
          ...basisOf(marksOn(luminaire, "supplyC"), ...cool.map((cable) => marksOn(cable, "insulationC", "item"))),
        });
      }
      if (unknown.length === 0) continue;
      const { cables: names } = named(unknown);
      cannotTell({
        subjects: about(unknown),
        message: fillIn(messages.notRecorded, { ...shown, ...named(unknown) }),
        missing: wording.temperatureOf(names, unknown.length),
        ...(unknown[0] !== undefined && { enterAt: subject("cable", unknown[0]) }),
      });
    }
  },
});

function cablesIn({ cables }: Installation, box: Box): readonly Cable[] {
  const passing = Object.values(box.passThroughs).flatMap(({ cable }) => cables[cable] ?? []);
  return [...new Set([...cablesInto(cables, box.id).map(({ cable }) => cable), ...passing])];
}

const named = (cables: readonly Cable[]) => ({
  cables: listed(cables.map(({ name }) => name)),
  is: wording.is(cables.length),
});
