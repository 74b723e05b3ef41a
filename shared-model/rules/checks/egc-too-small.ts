import { findCableItem } from "../../catalog/cable-items.ts";
import type { Cable, Conductor } from "../../model/cable.ts";
import type { Device } from "../../model/device.ts";
import { type CableId, parseEnd } from "../../model/ids.ts";
import type { Section } from "../../solver/section.ts";
import type { Amps } from "../../units/quantity.ts";
import { isThicker, thickestOf, type WireSize } from "../../units/wire-size.ts";
import type { EquipmentGroundRow } from "../editions/edition-data.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";

const messages = {
  small:
    "The ground of {cable} is {awg} AWG {material} behind {breaker} of {rating} A: {least} AWG is the least. Run a ground of that size, or fit the breaker that the ground allows.",
  reduced:
    "The ground of {cable} is {awg} AWG {material}, made thinner than its circuit conductors as was usual in its time; behind {breaker} of {rating} A a new one would be {least} AWG. It may stay; extend the circuit from elsewhere.",
  unknown:
    "Cannot tell whether the ground of {cable} is thick enough behind {breaker} of {rating} A: the table held ends before this rating. Look it up.",
};

/**
 * Grounds of the cables that carry the hots of a circuit. Where the rating of the breaker is not recorded, the size of its
 * conductors asks for it: it is not asked twice.
 */
export const egcTooSmall = defineRule({
  id: "egc-too-small",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "The equipment ground of a cable is thick enough for the breaker ahead of it.",
  why: "The ground carries the whole fault current until the breaker opens; one that is too thin for the breaker can burn away first and leave the fault on the metal. It happens when a breaker is changed for a larger one. Cables of the fifties and sixties were made with a ground of reduced size: such a cable may stay as it is, and is not to be extended.",
  messages,
  sections: everyEdition("250.122", "sourced"),
  values: ["equipmentGrounds"],
  check({ section, edition, report, cannotTell }) {
    const rows = edition.values.equipmentGrounds.value;
    for (const [cable, { breaker, rating }] of greatestBreakers(section)) {
      const ground = thickestGround(cable);
      if (ground === undefined) continue;
      const shown = {
        cable: cable.name,
        awg: ground.awg,
        material: ground.material.replaceAll("-", " "),
        breaker: breaker.name,
        rating,
      };
      const subjects = [subject("cable", cable), subject("device", breaker)];
      const least = leastGround(rows, rating, ground);
      if (least === undefined) {
        cannotTell({
          subjects,
          message: fillIn(messages.unknown, shown),
          missing: `the least ground behind ${rating} A`,
          toDo: "Look it up and judge it by hand.",
        });
        continue;
      }
      if (!isThicker(least, ground.awg)) continue;
      const reduced = isMadeReduced(cable, ground.awg);
      report({
        subjects,
        message: fillIn(reduced ? messages.reduced : messages.small, { ...shown, least }),
        ...(reduced && { severity: "advice" }),
        data: { awg: ground.awg, breakerA: rating, leastAwg: least },
        ...basisOf(marksOn(cable, "item", "conductors"), marksOn(breaker, "breakerRatingA")),
      });
    }
  },
});

interface Ahead {
  readonly breaker: Device;
  readonly rating: Amps;
}

/** Cables with a hot of a circuit in them, each with the greatest of the breakers ahead of it. Sorted by id. */
function greatestBreakers(section: Section): readonly (readonly [Cable, Ahead])[] {
  const found = new Map<CableId, Ahead>();
  for (const { device: breaker } of section.breakers()) {
    const rating = breaker.breakerRatingA;
    if (rating === undefined) continue;
    for (const end of section.circuitOf(breaker.id).hotEnds) {
      const parsed = parseEnd(end);
      if (parsed?.of !== "cable") continue;
      const known = found.get(parsed.cable);
      if (known === undefined || rating > known.rating) found.set(parsed.cable, { breaker, rating });
    }
  }
  return [...found]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([id, ahead]) => {
      const cable = section.installation.cables[id];
      return cable === undefined ? [] : [[cable, ahead] as const];
    });
}

function thickestGround({ conductors }: Cable): Conductor | undefined {
  const grounds = Object.values(conductors).filter(({ grounding }) => grounding);
  const awg = thickestOf(grounds.map((ground) => ground.awg));
  return grounds.find((ground) => ground.awg === awg);
}

const leastGround = (
  rows: readonly EquipmentGroundRow[],
  rating: Amps,
  { material }: Conductor,
): WireSize | undefined => rows.find(({ upToA }) => rating <= upToA)?.[material === "copper" ? "copper" : "aluminium"];

/** A cable that the stock makes with a thinner ground, and of which that is the ground. */
function isMadeReduced({ item }: Cable, awg: WireSize): boolean {
  const made = Object.values(findCableItem(item)?.conductors ?? {});
  const ground = thickestOf(made.filter(({ grounding }) => grounding).map((one) => one.awg));
  const others = thickestOf(made.filter(({ grounding }) => !grounding).map((one) => one.awg));
  return ground === awg && others !== undefined && isThicker(others, ground);
}
