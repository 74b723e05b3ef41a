import type { Fix } from "../../answers/finding.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Box } from "../../model/enclosure.ts";
import type { StateName } from "../../model/project.ts";
import { yokesOn } from "../box-parts.ts";
import { fixTogether, makeFresh } from "../fix-parts.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  noRing:
    "{device} is screwed to nothing: {box} has no ears for a device, and no ring. It hangs by its conductors and its plate. Fit a device ring; one that is marked with a volume adds to the box as well.",
  noHold:
    "{device} is screwed to nothing in {box}: its ears or their threads are gone. It hangs by its conductors and its plate. Repair the threads, or fit a box that holds it.",
});

const wording = catalogue({
  fit: (box: Part, device: Part) => `Fit a device ring on ${box} and screw ${device} to it`,
});

/** Where somebody found it loose. That no ring is drawn says little: rings are often not drawn. */
export const ringMissing = defineRule({
  id: "ring-missing",
  status: "stable",
  scope: "box",
  severity: "violation",
  summary: "A device must be screwed to its box, to a ring or to a cover.",
  why: "Square and octagonal boxes have no ears for a device: a ring or a raised cover carries it. A receptacle that nothing holds moves with every plug, until a conductor breaks or touches the box. In old work the ears of a device box rust or their threads are stripped, with the same end. The check speaks where the device is recorded as screwed to nothing; that no ring is drawn on a box proves nothing.",
  messages,
  sections: everyEdition("314.20, 404.10, 406.5", "from-memory"),
  check({ enclosure, state, report }) {
    if (enclosure.kind !== "box") return;
    for (const device of yokesOn(enclosure)) {
      if (device.fastenedTo !== "nothing") continue;
      const needsRing = EARLESS.has(enclosure.shape) && !hasRing(enclosure);
      report({
        subjects: [subject("device", device), subject("enclosure", enclosure)],
        message: fillIn(needsRing ? messages.noRing : messages.noHold, { device: device.name, box: enclosure.name }),
        ...basisOf(marksOn(device, "fastenedTo"), marksOn(enclosure, "shape")),
        ...(needsRing && { fix: ringFix(enclosure, device, state) }),
      });
    }
  },
});

const EARLESS: ReadonlySet<Box["shape"]> = new Set<Box["shape"]>(["square", "octagon", "round"]);

/** An extension makes a box deeper and has no more ears than it. */
const hasRing = ({ rings }: Box): boolean => Object.values(rings).some(({ kind }) => kind !== "extension");

/** A ring without a marking adds nothing to the volume, so nothing else changes. */
function ringFix(box: Box, device: Device, state: StateName): Fix {
  return fixTogether(wording.fit(box.name, device.name), [
    {
      command: "add-ring",
      args: {
        state,
        enclosure: box.id,
        id: makeFresh(box)("r").id,
        kind: "plaster-ring",
        volume: { kind: "unknown" },
      },
    },
    {
      command: "set-property",
      args: { state, target: { kind: "device", id: device.id }, field: "fastenedTo", value: "ring" },
    },
  ]);
}
