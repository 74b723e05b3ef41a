import { catalogue, type Part } from "../lib/catalogue.ts";
import { idText, listOf, record, sheetPoint } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { gone, unnamed } from "./item-words.ts";

type Args = CommandArgs["bend-cable"];

const wording = catalogue({
  bend: (cable: Part) => `Bend ${cable}`,
  straighten: (cable: Part) => `Straighten ${cable}`,
  tooMany: (most: Part) => `A cable has at most ${most} bends. Take some away first.`,
});

/** So many bends nobody draws; a file that has them was not made by hand. */
const MOST_BENDS = 60;

/** Leads a cable between its boxes through bends of one's own; without any it finds its own way again. */
export const bendCable = defineCommand<Args>({
  id: "bend-cable",
  args: record<Args>({ cable: idText, bends: listOf(sheetPoint, 0) }),
  label(project, { cable, bends }) {
    const name = (project.asFound.cables[cable] ?? project.proposed?.cables[cable])?.name ?? unnamed.cable;
    return bends.length === 0 ? wording.straighten(name) : wording.bend(name);
  },
  refuse(project, { cable: id, bends }) {
    const cable = project.asFound.cables[id] ?? project.proposed?.cables[id];
    if (cable === undefined) return refusal("unknown-item", gone.cable);
    if (bends.length > MOST_BENDS) return refusal("too-many-bends", wording.tooMany(MOST_BENDS));
    return undefined;
  },
  apply(draft, { cable, bends }, before) {
    const was = before.layout.cables[cable] ?? [];
    const same = was.length === bends.length && was.every(({ x, y }, i) => x === bends[i]?.x && y === bends[i]?.y);
    if (same) return;
    if (bends.length === 0) delete draft.layout.cables[cable];
    else draft.layout.cables[cable] = bends.map(({ x, y }) => ({ x, y }));
  },
  mergeKey: ({ cable }) => cable,
});
