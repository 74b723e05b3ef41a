import type { Fix } from "../../answers/finding.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { StateName } from "../../model/project.ts";
import { sectionProof } from "../../solver/circuit/section-proof.ts";
import type { Section } from "../../solver/section.ts";
import { hasNeutralForGround, joinedOutsidePanels } from "../neutral-for-ground.ts";
import { workAt } from "../new-work.ts";
import { type UngroundedFace, ungroundedFaces } from "../no-ground.ts";
import { replaceOffer } from "../replace-offers.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyJudgedEdition, fillIn, marksOn, subject } from "../rule-parts.ts";
import { protectionOffers } from "../section-offers.ts";
import { supplyNotDrawn } from "../supply-not-drawn.ts";

const messages = templates({
  open: "{outlet} in {box} looks grounded and is not: it has a ground slot, no ground comes to its box, and no ground-fault device protects it. Put a two-slot receptacle back, protect and label it, or bring a ground to it.",
  parted:
    "{outlet} in {box} looks grounded and is not: the ground of its supply leads to none, and no ground-fault device protects it. Find where the ground is parted and join it.",
  notFed:
    "Cannot tell whether {outlet} in {box}, which has a ground slot and no ground, is protected: no source reaches it in this drawing. Draw its supply.",
});

const wording = catalogue({
  drawSupply: (outlet: Part) => `Draw where ${outlet} gets its supply.`,
  supplyOf: (outlet: Part) => `the supply of ${outlet}`,
  whetherProtected: (outlet: Part) => `whether ${outlet} is protected in place of its ground`,
});

/**
 * As found and as proposed: what is allowed without a ground is two-slot, or protected and labelled. Where the neutral stands
 * in for the ground, it is folded under what joins the two: it shows once they are parted.
 */
export const groundingTypeUnprotected = defineRule({
  id: "grounding-type-unprotected",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "A receptacle with a ground slot must have a ground, or ground-fault protection in its place.",
  why: "Three slots say that there is a ground. Where two-wire cable feeds the box there is none, and the metal of a tool with a fault stays live at its handle. Old work has two-slot receptacles for it; three-slot ones were put in for convenience. What is protected instead needs its labels.",
  messages,
  sections: everyJudgedEdition("406.4(D)(2)", "sourced"),
  check(context) {
    const { section, project, installation, state, report, cannotTell } = context;
    const proof = sectionProof(section);
    for (const face of ungroundedFaces(section)) {
      // A new outlet must have its ground, whatever protects it: that is another rule.
      if (workAt(context, face.box, face.device).kind === "new") continue;
      // A ground that ends on a neutral in a panel is not parted: what joins the two there is told of the panel.
      const isOnNeutral = hasNeutralForGround(section, face);
      if (isOnNeutral && joinedOutsidePanels(section).length === 0) continue;
      for (const standing of face.outlets) {
        const { outlet } = standing;
        const verdict = proof.of(outlet.key)?.verdict;
        const subjects = [subject("outlet", { id: outlet.key, name: outlet.name })];
        const shown = { outlet: outlet.name, box: face.box.name };
        if (verdict === "none") {
          report({
            subjects,
            message: fillIn(face.neverHad ? messages.open : messages.parted, shown),
            ...(state === "proposed" && {
              offers: [
                ...protectionOffers(section, { project, installation }, standing, state),
                ...twoSlotOffer(section, face, state),
              ],
            }),
            ...basisOf(marksOn(face.device, "type")),
          });
          continue;
        }
        if (isOnNeutral) continue;
        const isWired = Object.values(face.box.places).some(
          ({ at }) => at.kind === "terminal" && at.device === face.device.id && at.terminal !== face.ground,
        );
        const what = wording.whetherProtected(outlet.name);
        const shared = verdict === "not-live" && isWired ? supplyNotDrawn(section, installation, what) : undefined;
        if (shared === undefined) continue;
        cannotTell({
          subjects,
          message: fillIn(messages.notFed, shown),
          missing: wording.supplyOf(outlet.name),
          toDo: wording.drawSupply(outlet.name),
          shared,
        });
      }
    }
  },
});

function twoSlotOffer(section: Section, { device, box }: UngroundedFace, state: StateName): readonly Fix[] {
  const { family, outlets } = getDeviceType(device.type);
  if (family !== "receptacle" || outlets.length !== 2) return [];
  return [replaceOffer(section, box, device, "receptacle-two-slot", state)].flatMap((offer) => offer ?? []);
}
