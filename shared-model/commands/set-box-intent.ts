import { catalogue, type Part } from "../lib/catalogue.ts";
import { sameValue } from "../lib/same-value.ts";
import type { BoxIntent } from "../model/project.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { flag, idText, optional, orNull, record, stateName, tableOf } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { cablesAt } from "./entries.ts";
import { enclosureOr } from "./find-or-refuse.ts";
import { unnamed } from "./item-words.ts";
import { draftInstallation } from "./move-ends.ts";
import { copyOf } from "./plain-data.ts";

type Args = CommandArgs["set-box-intent"];

const wording = catalogue({
  clear: (box: Part) => `Clear intent of ${box}`,
  notHere: (cable: Part, box: Part) => `${cable} does not enter ${box}. Pick a cable that does.`,
  set: (box: Part) => `Set intent of ${box}`,
  thatCable: "That cable",
});

/** Says what a box is meant to do: which cable supplies it and which are to be behind its ground-fault device. */
export const setBoxIntent = defineCommand<Args>({
  id: "set-box-intent",
  args: record<Args>({
    state: stateName,
    enclosure: idText,
    intent: orNull(record<BoxIntent>({ supply: optional(idText), protect: optional(tableOf(flag)) })),
  }),
  label: (project, { state, enclosure, intent }) =>
    wording[intent === null ? "clear" : "set"](
      getInstallation(project, state).enclosures[enclosure]?.name ?? unnamed.box,
    ),
  refuse(project, { state, enclosure: id, intent }) {
    const { found, no } = enclosureOr(project, state, id);
    if (no !== undefined) return no;
    const here = cablesAt(found.installation, found.enclosure);
    for (const cable of namedIn(intent)) {
      if (here.has(cable)) continue;
      const name =
        found.installation.cables[cable as keyof typeof found.installation.cables]?.name ?? wording.thatCable;
      return refusal("cable-not-here", wording.notHere(name, found.enclosure.name));
    }
    return undefined;
  },
  apply(draft, { state, enclosure, intent }, before) {
    const { boxes } = draftInstallation(draft, state).intent;
    const was = getInstallation(before, state).intent.boxes[enclosure];
    if (intent === null || (namedIn(intent).length === 0 && intent.supply === undefined)) {
      if (was !== undefined) delete boxes[enclosure];
    } else if (!sameValue(was, intent)) boxes[enclosure] = copyOf(intent);
  },
});

const namedIn = (intent: BoxIntent | null): readonly string[] => [
  ...(intent?.supply === undefined ? [] : [intent.supply]),
  ...Object.keys(intent?.protect ?? {}),
];
