import type { Fix } from "../answers/finding.ts";
import { getDeviceType } from "../catalog/device-types.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { type DeviceId, type EnclosureId, type OutletKey, outletKey, parseOutlet } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { sectionProof } from "../solver/circuit/section-proof.ts";
import type { PathStep, Section } from "../solver/section.ts";
import { sectionKey, sectionOf } from "../solver/sections.ts";
import { afterFix } from "./after-fix.ts";
import {
  type ConductorUse,
  conductorUses,
  isBareCarrying,
  isBareOnCircuitUnfed,
  isWhite,
  isWhiteHot,
  shownColour,
} from "./conductor-uses.ts";
import {
  hotOf,
  isFedRightWay,
  isSwapped,
  type LineLoadDevice,
  lineLoadDevices,
  needsNeutral,
  neutralOf,
  swappedPole,
} from "./section-parts.ts";

/** A device that a fix replaces, and the one that it brings. */
export interface Replaced {
  readonly old: DeviceId;
  readonly id: DeviceId;
}

/** The sections that the boxes of one are in with a fix carried out; none when it holds a command that is not followed. */
export function sectionsAfter(section: Section, fix: Fix): readonly Section[] {
  const after = afterFix(section.installation, fix);
  return after === undefined ? [] : sectionsWith(after, section.enclosures);
}

/**
 * Whether the wiring would be better with a fix: something that was wrong is no longer, and nothing is wrong that was
 * not. Only conductors and devices of the section are looked at; what boxes and connectors hold is not.
 */
export function isCure(section: Section, fix: Fix, replaced?: Replaced): boolean {
  const troubles = troublesAround(section, fix, replaced);
  if (troubles === undefined) return false;
  const { before, left } = troubles;
  return [...left].every((trouble) => before.has(trouble)) && [...before].some((trouble) => !left.has(trouble));
}

/** Whether nothing would be wrong with a fix that is not wrong without it; what it mends is looked at by the caller. */
export function isHarmless(section: Section, fix: Fix): boolean {
  const troubles = troublesAround(section, fix);
  return troubles !== undefined && [...troubles.left].every((trouble) => troubles.before.has(trouble));
}

interface Troubles {
  readonly before: ReadonlySet<string>;
  readonly left: ReadonlySet<string>;
}

/** Undefined when the fix holds a command that is not followed. */
function troublesAround(section: Section, fix: Fix, replaced?: Replaced): Troubles | undefined {
  const after = afterFix(section.installation, fix);
  if (after === undefined) return undefined;
  const rename = (key: OutletKey): string => {
    const { device, half } = parseOutlet(key);
    const name = device === replaced?.id ? replaced.old : device;
    return half === undefined ? name : `${name}/${half}`;
  };
  const before = troublesOf([section], (key) => key);
  return { before, left: troublesOf(sectionsWith(after, section.enclosures), rename) };
}

/** What is wrong in a section, as keys to compare; the same key before and after means the same trouble. */
function troublesOf(sections: readonly Section[], rename: (key: OutletKey) => string): ReadonlySet<string> {
  const found = new Set<string>();
  for (const section of sections) {
    const reach = section.reach();
    for (const { standing, protectedBy } of sectionProof(section).outlets) {
      const key = rename(standing.outlet.key);
      const neutral = neutralOf(standing);
      if (protectedBy.length === 0) found.add(`${key}|not-protected`);
      if (!standing.live) found.add(`${key}|dead`);
      if (needsNeutral(standing) && !reach.isGrounded(neutral)) found.add(`${key}|no-neutral`);
      if (needsNeutral(standing) && reach.isLive(neutral)) found.add(`${key}|live-neutral`);
      if (reach.isGrounded(hotOf(standing))) found.add(`${key}|hot-on-neutral`);
    }
    for (const box of section.enclosures)
      for (const trouble of groundTroubles(section, box, rename)) found.add(trouble);
    const lineLoad = lineLoadDevices(section);
    for (const device of lineLoad) for (const trouble of troublesAt(section, device, rename)) found.add(trouble);
    for (const { by } of section.shorts()) found.add(`hot-neutral|${keyOf(by)}`);
    for (const { by } of section.neutralsOnGround()) found.add(`neutral-ground|${keyOf(by)}`);
    for (const { by } of section.hotsOnGround()) found.add(`hot-ground|${keyOf(by)}`);
    for (const { by } of section.deadHotsOnGround()) found.add(`hot-ground|${keyOf(by)}`);
    for (const trouble of colourTroubles(section)) found.add(trouble);
    for (const { device, outlets } of section.switchesInNeutral())
      for (const outlet of outlets) found.add(`${device}|opens-neutral|${rename(outlet)}`);
  }
  return found;
}

/** What is made for ground and is on none. */
function groundTroubles(section: Section, box: Enclosure, rename: (key: OutletKey) => string): readonly string[] {
  const reach = section.reach();
  const devices = Object.values(box.devices).flatMap(({ id, type }) =>
    getDeviceType(type)
      .terminals.filter(({ name, purpose }) => purpose === "ground" && !reach.isOnGround({ device: id, node: name }))
      .map(({ name }) => `${rename(outletKey(id))}|${name}|no-ground`),
  );
  const isBare = box.kind === "box" && box.material === "metal" && !reach.isOnGround({ bond: box.id });
  return isBare ? [...devices, `${box.id}|metal|no-ground`] : devices;
}

/** Conductors whose colour says another thing than what they are used for: a fix that makes one moved the wrong conductor. */
const colourTroubles = (section: Section): readonly string[] =>
  conductorUses(section).flatMap((use) => {
    const { subject, key = "", ends } = use;
    const note = (is: boolean, trouble: string): readonly string[] => (is ? [`${subject.id} ${key}|${trouble}`] : []);
    return [
      ...note(isBareCarrying(use) || isBareOnCircuitUnfed(section, use), "bare-on-circuit"),
      ...note(isWhiteHot(use) && ends.some((end) => isWhite(shownColour(use, end))), "white-hot"),
      ...note(isColouredNeutral(use), "coloured-neutral"),
    ];
  });

/** Also while something else reaches it: the colour is wrong then already. Knob-and-tube had one colour for both. */
const isColouredNeutral = (use: ConductorUse): boolean =>
  !use.grounding &&
  use.leadsTo.neutral &&
  (use.role === "grounded" || use.role === "conflict") &&
  use.cable?.construction !== "knob-and-tube" &&
  use.ends.some((end) => !isWhite(shownColour(use, end)));

function troublesAt(section: Section, found: LineLoadDevice, rename: (key: OutletKey) => string): readonly string[] {
  const { device, open, lineLive, loadLive, lineGrounded, loadGrounded } = found;
  const troubles: string[] = [];
  const note = (is: boolean, trouble: string): void => {
    if (is) troubles.push(`${device.id}|${trouble}`);
  };
  note(isSwapped(found), "fed-on-load");
  note(swappedPole(found) !== undefined, "half-fed-on-load");
  note(lineLive && loadLive, "hot-on-both");
  note(lineGrounded && loadGrounded, "neutral-on-both");
  note(lineLive && !lineGrounded && !loadGrounded, "no-neutral");
  // As the rules tell it: what a device that is fed the wrong way shows of its outlets means nothing.
  if (!lineLive || loadGrounded || !isFedRightWay(found)) return troubles;
  for (const standing of section.outlets()) {
    if (standing.outlet.device.id === device.id) continue;
    const hot = open.isLive(hotOf(standing));
    const neutral = open.isGrounded(neutralOf(standing));
    const key = rename(standing.outlet.key);
    note(standing.live && !hot && neutral, `hot-alone|${key}`);
    note(hot && !neutral && section.reach().isGrounded(neutralOf(standing)), `neutral-alone|${key}`);
  }
  return troubles;
}

const keyOf = (by: PathStep): string => {
  if (by.kind === "cable") return `${by.cable} ${by.conductor}`;
  return by.kind === "jumper" ? by.jumper : `${by.device} ${[by.from, by.to].sort()}`;
};

function sectionsWith(installation: Installation, boxes: readonly Enclosure[]): readonly Section[] {
  const sections = new Map<EnclosureId, Section>();
  for (const { id } of boxes) {
    const section = sectionOf(installation, id);
    if (section !== undefined) sections.set(sectionKey(section), section);
  }
  return [...sections.values()];
}
