import { catalogue, type Part } from "../lib/catalogue.ts";
import type { DeviceId } from "../model/ids.ts";
import { nameOfEnd } from "../queries/end-facts.ts";
import type { Joining, OutletStanding, PathStep, Section } from "../solver/section.ts";
import { enclosuresOfStep, joinWords, nameOfSide } from "./path-words.ts";
import { hotOf, lastCableStep, nameOfStep, neutralOf } from "./section-parts.ts";

const wording = catalogue({
  leaves: (name: Part, from: Part, enclosure: Part) => `${name} leaves ${from} in ${enclosure}`,
});

/**
 * Where the hot or the neutral of an outlet leaves the way through a device, in words: what joins the two sides of it,
 * "jumper y joins splice HL to splice HD in B1"; or the conductor by which it leaves, "C2 BK leaves splice HL in B1".
 * Undefined where no way leads round the device.
 */
export function bypassWords(
  section: Section,
  standing: OutletStanding,
  device: DeviceId,
  source: "ungrounded" | "grounded",
): string | undefined {
  const spot = source === "ungrounded" ? hotOf(standing) : neutralOf(standing);
  const way = section.wayFrom(source, spot, device);
  const joinings = source === "ungrounded" ? section.hotsAround(device, "LOAD") : section.neutralsAround(device);
  const joining =
    way === undefined
      ? (joinings[0] ?? (source === "grounded" ? section.neutralsOnGround()[0] : undefined))
      : joinings.find(({ by }) => way.some((step) => isSame(step, by)));
  if (joining !== undefined) return joiningWords(section, joining);
  return way === undefined ? undefined : leavingWords(section, way, device);
}

/** The step of a cable by which the hot of an outlet leaves the box of a device without passing its sensor. */
export function hotLeavesBoxOf(section: Section, standing: OutletStanding, device: DeviceId): PathStep | undefined {
  const home = section.enclosureOf(device);
  if (home === undefined || section.installation.enclosures[home]?.kind === "panel") return undefined;
  return lastCableStep(section.wayFrom("ungrounded", hotOf(standing), device), "fromEnclosure", home);
}

const joiningWords = (section: Section, { by }: Joining): string => joinWords(section, by, nameOfStep(section, by));

/** The last piece that starts in the box of the device; where the way never comes there, its first. */
function leavingWords(section: Section, way: readonly PathStep[], device: DeviceId): string | undefined {
  const home = section.enclosureOf(device);
  const conductors = way.filter(({ kind }) => kind !== "device");
  const step = conductors.findLast((one) => enclosuresOfStep(one)[0] === home) ?? conductors[0];
  if (step === undefined || step.kind === "device") return undefined;
  const enclosure = section.installation.enclosures[enclosuresOfStep(step)[0]];
  if (enclosure === undefined) return undefined;
  const name =
    step.kind === "cable" ? nameOfEnd(section.installation, enclosure, step.from) : nameOfStep(section, step);
  return wording.leaves(name, nameOfSide(section, step, "from"), enclosure.name);
}

function isSame(one: PathStep, other: PathStep): boolean {
  if (one.kind === "cable")
    return other.kind === "cable" && one.cable === other.cable && one.conductor === other.conductor;
  if (one.kind === "jumper") return other.kind === "jumper" && one.jumper === other.jumper;
  if (other.kind !== "device" || one.device !== other.device) return false;
  return (one.from === other.from && one.to === other.to) || (one.from === other.to && one.to === other.from);
}
