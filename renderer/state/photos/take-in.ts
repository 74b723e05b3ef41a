import type { TypedCall } from "../../../shared-model/commands/command-args.ts";
import { base64Of } from "../../../shared-model/lib/base64.ts";
import { readPictureHeader } from "../../../shared-model/lib/picture-header.ts";
import type { AttachmentId, EnclosureId } from "../../../shared-model/model/ids.ts";
import { PHOTO_LIMITS } from "../../../shared-model/model/photo-limits.ts";
import { dispatch, shownInstallation } from "../document-store.ts";
import { mintId } from "../mint-id.ts";
import { preferencesStore } from "../preferences-store.ts";
import { notify } from "../session-store.ts";
import { stepTitle } from "../step-title.ts";
import { attachTitle, broken, notAPhoto, PHOTO_WORDS, tooHeavy, tooMany, tooWide } from "./photo-words.ts";

/** Of the files that are offered: what is larger is refused before anything of it is drawn. */
const MOST_MEGABYTES = 50;
const MOST_MEGAPIXELS = 50;

export interface PhotoTools {
  press(picture: Blob): Promise<Uint8Array>;
}

/**
 * Takes files in as photos of a box, all in one step of undo, and tells which could not be taken and why. Only what is a
 * JPEG or PNG by its first bytes is drawn at all, whatever its name says.
 */
export async function takeIn(enclosure: EnclosureId, files: readonly File[], { press }: PhotoTools): Promise<void> {
  const wrong: string[] = files.length > PHOTO_LIMITS.ofBox ? [tooMany(PHOTO_LIMITS.ofBox)] : [];
  const calls: TypedCall[] = [];
  for (const file of files.slice(0, PHOTO_LIMITS.ofBox)) {
    const why = await whyNot(file);
    const pressed = why === undefined ? await press(file).catch(() => undefined) : undefined;
    if (pressed === undefined) wrong.push(why ?? broken(file.name));
    else calls.push(attachCall(enclosure, file, pressed));
  }
  const refused = calls.length === 0 ? undefined : attach(enclosure, calls);
  if (refused !== undefined) wrong.push(refused);
  if (wrong.length > 0) notify("problem", PHOTO_WORDS.notTaken, wrong);
}

async function whyNot(file: File): Promise<string | undefined> {
  if (file.size > MOST_MEGABYTES * 1_000_000) return tooHeavy(file.name, MOST_MEGABYTES);
  const bytes = await file.arrayBuffer().catch(() => undefined);
  const header = bytes && readPictureHeader(new Uint8Array(bytes));
  if (header === undefined) return notAPhoto(file.name);
  return header.width * header.height > MOST_MEGAPIXELS * 1_000_000 ? tooWide(file.name, MOST_MEGAPIXELS) : undefined;
}

function attachCall(enclosure: EnclosureId, file: File, pressed: Uint8Array): TypedCall {
  const by = preferencesStore.get().name.trim();
  return {
    command: "attach-photo",
    args: {
      id: mintId<AttachmentId>("f"),
      enclosure,
      name: nameOf(file),
      base64: base64Of(pressed),
      takenAt: dayOf(file.lastModified),
      ...(by !== "" && { by }),
    },
  };
}

/** @returns Why not. */
function attach(enclosure: EnclosureId, calls: readonly TypedCall[]): string | undefined {
  const box = shownInstallation().enclosures[enclosure]?.name ?? "";
  const [only] = calls;
  const call: TypedCall =
    calls.length === 1 && only !== undefined
      ? only
      : { command: "run-together", args: { title: stepTitle(attachTitle(calls.length, box)), calls } };
  const done = dispatch(call);
  return done.ok ? undefined : done.refusal.message;
}

/** The name of the file without its ending; a picture from the clipboard has none of its own. */
function nameOf({ name }: File): string {
  const plain = name
    .replace(/\.[a-z0-9]{1,5}$/i, "")
    .replace(/\p{Cc}|\p{Surrogate}/gu, " ")
    .trim()
    .slice(0, 80)
    .replace(/\p{Surrogate}$/u, "");
  return plain === "" || plain === "image" ? PHOTO_WORDS.unnamed : plain;
}

function dayOf(milliseconds: number): string {
  const day = new Date(milliseconds);
  const two = (figure: number): string => String(figure).padStart(2, "0");
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}
