import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Project, StateName } from "../model/project.ts";
import { findDevice, findJumper, findSplice } from "../queries/find-item.ts";
import type { ItemRef } from "./command-args.ts";
import { type Refusal, refusal } from "./define-command.ts";
import { installationOr } from "./find-or-refuse.ts";
import { gone, unnamed } from "./item-words.ts";

const wording = catalogue({
  label: (words: Part) => `label “${words}”`,
});

/** What a person calls an item; undefined when it is not there. A label is called by its wording. */
export function nameOfItem(project: Project, state: StateName, item: ItemRef): string | undefined {
  if (item.kind === "room") return project.rooms[item.id]?.name;
  const installation = state === "as-found" ? project.asFound : project.proposed;
  if (installation === undefined) return undefined;
  switch (item.kind) {
    case "enclosure":
      return installation.enclosures[item.id]?.name;
    case "cable":
      return installation.cables[item.id]?.name;
    case "device":
      return findDevice(installation, item.id)?.device.name;
    case "splice":
      return findSplice(installation, item.id)?.splice.name;
    case "jumper":
      return findJumper(installation, item.id)?.jumper.name;
    case "load":
      return installation.loads[item.id]?.name;
    case "label":
      return installation.labels[item.id]?.wording;
  }
}

/** Why an item cannot be worked on: its state was not started, or it is gone. */
export function noSuchItem(project: Project, state: StateName, item: ItemRef): Refusal | undefined {
  const { no } = installationOr(project, state);
  if (no !== undefined) return no;
  if (nameOfItem(project, state, item) !== undefined) return undefined;
  return refusal("unknown-item", gone[item.kind]);
}

/** "B1", "the label “…”", for names of steps. */
export function callItem(project: Project, state: StateName, item: ItemRef): string {
  const name = nameOfItem(project, state, item) ?? unnamed.item;
  return item.kind === "label" ? wording.label(name) : name;
}
