import type { CommandCall } from "../answers/command-call.ts";
import type { Fix } from "../answers/finding.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { DeviceId, EnclosureId } from "../model/ids.ts";
import { parseOutlet } from "../model/ids.ts";
import type { Installation, Label, StateName } from "../model/project.ts";
import type { Section } from "../solver/section.ts";
import { fixTogether } from "./fix-parts.ts";
import type { Replaced } from "./fix-trial.ts";
import { ungroundedReceptacles } from "./no-ground.ts";
import { takesGroundPin } from "./receptacle-kinds.ts";
import type { Behind } from "./shared-trip.ts";

const wording = catalogue({
  withLabels: (fix: Part) => `${fix}; with the labels for no ground`,
});

const NO_GROUND = "No Equipment Ground";
const PROTECTED = "GFCI Protected";
/** Section that asks for the labels. Source: NFPA 70, as two trade sites state it. */
export const NO_GROUND_LABELS_ASKED_BY = "406.4(D)(2)";

const labelled = new WeakMap<Installation["labels"], ReadonlyMap<string, readonly Label[]>>();

/** Labels by the id of what they are on. Kept with the table of labels. */
function labelsOn({ labels }: Installation): ReadonlyMap<string, readonly Label[]> {
  let found = labelled.get(labels);
  if (found === undefined) {
    const made = new Map<string, Label[]>();
    for (const label of Object.values(labels)) {
      const on = "device" in label.on ? label.on.device : "enclosure" in label.on ? label.on.enclosure : label.on.cable;
      const list = made.get(on);
      if (list === undefined) made.set(on, [label]);
      else list.push(label);
    }
    found = made;
    labelled.set(labels, found);
  }
  return found;
}

/** The words that a receptacle without a ground lacks, where it protects itself, or is protected by another device. */
export function missingLabels(
  installation: Installation,
  device: DeviceId,
  box: EnclosureId,
  protectsItself: boolean,
): readonly string[] {
  const labels = labelsOn(installation);
  const there = [...(labels.get(device) ?? []), ...(labels.get(box) ?? [])];
  const wanted = protectsItself ? [NO_GROUND] : [PROTECTED, NO_GROUND];
  return wanted.filter((words) => !there.some((label) => isWorded(label, words)));
}

const letters = (text: string): string => text.toLowerCase().replace(/[^a-z]/g, "");

const isWorded = ({ wording }: Label, words: string): boolean => letters(wording).includes(letters(words));

/** A label with words that a receptacle without a ground is asked to have. */
export const isNoGroundLabel = (label: Label): boolean =>
  [NO_GROUND, PROTECTED].some((words) => isWorded(label, words));

/** Commands that put labels on devices. */
export function labelCalls(
  { labels }: Installation,
  missing: readonly (readonly [device: DeviceId, words: readonly string[]])[],
  state: StateName,
): readonly CommandCall[] {
  return missing.flatMap(([device, words]) => {
    let number = 0;
    const fresh = (): string => {
      number += 1;
      const id = `${device.slice(0, 30)}-l${number}`;
      return id in labels ? fresh() : id;
    };
    return words.map((wording) => ({
      command: "add-label",
      args: { state, id: fresh(), wording, on: { device }, requiredBy: NO_GROUND_LABELS_ASKED_BY },
    }));
  });
}

/**
 * A fix that brings outlets behind a ground-fault device, with the labels that those without a ground need then. `device`
 * is the one that protects them, under the id that it has afterwards.
 */
export function withLabels(
  section: Section,
  installation: Installation,
  fix: Fix,
  behind: readonly Behind[],
  { device, state, replaced }: { readonly device: DeviceId; readonly state: StateName; readonly replaced?: Replaced },
): Fix {
  const keys = new Set(behind.map(({ key }) => parseOutlet(key).device));
  const missing = ungroundedReceptacles(section)
    .filter(({ neverHad, device: old }) => neverHad && keys.has(old.id))
    .filter(({ device: old }) => old.id === replaced?.old || takesGroundPin(old))
    .map(({ device: { id }, box }) => {
      const then = id === replaced?.old ? replaced.id : id;
      return [then, missingLabels(installation, id, box.id, then === device)] as const;
    });
  const labels = labelCalls(installation, missing, state);
  if (labels.length === 0) return fix;
  const { command, args } = fix.call;
  const calls = command === "run-together" ? (args as { calls: readonly CommandCall[] }).calls : [fix.call];
  return fixTogether(wording.withLabels(fix.title), [...calls, ...labels]);
}
