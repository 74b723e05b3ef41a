import { catalogue, type Part } from "../lib/catalogue.ts";
import { idText, optional, orNull, record, textUpTo } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand } from "./define-command.ts";
import { photoGone } from "./photo-gone.ts";

type Args = CommandArgs["describe-photo"];

const wording = catalogue({
  describe: (photo: Part) => `Describe the photo ${photo}`.trimEnd(),
});

/** Says what a photo shows, when it was taken, and by whom. Null takes a word back. */
export const describePhoto = defineCommand<Args>({
  id: "describe-photo",
  args: record<Args>({
    id: idText,
    caption: optional(orNull(textUpTo(400))),
    takenAt: optional(orNull(textUpTo(40))),
    by: optional(orNull(textUpTo(100))),
  }),
  label: ({ attachments }, { id }) => wording.describe(attachments[id]?.name ?? ""),
  refuse: photoGone,
  apply(draft, { id, ...words }) {
    const photo = draft.attachments[id];
    if (photo === undefined) return;
    for (const field of ["caption", "takenAt", "by"] as const) {
      const value = words[field];
      if (value === null || value === "") delete photo[field];
      else if (value !== undefined) photo[field] = value;
    }
  },
  mergeKey: ({ id }) => id,
});
