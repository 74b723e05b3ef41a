import latin400 from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-400-normal.woff?inline";
import latin600 from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-600-normal.woff?inline";
import latin700 from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-700-normal.woff?inline";
import extended400 from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-400-normal.woff?inline";
import extended600 from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-600-normal.woff?inline";
import extended700 from "@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-700-normal.woff?inline";
import type { FaceFiles } from "../paper.ts";

const bytesOf = (address: string): Uint8Array => Buffer.from(address.slice(address.indexOf(",") + 1), "base64");

/** The face of the sheets: part of the program, so that it needs no folder beside it. Its licence is the OFL 1.1. */
export const readFace = (): FaceFiles => ({
  "latin-400": bytesOf(latin400),
  "latin-600": bytesOf(latin600),
  "latin-700": bytesOf(latin700),
  "extended-400": bytesOf(extended400),
  "extended-600": bytesOf(extended600),
  "extended-700": bytesOf(extended700),
});
