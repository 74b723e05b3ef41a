import type { CopyKind, CopyOutcome } from "./file-host.ts";
import { wording } from "./words.ts";

const TYPES: Readonly<Record<CopyKind, { readonly media: string; readonly word: string }>> = {
  pdf: { media: "application/pdf", word: wording.pdfDocument },
  svg: { media: "image/svg+xml", word: wording.svgDrawing },
  png: { media: "image/png", word: wording.pngPicture },
  csv: { media: "text/csv", word: wording.tableAsText },
  xlsx: { media: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", word: wording.workbook },
};

/** A file picker that only some browsers have; TypeScript's window types do not know it. */
interface Picker {
  readonly showSaveFilePicker?: (options: {
    readonly types: readonly {
      readonly description: string;
      readonly accept: Readonly<Record<string, readonly string[]>>;
    }[];
    readonly suggestedName: string;
  }) => Promise<FileSystemFileHandle>;
}

/** What is kept by systems in names of files, and what is not seen in them. */
const NOT_IN_NAMES = /[\\/:*?"<>|\p{Cc}\p{Bidi_Control}]/gu;

/** Saves something made of the drawing where a person says, or as a download where the browser does not ask. */
export async function saveCopy(
  name: string,
  kind: CopyKind,
  bytes: Uint8Array<ArrayBuffer>,
): Promise<CopyOutcome | undefined> {
  const { media, word } = TYPES[kind];
  const file = `${name.replace(NOT_IN_NAMES, "")}.${kind}`;
  const { showSaveFilePicker } = globalThis as Picker;
  if (showSaveFilePicker === undefined) {
    download(file, bytes, media);
    return { kind: "saved", name: file, note: wording.wasHandedToTheBrowserAs(file) };
  }
  try {
    const types = [{ description: word, accept: { [media]: [`.${kind}`] } }];
    const handle = await showSaveFilePicker.call(globalThis, { types, suggestedName: file });
    // The browser writes beside the file and swaps the two when it is closed.
    const stream = await handle.createWritable();
    await stream.write(bytes);
    await stream.close();
    return { kind: "saved", name: handle.name };
  } catch (error) {
    const why = error instanceof DOMException ? error.name : "";
    if (why === "AbortError") return undefined;
    if (why === "SecurityError") return { kind: "press-again" };
    return { kind: "failed", message: whyNotSaved(file, why) };
  }
}

function whyNotSaved(file: string, why: string): string {
  if (why === "NotAllowedError") return wording.wasNotSavedTheBrowserWas(file);
  if (why === "QuotaExceededError") return wording.wasNotSavedThereIsNo(file);
  return wording.wasNotSavedTryAnotherPlace(file);
}

/** Hands a file to the browser, which puts it where it puts downloads. */
export function download(name: string, content: string | Uint8Array<ArrayBuffer>, media: string): void {
  const address = URL.createObjectURL(new Blob([content], { type: media }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads the address after the click has returned.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
