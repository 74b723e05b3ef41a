import { catalogue, type Part } from "../lib/catalogue.ts";
import type { EnclosureId } from "../model/ids.ts";
import { PHOTO_LIMITS } from "../model/photo-limits.ts";
import type { Project } from "../model/project.ts";
import { nextOrder } from "../queries/in-order.ts";
import { idText, nameText, optional, record, textUpTo } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, type Refusal, refusal } from "./define-command.ts";
import { idsInUse } from "./fresh-ids.ts";
import { unnamed } from "./item-words.ts";
import { base64Photo } from "./photo-args.ts";
import { shownEnclosure } from "./shown-enclosure.ts";

type Args = CommandArgs["attach-photo"];

const wording = catalogue({
  attach: (box: Part) => `Attach a photo to ${box}`,
  boxFull: (most: Part) => `A box takes ${most} photos, and this one has as many. Remove one that tells nothing more.`,
  drawingFull: (most: Part) =>
    `A drawing takes ${most} photos of the usual size, and this one is full of them. Remove some first.`,
  gone: "That box or panel is no longer there. Pick one that is on the sheet.",
});

/** Puts a photo to a box or panel, as evidence of what was seen there. Both states show it. */
export const attachPhoto = defineCommand<Args>({
  id: "attach-photo",
  args: record<Args>({
    id: idText,
    enclosure: idText,
    name: nameText,
    base64: base64Photo,
    caption: optional(textUpTo(400)),
    takenAt: optional(textUpTo(40)),
    by: optional(textUpTo(100)),
  }),
  label: (project, { enclosure }) => wording.attach(shownEnclosure(project, enclosure)?.name ?? unnamed.box),
  refuse(project, { id, enclosure, base64 }) {
    if (shownEnclosure(project, enclosure) === undefined) return refusal("unknown-item", wording.gone);
    return noRoom(project, enclosure, base64.length) ?? idsInUse(project, id);
  },
  apply(draft, { id, ...photo }, before) {
    draft.attachments[id] = { id, mediaType: "image/jpeg", order: nextOrder(before.attachments), ...photo };
  },
});

function noRoom({ attachments }: Project, enclosure: EnclosureId, characters: number): Refusal | undefined {
  const all = Object.values(attachments);
  const here = all.filter((one) => one.enclosure === enclosure).length;
  if (here >= PHOTO_LIMITS.ofBox) return refusal("too-many-photos", wording.boxFull(PHOTO_LIMITS.ofBox));
  const size = all.reduce((sum, { base64 }) => sum + base64.length, characters);
  if (all.length < PHOTO_LIMITS.ofDrawing && size <= PHOTO_LIMITS.allCharacters) return undefined;
  return refusal("too-many-photos", wording.drawingFull(PHOTO_LIMITS.ofDrawing));
}
