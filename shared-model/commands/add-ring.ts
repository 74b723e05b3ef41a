import type { Draft } from "immer";
import type { Ring } from "../model/enclosure.ts";
import { nextOrder } from "../queries/in-order.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { volumeFact } from "./args-of-model.ts";
import { idText, oneOf, record, stateName } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { enclosureOr } from "./find-or-refuse.ts";
import { idInUseHere } from "./fresh-ids.ts";
import { draftInstallation, written } from "./move-ends.ts";
import { noSuchVolume } from "./property-value.ts";

type Args = CommandArgs["add-ring"];

const WORDS: Readonly<Record<Ring["kind"], string>> = {
  "plaster-ring": "plaster ring",
  "raised-cover": "raised cover",
  extension: "extension",
};

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
    `Add ${WORDS[kind]} to ${getInstallation(project, state).enclosures[enclosure]?.name ?? "a box"}`,
  refuse(project, { state, enclosure, id, volume }) {
    const { found, no } = enclosureOr(project, state, enclosure);
    if (no !== undefined) return no;
    if (found.enclosure.kind === "panel")
      return refusal("not-a-box", `${found.enclosure.name} is a panel. Rings and extensions go on boxes: pick a box.`);
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
