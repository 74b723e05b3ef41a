import { catalogue } from "../lib/catalogue.ts";
import type { AttachmentId } from "../model/ids.ts";
import type { Project } from "../model/project.ts";
import { type Refusal, refusal } from "./define-command.ts";

const wording = catalogue({
  gone: "That photo is no longer there. Pick another.",
});

/** Why nothing can be done with a photo: it is not there. */
export const photoGone = ({ attachments }: Project, { id }: { readonly id: AttachmentId }): Refusal | undefined =>
  id in attachments ? undefined : refusal("unknown-item", wording.gone);
