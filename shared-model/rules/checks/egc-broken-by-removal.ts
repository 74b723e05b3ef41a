import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Device } from "../../model/device.ts";
import type { Box } from "../../model/enclosure.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { landedAt } from "../../queries/landings.ts";
import { terminalsOf } from "../../queries/terminals-of.ts";
import type { Section, Spot } from "../../solver/section.ts";
import { sectionOf } from "../../solver/sections.ts";
import { reachesGround } from "../ground-leads.ts";
import { unlikeKinds } from "../kinds-of-ends.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { withoutDevice } from "../removal-trial.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  through:
    "The ground of {lost} runs through the ground screw of {device} in {box} ({ends}): take the device out and it is gone. Splice the grounds there and bring one pigtail to {device}; the box fill stays the same.",
});

const wording = catalogue({
  splice: (device: Part) => `Splice the grounds on ${device} and bring one pigtail to it`,
});

/**
 * Tried by taking the device out. Grounds on two screws of one yoke, or one on the screw and one on the box, are not
 * joined by wire at all, which is told elsewhere.
 */
export const egcBrokenByRemoval = defineRule({
  id: "egc-broken-by-removal",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "Taking a device out leaves every other ground joined.",
  why: "Whoever exchanges a receptacle takes its conductors off and puts the breaker back on to look for the fault, and everything beyond has lost its ground meanwhile, unnoticed. A splice with one pigtail to each device keeps the ground of the rest whole.",
  messages,
  sections: everyEdition("250.148(B)", "from-memory"),
  check({ section, state, report }) {
    const { installation } = section;
    for (const box of section.enclosures) {
      if (box.kind !== "box") continue;
      for (const device of inOrder(box.devices)) {
        for (const { name, purpose } of terminalsOf(device)) {
          if (purpose !== "ground") continue;
          const landed = landedAt(box, device.id, name).map(({ end }) => end);
          if (landed.length < 2) continue;
          const lost = lostWithout(section, box, device);
          if (lost.length === 0) continue;
          const plan = new MakeUpPlan(installation, box, state);
          if (unlikeKinds(installation, box, landed) === undefined) plan.pigtail(device.id, name);
          const fix = plan.fix(() => wording.splice(device.name));
          report({
            subjects: [subject("device", device)],
            message: fillIn(messages.through, {
              lost: listed(lost),
              device: device.name,
              box: box.name,
              ends: listed(landed.map((end) => nameOfEnd(installation, box, end))),
            }),
            data: { lost: lost.length },
            // One fault with one cure; the count says that it is there.
            hides: [{ rule: "two-wires-one-screw", subjects: [`${device.id}.${name}`] }],
            ...basisOf(landed.flatMap((end) => marksOn(box.places[end] ?? {}, "at"))),
            ...(fix !== undefined && { fix }),
          });
        }
      }
    }
  },
});

/** Names of the metal boxes and of the other devices that lose their ground with a device taken out. */
function lostWithout(section: Section, box: Box, device: Device): readonly string[] {
  const after = withoutDevice(section.installation, box, device);
  const isLost = (home: Box, spot: Spot): boolean => {
    if (!reachesGround(section, spot)) return false;
    const left = sectionOf(after, home.id);
    return left !== undefined && !reachesGround(left, spot);
  };
  const boxes = section.enclosures.filter((one): one is Box => one.kind === "box");
  return [
    ...boxes.filter((one) => one.material === "metal" && isLost(one, { bond: one.id })).map(({ name }) => name),
    ...boxes.flatMap((home) =>
      inOrder(home.devices)
        .filter(
          (one) =>
            one.id !== device.id &&
            terminalsOf(one).some(
              ({ name, purpose }) => purpose === "ground" && isLost(home, { device: one.id, node: name }),
            ),
        )
        .map(({ name }) => name),
    ),
  ].sort();
}
