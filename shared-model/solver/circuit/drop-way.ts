import type { Cable } from "../../model/cable.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { CableId, EnclosureId, EndKey } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import type { PlacedOutlet } from "../../queries/outlets-of.ts";
import type { PathStep, Section, Spot } from "../section.ts";
import { cablesOnWays } from "../sections.ts";

interface BadJoint {
  readonly end: EndKey;
  readonly enclosure: Enclosure;
  readonly ohm: number;
}

/** The shortest ways from the supply to both contacts of an outlet, as far as they cost voltage. */
export interface DropWay {
  /** The longest first. */
  readonly cables: readonly Cable[];
  /** Those of them whose length is not recorded. */
  readonly unmeasured: readonly Cable[];
  /** The joint on it with the highest resistance that a person entered. */
  readonly joint?: BadJoint;
}

export function wayOfOutlet(section: Section, { device, hot, neutral }: PlacedOutlet): DropWay {
  const { installation } = section;
  const reach = section.reach();
  const steps = [hot, neutral].flatMap((node) => {
    const spot: Spot = { device: device.id, node };
    return section.wayFrom(reach.isLive(spot) ? "ungrounded" : "grounded", spot) ?? [];
  });
  const found = new Map<CableId, Cable>();
  for (const step of steps) {
    const cable = step.kind === "cable" ? installation.cables[step.cable] : undefined;
    if (cable !== undefined) found.set(cable.id, cable);
  }
  const cables = [...found.values()].sort((p, q) => (q.lengthFt ?? 0) - (p.lengthFt ?? 0) || (p.id < q.id ? -1 : 1));
  const joint = worstJointOn(installation, steps);
  const unmeasured = cables.filter(({ lengthFt }) => lengthFt === undefined);
  return { cables, unmeasured, ...(joint !== undefined && { joint }) };
}

/**
 * Whether the length of every cable on some way from a supply to an enclosure is recorded, as far as the cables tell: where
 * this says no, a way of an outlet there has unmeasured ones.
 */
export function measuredTo(section: Section): (enclosure: EnclosureId) => boolean {
  const cables = cablesOnWays(section);
  if (cables.every(({ lengthFt }) => lengthFt !== undefined)) return () => true;
  const nextTo = new Map<EnclosureId, EnclosureId[]>();
  const reached = new Set<EnclosureId>();
  const note = (from: EnclosureId, to: EnclosureId): void => {
    const known = nextTo.get(from);
    if (known === undefined) nextTo.set(from, [to]);
    else known.push(to);
    const { enclosures } = section.installation;
    if (enclosures[from]?.kind === "panel") reached.add(from);
  };
  for (const { lengthFt, sides } of cables) {
    if (lengthFt === undefined || !("enclosure" in sides.a) || !("enclosure" in sides.b)) continue;
    note(sides.a.enclosure, sides.b.enclosure);
    note(sides.b.enclosure, sides.a.enclosure);
  }
  for (const id of reached) for (const next of nextTo.get(id) ?? []) reached.add(next);
  return (enclosure) => reached.has(enclosure);
}

/** Whether no way into a section has a cable whose length is not recorded. */
export const isAllMeasured = (section: Section): boolean =>
  cablesOnWays(section).every(({ lengthFt }) => lengthFt !== undefined);

function worstJointOn({ enclosures }: Installation, steps: readonly PathStep[]): BadJoint | undefined {
  let worst: BadJoint | undefined;
  for (const step of steps) {
    if (step.kind === "device") continue;
    const [from, to] =
      step.kind === "cable" ? [step.fromEnclosure, step.toEnclosure] : [step.enclosure, step.enclosure];
    for (const [home, end] of [
      [from, step.from],
      [to, step.to],
    ] as const) {
      const enclosure = enclosures[home];
      const ohm = enclosure?.places[end]?.jointOhm ?? 0;
      if (enclosure !== undefined && ohm > (worst?.ohm ?? 0)) worst = { end, enclosure, ohm };
    }
  }
  return worst;
}
