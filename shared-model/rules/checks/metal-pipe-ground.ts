import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { inOrder } from "../../queries/in-order.ts";
import { keysOf } from "../ground-leads.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  far: "The ground {cable} of {box}{outlets} is clamped to a water pipe {feet} ft from where the pipe enters the building; {most} ft is the most. Take it to a point that 250.130(C) lists: the ground bar of the panel, the grounding electrode, or a ground of another circuit of the same panel.",
  unknown:
    "Cannot tell whether the ground {cable} of {box}{outlets} is clamped to its water pipe near enough to where the pipe enters the building: the distance is not recorded. Measure it along the pipe; {most} ft is the most.",
});

const wording = catalogue({
  howFar: (cable: Part) => `how far along the pipe the ground of ${cable} is clamped`,
});

/** A ground that leaves the drawing, where it is recorded that it goes to a pipe; nothing is said where it is not. */
export const metalPipeGround = defineRule({
  id: "metal-pipe-ground",
  status: "stable",
  scope: "box",
  severity: "violation",
  summary: "A ground does not end on interior water piping.",
  why: "A clamp on the cold pipe of the kitchen was once a usual way to give a receptacle its ground. One repair in plastic later it is joined to nothing, or it puts a fault on every tap of the house. Only the first feet of a metal pipe that comes out of the earth count as part of the grounding electrode. Where a cable leaves the drawing, its details take what its ground is clamped to and how far along the pipe.",
  messages,
  sections: everyEdition("250.52, 250.130(C)", "from-memory"),
  values: ["pipeFromEntryFt"],
  check({ enclosure, installation, edition, report, cannotTell }) {
    const most = edition.values.pipeFromEntryFt.value;
    for (const { cable, side } of cablesInto(installation.cables, enclosure.id)) {
      const far = cable.sides[side === "a" ? "b" : "a"];
      if (!("outside" in far) || cable.groundClampedTo !== "water-pipe") continue;
      if (!keysOf(cable).some((key) => cable.conductors[key]?.grounding === true)) continue;
      const devices = inOrder(enclosure.devices).map(({ name }) => name);
      const shown = {
        cable: cable.name,
        box: enclosure.name,
        outlets: enclosure.kind === "panel" || devices.length === 0 ? "" : ` (${listed(devices)})`,
        most,
      };
      const subjects = [subject("cable", cable)];
      const feet = cable.pipeFromEntryFt;
      if (feet === undefined) {
        cannotTell({
          subjects,
          message: fillIn(messages.unknown, shown),
          missing: wording.howFar(cable.name),
        });
      } else if (feet > most) {
        report({
          subjects,
          message: fillIn(messages.far, { ...shown, feet }),
          data: { feet, mostFt: most },
          ...basisOf(marksOn(cable, "groundClampedTo", "pipeFromEntryFt")),
        });
      }
    }
  },
});
