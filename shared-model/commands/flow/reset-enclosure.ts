import type { Draft } from "immer";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import { sameValue } from "../../lib/same-value.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { CableId, EnclosureId } from "../../model/ids.ts";
import { parseOutlet } from "../../model/ids.ts";
import type { Installation, Label, Project } from "../../model/project.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { type Refusal, refusal } from "../define-command.ts";
import { gone, unnamed } from "../item-words.ts";
import { copyOf } from "../plain-data.ts";
import { enclosureAsProposed } from "./as-proposed.ts";
import { dropUnshared } from "./shared-tables.ts";
import { whatBreaks } from "./what-breaks.ts";
import { replay, Writing } from "./writing.ts";

const wording = catalogue({
  breaks: (box: Part, why: Part) => `${box} cannot be as found again by itself. ${why} Change that first.`,
  endsElsewhere: (box: Part, cable: Part) =>
    `${box} cannot be as found again by itself: ${cable} ends elsewhere in proposed. Move its end back first.`,
  notAsFound: (box: Part) => `As found has no ${box}. Remove it from proposed instead.`,
  onlyProposed: (box: Part, cable: Part) =>
    `${box} cannot be as found again by itself: ${cable} is only in proposed. Remove it there, or move its end elsewhere.`,
  removed: (box: Part, cable: Part) =>
    `${box} cannot be as found again by itself: ${cable} was removed from proposed. Reset all of proposed, or undo the removal.`,
});

/** Name of an enclosure in whichever state has it. */
export const nameInEither = ({ asFound, proposed }: Project, id: EnclosureId): string =>
  (proposed?.enclosures[id] ?? asFound.enclosures[id])?.name ?? unnamed.box;

/** Why one enclosure of proposed cannot be as found again by itself. */
export function cannotReset(project: Project, id: EnclosureId): Refusal | undefined {
  const { asFound, proposed } = project;
  if (proposed === undefined) return undefined;
  const name = nameInEither(project, id);
  if (!(id in asFound.enclosures)) {
    if (!(id in proposed.enclosures)) return refusal("unknown-item", gone.enclosure);
    return refusal("not-as-found", wording.notAsFound(name));
  }
  const here = new Set(
    [asFound, proposed].flatMap(({ cables }) => cablesInto(cables, id).map(({ cable }) => cable.id)),
  );
  for (const cable of here) {
    const no = cableDiffers(project, id, cable);
    if (no !== undefined) return no;
  }
  const writing = resetOf(asFound, proposed, id);
  const because = whatBreaks({ ...project, proposed: writing.value }, proposed, writing.writes);
  if (because === undefined) return undefined;
  return refusal("would-break", wording.breaks(name, because));
}

/** Why the same end of a cable does not lie in the enclosure in both states. */
function cableDiffers({ asFound, proposed }: Project, id: EnclosureId, cable: CableId): Refusal | undefined {
  const found = asFound.cables[cable];
  const planned = proposed?.cables[cable];
  const box = asFound.enclosures[id]?.name ?? unnamed.box;
  const name = (planned ?? found)?.name ?? unnamed.cable;
  const say = (what: "onlyProposed" | "removed" | "endsElsewhere") =>
    refusal("cable-differs", wording[what](box, name));
  if (found === undefined) return say("onlyProposed");
  if (planned === undefined) return say("removed");
  const same = (["a", "b"] as const).every((side) => isIn(found.sides[side], id) === isIn(planned.sides[side], id));
  return same ? undefined : say("endsElsewhere");
}

const isIn = (side: { readonly enclosure: EnclosureId } | { readonly outside: string }, id: EnclosureId): boolean =>
  "enclosure" in side && side.enclosure === id;

export function resetEnclosure(draft: Draft<Project>, id: EnclosureId, before: Project): void {
  const { asFound, proposed } = before;
  if (proposed === undefined) throw new Error("There is no proposed state.");
  const writing = resetOf(asFound, proposed, id);
  replay(draft.proposed as object, writing.writes);
  const splices = Object.keys(proposed.enclosures[id]?.splices ?? {}) as (keyof Enclosure["splices"])[];
  dropUnshared(draft, before, [asFound, writing.value], { enclosures: [], cables: [], splices });
}

/**
 * The content of an enclosure as found again: what is in it, the sides of its cables here, what is plugged into its
 * devices, and what was said of it and of them.
 */
function resetOf(asFound: Installation, proposed: Installation, id: EnclosureId): Writing<Installation> {
  const writing = new Writing<Installation>(proposed);
  const found = asFound.enclosures[id];
  if (found === undefined) return writing;
  const old = proposed.enclosures[id];
  const put = (path: readonly string[], was: unknown, is: unknown): void => {
    if (!sameValue(was, is)) writing.set(path, copyOf(is));
  };
  put(["enclosures", id], old, enclosureAsProposed(found));
  for (const { cable, side } of cablesInto(asFound.cables, id))
    if (cable.id in proposed.cables)
      put(["cables", cable.id, "sides", side], proposed.cables[cable.id]?.sides[side], cable.sides[side]);
  const devices = new Set<string>([...Object.keys(found.devices), ...Object.keys(old?.devices ?? {})]);
  const isHere = (on: Label["on"]): boolean =>
    ("enclosure" in on && on.enclosure === id) || ("device" in on && devices.has(on.device));
  const each = <T>(
    path: readonly string[],
    was: Readonly<Record<string, T>>,
    is: Readonly<Record<string, T>>,
    here: (key: string, value: T) => boolean,
  ) => {
    for (const key of Object.keys({ ...was, ...is }))
      if ([was[key], is[key]].some((value) => value !== undefined && here(key, value)))
        put([...path, key], was[key], is[key]);
  };
  const ofDevice = (key: string): boolean => devices.has(parseOutlet(key as Parameters<typeof parseOutlet>[0]).device);
  each(["loads"], proposed.loads, asFound.loads, (_key, load) => ofDevice(load.plug));
  each(["labels"], proposed.labels, asFound.labels, (_key, label) => isHere(label.on));
  each(["directory"], proposed.directory, asFound.directory, ofDevice);
  each(["intent", "outlets"], proposed.intent.outlets, asFound.intent.outlets, ofDevice);
  each(["intent", "boxes"], proposed.intent.boxes, asFound.intent.boxes, (key) => key === id);
  return writing;
}
