import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import { sectionProof } from "../../solver/circuit/section-proof.ts";
import { fixIn, fixTogether } from "../fix-parts.ts";
import { workAt } from "../new-work.ts";
import { ungroundedFaces } from "../no-ground.ts";
import { labelCalls, missingLabels } from "../no-ground-labels.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyJudgedEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  missing:
    "{outlet} in {box} has a ground slot and no ground, and is protected by {by}: it needs {words} where it can be seen. Put {labels} on its face or plate.",
});

const wording = catalogue({
  itself: "itself",
  label: (device: Part, labels: Part) => `Label ${device} ${labels}`,
  labels: (count: number) => (count > 1 ? "both labels" : "the label"),
});

/** One that nothing protects, and a ground that is parted on its way, are told by other rules. */
export const noGroundLabel = defineRule({
  id: "no-ground-label",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "A receptacle with a ground slot and no ground, allowed because it is protected, must say so.",
  why: "Whoever plugs in a surge protector or a computer counts on a ground that is not there; the ground-fault device protects people, not equipment. A ground-fault receptacle says “No Equipment Ground”; one with a ground slot that hangs behind such a device, or behind a breaker, says “GFCI Protected” as well. The label goes on the receptacle or, since 2017, on its plate. Labels are recorded on the receptacle or on its box.",
  messages,
  sections: everyJudgedEdition("406.4(D)(2)", "sourced"),
  check(context) {
    const { section, installation, state, report } = context;
    const faces = ungroundedFaces(section).filter(({ neverHad }) => neverHad);
    if (faces.length === 0) return;
    const proof = sectionProof(section);
    for (const { device, box, outlets } of faces) {
      // A new outlet must have its ground: no label stands in for it.
      if (workAt(context, box, device).kind === "new") continue;
      const protectors = outlets.map(({ outlet }) => proof.of(outlet.key)?.protectedBy ?? []);
      if (protectors.some((by) => by.length === 0)) continue;
      const by = new Set(protectors.flat());
      const isOwn = by.has(device.id);
      const missing = missingLabels(installation, device.id, box.id, isOwn);
      if (missing.length === 0) continue;
      const names = section.sensingDevices().flatMap((one) => (by.has(one.device.id) ? one.device.name : []));
      report({
        subjects: [subject("device", device)],
        message: fillIn(messages.missing, {
          outlet: device.name,
          box: box.name,
          by: isOwn ? wording.itself : listed(names),
          words: listed(missing.map((words) => `“${words}”`)),
          labels: wording.labels(missing.length),
        }),
        ...fixIn(state, () =>
          fixTogether(
            wording.label(device.name, listed(missing.map((words) => `“${words}”`))),
            labelCalls(installation, [[device.id, missing]], state),
          ),
        ),
        ...basisOf(marksOn(device, "type")),
      });
    }
  },
});
