import { sameValue } from "../lib/same-value.ts";
import type { BoxIntent } from "../model/project.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { flag, idText, optional, orNull, record, stateName, tableOf } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { cablesAt } from "./entries.ts";
import { enclosureOr } from "./find-or-refuse.ts";
import { draftInstallation } from "./move-ends.ts";
import { copyOf } from "./plain-data.ts";

type Args = CommandArgs["set-box-intent"];

/** Says what a box is meant to do: which cable supplies it and which are to be behind its ground-fault device. */
export const setBoxIntent = defineCommand<Args>({
  id: "set-box-intent",
  args: record<Args>({
    state: stateName,
    enclosure: idText,
    intent: orNull(record<BoxIntent>({ supply: optional(idText), protect: optional(tableOf(flag)) })),
  }),
  label: (project, { state, enclosure, intent }) =>
    `${intent === null ? "Clear" : "Set"} intent of ${getInstallation(project, state).enclosures[enclosure]?.name ?? "a box"}`,
  refuse(project, { state, enclosure: id, intent }) {
    const { found, no } = enclosureOr(project, state, id);
    if (no !== undefined) return no;
    const here = cablesAt(found.installation, found.enclosure);
    for (const cable of namedIn(intent)) {
      if (here.has(cable)) continue;
      const name = found.installation.cables[cable as keyof typeof found.installation.cables]?.name ?? "That cable";
      return refusal("cable-not-here", `${name} does not enter ${found.enclosure.name}. Pick a cable that does.`);
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
