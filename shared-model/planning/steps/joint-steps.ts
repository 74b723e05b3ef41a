import type { ScopeBox, ScopeChange, ScopeItem } from "../../answers/scope.ts";
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
      ...(isCut ? [`Cut it: ${jumper.awg} AWG, ${jumper.colour}, ${lengthWords(jumper)}`] : []),
      ...(at?.kind === "terminal" ? terminalDetails(after, at) : []),
    ],
  };
}

type Placed = NonNullable<NonNullable<ScopeChange["will"]>["at"]>;

function attachText(name: string, at: Placed | undefined, box: Enclosure): string {
  switch (at?.kind) {
    case "splice":
      return `Put ${name} into ${placeWords(box, at)}.`;
    case "terminal":
      return `Land ${name} on ${placeWords(box, at)}${finishWords(box, at)}.`;
    case "bond":
      return `Land ${name} on the grounding screw of the ${box.kind === "panel" ? "panel" : "box"}.`;
    case "capped":
      return `Cap ${name} by itself.`;
    default:
      return `Leave ${name} free.`;
  }
}

function finishWords({ devices }: Enclosure, at: Extract<Placed, { kind: "terminal" }>): string {
  const device = devices[at.device];
  const finish = device && findTerminal(device, at.terminal)?.finish;
  return finish === undefined || finish === "none" ? "" : `, ${finish}`;
}

const ENTRY_WORDS: Readonly<Partial<Record<string, string>>> = {
  "side-screw": "Loop it clockwise round the screw: one conductor only.",
  "clamp-plate": "Straight under the clamp plate, one conductor in a hole.",
  "push-in": "Push-in takes 14 AWG solid copper only.",
};

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
    home !== undefined && home.name !== splice.name ? `${splice.name} (${home.name} as found)` : splice.name;
  const item: ScopeItem = { kind: "splice", id: splice.id, name: splice.name };
  return {
    id: `join:${box.enclosure}:${splice.id}`,
    stage,
    kind: "join",
    box: { id: box.enclosure, name: box.name },
    items: [item],
    text: `Close ${called}: ${sizesWords(installation, after, members)}, ${connectorWords(splice.connector)}. Tug each.`,
    details: [
      `In it: ${members.map((end) => nameOfEnd(installation, after, end)).join(", ")}.`,
      ...(stay.length === 0 || fresh.size === 0 ? [] : [`Of these stay: ${stay.join(", ")}.`]),
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
    .map(([awg, count]) => `${count} x ${awg} AWG`)
    .join(" and ");
}
