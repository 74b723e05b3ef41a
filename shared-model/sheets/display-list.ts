import type { SheetKind } from "../answers/sheet-input.ts";
import type { Rect } from "../geometry/box-drawing.ts";

/**
 * What stands on paper, without any resolution: a display list. Writers (`svg-writer.ts`, `hosts/paper.ts`) put it into a
 * file; nothing here knows of files.
 *
 * Units: everything is in **millimetres**, sizes of text and widths of lines too, with the origin at the top left corner of
 * the paper, x to the right and y downward. `pt(8)` of `marks.ts` gives points in millimetres.
 *
 * How to make a sheet: a `SheetMaker` takes a `SheetInput` and gives pages. Do not put marks onto pages by hand where the
 * helpers do: `page/list-sheet.ts` opens a list sheet (header strip, cautions, frame) and gives a `Flow` to write into
 * (`page/flow.ts`: headings, paragraphs, tables with wrapped cells whose header repeats, check boxes, lines to sign on,
 * keep-together); `page/drawing-sheet.ts` makes a page with frame, zones, scale bar and title block around a drawing. Then
 * enter the maker in `registry.ts`. Page numbers are written last, by `page/number-pages.ts`, because a job folder counts
 * on. Words are constants in a `*-words.ts` beside the maker.
 *
 * Paper is black and white: use the inks of `page/inks.ts`, and let no meaning hang on a tint.
 */
export type Mark = PathMark | RectMark | TextMark | GroupMark;

/** "#rrggbb". */
export type Ink = `#${string}`;

export interface Stroke {
  readonly ink: Ink;
  readonly width: number;
  /** Lengths of dashes and gaps in turn. */
  readonly dash?: readonly number[];
  /** Absent: butt. */
  readonly cap?: "butt" | "round";
  /** Absent: miter. */
  readonly join?: "miter" | "round";
}

/** Parallel lines or dots inside an outline, drawn over its fill. */
export interface Hatch {
  readonly kind: "lines" | "dots";
  readonly ink: Ink;
  /** Distance of two lines or dots. */
  readonly gap: number;
  /** Width of a line, diameter of a dot. */
  readonly width: number;
  /** Degrees from the x axis, clockwise; of lines alone. Absent: 45. */
  readonly angle?: number;
}

interface Painted {
  readonly fill?: Ink;
  readonly stroke?: Stroke;
  readonly hatch?: Hatch;
}

/** An outline as the path data of SVG: letters MLHVCSQTAZ in both cases, numbers, spaces and commas. */
export interface PathMark extends Painted {
  readonly kind: "path";
  readonly d: string;
  /** Outlines inside one another cut each other out. */
  readonly evenOdd?: boolean;
}

export interface RectMark extends Painted, Rect {
  readonly kind: "rect";
  /** Of the corners. */
  readonly radius?: number;
}

/** The static cuts of the face that go with the program. */
export type Weight = 400 | 600 | 700;

export type Anchor = "start" | "middle" | "end";

/**
 * One line of text, made by `text()` of `marks.ts`, which cleans it and measures its box. Text runs upward with `turn`
 * -90. Writers never break it.
 */
export interface TextMark {
  readonly kind: "text";
  readonly text: string;
  /** The same with the letters that are question marks in it; absent where there are none. */
  readonly written?: string;
  /** Where the baseline begins, has its middle or ends. */
  readonly x: number;
  readonly y: number;
  readonly anchor: Anchor;
  /** Height of the em. */
  readonly size: number;
  readonly weight: Weight;
  readonly ink: Ink;
  /** Added after every letter. */
  readonly track?: number;
  /** Figures of one width, for columns of numbers. */
  readonly tabular?: boolean;
  readonly turn?: -90 | 90;
  /** What it covers, in the same coordinates as `x` and `y`: from the height of capitals to below the baseline. */
  readonly box: Rect;
  /** Laid over what stands beneath it on purpose, as a watermark is: not counted as an overlap. */
  readonly over?: true;
}

/** Marks in coordinates of their own: first clipped, then scaled, then shifted. */
export interface GroupMark {
  readonly kind: "group";
  readonly marks: readonly Mark[];
  readonly shift?: { readonly x: number; readonly y: number };
  readonly scale?: number;
  /** In the group's own coordinates. */
  readonly clip?: Rect;
}

/** One side of paper. */
export interface Page {
  readonly sheet: SheetKind;
  /** What its page is called in lists of pages and in the outline of a PDF: "Make-up card B1". */
  readonly title: string;
  /** Of the paper as it lies. */
  readonly width: number;
  readonly height: number;
  /** Nothing is printed nearer to the edge. */
  readonly margin: number;
  readonly marks: readonly Mark[];
  /** Where its number is written; absent where a page has none, as labels to cut out. */
  readonly number?: PageNumberSpot;
}

export interface PageNumberSpot {
  readonly x: number;
  readonly y: number;
  readonly anchor: Anchor;
  readonly size: number;
}
