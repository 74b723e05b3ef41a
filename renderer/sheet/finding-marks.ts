import type { CannotTell, Finding, Subject as FoundSubject } from "../../shared-model/answers/finding.ts";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import { WALL } from "../../shared-model/geometry/metrics.ts";
import type { SignKind } from "../../shared-model/geometry/sign-shapes.ts";
import { textWidth } from "../../shared-model/geometry/text-width.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EndKey, OutletKey } from "../../shared-model/model/ids.ts";
import { parseOutlet } from "../../shared-model/model/ids.ts";
import type { Point } from "../../shared-model/model/project.ts";
import { SEVERITIES } from "../../shared-model/model/severity.ts";
import { terminalsOf } from "../../shared-model/queries/terminals-of.ts";
import { FILL_BAR, FILL_SIGN } from "./box-header.tsx";

/** What the checks say about one thing of a box: one sign, the worst, with a count. */
export interface FindingMark {
  readonly key: string;
  readonly at: Point;
  readonly worst: SignKind;
  readonly count: number;
  readonly messages: readonly string[];
  readonly subject: FoundSubject;
  /** About the box as a whole. */
  readonly onHeader: boolean;
}

/** Findings and open questions by the id of what they are about first. */
export type AnswersBySubject = ReadonlyMap<string, readonly (Finding | CannotTell)[]>;

const cache = new WeakMap<readonly Finding[], WeakMap<readonly CannotTell[], AnswersBySubject>>();

/** Index of all answers, kept as long as the answers are the same. */
export function answersBySubject(findings: readonly Finding[], open: readonly CannotTell[]): AnswersBySubject {
  let second = cache.get(findings);
  if (second === undefined) {
    second = new WeakMap();
    cache.set(findings, second);
  }
  let index = second.get(open);
  if (index === undefined) {
    index = buildIndex([...findings, ...open]);
    second.set(open, index);
  }
  return index;
}

function buildIndex(answers: readonly (Finding | CannotTell)[]): AnswersBySubject {
  const index = new Map<string, (Finding | CannotTell)[]>();
  for (const answer of answers) {
    const id = answer.subjects[0]?.id;
    if (id === undefined) continue;
    const list = index.get(id);
    if (list === undefined) index.set(id, [answer]);
    else list.push(answer);
  }
  return index;
}

/** What concerns one box, in a stable order: the same list of the same answers while nothing about it changed. */
export function answersAbout(enclosure: Enclosure, index: AnswersBySubject): readonly (Finding | CannotTell)[] {
  if (index.size === 0) return [];
  const found: (Finding | CannotTell)[] = [];
  const take = (id: string): void => {
    const list = index.get(id);
    if (list !== undefined) found.push(...list);
  };
  take(enclosure.id);
  for (const id of Object.keys(enclosure.entries)) take(id);
  for (const device of Object.values(enclosure.devices)) {
    take(device.id);
    take(`${device.id}/upper`);
    take(`${device.id}/lower`);
    for (const terminal of terminalsOf(device)) take(`${device.id}.${terminal.name}`);
  }
  for (const id of Object.keys(enclosure.splices)) take(id);
  for (const id of Object.keys(enclosure.jumpers)) take(id);
  const cables = new Set<string>();
  for (const end of Object.keys(enclosure.places)) {
    take(end);
    cables.add(end.split(".")[0] ?? "");
  }
  for (const id of cables) if (!(id in enclosure.jumpers)) take(id);
  return found;
}

const RANK: readonly SignKind[] = [...SEVERITIES, "unknown"];

const kindOf = (answer: Finding | CannotTell): SignKind => ("severity" in answer ? answer.severity : "unknown");

/** One mark per thing, where it stands in the drawing. */
export function findingMarks(drawing: BoxDrawing, answers: readonly (Finding | CannotTell)[]): readonly FindingMark[] {
  const groups = new Map<string, (Finding | CannotTell)[]>();
  for (const answer of answers) {
    const subject = answer.subjects[0];
    if (subject === undefined) continue;
    const place = groupOf(subject);
    const list = groups.get(place);
    if (list === undefined) groups.set(place, [answer]);
    else list.push(answer);
  }
  return [...groups].flatMap(([key, list]) => {
    const subject = list[0]?.subjects[0];
    if (subject === undefined) return [];
    const spot = placeOf(drawing, subject);
    const at = spot ?? headerMark(drawing);
    const worst = RANK.find((kind) => list.some((answer) => kindOf(answer) === kind)) ?? "unknown";
    return [
      {
        key,
        at,
        worst,
        count: list.length,
        messages: list.map((answer) => answer.message),
        subject,
        onHeader: spot === undefined,
      },
    ];
  });
}

/** Signs of one device stand together, whichever outlet of it they are about. */
const groupOf = (subject: FoundSubject): string =>
  subject.kind === "outlet" ? `device ${parseOutlet(subject.id as OutletKey).device}` : `${subject.kind} ${subject.id}`;

/** A sign about the box as a whole stands between the words of its fill and the bar, with its count before the bar. */
export const headerMark = (drawing: BoxDrawing): Point => ({
  x: drawing.width + WALL - FILL_BAR - FILL_SIGN + 20,
  y: -27,
});

function placeOf(drawing: BoxDrawing, subject: FoundSubject): Point | undefined {
  const { id } = subject;
  switch (subject.kind) {
    case "outlet":
    case "device": {
      const device = drawing.devices.find((each) => each.device === parseOutlet(id as OutletKey).device);
      return device && { x: device.body.x + device.body.width, y: device.body.y };
    }
    case "terminal":
      return terminalPlace(drawing, id);
    case "splice": {
      const splice = drawing.splices.find((each) => each.splice === id);
      if (splice === undefined) return undefined;
      const half = Math.max(textWidth(splice.name, 15, 700), textWidth(splice.caption, 11)) / 2;
      return { x: splice.labelAt.x + half + 14, y: splice.labelAt.y + 4 };
    }
    case "end":
    case "jumper": {
      for (const conductor of drawing.conductors) {
        if (conductor.jumper === id) return conductor.plates[0]?.at;
        const i = conductor.ends.indexOf(id as EndKey);
        if (i >= 0) return besideCap(drawing, id as EndKey) ?? conductor.grips[i];
      }
      return undefined;
    }
    case "entry":
    case "cable": {
      const sheath = drawing.sheaths.find((each) => each.cable === id || each.entry === id);
      return sheath && { x: sheath.outer.x, y: sheath.outer.y };
    }
    default:
      return undefined;
  }
}

/** Drawing units from where a conductor comes into its cap to a sign that leaves the cap free to be taken. */
const PAST_CAP = 30;

/** Over its cap a sign would take the place where the end is picked up. */
function besideCap({ caps }: BoxDrawing, end: EndKey): Point | undefined {
  const cap = caps.find((each) => each.end === end);
  if (cap === undefined) return undefined;
  const { x, y } = cap.at;
  if (cap.from === "left" || cap.from === "right") return { x: x + (cap.from === "left" ? PAST_CAP : -PAST_CAP), y };
  return { x, y: y + (cap.from === "top" ? PAST_CAP : -PAST_CAP) };
}

/** A terminal is named by its device and its own name: "d1.LINE_H". */
function terminalPlace(drawing: BoxDrawing, id: string): Point | undefined {
  for (const device of drawing.devices) {
    const terminal = device.terminals.find((each) => `${device.device}.${each.terminal}` === id);
    if (terminal !== undefined) return { x: terminal.screw.x, y: terminal.screw.y + 24 };
  }
  return undefined;
}

/** The worst of some marks. */
export const worstOf = (marks: readonly FindingMark[]): SignKind =>
  RANK.find((kind) => marks.some((mark) => mark.worst === kind)) ?? "unknown";
