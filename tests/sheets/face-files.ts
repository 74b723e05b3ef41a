import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Weight } from "../../shared-model/sheets/display-list.ts";

/** What the tests ask of the reader of font files that the PDF writer brings along. */
interface Face {
  readonly characterSet: readonly number[];
  layout(text: string, features?: readonly string[]): { readonly advanceWidth: number };
}

const require = createRequire(import.meta.url);
const fromPdfkit = createRequire(require.resolve("pdfkit"));
const { create } = fromPdfkit("fontkit") as { create(bytes: Buffer): Face };

/** A static cut of the face that goes with the program, read from its file. */
export function readFace(subset: "latin" | "latin-ext", weight: Weight): Face {
  return create(fileOf(subset, weight));
}

const fileOf = (subset: "latin" | "latin-ext", weight: Weight): Buffer =>
  readFileSync(
    require.resolve(
      `@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-${subset}-${weight}-normal.woff`,
    ),
  );

/** All cuts, as a PDF is written with. */
export const FACE = {
  "latin-400": fileOf("latin", 400),
  "latin-600": fileOf("latin", 600),
  "latin-700": fileOf("latin", 700),
  "extended-400": fileOf("latin-ext", 400),
  "extended-600": fileOf("latin-ext", 600),
  "extended-700": fileOf("latin-ext", 700),
};
