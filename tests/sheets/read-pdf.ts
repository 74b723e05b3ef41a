import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { getPoppler, NO_POPPLER } from "../get-poppler.mjs";

export const HAS_POPPLER = getPoppler();
if (!HAS_POPPLER) console.error(`SKIPPED, proves nothing here: ${NO_POPPLER}`);

/** Gives a PDF to one of the poppler tools. @returns What it printed, or the bytes that it wrote. */
function run(
  tool: string,
  pdf: Uint8Array,
  args: (file: string, folder: string) => readonly string[],
  made?: string,
): Buffer {
  const folder = mkdtempSync(join(tmpdir(), "loadside-pdf-"));
  try {
    const file = join(folder, "in.pdf");
    writeFileSync(file, pdf);
    const { status, stdout, stderr } = spawnSync(tool, args(file, folder), { maxBuffer: 1 << 28 });
    if (status !== 0) throw new Error(`${tool}: ${stderr}`);
    return made === undefined ? stdout : readFileSync(join(folder, made));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export const textOfPdf = (pdf: Uint8Array): string =>
  run("pdftotext", pdf, (file) => ["-layout", file, "-"]).toString("utf8");

export const infoOfPdf = (pdf: Uint8Array): string => run("pdfinfo", pdf, (file) => [file]).toString("utf8");

export interface PdfFont {
  readonly name: string;
  readonly type: string;
  readonly embedded: boolean;
  readonly hasText: boolean;
}

export const fontsOfPdf = (pdf: Uint8Array): readonly PdfFont[] =>
  run("pdffonts", pdf, (file) => [file])
    .toString("utf8")
    .split("\n")
    .slice(2)
    .flatMap((line) => {
      // Name, type, encoding, embedded, subset, letters: types have spaces in them.
      const found = /^(\S+)\s+(.+?)\s+\S+\s+(yes|no)\s+(?:yes|no)\s+(yes|no)/.exec(line);
      if (found === null) return [];
      const [, name = "", type = "", embedded, hasText] = found;
      return [{ name, type, embedded: embedded === "yes", hasText: hasText === "yes" }];
    });

/** A page as grey points, 0 black. */
export interface GreyPicture {
  readonly width: number;
  readonly height: number;
  at(x: number, y: number): number;
}

/** @param dpi Points to the inch. @param page Counted from 1. */
export function pictureOfPdf(pdf: Uint8Array, dpi: number, page = 1): GreyPicture {
  const bytes = run(
    "pdftoppm",
    pdf,
    (file, folder) => [
      "-gray",
      "-r",
      String(dpi),
      "-f",
      String(page),
      "-l",
      String(page),
      "-singlefile",
      file,
      join(folder, "out"),
    ],
    "out.pgm",
  );
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString("latin1"));
  if (head === null) throw new Error("Not a grey picture.");
  const [whole, wide, high] = head;
  const [width, height] = [Number(wide), Number(high)];
  const from = whole.length;
  return { width, height, at: (x, y) => bytes[from + y * width + x] ?? 255 };
}
