import type { SheetInput, SheetKind } from "../../answers/sheet-input.ts";
import type { Rect } from "../../geometry/box-drawing.ts";
import type { Mark, Page } from "../display-list.ts";
import { footOf } from "./foot.ts";
import { AMBER_HEIGHT, amberLine, cellWidth, ruleDataWords, type StripCell, stripMarks } from "./head-strip.ts";
import { CAPTIONS, dayWords, PAGE, STATE_WORDS } from "./page-words.ts";
import { MARGIN, type Orientation, paperSize } from "./paper-sizes.ts";
import { FRAME_THICK, frameMarks, insideOf, SCALE_BAR, scaleBarMarks } from "./sheet-frame.ts";

export interface DrawingSheetOptions {
  readonly kind: SheetKind;
  /** What is drawn: "Whole drawing", "B1 make-up". */
  readonly title: string;
  /** Smaller, below it. */
  readonly note: string;
  readonly pageTitle: string;
  readonly orientation: Orientation;
  /** More cells of the title block: breaker, part. */
  readonly cells?: readonly Omit<StripCell, "width">[];
}

/** A page with frame, zones, title block, scale bar and cautions, still without its drawing. */
export interface DrawingSheet {
  /** Inside of the frame, down to the title block: zones count in it. */
  readonly inside: Rect;
  /** Where the drawing may stand. */
  readonly area: Rect;
  page(marks: readonly Mark[]): Page;
}

const BLOCK = 15;

/** Opens a drawing sheet: put marks into `area`, in millimetres of the paper, and call `page` once. */
export function openDrawingSheet(input: SheetInput, options: DrawingSheetOptions): DrawingSheet {
  const { width, height } = paperSize(input.paper, options.orientation);
  const wide = width - 2 * MARGIN;
  const foot = footOf(input, wide);
  const footY = height - MARGIN - foot.height;
  const barY = footY - SCALE_BAR.height - 0.5;
  const outer: Rect = { x: MARGIN, y: MARGIN, width: wide, height: barY - 1.2 - MARGIN };
  const inside = insideOf(outer);
  const blockY = inside.y + inside.height - BLOCK - AMBER_HEIGHT;
  const rules = ruleDataWords(input);
  const area: Rect = {
    x: inside.x + 3,
    y: inside.y + 3,
    width: inside.width - 6,
    height: blockY - inside.y - 6,
  };
  return {
    inside,
    area,
    page: (marks) => ({
      sheet: options.kind,
      title: options.pageTitle,
      width,
      height,
      margin: MARGIN,
      marks: [
        ...marks,
        ...stripMarks(inside.x, blockY, inside.width, blockCells(input, options), BLOCK),
        ...amberLine(inside.x, blockY + BLOCK, inside.width, rules.words, rules.isWarning),
        ...frameMarks(outer, blockY - inside.y, input.state === "proposed"),
        ...scaleBarMarks(MARGIN + FRAME_THICK, barY, inside.width, PAGE.scale),
        ...foot.marks(MARGIN, footY),
      ],
      number: foot.number(MARGIN, footY),
    }),
  };
}

function blockCells(input: SheetInput, { title, note, cells = [] }: DrawingSheetOptions): readonly StripCell[] {
  const { project, state, rules, date } = input;
  const fixed = (cell: Omit<StripCell, "width">): StripCell => ({ ...cell, width: Math.min(70, cellWidth(cell)) });
  return [
    fixed({ caption: CAPTIONS.drawing, value: title, note }),
    { caption: CAPTIONS.job, value: project.title.trim() === "" ? PAGE.untitled : project.title },
    ...cells.map(fixed),
    fixed({ caption: CAPTIONS.state, value: STATE_WORDS[state] }),
    fixed({ caption: CAPTIONS.edition, value: rules.edition, note: PAGE.localRules }),
    fixed({ caption: CAPTIONS.date, value: dayWords(date) }),
  ];
}
