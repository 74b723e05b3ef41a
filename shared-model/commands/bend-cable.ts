import { idText, listOf, record, sheetPoint } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";

type Args = CommandArgs["bend-cable"];

/** So many bends nobody draws; a file that has them was not made by hand. */
const MOST_BENDS = 60;

/** Leads a cable between its boxes through bends of one's own; without any it finds its own way again. */
export const bendCable = defineCommand<Args>({
  id: "bend-cable",
  args: record<Args>({ cable: idText, bends: listOf(sheetPoint, 0) }),
  label(project, { cable, bends }) {
    const name = (project.asFound.cables[cable] ?? project.proposed?.cables[cable])?.name ?? "a cable";
    return bends.length === 0 ? `Straighten ${name}` : `Bend ${name}`;
  },
  refuse(project, { cable: id, bends }) {
    const cable = project.asFound.cables[id] ?? project.proposed?.cables[id];
    if (cable === undefined)
      return refusal("unknown-item", "That cable is no longer there. Pick one that is on the sheet and try again.");
    if (bends.length > MOST_BENDS)
      return refusal("too-many-bends", `A cable has at most ${MOST_BENDS} bends. Take some away first.`);
    return undefined;
  },
  apply(draft, { cable, bends }, before) {
    const was = before.layout.cables[cable] ?? [];
    const same = was.length === bends.length && was.every(({ x, y }, i) => x === bends[i]?.x && y === bends[i]?.y);
    if (same) return;
    if (bends.length === 0) delete draft.layout.cables[cable];
    else draft.layout.cables[cable] = bends.map(({ x, y }) => ({ x, y }));
  },
  mergeKey: ({ cable }) => `bend ${cable}`,
});
