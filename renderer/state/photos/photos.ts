import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { shownInstallation } from "../document-store.ts";
import { homeOf } from "../home-of.ts";
import { notify, sessionStore } from "../session-store.ts";
import { PHOTO_WORDS } from "./photo-words.ts";

/** What telephones and cameras name their pictures: a computer that does not know the kind tells no type. */
const PICTURE_NAME = /\.(avif|bmp|gif|heic|heif|jpe?g|png|tiff?|webp)$/i;

/** Files that say of themselves that they are pictures; whether they are is looked at when they are taken in. */
export const picturesAmong = (files: Iterable<File>): readonly File[] =>
  [...files].filter(({ type, name }) => type.startsWith("image/") || (type === "" && PICTURE_NAME.test(name)));

/** Attaches photos to a box. What presses them is fetched when the first one comes. */
export async function attachPhotos(enclosure: EnclosureId, files: readonly File[]): Promise<void> {
  const [{ takeIn }, { pressPhoto }] = await Promise.all([
    import("./take-in.ts"),
    import("../../platform/press-photo.ts"),
  ]);
  await takeIn(enclosure, files, { press: pressPhoto });
}

/** Asks for photos of a box. The window has to be asked for this by a press or a key. */
export function choosePhotos(enclosure: EnclosureId): void {
  const input = document.createElement("input");
  input.type = "file";
  input.accept = "image/jpeg,image/png";
  input.multiple = true;
  input.onchange = () => void attachPhotos(enclosure, [...(input.files ?? [])]);
  input.click();
}

/** Attaches photos to the one box that the selection is in, or says that a box is wanted. */
export async function attachToSelected(files: readonly File[]): Promise<void> {
  const homes = new Set(sessionStore.get().selection.map((item) => homeOf(shownInstallation(), item)));
  const [home] = homes;
  if (homes.size === 1 && home !== undefined) await attachPhotos(home, files);
  else notify("problem", PHOTO_WORDS.notTaken, [PHOTO_WORDS.noBox]);
}
