import type { Draft } from "immer";
import { catalogue, type Part } from "../lib/catalogue.ts";
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
import { gone, unnamed } from "./item-words.ts";
import { draftInstallation, written } from "./move-ends.ts";

type Args = CommandArgs["add-pass-through"];

const wording = catalogue({
  endsHere: (cable: Part, box: Part) =>
    `${cable} ends in ${box}. Only a cable that goes on to another box can run through it.`,
  noConductors: (cable: Part) => `${cable} has no such conductors. Pick each of its own conductors once.`,
  run: (cable: Part, box: Part) => `Run ${cable} through ${box}`,
  runsAlready: (cable: Part, box: Part) => `${cable} already runs through ${box}. Remove that first.`,
  sameEntry: "It needs one entry to come in by and another to leave by. Pick a second entry.",
});

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
    return wording.run(
      installation.cables[cable]?.name ?? unnamed.cable,
      installation.enclosures[enclosure]?.name ?? unnamed.box,
    );
  },
  refuse(project, { state, enclosure: box, id, cable: cableId, conductors, entryIn, entryOut }) {
    const { found, no } = enclosureOr(project, state, box);
    if (no !== undefined) return no;
    const { enclosure, installation } = found;
    const cable = installation.cables[cableId];
    if (cable === undefined) return refusal("unknown-item", gone.cable);
    if (new Set(conductors).size < conductors.length || conductors.some((key) => !(key in cable.conductors)))
      return refusal("unknown-conductor", wording.noConductors(cable.name));
    if ([cable.sides.a, cable.sides.b].some((side) => "enclosure" in side && side.enclosure === box))
      return refusal("cable-ends-here", wording.endsHere(cable.name, enclosure.name));
    if (Object.values(enclosure.passThroughs).some((pass) => pass.cable === cableId))
      return refusal("already-passes", wording.runsAlready(cable.name, enclosure.name));
    if (idOf(entryIn) === idOf(entryOut)) return refusal("same-entry", wording.sameEntry);
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
