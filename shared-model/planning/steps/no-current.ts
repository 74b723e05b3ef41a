import type { ScopeBox } from "../../answers/scope.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import { type EndKey, parseEnd, type SpliceId } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import { nameOfEnd } from "../../queries/end-facts.ts";
import { findTerminal } from "../../queries/terminals-of.ts";
import { listed } from "../../rules/rule-parts.ts";
import { sectionOf } from "../../solver/sections.ts";
import { BEFORE_WORDS } from "./before-words.ts";
import type { StepDraft } from "./step-draft.ts";
import { classOfEnd, endsOf } from "./wire-classes.ts";

const wording = catalogue({
  notWhite: (ends: Part) => `Not white, and a neutral by the drawing: ${ends}.`,
});

const wireOf = (end: EndKey): string => {
  const parsed = parseEnd(end);
  return parsed?.of === "jumper" ? parsed.jumper : end;
};

const isFirstOfWire = (
  { end }: { readonly end: EndKey },
  i: number,
  all: readonly { readonly end: EndKey }[],
): boolean => all.findIndex((one) => wireOf(one.end) === wireOf(end)) === i;

/** Joints as found that are opened: something is taken out of them or put in, and all that is in them is apart meanwhile. */
function openedJoints(enclosure: Enclosure, box: ScopeBox): ReadonlySet<SpliceId> {
  const opened = new Set<SpliceId>();
  for (const { detach, attach, item, will } of endsOf(box)) {
    const was = enclosure.places[(item.was ?? item.id) as EndKey]?.at;
    if (detach > 0 && was?.kind === "splice") opened.add(was.splice);
    if (attach === 0 || will?.at?.kind !== "splice") continue;
    const { splice } = will.at;
    const home = box.homes.find((one) => one.splice === splice)?.home;
    if (home !== undefined) opened.add(home.splice);
  }
  return opened;
}

/** By what it is on, whatever its colour: open wiring on knobs has one colour for both, and black and white get exchanged. */
function isNeutral(installation: Installation, enclosure: Enclosure, end: EndKey): boolean {
  const at = enclosure.places[end]?.at;
  const device = at?.kind === "terminal" ? enclosure.devices[at.device] : undefined;
  if (at?.kind === "terminal" && device !== undefined && findTerminal(device, at.terminal)?.purpose === "neutral")
    return true;
  return sectionOf(installation, enclosure.id)?.roleOfEnd(end) === "grounded";
}

/** Whites that are parted, by hand or with the joint that they are in: the return of another circuit would show in them. */
export function noCurrent(installation: Installation, enclosure: Enclosure, box: ScopeBox): readonly StepDraft[] {
  const joints = openedJoints(enclosure, box);
  const parted = endsOf(box).flatMap((change) => {
    const end = (change.item.was ?? change.item.id) as EndKey;
    const at = enclosure.places[end]?.at;
    if (at === undefined || (change.detach === 0 && !(at.kind === "splice" && joints.has(at.splice)))) return [];
    const isWhite = classOfEnd(installation, enclosure, end) === "neutral";
    return isWhite || isNeutral(installation, enclosure, end) ? [{ end, change, isWhite }] : [];
  });
  if (parted.length === 0) return [];
  const others = parted.filter(isFirstOfWire).filter(({ isWhite }) => !isWhite);
  return [
    {
      id: `HP2:${box.enclosure}`,
      stage: 3,
      kind: "hold",
      hold: "HP2",
      box: { id: box.enclosure, name: box.name },
      items: parted.map(({ change }) => change.item),
      text: BEFORE_WORDS.clamp(box.name),
      details:
        others.length === 0
          ? []
          : [wording.notWhite(listed(others.map(({ end }) => nameOfEnd(installation, enclosure, end))))],
      // Both ends of a pigtail may be parted: the current in it is one.
      readings: parted.filter(isFirstOfWire).map(({ end }) => ({
        id: `clamp:${end}`,
        what: nameOfEnd(installation, enclosure, end),
        expect: "0 A",
      })),
      ifNot: BEFORE_WORDS.currentFound,
      cautions: ["WRK2", "WRK4"],
    },
  ];
}
