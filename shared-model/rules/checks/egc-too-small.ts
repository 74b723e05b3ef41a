import { findCableItem } from "../../catalog/cable-items.ts";
import { catalogue, type Part, templates } from "../../lib/catalogue.ts";
import type { Cable, Conductor } from "../../model/cable.ts";
import type { Device } from "../../model/device.ts";
import type { Box, Jumper } from "../../model/enclosure.ts";
import { type CableId, type DeviceId, type EndKey, jumperEnd, parseEnd } from "../../model/ids.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { inOrder } from "../../queries/in-order.ts";
import { METAL_WORDS } from "../../queries/metal-words.ts";
import type { Section } from "../../solver/section.ts";
import type { Amps } from "../../units/quantity.ts";
import { isThicker, thickestOf, type WireSize } from "../../units/wire-size.ts";
import type { EquipmentGroundRow } from "../editions/edition-data.ts";
import { fixIn } from "../fix-parts.ts";
import { groundsOf } from "../grounds.ts";
import { titled } from "../line-load-fixes.ts";
import { MakeUpPlan } from "../make-up-plan.ts";
import { defineRule } from "../rule.ts";
import { basisOf, everyEdition, fillIn, marksOn, subject } from "../rule-parts.ts";

const messages = templates({
  small:
    "The ground of {cable} is {awg} AWG {material} behind {breaker} of {rating} A: {least} AWG is the least. Run a ground of that size, or fit the breaker that the ground allows.",
  reduced:
    "The ground of {cable} is {awg} AWG {material}, made thinner than its circuit conductors as was usual in its time; behind {breaker} of {rating} A a new one would be {least} AWG. It may stay; extend the circuit from elsewhere.",
  pigtail:
    "The ground {kind} {jumper} in {box} is {awg} AWG {material} behind {breaker} of {rating} A: {least} AWG is the least. Make it of that size.",
  unknown:
    "Cannot tell whether the ground of {cable} is thick enough behind {breaker} of {rating} A: the table held ends before this rating. Look it up.",
});

const wording = catalogue({
  jumper: "jumper",
  leastBehind: (amps: Part) => `the least ground behind ${amps} A`,
  lookUp: "Look it up and judge it by hand.",
  make: (jumper: Part, awg: Part) => `Make ${jumper} of ${awg} AWG`,
  pigtail: "pigtail",
});

/**
 * Grounds of the cables that carry the hots of a circuit, and the bare and green jumpers in their boxes. Where the rating of the breaker is not recorded, the size of its
 * conductors asks for it: it is not asked twice.
 */
export const egcTooSmall = defineRule({
  id: "egc-too-small",
  status: "stable",
  scope: "section",
  severity: "violation",
  summary: "The equipment ground of a cable, and its pigtails, are thick enough for the breaker ahead of them.",
  why: "The ground carries the whole fault current until the breaker opens; one that is too thin for the breaker can burn away first and leave the fault on the metal. It happens when a breaker is changed for a larger one. Cables of the fifties and sixties were made with a ground of reduced size: such a cable may stay as it is, and is not to be extended.",
  messages,
  sections: everyEdition("250.122", "sourced"),
  values: ["equipmentGrounds"],
  check({ section, edition, state, report, cannotTell }) {
    const rows = edition.values.equipmentGrounds.value;
    const ahead = greatestBreakers(section);
    const told = new Set<CableId>();
    for (const [cable, { breaker, rating }] of ahead) {
      const ground = thickestGround(cable);
      if (ground === undefined) continue;
      const shown = {
        cable: cable.name,
        awg: ground.awg,
        material: METAL_WORDS[ground.material],
        breaker: breaker.name,
        rating,
      };
      const subjects = [subject("cable", cable), subject("device", breaker)];
      const least = leastGround(rows, rating, ground);
      if (least === undefined) {
        cannotTell({
          subjects,
          message: fillIn(messages.unknown, shown),
          missing: wording.leastBehind(rating),
          toDo: wording.lookUp,
        });
        continue;
      }
      if (!isThicker(least, ground.awg)) continue;
      told.add(cable.id);
      const reduced = isMadeReduced(cable, ground.awg);
      report({
        subjects,
        message: fillIn(reduced ? messages.reduced : messages.small, { ...shown, least }),
        ...(reduced && { severity: "advice" }),
        data: { awg: ground.awg, breakerA: rating, leastAwg: least },
        ...basisOf(marksOn(cable, "item", "conductors"), marksOn(breaker, "breakerRatingA")),
      });
    }
    for (const { box, jumper, breaker, rating } of thinJumpers(section, rows, new Map(ahead), told)) {
      const least = leastGround(rows, rating, jumper);
      if (least === undefined || !isThicker(least, jumper.awg)) continue;
      report({
        subjects: [subject("jumper", jumper), subject("device", breaker)],
        message: fillIn(messages.pigtail, {
          kind: isPigtail(box, jumper) ? wording.pigtail : wording.jumper,
          jumper: jumper.name,
          box: box.name,
          awg: jumper.awg,
          material: METAL_WORDS[jumper.material],
          breaker: breaker.name,
          rating,
          least,
        }),
        data: { awg: jumper.awg, breakerA: rating, leastAwg: least },
        ...fixIn(state, () =>
          new MakeUpPlan(section.installation, box, state)
            .resize(jumper.id, least)
            .fix((words) => titled(wording.make(jumper.name, least), words)),
        ),
        ...basisOf(marksOn(jumper, "awg", "material"), marksOn(breaker, "breakerRatingA")),
      });
    }
  },
});

interface GroundJumper extends Ahead {
  readonly box: Box;
  readonly jumper: Jumper;
}

/**
 * Thin jumpers that carry the fault current of a box, with the breaker ahead of them: that of the device they ground, else the
 * greatest in the box. Where no ground comes to a box they carry none, and where a cable of it has too thin a ground itself
 * that is told.
 */
function thinJumpers(
  section: Section,
  rows: readonly EquipmentGroundRow[],
  ahead: ReadonlyMap<Cable, Ahead>,
  told: ReadonlySet<CableId>,
): readonly GroundJumper[] {
  return section.enclosures.flatMap((box) => {
    if (box.kind !== "box") return [];
    const jumpers = inOrder(box.jumpers).filter(isGround);
    if (jumpers.length === 0) return [];
    const cables = cablesInto(section.installation.cables, box.id).map(({ cable }) => cable);
    const greatest = greatestOf(cables.map((cable) => ahead.get(cable)));
    // The greatest asks for the most: what suits it suits all.
    const thin = greatest === undefined ? [] : jumpers.filter((jumper) => isTooThin(rows, greatest.rating, jumper));
    if (greatest === undefined || thin.length === 0 || cables.some(({ id }) => told.has(id))) return [];
    if (!groundsOf(section, box).present) return [];
    return thin.map((jumper) => ({ box, jumper, ...(aheadOfDevice(section, box, jumper) ?? greatest) }));
  });
}

function isTooThin(rows: readonly EquipmentGroundRow[], rating: Amps, jumper: Jumper): boolean {
  const least = leastGround(rows, rating, jumper);
  return least !== undefined && isThicker(least, jumper.awg);
}

const isGround = ({ colour }: Jumper): boolean => colour === "bare" || colour === "green";

const greatestOf = (all: readonly (Ahead | undefined)[]): Ahead | undefined =>
  all.reduce(
    (best, one) => (one !== undefined && (best === undefined || one.rating > best.rating) ? one : best),
    undefined,
  );

/** By the breakers of the hots on the device that it grounds. */
function aheadOfDevice(section: Section, box: Box, jumper: Jumper): Ahead | undefined {
  const [device, other = device] = devicesOf(box, jumper);
  if (device === undefined || other !== device) return undefined;
  const on = new Set((Object.keys(box.places) as EndKey[]).filter((end) => deviceAt(box, end) === device));
  return greatestOf(
    section
      .breakers()
      .map(({ device: breaker }) =>
        breaker.breakerRatingA !== undefined && section.circuitOf(breaker.id).hotEnds.some((end) => on.has(end))
          ? { breaker, rating: breaker.breakerRatingA }
          : undefined,
      ),
  );
}

const deviceAt = (box: Box, end: EndKey): DeviceId | undefined => {
  const at = box.places[end]?.at;
  return at?.kind === "terminal" ? at.device : undefined;
};

const devicesOf = (box: Box, { id }: Jumper): readonly DeviceId[] =>
  (["a", "b"] as const).flatMap((side) => deviceAt(box, jumperEnd(id, side)) ?? []);

/** From a splice to a device or to the metal of the box. */
const isPigtail = (box: Box, { id }: Jumper): boolean =>
  (["a", "b"] as const).some((side) => box.places[jumperEnd(id, side)]?.at.kind === "splice");

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
  { material }: Pick<Conductor, "material">,
): WireSize | undefined => rows.find(({ upToA }) => rating <= upToA)?.[material === "copper" ? "copper" : "aluminium"];

/** A cable that the stock makes with a thinner ground, and of which that is the ground. */
function isMadeReduced({ item }: Cable, awg: WireSize): boolean {
  const made = Object.values(findCableItem(item)?.conductors ?? {});
  const ground = thickestOf(made.filter(({ grounding }) => grounding).map((one) => one.awg));
  const others = thickestOf(made.filter(({ grounding }) => !grounding).map((one) => one.awg));
  return ground === awg && others !== undefined && isThicker(others, ground);
}
