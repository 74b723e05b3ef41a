import type { Draft } from "immer";
import type { PassThrough } from "../model/enclosure.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { inches } from "../units/quantity.ts";
import { entryTarget } from "./args-of-model.ts";
import { idText, listOf, numberFrom, optional, record, stateName } from "./args-shape.ts";
import type { CommandArgs, EntryTarget } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { makeEntry, noSuchEntry } from "./entries.ts";
import { enclosureOr } from "./find-or-refuse.ts";
import { idInUseHere } from "./fresh-ids.ts";
import { draftInstallation, written } from "./move-ends.ts";

type Args = CommandArgs["add-pass-through"];

/** Runs conductors of a cable through a box unbroken, straight or with a loop left in it. */
export const addPassThrough = defineCommand<Args>({
  id: "add-pass-through",
  args: record<Args>({
    state: stateName,
    enclosure: idText,
    id: idText,
    cable: idText,
    conductors: listOf(idText, 1),
    entryIn: entryTarget,
    entryOut: entryTarget,
    loopLengthIn: optional(numberFrom(0, 1_200)),
  }),
  label(project, { state, enclosure, cable }) {
    const installation = getInstallation(project, state);
    return `Run ${installation.cables[cable]?.name ?? "a cable"} through ${installation.enclosures[enclosure]?.name ?? "a box"}`;
  },
  refuse(project, { state, enclosure: box, id, cable: cableId, conductors, entryIn, entryOut }) {
    const { found, no } = enclosureOr(project, state, box);
    if (no !== undefined) return no;
    const { enclosure, installation } = found;
    const cable = installation.cables[cableId];
    if (cable === undefined)
      return refusal("unknown-item", "That cable is no longer there. Pick one that is on the sheet and try again.");
    if (new Set(conductors).size < conductors.length || conductors.some((key) => !(key in cable.conductors)))
      return refusal(
        "unknown-conductor",
        `${cable.name} has no such conductors. Pick each of its own conductors once.`,
      );
    if ([cable.sides.a, cable.sides.b].some((side) => "enclosure" in side && side.enclosure === box))
      return refusal(
        "cable-ends-here",
        `${cable.name} ends in ${enclosure.name}. Only a cable that goes on to another box can run through it.`,
      );
    if (Object.values(enclosure.passThroughs).some((pass) => pass.cable === cableId))
      return refusal("already-passes", `${cable.name} already runs through ${enclosure.name}. Remove that first.`);
    if (idOf(entryIn) === idOf(entryOut))
      return refusal("same-entry", "It needs one entry to come in by and another to leave by. Pick a second entry.");
    return (
      noSuchEntry(project, enclosure, entryIn) ??
      noSuchEntry(project, enclosure, entryOut) ??
      idInUseHere(project, box, "passThroughs", id)
    );
  },
  apply(draft, { state, enclosure, id, cable, conductors, entryIn, entryOut, loopLengthIn }) {
    const installation = draftInstallation(draft, state);
    const pass: PassThrough = {
      id,
      cable,
      conductors: [...conductors],
      entryIn: makeEntry(installation, enclosure, entryIn),
      entryOut: makeEntry(installation, enclosure, entryOut),
      ...(loopLengthIn !== undefined && { loopLengthIn: inches(loopLengthIn) }),
    };
    written(installation.enclosures[enclosure]).passThroughs[id] = pass as Draft<PassThrough>;
  },
});

const idOf = (target: EntryTarget): string => ("newEntry" in target ? target.newEntry : target.entry);
