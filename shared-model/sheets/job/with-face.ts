import type { Weight } from "../display-list.ts";
import { partsByFile } from "../page/measure.ts";

/** One file of the face: of a cut, with the characters of which it is made. */
export interface FaceFile {
  readonly subset: "latin" | "extended";
  readonly weight: Weight;
  /** Address that holds the file itself, so that nothing is fetched for it. */
  readonly dataAddress: string;
}

const FAMILY = "Atkinson Hyperlegible Next";

/**
 * An SVG of `svgOf` with its face inside, as a picture that is shown by itself needs it: a picture may fetch nothing. Only
 * the cuts that come up are put in. It is for showing and printing; a file to hand on does without.
 */
export function withFace(svg: string, face: readonly FaceFile[]): string {
  const isPlain = partsByFile(svg).every(({ file }) => file === "latin");
  const rules = face
    .filter(({ subset, weight }) => (subset === "latin" || !isPlain) && hasWeight(svg, weight))
    // Of two files with a character the later is asked first.
    .sort((a, b) => Number(a.subset === "latin") - Number(b.subset === "latin"))
    .map(({ weight, subset, dataAddress }) => {
      const range = subset === "latin" ? `unicode-range:${LATIN};` : "";
      return `@font-face{font-family:"${FAMILY}";font-weight:${weight};${range}src:url(${dataAddress})}`;
    });
  if (rules.length === 0) return svg;
  return svg.replace("</title>", `</title>\n<style>${rules.join("")}</style>`);
}

const hasWeight = (svg: string, weight: Weight): boolean =>
  weight === 400 ? /<text(?![^>]* font-weight=)/.test(svg) : svg.includes(` font-weight="${weight}"`);

/** What the file "latin" holds, as its maker says it in the style sheets of the package. */
const LATIN =
  "U+0000-00FF,U+0131,U+0152-0153,U+02BB-02BC,U+02C6,U+02DA,U+02DC,U+0304,U+0308,U+0329,U+2000-206F,U+20AC,U+2122,U+2191,U+2193,U+2212,U+2215,U+FEFF,U+FFFD";
