import { idText, record } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand } from "./define-command.ts";
import { photoGone } from "./photo-gone.ts";

type Args = CommandArgs["remove-photo"];

export const removePhoto = defineCommand<Args>({
  id: "remove-photo",
  args: record<Args>({ id: idText }),
  label: ({ attachments }, { id }) => `Remove the photo ${attachments[id]?.name ?? ""}`.trimEnd(),
  refuse: photoGone,
  apply(draft, { id }) {
    delete draft.attachments[id];
  },
});
