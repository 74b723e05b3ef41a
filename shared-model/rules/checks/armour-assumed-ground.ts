import { templates } from "../../lib/catalogue.ts";
import type { Cable } from "../../model/cable.ts";
import type { Box } from "../../model/enclosure.ts";
import type { EvidenceMark } from "../../model/evidence.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { inOrder } from "../../queries/in-order.ts";
import { landingsOf } from "../../queries/landings.ts";
import type { Section } from "../../solver/section.ts";
import { keysOf, reachesGround } from "../ground-leads.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, listed, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  unseen:
    "The armour of {cable} is taken as the ground in {boxes}, and nobody has seen its bonding strip. Look into an end of it: without the strip the armour is no ground.",
  old: "{boxes} relies for its ground on the armour of {cable}, which has no bonding strip: a fault heats such armour and opens no breaker. Prove its type, or treat {boxes} as having no ground.",
});

/** Marks that say that a person looked. */
const LOOKED_AT: ReadonlySet<EvidenceMark> = new Set(["seen", "measured"]);

/** Armour with a wire for the ground in it is not asked for; nor is a cable that carries no mark of how it is known. */
export const armourAssumedGround = defineRule({
  id: "armour-assumed-ground",
  status: "stable",
  scope: "section",
  severity: "caution",
  summary: "Armour counts as the ground only where its type is known.",
  why: "Armoured cable with a bonding strip grounds the metal boxes it enters. Older armour has none: its spiral is a long thin path, and a fault can make it glow without opening the breaker. From outside the two look alike, so a three-slot receptacle in such a box proves nothing. The strip shows at a cut end.",
  messages,
  sections: everyEdition("250.118", "from-memory"),
  check({ section, report }) {
    for (const cable of section.cables) {
      if (keysOf(cable).some((key) => cable.conductors[key]?.grounding === true)) continue;
      const [mark] = marksOn(cable, "construction");
      const bonded = cable.construction === "armoured-bonded";
      if (bonded ? mark === undefined || LOOKED_AT.has(mark) : cable.construction !== "armoured-old") continue;
      const boxes = metalBoxesOf(section, cable).filter((box) => bonded || reliesOnMetal(section, box));
      if (boxes.length === 0) continue;
      report({
        subjects: [subject("cable", cable)],
        message: fillIn(bonded ? messages.unseen : messages.old, {
          cable: cable.name,
          boxes: listed(boxes.map(({ name }) => name)),
        }),
        ...basisOf(marksOn(cable, "construction")),
      });
    }
  },
});

/** Metal boxes that its connectors join its armour to. */
const metalBoxesOf = (section: Section, cable: Cable): readonly Box[] =>
  section.enclosures.filter(
    (box): box is Box =>
      box.kind === "box" &&
      box.material === "metal" &&
      cablesInto(section.installation.cables, box.id).some(
        (one) => one.cable.id === cable.id && (box.entries[one.entry]?.means ?? "none") !== "none",
      ),
  );

/** Something in it is grounded to its metal, and no ground that counts reaches that metal. */
function reliesOnMetal(section: Section, box: Box): boolean {
  const joined = landingsOf(box).bonded.length > 0 || inOrder(box.devices).some((one) => one.selfGrounding === true);
  return joined && !reachesGround(section, { bond: box.id });
}
