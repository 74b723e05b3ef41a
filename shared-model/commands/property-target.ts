import type { Draft } from "immer";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { Installation, Project, StateName } from "../model/project.ts";
import { nameOfEnd } from "../queries/end-facts.ts";
import { findDevice, findJumper, findSplice } from "../queries/find-item.ts";
import type { Property } from "./catalog/properties.ts";
import { propertiesOf } from "./catalog/properties-of.ts";
import type { PropertyTarget } from "./command-args.ts";
import { type Refusal, refusal } from "./define-command.ts";
import { nameOfItem, noSuchItem } from "./find-item-or-refuse.ts";
import { enclosureOr, endOr, installationOr } from "./find-or-refuse.ts";
import { gone, unnamed } from "./item-words.ts";
import { draftInstallation, written } from "./move-ends.ts";

const wording = catalogue({
  conductor: (cable: Part) => `a conductor of ${cable}`,
  entry: (box: Part) => `the entry of ${box}`,
  "pass-through": (box: Part) => `the pass-through of ${box}`,
  project: "the drawing",
  ring: (box: Part) => `the ring of ${box}`,
});

const noSuch = catalogue({
  entry: (box: Part) => `${box} has no such entry. Pick one that is there.`,
  "pass-through": (box: Part) => `${box} has no such pass-through. Pick one that is there.`,
  ring: (box: Part) => `${box} has no such ring. Pick one that is there.`,
});

/** Why the target cannot be changed: it is not there. */
export function noSuchTarget(project: Project, state: StateName, target: PropertyTarget): Refusal | undefined {
  switch (target.kind) {
    case "project":
      return undefined;
    case "end":
      return endOr(project, state, target.enclosure, target.id).no;
    case "entry":
    case "ring":
    case "pass-through": {
      const { found, no } = enclosureOr(project, state, target.enclosure);
      if (no !== undefined) return no;
      if (partsOf(found.enclosure, target.kind)[target.id] !== undefined) return undefined;
      return refusal("unknown-item", noSuch[target.kind](found.enclosure.name));
    }
    case "conductor": {
      const { found, no } = installationOr(project, state);
      if (no !== undefined) return no;
      if (found.cables[target.cable]?.conductors[target.id] !== undefined) return undefined;
      return refusal("unknown-item", gone.conductor);
    }
    default:
      return noSuchItem(project, state, target);
  }
}

function partsOf(enclosure: Enclosure, kind: "entry" | "ring" | "pass-through"): Readonly<Record<string, unknown>> {
  if (kind === "entry") return enclosure.entries;
  if (kind === "pass-through") return enclosure.passThroughs;
  return enclosure.kind === "box" ? enclosure.rings : {};
}

/** The entity that carries the fields. `refuse` has made sure that it is there. */
export function entityOf(project: Project, state: StateName, target: PropertyTarget): object {
  if (target.kind === "project") return project;
  if (target.kind === "room") return written(project.rooms[target.id]);
  const installation = written(state === "as-found" ? project.asFound : project.proposed);
  return written(inInstallation(installation, installation, target));
}

/** As `entityOf`, in a draft: found by walking the frozen state, written in the draft. */
export function draftEntityOf(
  draft: Draft<Project>,
  state: StateName,
  target: PropertyTarget,
  before: Project,
): object {
  if (target.kind === "project") return draft;
  if (target.kind === "room") return written(draft.rooms[target.id]);
  const source = written(state === "as-found" ? before.asFound : before.proposed);
  return written(inInstallation(draftInstallation(draft, state), source, target));
}

type Inside = Exclude<PropertyTarget, { kind: "project" } | { kind: "room" }>;

function inInstallation(
  target: Installation | Draft<Installation>,
  source: Installation,
  item: Inside,
): object | undefined {
  switch (item.kind) {
    case "enclosure":
      return target.enclosures[item.id];
    case "cable":
      return target.cables[item.id];
    case "load":
      return target.loads[item.id];
    case "label":
      return target.labels[item.id];
    case "conductor":
      return target.cables[item.cable]?.conductors[item.id];
    case "end":
      return target.enclosures[item.enclosure]?.places[item.id];
    case "entry":
      return target.enclosures[item.enclosure]?.entries[item.id];
    case "pass-through":
      return target.enclosures[item.enclosure]?.passThroughs[item.id];
    case "ring": {
      const box = target.enclosures[item.enclosure];
      return box?.kind === "box" ? box.rings[item.id] : undefined;
    }
    case "device":
      return target.enclosures[written(findDevice(source, item.id)).enclosure.id]?.devices[item.id];
    case "splice":
      return target.enclosures[written(findSplice(source, item.id)).enclosure.id]?.splices[item.id];
    case "jumper":
      return target.enclosures[written(findJumper(source, item.id)).enclosure.id]?.jumpers[item.id];
  }
}

/** Fields that mean something on the target. */
export function propertiesOfTarget(project: Project, state: StateName, target: PropertyTarget): readonly Property[] {
  if (target.kind === "enclosure") return propertiesOf("enclosure", entityOf(project, state, target) as Enclosure);
  if (target.kind === "device") return propertiesOf("device", entityOf(project, state, target) as Device);
  return propertiesOf(target.kind);
}

export const pathOf = (property: Property): readonly string[] => property.path ?? [property.field];

/** What a field holds now; undefined when it is absent. */
export function fieldValue(entity: object, property: Property): unknown {
  let value: unknown = entity;
  for (const key of pathOf(property)) value = (value as Record<string, unknown> | undefined)?.[key];
  return value;
}

/** "B1", "C1 BK", "an entry of B1", for names of steps. */
export function callTarget(project: Project, state: StateName, target: PropertyTarget): string {
  const installation = state === "as-found" ? project.asFound : project.proposed;
  switch (target.kind) {
    case "project":
      return wording.project;
    case "conductor":
      return wording.conductor(installation?.cables[target.cable]?.name ?? unnamed.cable);
    case "end": {
      const enclosure = installation?.enclosures[target.enclosure];
      return installation && enclosure ? nameOfEnd(installation, enclosure, target.id) : unnamed.end;
    }
    case "entry":
    case "ring":
    case "pass-through":
      return wording[target.kind](installation?.enclosures[target.enclosure]?.name ?? unnamed.box);
    case "label":
      return unnamed.label;
    default:
      return nameOfItem(project, state, target) ?? unnamed.item;
  }
}
