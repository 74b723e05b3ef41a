import { getDeviceType } from "../catalog/device-types.ts";
import type { CableId, EndKey } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { landedAt } from "../queries/landings.ts";
import type { OutletProof } from "../solver/circuit/proof-answers.ts";
import { sectionProof } from "../solver/circuit/section-proof.ts";
import type { OutletStanding, Section } from "../solver/section.ts";
import { terminalOf } from "./line-load-fixes.ts";
import {
  hotOf,
  isFedRightWay,
  type LineLoadDevice,
  lastCableStep,
  lineLoadDevices,
  neutralOf,
} from "./section-parts.ts";
import { pluggedAt, priorityOf } from "./trip-parts.ts";

/** Unprotected receptacles fed from the LINE joints of devices with nothing on LOAD, each under the nearest of these. */
export function fedPast(section: Section, installation: Installation): ReadonlyMap<LineLoadDevice, readonly Past[]> {
  const empty = lineLoadDevices(section).filter(
    (found) => found.lineLive && found.lineGrounded && isFedRightWay(found) && isLoadEmpty(found),
  );
  const nearest = new Map<LineLoadDevice, Past[]>();
  if (empty.length === 0) return nearest;
  const candidates = sectionProof(section).outlets.flatMap((proof) =>
    isCandidate(installation, proof) ? proof.standing : [],
  );
  for (const standing of candidates) {
    const past = empty.flatMap((found) => leavesPast(section, found, standing) ?? []);
    const [last] = past.sort((a, b) => b.step - a.step || (a.found.device.id < b.found.device.id ? -1 : 1));
    if (last !== undefined) nearest.set(last.found, [...(nearest.get(last.found) ?? []), last]);
  }
  return nearest;
}

/** A live receptacle that nothing protects, without a freezer or the like, of which nobody has decided against it. */
function isCandidate(installation: Installation, { standing, verdict }: OutletProof): boolean {
  const { outlet } = standing;
  // One that has a device of its own is not protected because of what is wrong there.
  if (!outlet.receptacle || verdict !== "none" || getDeviceType(outlet.device.type).sensing !== undefined) return false;
  if (installation.intent.outlets[outlet.key]?.wish === "decided-not") return false;
  return pluggedAt(installation, standing).every((load) => priorityOf(load) === "none");
}

function isLoadEmpty({ device, enclosure }: LineLoadDevice): boolean {
  return (["hot", "neutral"] as const).every((pole) => {
    const terminal = terminalOf(device, "LOAD", pole);
    return terminal !== undefined && landedAt(enclosure, device.id, terminal).length === 0;
  });
}

/** A receptacle that a device with nothing on LOAD lets go by. */
export interface Past {
  readonly found: LineLoadDevice;
  readonly standing: OutletStanding;
  /** Which piece of the way from the source it leaves the box by. */
  readonly step: number;
  readonly cable: CableId;
  /** Hot and neutral as they leave the box of the device. */
  readonly ends: readonly [hot: EndKey, neutral: EndKey];
}

/** From the LINE joints of a device its hot and neutral leave by one cable, which was not meant to stay there. */
function leavesPast(section: Section, found: LineLoadDevice, standing: OutletStanding): Past | undefined {
  const { device, enclosure, lineHot, open } = found;
  if (standing.outlet.device.id === device.id) return undefined;
  const way = section.wayFrom("ungrounded", hotOf(standing));
  const hot = lastCableStep(way, "fromEnclosure", enclosure.id);
  const neutral = lastCableStep(section.wayFrom("grounded", neutralOf(standing)), "fromEnclosure", enclosure.id);
  if (way === undefined || hot === undefined || neutral?.cable !== hot.cable) return undefined;
  if (!open.areJoined(lineHot, { end: hot.from })) return undefined;
  if (section.installation.intent.boxes[enclosure.id]?.protect?.[hot.cable] === false) return undefined;
  return { found, standing, step: way.indexOf(hot), cable: hot.cable, ends: [hot.from, neutral.from] };
}
