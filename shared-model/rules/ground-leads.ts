import type { Cable } from "../model/cable.ts";
import type { Box, Enclosure } from "../model/enclosure.ts";
import { type ConductorKey, cableEnd, type EnclosureId, type EndKey } from "../model/ids.ts";
import type { Section, Spot } from "../solver/section.ts";
import { keptWithWiring } from "../solver/sections.ts";

/** A way to the equipment ground by metal: to a bar of a panel, out of the drawing by a ground, or over bonded armour. */
export function reachesGround(section: Section, spot: Spot): boolean {
  const reach = section.reach();
  if (reach.isOnGround(spot)) return true;
  const { outside, metal } = leadsOf(section);
  if (outside.some((end) => reach.areJoined(spot, { end }))) return true;
  return [...metal].some((bond) => reach.areJoined(spot, { bond }));
}

const keys = new WeakMap<Cable["conductors"], readonly ConductorKey[]>();

/** Keys of the conductors of a cable, sorted. Cached by their table. */
export function keysOf({ conductors }: Cable): readonly ConductorKey[] {
  let sorted = keys.get(conductors);
  if (sorted === undefined) {
    sorted = (Object.keys(conductors) as ConductorKey[]).sort();
    keys.set(conductors, sorted);
  }
  return sorted;
}

/** A bonding strip makes armour a ground, and its connector joins it to a metal box. */
export function isArmourBonded(box: Enclosure, cable: Cable, entry: keyof Box["entries"]): boolean {
  if (cable.construction !== "armoured-bonded" || box.kind !== "box" || box.material !== "metal") return false;
  return (box.entries[entry]?.means ?? "none") !== "none";
}

interface Leads {
  /** Ends in the section of grounds that go to country that is not drawn. */
  readonly outside: readonly EndKey[];
  /** Boxes whose metal is grounded by the armour of a cable. */
  readonly metal: ReadonlySet<EnclosureId>;
}

/** Kept as long as the wiring is the same. */
const leadsOf: (section: Section) => Leads = keptWithWiring((section) => ({
  outside: outsideGrounds(section),
  metal: metalByArmour(section),
}));

function outsideGrounds({ cables }: Section): readonly EndKey[] {
  return cables.flatMap((cable) => {
    const inside = "outside" in cable.sides.a ? "b" : "outside" in cable.sides.b ? "a" : undefined;
    if (inside === undefined || "outside" in cable.sides[inside]) return [];
    return keysOf(cable)
      .filter((key) => cable.conductors[key]?.grounding === true)
      .map((key) => cableEnd(cable.id, key, inside));
  });
}

/** From panels and from out of the drawing, cable by cable as far as armour and metal go on. */
function metalByArmour(section: Section): ReadonlySet<EnclosureId> {
  const reach = section.reach();
  const metal = new Set<EnclosureId>();
  const { enclosures } = section.installation;
  const armoured = section.cables.filter((cable) => cable.construction === "armoured-bonded");
  for (let before = -1; before < metal.size; ) {
    before = metal.size;
    for (const cable of armoured) {
      for (const [near, far] of [
        [cable.sides.a, cable.sides.b],
        [cable.sides.b, cable.sides.a],
      ] as const) {
        if ("outside" in near) continue;
        const box = enclosures[near.enclosure];
        if (box === undefined || metal.has(box.id) || !isArmourBonded(box, cable, near.entry)) continue;
        if (isGroundedMetal(far)) metal.add(box.id);
      }
    }
  }
  return metal;

  function isGroundedMetal(far: Cable["sides"]["a"]): boolean {
    if ("outside" in far) return true;
    const box = enclosures[far.enclosure];
    if (box === undefined || box.kind === "panel") return box !== undefined;
    if (box.material !== "metal" || (box.entries[far.entry]?.means ?? "none") === "none") return false;
    return metal.has(box.id) || reach.isOnGround({ bond: box.id });
  }
}
