import { catalogue } from "../lib/catalogue.ts";
import { readingLabel } from "./args-of-reading.ts";
import { idText, record } from "./args-shape.ts";
import { noSuchReading } from "./change-reading.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand } from "./define-command.ts";

type Args = CommandArgs["remove-reading"];

const wording = catalogue({
  remove: "Remove reading",
});

/** Takes a reading out of the document. Nothing else does: what it was taken at may go, and the reading stays. */
export const removeReading = defineCommand<Args>({
  id: "remove-reading",
  args: record<Args>({ id: idText }),
  label(project, { id }) {
    const reading = project.readings[id];
    return reading === undefined ? wording.remove : readingLabel(reading, "remove");
  },
  refuse: (project, { id }) => noSuchReading(project, id),
  apply(draft, { id }) {
    delete draft.readings[id];
  },
});
