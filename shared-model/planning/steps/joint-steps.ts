import type { ScopeBox, ScopeChange, ScopeItem } from "../../answers/scope.ts";
import type { Finish } from "../../catalog/device-type.ts";
import { FINISH_WORDS } from "../../catalog/device-words.ts";
import { COLOUR_WORDS } from "../../catalog/wire-words.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Enclosure, Splice } from "../../model/enclosure.ts";
import { type EndKey, type JumperId, parseEnd } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { getEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { inOrder } from "../../queries/in-order.ts";
import { membersOf } from "../../queries/landings.ts";
import { findTerminal } from "../../queries/terminals-of.ts";
import { compareWireSize, type WireSize } from "../../units/wire-size.ts";
import { connectorWords, lengthWords, placeWords } from "../scope/scope-words.ts";
import type { StepDraft } from "./step-draft.ts";
import { classOfPlace, classOfSplice, endsOf, type WireClass } from "./wire-classes.ts";

const wording = catalogue({
  and: " and ",
  cap: (end: Part) => `Cap ${end} by itself.`,
  close: (joint: Part, sizes: Part, connector: Part) => `Close ${joint}: ${sizes}, ${connector}. Tug each.`,
  cut: (awg: Part, colour: Part, length: Part) => `Cut it: ${awg} AWG, ${colour}, ${length}`,
  formerly: (joint: Part, former: Part) => `${joint} (${former} as found)`,
  inIt: (ends: Part) => `In it: ${ends}.`,
  land: (end: Part, terminal: Part) => `Land ${end} on ${terminal}.`,
  landFinish: (end: Part, terminal: Part, finish: Part) => `Land ${end} on ${terminal}, ${finish}.`,
  landOnBox: (end: Part) => `Land ${end} on the grounding screw of the box.`,
  landOnPanel: (end: Part) => `Land ${end} on the grounding screw of the panel.`,
  leave: (end: Part) => `Leave ${end} free.`,
  ofThese: (ends: Part) => `Of these stay: ${ends}.`,
  put: (end: Part, joint: Part) => `Put ${end} into ${joint}.`,
  size: (count: Part, awg: Part) => `${count} × ${awg} AWG`,
});

const STAGE: Readonly<Record<WireClass, number>> = { ground: 7, neutral: 8, hot: 9 };

/** Stages 7 to 9: the ends of one kind of wire, joint by joint, each joint closed before the next; then terminals. */
export function jointSteps(
  installation: Installation,
  after: Enclosure,
  box: ScopeBox,
  wire: WireClass,
): readonly StepDraft[] {
  const stage = STAGE[wire];
  const placed = endsOf(box).filter(
    ({ kind, will, item }) =>
      (kind === "moved" || kind === "new" || kind === "replaced") &&
      will?.at !== undefined &&
      classOfPlace(installation, after, item.id as EndKey, will.at) === wire,
  );
  const splices = inOrder<Splice>(after.splices)
    .filter(({ id }) => classOfSplice(installation, after, id) === wire)
    .sort((p, q) => Number(isOnLine(after, p)) - Number(isOnLine(after, q)));
  const cut = new Set<string>();
  const attach = (change: ScopeChange): StepDraft => attachStep(after, box, change, stage, cut);
  return [
    ...splices.flatMap((splice) => {
      const ends = placed.filter(({ will }) => will?.at?.kind === "splice" && will.at.splice === splice.id);
      const isOpened = ends.length > 0 || wasOpened(box, splice);
      return isOpened ? [...ends.map(attach), closeJoint(installation, after, box, splice, ends, stage)] : [];
    }),
    ...placed.filter(({ will }) => will?.at?.kind !== "splice").map(attach),
  ];
}

/** A joint whose pigtail ends on LINE of a device comes after that on LOAD. */
const isOnLine = (box: Enclosure, { id }: Splice): boolean =>
  membersOf(box, id).some((end) => {
    const parsed = parseEnd(end);
    if (parsed?.of !== "jumper") return false;
    const at = box.places[`${parsed.jumper}.${parsed.side === "a" ? "b" : "a"}` as EndKey]?.at;
    const device = at?.kind === "terminal" ? box.devices[at.device] : undefined;
    return at?.kind === "terminal" && device !== undefined && findTerminal(device, at.terminal)?.group === "LINE";
  });

/** Something was taken out of it, or it gets another connector. */
function wasOpened({ changes, homes }: ScopeBox, { id }: Splice): boolean {
  const home = homes.find(({ splice }) => splice === id)?.home?.splice;
  return changes.some(
    ({ item, kind, was, detach }) =>
      (item.kind === "splice" && item.id === id && (kind === "new" || kind === "changed")) ||
      (detach > 0 && home !== undefined && was?.at?.kind === "splice" && was.at.splice === home),
  );
}

function attachStep(
  after: Enclosure,
  box: ScopeBox,
  { item, will, kind }: ScopeChange,
  stage: number,
  cut: Set<string>,
): StepDraft {
  const end = item.id as EndKey;
  const at = will?.at;
  const parsed = parseEnd(end);
  const jumper = parsed?.of === "jumper" ? after.jumpers[parsed.jumper as JumperId] : undefined;
  const isCut = jumper !== undefined && (kind === "new" || kind === "replaced") && !cut.has(jumper.id);
  if (jumper !== undefined) cut.add(jumper.id);
  const name = item.name;
  return {
    id: `attach:${box.enclosure}:${end}`,
    stage,
    kind: "attach",
    box: { id: box.enclosure, name: box.name },
    items: [item],
    text: attachText(name, at, after),
    details: [
      ...(isCut ? [wording.cut(jumper.awg, COLOUR_WORDS[jumper.colour], lengthWords(jumper))] : []),
      ...(at?.kind === "terminal" ? terminalDetails(after, at) : []),
    ],
  };
}

type Placed = NonNullable<NonNullable<ScopeChange["will"]>["at"]>;

function attachText(name: string, at: Placed | undefined, box: Enclosure): string {
  switch (at?.kind) {
    case "splice":
      return wording.put(name, placeWords(box, at));
    case "terminal": {
      const finish = finishAt(box, at);
      const place = placeWords(box, at);
      return finish === undefined || finish === "none"
        ? wording.land(name, place)
        : wording.landFinish(name, place, FINISH_WORDS[finish]);
    }
    case "bond":
      return box.kind === "panel" ? wording.landOnPanel(name) : wording.landOnBox(name);
    case "capped":
      return wording.cap(name);
    default:
      return wording.leave(name);
  }
}

function finishAt({ devices }: Enclosure, at: Extract<Placed, { kind: "terminal" }>): Finish | undefined {
  const device = devices[at.device];
  return device && findTerminal(device, at.terminal)?.finish;
}

const ENTRY_WORDS: Readonly<Partial<Record<string, string>>> = catalogue({
  "side-screw": "Loop it clockwise round the screw: one conductor only.",
  "clamp-plate": "Straight under the clamp plate, one conductor in a hole.",
  "push-in": "Push-in takes 14 AWG solid copper only.",
});

function terminalDetails({ devices }: Enclosure, at: Extract<Placed, { kind: "terminal" }>): readonly string[] {
  const device = devices[at.device];
  const words = device && ENTRY_WORDS[findTerminal(device, at.terminal)?.entryKind ?? ""];
  return words === undefined ? [] : [words];
}

/** A joint is closed: who is in it, in which connector. */
function closeJoint(
  installation: Installation,
  after: Enclosure,
  box: ScopeBox,
  splice: Splice,
  placed: readonly ScopeChange[],
  stage: number,
): StepDraft {
  const members = membersOf(after, splice.id);
  const fresh = new Set(placed.map(({ item }) => item.id));
  const home = box.homes.find((one) => one.splice === splice.id)?.home;
  const stay = members.filter((end) => !fresh.has(end)).map((end) => nameOfEnd(installation, after, end));
  const called =
    home !== undefined && home.name !== splice.name ? wording.formerly(splice.name, home.name) : splice.name;
  const item: ScopeItem = { kind: "splice", id: splice.id, name: splice.name };
  return {
    id: `join:${box.enclosure}:${splice.id}`,
    stage,
    kind: "join",
    box: { id: box.enclosure, name: box.name },
    items: [item],
    text: wording.close(called, sizesWords(installation, after, members), connectorWords(splice.connector)),
    details: [
      wording.inIt(members.map((end) => nameOfEnd(installation, after, end)).join(", ")),
      ...(stay.length === 0 || fresh.size === 0 ? [] : [wording.ofThese(stay.join(", "))]),
    ],
  };
}

/** "4 x 12 AWG", "1 x 12 AWG and 2 x 14 AWG". */
export function sizesWords(installation: Installation, box: Enclosure, members: readonly EndKey[]): string {
  const counts = new Map<WireSize, number>();
  for (const end of members) {
    const { awg } = getEndFacts(installation, box, end);
    counts.set(awg, (counts.get(awg) ?? 0) + 1);
  }
  return [...counts]
    .sort(([p], [q]) => compareWireSize(q, p))
    .map(([awg, count]) => wording.size(count, awg))
    .join(wording.and);
}
