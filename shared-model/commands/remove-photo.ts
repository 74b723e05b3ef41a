import { catalogue, type Part } from "../lib/catalogue.ts";
import { idText, record } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand } from "./define-command.ts";
import { photoGone } from "./photo-gone.ts";

type Args = CommandArgs["remove-photo"];

const wording = catalogue({
  remove: (photo: Part) => `Remove the photo ${photo}`.trimEnd(),
});

export const removePhoto = defineCommand<Args>({
  id: "remove-photo",
  args: record<Args>({ id: idText }),
  label: ({ attachments }, { id }) => wording.remove(attachments[id]?.name ?? ""),
  refuse: photoGone,
  apply(draft, { id }) {
    delete draft.attachments[id];
  },
});
