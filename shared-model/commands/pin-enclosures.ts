import { catalogue, type Part } from "../lib/catalogue.ts";
import { flag, idText, listOf, record } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { unpin } from "./flow/shared-tables.ts";
import { gone, unnamed } from "./item-words.ts";

type Args = CommandArgs["pin-enclosures"];

const wording = catalogue({
  pin: (boxes: Part) => `Pin ${boxes}`,
  unpin: (boxes: Part) => `Unpin ${boxes}`,
});

/** Says that boxes and panels stay where they are when the drawing is arranged, or no longer. It moves nothing. */
export const pinEnclosures = defineCommand<Args>({
  id: "pin-enclosures",
  args: record<Args>({ enclosures: listOf(idText, 1), pinned: flag }),
  label(project, { enclosures, pinned }) {
    const [first] = enclosures;
    const one = first && (project.asFound.enclosures[first] ?? project.proposed?.enclosures[first])?.name;
    const what = enclosures.length === 1 ? (one ?? unnamed.box) : unnamed.boxes(enclosures.length);
    return pinned ? wording.pin(what) : wording.unpin(what);
  },
  refuse(project, { enclosures }) {
    const known = enclosures.every(
      (id) => id in project.asFound.enclosures || id in (project.proposed?.enclosures ?? {}),
    );
    if (known) return undefined;
    return refusal("unknown-item", gone.boxes);
  },
  apply(draft, { enclosures, pinned }, { layout }) {
    if (!pinned) for (const id of enclosures) unpin(draft, layout, id);
    else if (enclosures.some((id) => layout.pinned?.[id] !== true))
      draft.layout.pinned = { ...layout.pinned, ...Object.fromEntries(enclosures.map((id) => [id, true as const])) };
  },
});
