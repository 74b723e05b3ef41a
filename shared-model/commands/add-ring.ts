import type { Draft } from "immer";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Ring } from "../model/enclosure.ts";
import { nextOrder } from "../queries/in-order.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { volumeFact } from "./args-of-model.ts";
import { idText, oneOf, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { enclosureOr } from "./find-or-refuse.ts";
import { idInUseHere } from "./fresh-ids.ts";
import { unnamed } from "./item-words.ts";
import { draftInstallation, written } from "./move-ends.ts";
import { noSuchVolume } from "./property-value.ts";

type Args = CommandArgs["add-ring"];

const wording = catalogue({
  extension: (box: Part) => `Add extension to ${box}`,
  notABox: (panel: Part) => `${panel} is a panel. Rings and extensions go on boxes: pick a box.`,
  "plaster-ring": (box: Part) => `Add plaster ring to ${box}`,
  "raised-cover": (box: Part) => `Add raised cover to ${box}`,
});

/** Puts a raised ring, cover or extension on a box. It adds volume only where it is marked or a standard size. */
export const addRing = defineCommand<Args>({
  id: "add-ring",
  args: record<Args>({
    state: stateName,
    enclosure: idText,
    id: idText,
    kind: oneOf(["plaster-ring", "raised-cover", "extension"]),
    volume: volumeFact,
  }),
  label: (project, { state, enclosure, kind }) =>
    wording[kind](getInstallation(project, state).enclosures[enclosure]?.name ?? unnamed.box),
  refuse(project, { state, enclosure, id, volume }) {
    const { found, no } = enclosureOr(project, state, enclosure);
    if (no !== undefined) return no;
    if (found.enclosure.kind === "panel") return refusal("not-a-box", wording.notABox(found.enclosure.name));
    return noSuchVolume(volume) ?? idInUseHere(project, enclosure, "rings", id);
  },
  apply(draft, { state, enclosure, id, kind, volume }, before) {
    const source = written(getInstallation(before, state).enclosures[enclosure]);
    const box = written(draftInstallation(draft, state).enclosures[enclosure]);
    if (box.kind !== "box" || source.kind !== "box") throw new Error("Only a box has rings.");
    const ring: Ring = { id, kind, volume: { ...volume }, order: nextOrder(source.rings) };
    box.rings[id] = ring as Draft<Ring>;
  },
});
