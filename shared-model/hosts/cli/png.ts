import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { FaceFiles } from "../paper.ts";
import { sfntOfWoff } from "./sfnt-of-woff.ts";

/** Pixels of a millimetre at scale 1: 96 to the inch. */
const PIXELS = 96 / 25.4;

/**
 * Pages, given as SVG, as pictures of points. The renderer is a compiled package that cannot be part of the program: where
 * it is not beside it, this throws `NoRenderer`.
 * @param width Of a page in millimetres. @param scale 1 is 96 points to the inch.
 */
export async function pngsOf(
  pages: readonly { readonly svg: string; readonly width: number }[],
  face: FaceFiles,
  scale: number,
): Promise<readonly Uint8Array[]> {
  const { Resvg } = await import("@resvg/resvg-js").catch(() => {
    throw new NoRenderer();
  });
  // It reads its fonts from files only.
  const folder = await mkdtemp(join(tmpdir(), "loadside-face-"));
  try {
    const fontFiles = await Promise.all(
      Object.entries(face).map(async ([name, woff]) => {
        const path = join(folder, `${name}.ttf`);
        await writeFile(path, sfntOfWoff(woff));
        return path;
      }),
    );
    return pages.map(({ svg, width }) => {
      const value = Math.round(width * PIXELS * scale);
      const font = { loadSystemFonts: false, fontFiles, defaultFontFamily: "Atkinson Hyperlegible Next" };
      return new Resvg(svg, { font, fitTo: { mode: "width", value }, background: "#ffffff" }).render().asPng();
    });
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** The package that renders pictures is not installed. */
export class NoRenderer extends Error {}
