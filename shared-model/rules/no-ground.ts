import { getDeviceType } from "../catalog/device-types.ts";
import type { Cable } from "../model/cable.ts";
import type { Device } from "../model/device.ts";
import type { Box } from "../model/enclosure.ts";
import type { DeviceId, TerminalName } from "../model/ids.ts";
import { cablesInto } from "../queries/cables-into.ts";
import { terminalsOf } from "../queries/terminals-of.ts";
import type { OutletStanding, Section } from "../solver/section.ts";
import { reachesGround } from "./ground-leads.ts";
import { groundsOf } from "./grounds.ts";
import { takesGroundPin } from "./receptacle-kinds.ts";
import { hotOf } from "./section-parts.ts";

/** A receptacle in a box that no ground reaches. */
export interface UngroundedReceptacle {
  readonly device: Device;
  readonly box: Box;
  /** One, or the halves of a split one. */
  readonly outlets: readonly OutletStanding[];
  /** Absent on a two-slot one. */
  readonly ground?: TerminalName;
  /** A cable on the way of its supply was made without a ground: none was ever there, as against one that is parted. */
  readonly neverHad: boolean;
}

/** One that takes a grounding plug. */
export type UngroundedFace = UngroundedReceptacle & { readonly ground: TerminalName };

/**
 * By device, in the order of the outlets of the section. A ground that leaves the drawing counts as one; so may a raceway,
 * whose boxes are passed over.
 */
export function ungroundedReceptacles(section: Section): readonly UngroundedReceptacle[] {
  const byDevice = new Map<DeviceId, readonly [OutletStanding, ...OutletStanding[]]>();
  for (const standing of section.outlets()) {
    const { device, receptacle } = standing.outlet;
    const known = byDevice.get(device.id);
    if (receptacle) byDevice.set(device.id, known === undefined ? [standing] : [...known, standing]);
  }
  return [...byDevice.values()].flatMap((outlets): UngroundedReceptacle | readonly UngroundedReceptacle[] => {
    const [first] = outlets;
    const { device } = first.outlet;
    const box = first.enclosure;
    const ground = terminalsOf(device).find(({ purpose }) => purpose === "ground")?.name;
    if (box.kind !== "box" || hasGround(section, box, device, ground)) return [];
    const cables = cablesInto(section.installation.cables, box.id).map(({ cable }) => cable);
    if (cables.some(({ construction }) => construction === "raceway")) return [];
    const way = section.wayFrom("ungrounded", hotOf(first));
    const feeds = new Set((way ?? []).flatMap((step) => (step.kind === "cable" ? [step.cable] : [])));
    const supply = feeds.size === 0 ? cables : [...feeds].flatMap((id) => section.installation.cables[id] ?? []);
    const neverHad = supply.some(isWithoutGround);
    return { device, box, outlets, neverHad, ...(ground !== undefined && { ground }) };
  });
}

/** Of those, the ones with a slot for a ground. */
export const ungroundedFaces = (section: Section): readonly UngroundedFace[] =>
  ungroundedReceptacles(section).filter(
    (one): one is UngroundedFace => one.ground !== undefined && takesGroundPin(one.device),
  );

/** Made without a ground: no conductor for it, no bonded armour. A raceway may be one, single conductors have theirs beside them. */
export const isWithoutGround = ({ construction, conductors }: Cable): boolean =>
  construction !== "armoured-bonded" && Object.values(conductors).every(({ grounding }) => !grounding);

/** A ground comes to the box, or the device has one from elsewhere. */
export const hasGround = (section: Section, box: Box, device: Device, terminal?: TerminalName): boolean =>
  groundsOf(section, box).present ||
  (terminal !== undefined && reachesGround(section, { device: device.id, node: terminal }));

export const isGroundFaultFace = ({ type }: Device): boolean => getDeviceType(type).sensing?.class === "personnel";
