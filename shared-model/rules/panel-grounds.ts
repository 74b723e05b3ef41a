import type { Cable } from "../model/cable.ts";
import type { Enclosure, Panel } from "../model/enclosure.ts";
import { cableEnd, type EndKey, otherSide } from "../model/ids.ts";
import { enclosureAtSide } from "../queries/cables-into.ts";
import { farEnd } from "../queries/end-facts.ts";
import type { Section } from "../solver/section.ts";
import { keysOf, reachesGround } from "./ground-leads.ts";
import { isBeingSurveyed } from "./path-words.ts";

/** The ground of a cable that lies on nothing in a panel, with its end in the box there. */
export interface PartedGround {
  readonly cable: Cable;
  readonly panel: Panel;
  readonly end: EndKey;
  readonly far: EndKey;
}

/**
 * Grounds that are capped or loose in a panel though their cable is in use there, and by which nothing in the box at the
 * other end gets a ground. Spares, and boxes that are being surveyed, say nothing.
 */
export function partedInPanels(section: Section): readonly PartedGround[] {
  return section.cables.flatMap((cable) =>
    (["a", "b"] as const).flatMap((side) => {
      const panel = enclosureAtSide(section.installation, cable, side);
      const box = enclosureAtSide(section.installation, cable, otherSide(side));
      if (panel?.kind !== "panel" || box?.kind !== "box" || isBeingSurveyed(section, box.id)) return [];
      if (!keysOf(cable).some((key) => !isGround(cable, key) && isLanded(panel, cableEnd(cable.id, key, side))))
        return [];
      return keysOf(cable)
        .filter((key) => isGround(cable, key))
        .map((key) => cableEnd(cable.id, key, side))
        .filter((end) => !isLanded(panel, end) && panel.places[end]?.spare !== true && isLanded(box, farEnd(end)))
        .filter((end) => !reachesGround(section, { end: farEnd(end) }))
        .map((end) => ({ cable, panel, end, far: farEnd(end) }));
    }),
  );
}

const isGround = (cable: Cable, key: keyof Cable["conductors"]): boolean => cable.conductors[key]?.grounding === true;

function isLanded(enclosure: Enclosure, end: EndKey): boolean {
  const kind = enclosure.places[end]?.at.kind;
  return kind === "terminal" || kind === "splice" || kind === "bond";
}
