import { useMemo } from "react";
import type { CableId, DeviceId, EnclosureId, SpliceId } from "../../shared-model/model/ids.ts";
import { cablesInto } from "../../shared-model/queries/cables-into.ts";
import {
  changedBetweenStates,
  type EnclosureChange,
  type StateChanges,
} from "../../shared-model/queries/changed-between-states.ts";
import { type DocumentState, documentStore } from "../state/document-store.ts";
import { useStore } from "../state/use-store.ts";
import { wording } from "./words.ts";

/** What differs from as found in one box, while proposed is shown. Nothing that is in both states is in it. */
export interface BoxDifference {
  readonly change: EnclosureChange | undefined;
  readonly newDevices: ReadonlySet<DeviceId>;
  /** Name of the device of as found whose place a device takes. */
  readonly replaces: ReadonlyMap<DeviceId, string>;
  readonly newSplices: ReadonlySet<SpliceId>;
  readonly newCables: ReadonlySet<CableId>;
}

/** The difference of the states; undefined while as found is shown: it is the ground that proposed is compared with. */
export function shownDifference({ project, state }: DocumentState): StateChanges | undefined {
  if (state !== "proposed" || project.proposed === undefined) return undefined;
  return changedBetweenStates(project.asFound, project.proposed);
}

/** Selector: the difference in one box as one text, so that nothing renders for a box where nothing changed. */
export function differenceText(document: DocumentState, id: EnclosureId): string {
  const changes = shownDifference(document);
  const proposed = document.project.proposed;
  const box = proposed?.enclosures[id];
  if (changes === undefined || proposed === undefined || box === undefined) return "";
  const lines: string[] = [];
  const change = changes.enclosures.get(id);
  if (change === undefined) return "";
  lines.push(`box ${change}`);
  for (const device of Object.keys(box.devices) as DeviceId[]) {
    const made = changes.devices.get(device);
    if (made?.kind === "new") lines.push(`device ${device}`);
    if (made?.kind === "replaces") lines.push(wording.replaces(device, made.name));
  }
  for (const splice of Object.keys(box.splices) as SpliceId[])
    if (changes.newSplices.has(splice)) lines.push(`splice ${splice}`);
  for (const { cable } of cablesInto(proposed.cables, id))
    if (changes.cables.get(cable.id) === "new") lines.push(`cable ${cable.id}`);
  return lines.join("\n");
}

/** Reads the text of `differenceText`. */
export function readDifference(text: string): BoxDifference {
  const newDevices = new Set<DeviceId>();
  const replaces = new Map<DeviceId, string>();
  const newSplices = new Set<SpliceId>();
  const newCables = new Set<CableId>();
  let change: EnclosureChange | undefined;
  for (const line of text === "" ? [] : text.split("\n")) {
    const [what = "", id = "", ...name] = line.split(" ");
    if (what === "box") change = id as EnclosureChange;
    else if (what === "device") newDevices.add(id as DeviceId);
    else if (what === "replaces") replaces.set(id as DeviceId, name.join(" "));
    else if (what === "splice") newSplices.add(id as SpliceId);
    else newCables.add(id as CableId);
  }
  return { change, newDevices, replaces, newSplices, newCables };
}

/** What a box is in the work, in a word for its header and its name. */
export const CHANGE_WORDS: Readonly<Record<EnclosureChange, string>> = {
  new: wording.newChange,
  removed: wording.removedChange,
  opened: wording.openedChange,
};

/** One line for the title block: "2 boxes opened, 1 new"; undefined while as found is shown. */
export function differenceWords(document: DocumentState): string | undefined {
  const changes = shownDifference(document);
  if (changes === undefined) return undefined;
  const count = { new: 0, removed: 0, opened: 0 };
  for (const change of changes.enclosures.values()) count[change] += 1;
  const parts = [
    count.opened > 0 && wording.opened(count.opened),
    count.new > 0 && wording.newWord(count.new),
    count.removed > 0 && wording.removed(count.removed),
  ].filter((part) => part !== false);
  return parts.length === 0 ? wording.noneYet : parts.join(", ");
}

export function useDifference(id: EnclosureId): BoxDifference {
  const text = useStore(documentStore, (document) => differenceText(document, id));
  return useMemo(() => readDifference(text), [text]);
}

export const useDifferenceWords = (): string | undefined => useStore(documentStore, differenceWords);
