import latin400 from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff?url";
import latin600 from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-600-normal.woff?url";
import latin700 from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff?url";
import extended400 from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-400-normal.woff?url";
import extended600 from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-600-normal.woff?url";
import extended700 from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-700-normal.woff?url";
import type { FaceFile } from "../sheets/job/with-face.ts";
import type { FaceFiles } from "./paper.ts";

/** The face that sheets are set in, as bytes for files and as addresses that hold all of it for pictures. */
export interface PaperFace {
  readonly inFiles: FaceFiles;
  readonly inPictures: readonly FaceFile[];
}

const CUTS = [
  { name: "latin-400", subset: "latin", weight: 400, url: latin400 },
  { name: "latin-600", subset: "latin", weight: 600, url: latin600 },
  { name: "latin-700", subset: "latin", weight: 700, url: latin700 },
  { name: "extended-400", subset: "extended", weight: 400, url: extended400 },
  { name: "extended-600", subset: "extended", weight: 600, url: extended600 },
  { name: "extended-700", subset: "extended", weight: 700, url: extended700 },
] as const;

/** The files of the face that the window was built with: the same in what is shown, printed and saved. */
export async function fetchFace(): Promise<PaperFace> {
  const cuts = await Promise.all(CUTS.map(async (cut) => ({ ...cut, bytes: await bytesAt(cut.url) })));
  const inPictures = cuts.map(
    ({ subset, weight, bytes }): FaceFile => ({ subset, weight, dataAddress: dataAddress(bytes) }),
  );
  const inFiles = Object.fromEntries(cuts.map(({ name, bytes }) => [name, bytes])) as Record<
    (typeof CUTS)[number]["name"],
    Uint8Array
  >;
  return { inFiles, inPictures };
}

async function bytesAt(url: string): Promise<Uint8Array> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error("The letters of the sheets could not be fetched. Load the window again.");
  return new Uint8Array(await answer.arrayBuffer());
}

/** Some 15 kB each: a string of that many characters is no burden. */
function dataAddress(bytes: Uint8Array): string {
  let text = "";
  for (const byte of bytes) text += String.fromCharCode(byte);
  return `data:font/woff;base64,${btoa(text)}`;
}
