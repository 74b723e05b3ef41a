import type { DeviceType } from "../catalog/device-type.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import type { Device, Leg } from "../model/device.ts";
import type { Evidence, EvidenceMark } from "../model/evidence.ts";
import type { DeviceId } from "../model/ids.ts";
import { type DeviceTrait, hasTrait } from "./catalog/device-traits.ts";
import { deviceOfType } from "./make-device.ts";
import { copyOf } from "./plain-data.ts";

type Field = keyof Device;

/** Facts of the place, of its wiring or of what it is used for: they hold for whatever stands there. */
const OF_THE_PLACE: readonly (readonly [field: Field, trait?: DeviceTrait])[] = [
  ["zones", "in-box"],
  ["reachHeightIn", "in-box"],
  ["behindAppliance", "in-box"],
  ["fastenedTo", "yoke"],
  ["wasSplit", "receptacle"],
  ["hotTab", "hot-tab"],
  ["neutralTab", "neutral-tab"],
  ["slot", "breaker"],
  ["breakerRatingA", "breaker"],
  ["tiedTo", "breaker"],
  ["continuous", "user"],
  ["priority", "user"],
  ["notes"],
];

/** Facts of the thing itself: they go over only where the record of one and the same thing is corrected. */
const OF_THE_THING: readonly (readonly [field: Field, trait?: DeviceTrait])[] = [
  ["entryKind", "entry-choice"],
  ["tamperResistant", "receptacle"],
  ["weatherResistant", "receptacle"],
  ["markedForAluminium", "in-box"],
  ["acceptsStranded"],
  ["selfGrounding", "yoke"],
  ["bodyDepthIn", "yoke"],
  ["metalPlate", "yoke"],
  ["ratingW", "dimmer"],
  ["ledRatingW", "dimmer"],
  ["sideSectionsRemoved", "dimmer"],
  ["reversal", "line-load"],
  ["faceContact", "line-load"],
  ["listedForPanel", "breaker"],
  ["groupedInPanel", "breaker"],
  ["leakMa", "user"],
  ["weightLb", "user"],
  ["heldByBuilding", "user"],
  ["supplyC", "user"],
];

/** Found out about the thing, as against taken from the stock. */
const FOUND_OUT: ReadonlySet<EvidenceMark | undefined> = new Set<EvidenceMark>(["measured", "seen", "told"]);

/**
 * The device that takes the place of another, as its type has it, with the facts that go over. A new device brings its
 * own markings, so that nobody takes the old one's for them; `recorded` says that it is the same thing under its right
 * type, and then what was found out about it stays.
 */
export function replacementDevice(old: Device, id: DeviceId, typeId: string, name: string, recorded: boolean): Device {
  const type = getDeviceType(typeId);
  const made = deviceOfType(id, typeId, name, old.order);
  const facts: Partial<Record<Field, unknown>> = { ...made };
  const evidence: Record<string, EvidenceMark> = { ...made.evidence };
  const carry = (field: Field): void => {
    facts[field] = copyOf(old[field]);
    const mark = old.evidence?.[field];
    if (mark === undefined) delete evidence[field];
    else evidence[field] = mark;
  };
  for (const [field, trait] of OF_THE_PLACE)
    if (old[field] !== undefined && (trait === undefined || hasTrait(type, trait))) carry(field);
  for (const [field, trait] of recorded ? OF_THE_THING : []) {
    if (old[field] === undefined || (trait !== undefined && !hasTrait(type, trait))) continue;
    if (made[field] === undefined || FOUND_OUT.has(old.evidence?.[field])) carry(field);
  }
  if (!recorded && old.hotTab === "removed" && hasTrait(type, "receptacle") && !hasTrait(type, "hot-tab"))
    facts.wasSplit = true;
  if (hasTrait(type, "breaker") && old.legs !== undefined) {
    facts.legs = legsFor(type, old.legs);
    if (old.evidence?.legs !== undefined) evidence.legs = old.evidence.legs;
  }
  const { evidence: _own, ...rest } = facts;
  return { ...rest, ...(Object.keys(evidence).length > 0 && { evidence: evidence as Evidence }) } as Device;
}

/** The pole that stays keeps its leg; one more is on the next leg, as neighbouring spaces are. */
function legsFor(type: DeviceType, old: readonly Leg[]): readonly Leg[] {
  const poles = type.defaults.legs?.length ?? 1;
  const [first = "A"] = old;
  if (poles <= old.length) return old.slice(0, poles);
  return [first, first === "A" ? "B" : "A"];
}
