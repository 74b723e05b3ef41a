import type { Fix } from "../answers/finding.ts";
import { findLoadItem } from "../catalog/load-items.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { LoadPriority } from "../model/device.ts";
import { type DeviceId, type OutletKey, outletKey, parseOutlet } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { sectionProof } from "../solver/circuit/section-proof.ts";
import type { Section } from "../solver/section.ts";
import { type Replaced, sectionsAfter } from "./fix-trial.ts";
import { listed } from "./rule-parts.ts";

const wording = catalogue({
  medical: "medical equipment",
  fireAlarm: "fire alarm system",
  sumpPump: "sump pump",
  freezer: "freezer",
  alarm: "alarm",
  goesOff: (loads: Part) => `${loads} then goes off with the rest on a trip`,
  theAt: (load: Part, outlet: Part) => `the ${load} at ${outlet}`,
});

/** An outlet behind a device, by the key and name that it has before a fix. */
export interface Behind {
  readonly key: OutletKey;
  readonly name: string;
}

/** The outlets that a device protects. */
export const protectedBy = (sections: readonly Section[], device: DeviceId): readonly Behind[] =>
  sections.flatMap((section) =>
    sectionProof(section)
      .outlets.filter(({ protectedBy: by }) => by.includes(device))
      .map(({ standing: { outlet } }) => ({ key: outlet.key, name: outlet.name })),
  );

/** The outlets that a device would protect with a fix, in the order of their names. */
export function outletsBehindAfter(
  section: Section,
  fix: Fix,
  device: DeviceId,
  replaced?: Replaced,
): readonly Behind[] {
  const now = new Map(section.outlets().map(({ outlet: { key, name } }) => [key, name]));
  return protectedBy(sectionsAfter(section, fix), device)
    .map((behind) => {
      const { device: at, half } = parseOutlet(behind.key);
      const key = at === replaced?.id ? outletKey(replaced.old, half) : behind.key;
      return { key, name: now.get(key) ?? behind.name };
    })
    .sort((a, b) => a.name.localeCompare(b.name, "en", { numeric: true }));
}

/** What must not go off unnoticed, as a sentence calls it. */
export const PRIORITY_WORDS: Readonly<Record<Exclude<LoadPriority, "none">, string>> = {
  freezer: wording.freezer,
  medical: wording.medical,
  alarm: wording.alarm,
  "fire-alarm-system": wording.fireAlarm,
  "sump-pump": wording.sumpPump,
};

/**
 * What must not go off unnoticed and would share a trip with other outlets, for the title of an offer: "; the freezer at
 * R4 then goes off with them". Empty where a device has one outlet, and for what is behind it already.
 */
export function sharedTripWords(
  installation: Installation,
  behind: readonly Behind[],
  gained: ReadonlySet<OutletKey> = new Set(behind.map(({ key }) => key)),
): string {
  if (behind.length < 2) return "";
  const found = behind
    .filter(({ key }) => gained.has(key))
    .flatMap(({ key, name }) =>
      prioritiesAt(installation, key).map((priority) => wording.theAt(PRIORITY_WORDS[priority], name)),
    );
  return found.length === 0 ? "" : `; ${wording.goesOff(listed(found))}`;
}

export function prioritiesAt(
  { loads, enclosures }: Installation,
  key: OutletKey,
): readonly Exclude<LoadPriority, "none">[] {
  const { device: id } = parseOutlet(key);
  const device = Object.values(enclosures).find(({ devices }) => id in devices)?.devices[id];
  const plugged = Object.values(loads)
    .filter(({ plug }) => plug === key || parseOutlet(plug).device === id)
    .map(({ priority, item }) => priority ?? findLoadItem(item)?.priority);
  return [...new Set([device?.priority, ...plugged])].flatMap((one) =>
    one === undefined || one === "none" ? [] : one,
  );
}
