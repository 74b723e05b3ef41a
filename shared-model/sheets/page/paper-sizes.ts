import type { PaperName } from "../../answers/sheet-input.ts";

export type Orientation = "portrait" | "landscape";

export interface PaperSize {
  /** As it lies, mm. */
  readonly width: number;
  readonly height: number;
}

/** Upright, mm: Letter is 8 1/2 x 11 in. and Tabloid 11 x 17 in. (ANSI/ASME Y14.1 A and B); A4 and A3 by ISO 216. */
const UPRIGHT: Readonly<Record<PaperName, PaperSize>> = {
  letter: { width: 215.9, height: 279.4 },
  a4: { width: 210, height: 297 },
  tabloid: { width: 279.4, height: 431.8 },
  a3: { width: 297, height: 420 },
};

export function paperSize(paper: PaperName, orientation: Orientation): PaperSize {
  const { width, height } = UPRIGHT[paper];
  return orientation === "portrait" ? { width, height } : { width: height, height: width };
}

/** Kept free on all sides: what usual printers cannot reach, and room for a finger. */
export const MARGIN = 10;
