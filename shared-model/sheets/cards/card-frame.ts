import type { SheetInput } from "../../answers/sheet-input.ts";
import { getDeviceType } from "../../catalog/device-types.ts";
import { boxDrawing } from "../../geometry/draw-box.ts";
import { bringsSupply } from "../../geometry/near/words.ts";
import type { Box, Enclosure } from "../../model/enclosure.ts";
import type { Installation } from "../../model/project.ts";
import { inOrder } from "../../queries/in-order.ts";
import type { Mark } from "../display-list.ts";
import { firstSentence } from "../lists/findings-words.ts";
import { severitySign } from "../lists/signs.ts";
import { group, line, pt, rect, text } from "../marks.ts";
import { checkBox } from "../page/flow-blocks.ts";
import { AMBER_HEIGHT, amberLine, cellWidth, ruleDataWords, type StripCell, stripMarks } from "../page/head-strip.ts";
import { HAIR, INK } from "../page/inks.ts";
import { cutToFit, legible, measure, wrap } from "../page/measure.ts";
import { dayWords, PAGE, STATE_WORDS } from "../page/page-words.ts";
import { breakersOf, circuitsAt, fillLine, makeOf } from "./card-facts.ts";
import { CARD, holdPoints, TITLE_LINES } from "./card-words.ts";

interface Part {
  readonly height: number;
  readonly marks: readonly Mark[];
}

const FRAME = { ink: INK, width: 0.4 } as const;
const STRIP = 15.6;
const FILL = 6.8;

/** Name of the box, job, breaker, edition, state; below it the line of box fill and what the rule data rest on. */
export function cardHead(input: SheetInput, installation: Installation, box: Box, width: number): Part {
  const { project, state, rules, date } = input;
  const name = nameIn(width * NAME_SHARE, box.name);
  const nameWidth = name.width;
  const nameCell = nameWidth + 26;
  const breaker = breakersOf(input, installation, box);
  const fixed = (cell: Omit<StripCell, "width">): StripCell => ({ ...cell, width: cellWidth(cell) });
  const title = project.title.trim() === "" ? PAGE.untitled : project.title;
  const cells: readonly StripCell[] = [
    {
      caption: CARD.job,
      value: withNote(title, box.note ?? ""),
      note: makeOf(installation, box),
    },
    fixed({ ...breaker, note: CARD.lock }),
    fixed({ caption: CARD.edition, value: rules.edition, note: PAGE.localRules }),
    fixed({ caption: CARD.state, value: STATE_WORDS[state], note: dayWords(date) }),
  ];
  const fill = fillLine(input, box);
  const rule = ruleDataWords(input);
  const fillHeight = fill === undefined ? 0 : FILL;
  return {
    height: STRIP + fillHeight + AMBER_HEIGHT,
    marks: [
      rect({ x: 0, y: 0, width: nameCell, height: STRIP }, { stroke: FRAME }),
      ...name.marks,
      ...TITLE_LINES.map((each, i) => text(each, nameWidth + 5.6, 6.9 + i * 5, { size: pt(11), weight: 700 })),
      ...stripMarks(nameCell, 0, width - nameCell, cells, STRIP),
      ...(fill === undefined ? [] : fillMarks(fill, width)),
      ...amberLine(0, STRIP + fillHeight, width, rule.words, rule.isWarning),
    ],
  };
}

/** Of the width of a card, what the name of its box may take. */
const NAME_SHARE = 0.3;
const NAME = { large: pt(27), small: pt(10), lines: 3 } as const;

/** The name of a box: as large as its room allows, a long one in lines that can be read. */
function nameIn(room: number, words: string): { readonly width: number; readonly marks: readonly Mark[] } {
  const long = measure(legible(words), NAME.large, 700);
  const size = Math.min(NAME.large, (NAME.large * room) / Math.max(long, 1));
  if (size >= NAME.small * 1.4) {
    const mark = text(words, 2.8, STRIP / 2 + 0.334 * size, { size, weight: 700 });
    return { width: mark.box.width, marks: [mark] };
  }
  const lettering = { size: NAME.small, weight: 700 } as const;
  const all = wrap(words, room, lettering);
  const shown = all.slice(0, NAME.lines);
  const last = shown[NAME.lines - 1];
  const lines =
    all.length > NAME.lines && last !== undefined ? [...shown.slice(0, -1), `${last.slice(0, -2)}…`] : shown;
  const high = 1.28 * NAME.small;
  const first = STRIP / 2 - ((lines.length - 1) * high) / 2 + 0.334 * NAME.small;
  const marks = lines.map((each, i) => text(each, 2.8, first + i * high, lettering));
  return { width: Math.max(...marks.map(({ box }) => box.width)), marks };
}

const withNote = (title: string, note: string): string =>
  note === "" || title.toLowerCase().includes(note.toLowerCase()) ? title : `${title}, ${note}`;

function fillMarks({ fill, parts, act }: NonNullable<ReturnType<typeof fillLine>>, width: number): readonly Mark[] {
  const size = pt(8.6);
  const y = STRIP + 4.5;
  const bold = { size, weight: 700 } as const;
  const after = 2.8 + measure(fill, size, 700) + 4;
  const right = act === "" ? 0 : measure(act, size, 700) + 4;
  return [
    rect({ x: 0, y: STRIP, width, height: FILL }, { stroke: FRAME }),
    text(fill, 2.8, y, bold),
    text(cutToFit(parts, width - after - right - 2.8, { size }), after, y, { size }),
    ...(act === "" ? [] : [text(act, width - 2.8, y, { ...bold, anchor: "end" })]),
  ];
}

/** Ground-fault devices of a box, by name. */
const guardsIn = (box: Enclosure): readonly string[] =>
  inOrder(box.devices)
    .filter(({ type }) => getDeviceType(type).family.startsWith("ground-fault"))
    .map(({ name }) => name);

/** Those that are to be reset once the breakers of a box are closed again: its own first, then all on the same circuits. */
function guardsToReset(input: SheetInput, installation: Installation, box: Box): readonly string[] {
  const onSame = new Set(circuitsAt(input, box.id).flatMap(({ boxes }) => boxes));
  onSame.delete(box.id);
  const others = [...onSame].flatMap((id) => installation.enclosures[id] ?? []);
  return [box, ...others.sort((p, q) => p.order - q.order)].flatMap(guardsIn);
}

/** Baseline to baseline of hold points. */
const LINE = 3.3;

/** Hold points in two columns, each with its square; none on a card of what was found where something is proposed. */
export function holdPointMarks(input: SheetInput, installation: Installation, box: Box, width: number): Part {
  const { project, state } = input;
  if (state === "as-found" && project.proposed !== undefined) return { height: 0, marks: [] };
  const supply = boxDrawing(project, installation, box.id).sheaths.find(({ cable: id, side }) => {
    const cable = installation.cables[id];
    return cable !== undefined && bringsSupply(installation, box, { cable, side });
  });
  const points = holdPoints(supply?.name, guardsIn(box), guardsToReset(input, installation, box));
  const each = width / 2;
  const size = pt(7.8);
  const textWidth = each - 2.4 - 8.6 - 8;
  const lines = points.map(({ text: words }) => wrap(words, textWidth, { size }));
  const rows = points.length / 2;
  let y = 0;
  const marks: Mark[] = [];
  for (let row = 0; row < rows; row += 1) {
    const count = Math.max(lines[2 * row]?.length ?? 1, lines[2 * row + 1]?.length ?? 1);
    const high = Math.max(6.8, count * LINE + 1.4);
    for (const side of [0, 1]) {
      const i = 2 * row + side;
      const own = lines[i] ?? [];
      const x = side * each;
      const first = y + high / 2 - ((own.length - 1) * LINE) / 2 + 1;
      marks.push(
        text(points[i]?.name ?? "", x + 2.4, y + high / 2 + 1, { size, weight: 700 }),
        ...own.map((words, n) => text(words, x + 11, first + n * LINE, { size })),
        checkBox(x + each - 5.6, y + high / 2 - 1.4, 2.8),
      );
    }
    if (row > 0) marks.push(line(0, y, width, y, { ink: HAIR, width: 0.25 }));
    y += high;
  }
  return {
    height: y,
    marks: [
      rect({ x: 0, y: 0, width, height: y }, { stroke: FRAME }),
      line(each, 0, each, y, { ink: INK, width: 0.25 }),
      ...marks,
    ],
  };
}

const MOST_FINDINGS = 2;
const FINDING = 4;
const SIGN = 5.4;

/** What the checks say of this box, worst first, and a place to sign. */
export function cardFeet({ findings, state }: SheetInput, box: Box, width: number): Part {
  const size = pt(7.5);
  const own = (state === "proposed" ? findings.proposed : findings.asFound) ?? [];
  const ids = new Set<string>([
    box.id,
    ...[box.devices, box.splices, box.places].flatMap((table) => Object.keys(table)),
  ]);
  const here = own.filter(({ subjects }) => subjects.some(({ id }) => ids.has(id)));
  const rows = here.slice(0, MOST_FINDINGS).map(({ severity, message, subjects, section }) => ({
    sign: severitySign(severity),
    words: shortly(message, subjects[0]?.name, section?.confidence === "own-rule" ? undefined : section?.section),
  }));
  const more = here.length - rows.length;
  const last = rows.length === 0 ? CARD.noFindings : more > 0 ? CARD.moreFindings(more) : "";
  let y = 0;
  const said: Mark[] = [];
  for (const { sign, words } of rows) {
    const [first = "", ...rest] = wrap(words, width - 5.4, { size });
    const lines = rest.length === 0 ? [first] : [first, cutToFit(rest.join(" "), width - 5.4, { size })];
    said.push(
      group(sign.marks, { shift: { x: 2.2, y: y + 2.2 } }),
      ...lines.map((each, i) => text(each, 5.4, y + 3.1 + i * LINE, { size })),
    );
    y += FINDING + (lines.length - 1) * LINE;
  }
  return {
    height: y + SIGN,
    marks: [
      ...said,
      ...(last === "" ? [] : [text(last, rows.length === 0 ? 0 : 5.4, y + 3.6, { size })]),
      text(CARD.nameDate, width - 64, y + 3.6, { size: pt(8.25) }),
      line(width - 45, y + 4, width, y + 4, { ink: INK, width: 0.25 }),
    ],
  };
}

function shortly(message: string, subject: string | undefined, section: string | undefined): string {
  const first = firstSentence(message);
  const named = subject === undefined || first.includes(subject) ? first : `${subject}: ${first}`;
  return section === undefined || named.includes(section) ? named : `${named.replace(/[.]$/, "")} (${section}).`;
}
