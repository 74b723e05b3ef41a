import { idText, listOf, record, sheetPoint } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";

type Args = CommandArgs["move-enclosures"];

/** Moves boxes and panels on the sheet, where both states stand. It changes nothing about the wiring. */
export const moveEnclosures = defineCommand<Args>({
  id: "move-enclosures",
  args: record<Args>({ moves: listOf(record({ id: idText, to: sheetPoint }), 1) }),
  label(project, { moves }) {
    const [first] = moves;
    if (first === undefined || moves.length > 1) return `Move ${moves.length} boxes`;
    const name = (project.asFound.enclosures[first.id] ?? project.proposed?.enclosures[first.id])?.name;
    return `Move ${name ?? "a box"}`;
  },
  refuse(project, { moves }) {
    const known = moves.every(
      ({ id }) => id in project.asFound.enclosures || id in (project.proposed?.enclosures ?? {}),
    );
    if (known) return undefined;
    return refusal(
      "unknown-item",
      "One of the boxes is no longer there. Pick boxes that are on the sheet and try again.",
    );
  },
  apply(draft, { moves }, before) {
    for (const { id, to } of moves) {
      const was = before.layout.enclosures[id];
      if (was?.x !== to.x || was.y !== to.y) draft.layout.enclosures[id] = { ...to };
    }
  },
  mergeKey: ({ moves }) => `move ${moves.map(({ id }) => id).join(" ")}`,
});
