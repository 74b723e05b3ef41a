import type { SheetInput } from "../../answers/sheet-input.ts";
import { boxDrawing } from "../../geometry/draw-box.ts";
import type { Box } from "../../model/enclosure.ts";
import type { Installation } from "../../model/project.ts";
import { getInstallation } from "../../queries/installation-of.ts";
import type { Mark, Page } from "../display-list.ts";
import { nearBoxMarks } from "../draw/near-box.ts";
import { protectedElsewhere } from "../drawing/scene-answers.ts";
import { boundsOfMarks } from "../mark-bounds.ts";
import { group } from "../marks.ts";
import { footOf } from "../page/foot.ts";
import { openListSheet } from "../page/list-sheet.ts";
import { MARGIN, paperSize } from "../page/paper-sizes.ts";
import { listColumns } from "./card-columns.ts";
import { cardBoxes } from "./card-facts.ts";
import { cardFeet, cardHead, holdPointMarks } from "./card-frame.ts";
import { CARD } from "./card-words.ts";

/** Millimetres for a drawing unit: as on the screen at 100 %, and the least at which its letters can be read (5 points). */
const LARGEST = 0.2646;
const SMALLEST = 0.16;
const GAP = 1.6;

/** @returns Why there is no card to make; undefined where there is one. */
export function noCards(input: SheetInput): string | undefined {
  const installation = getInstallation(input.project, input.state);
  if (cardBoxes(input, installation).length > 0) return undefined;
  const hasBoxes = Object.values(installation.enclosures).some(({ kind }) => kind === "box");
  return hasBoxes ? CARD.nothingOpened : CARD.nothing;
}

/** A card for each box: how it is made up, drawn and as lists to tick, on one page where both can be read there. */
export function makeUpCards(input: SheetInput): readonly Page[] {
  const installation = getInstallation(input.project, input.state);
  const boxes = cardBoxes(input, installation);
  if (boxes.length > 0) return boxes.flatMap((box) => cardOf(input, installation, box));
  const sheet = openListSheet(input, { kind: "make-up", title: CARD.title });
  sheet.flow.paragraph(noCards(input) ?? "");
  return sheet.pages();
}

function cardOf(input: SheetInput, installation: Installation, box: Box): readonly Page[] {
  const { width, height } = paperSize(input.paper, "portrait");
  const inner = width - 2 * MARGIN;
  const foot = footOf(input, inner);
  const footY = height - MARGIN - foot.height;
  const head = cardHead(input, installation, box, inner);
  const holds = holdPointMarks(input, installation, box, inner);
  const feet = cardFeet(input, box, inner);
  const lists = listColumns(input, installation, box, inner);

  const page = (marks: readonly Mark[]): Page => ({
    sheet: "make-up",
    title: CARD.pageTitle(box.name),
    width,
    height,
    margin: MARGIN,
    marks: [...shifted(head.marks, MARGIN), ...marks, ...foot.marks(MARGIN, footY)],
    number: foot.number(MARGIN, footY),
  });

  const top = MARGIN + head.height + GAP;
  const below = holds.height + feet.height + GAP;
  const whole = lists.whole();
  const drawn = drawingOf(input, installation, box);
  const room = footY - GAP - top;
  const beside = room - below - whole.height - GAP;
  if (scaleOf(drawn, inner, beside) >= Math.min(SMALLEST, scaleOf(drawn, inner, room))) {
    const at = footY - GAP - below - whole.height;
    return [
      page([
        ...placed(drawn, inner, top, beside),
        ...shifted(whole.marks, at),
        ...shifted(holds.marks, at + whole.height),
        ...shifted(feet.marks, at + whole.height + holds.height + GAP),
      ]),
    ];
  }
  const parts = lists.pages(room, room - below);
  return [
    page(placed(drawn, inner, top, room)),
    ...parts.map((part, i) => {
      const isLast = i === parts.length - 1;
      const end = top + part.height;
      return page([
        ...shifted(part.marks, top),
        ...(isLast ? [...shifted(holds.marks, end), ...shifted(feet.marks, end + holds.height + GAP)] : []),
      ]);
    }),
  ];
}

const shifted = (marks: readonly Mark[], y: number): readonly Mark[] => [group(marks, { shift: { x: MARGIN, y } })];

interface Drawn {
  readonly marks: readonly Mark[];
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The near drawing without its header line, which the card says above. */
function drawingOf(input: SheetInput, installation: Installation, box: Box): Drawn {
  const { project, shownRoles } = input;
  const drawing = boxDrawing(project, installation, box.id);
  const marks = nearBoxMarks({
    drawing,
    roles: shownRoles[box.id],
    protects: (device) => protectedElsewhere(input, device),
    torn: () => true,
  });
  const { x, y, width, height } = boundsOfMarks(marks) ?? { x: 0, y: 0, width: 1, height: 1 };
  return { marks, x, y, width, height };
}

const scaleOf = ({ width, height }: Drawn, wide: number, high: number): number =>
  Math.min(LARGEST, wide / width, high / height);

function placed(drawn: Drawn, wide: number, top: number, high: number): readonly Mark[] {
  const scale = scaleOf(drawn, wide, high);
  const x = MARGIN + (wide - drawn.width * scale) / 2;
  const y = top + (high - drawn.height * scale) / 2;
  return [group(drawn.marks, { shift: { x: x - drawn.x * scale, y: y - drawn.y * scale }, scale })];
}
