import type { EnclosureId } from "../../shared-model/model/ids.ts";
import { writePicture } from "../platform/system-clipboard.ts";
import { selectedBoxes } from "./arranging.ts";
import { shownInstallation } from "./document-store.ts";
import { laterWording } from "./later-words.ts";
import { fetchPictureMaker } from "./picture-maker.ts";
import { notify } from "./session-store.ts";
import { textOfBoxes } from "./text-of-boxes.ts";

/** So many boxes are a picture that can still be read, and drawn while a person waits. */
const MOST_BOXES = 60;

const WORDS = {
  done: laterWording.copiedAsAPictureAndAs,
  how: laterWording.pasteItInAnotherProgram,
  not: laterWording.noPictureWasCopied,
  none: laterWording.nothingIsDrawnYet,
  many: laterWording.selectAtMostBoxesAndCopy(MOST_BOXES),
  host: laterWording.theClipboardOfThisComputerDoes,
} as const;

/** Puts the selected boxes, or all of them, on the clipboard for other programs: a picture, and the same in words. */
export async function copyPicture(): Promise<void> {
  const chosen = selectedBoxes();
  const ids = chosen.length > 0 ? chosen : (Object.keys(shownInstallation().enclosures) as EnclosureId[]);
  const maker = ids.length === 0 ? undefined : fetchPictureMaker();
  if (maker === undefined) return notify("note", WORDS.not, [WORDS.none]);
  if (ids.length > MOST_BOXES) return notify("note", WORDS.not, [WORDS.many]);
  const text = textOfBoxes(shownInstallation(), new Set(ids));
  const picture = maker.then(async ({ drawBoxes }) => ({ ...(await drawBoxes(ids)), text }));
  // Where the host takes none, nobody waits for it.
  picture.catch(() => undefined);
  if (await writePicture(picture)) notify("note", WORDS.done, [WORDS.how]);
  else notify("problem", WORDS.not, [WORDS.host]);
}
