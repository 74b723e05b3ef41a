import type { PreviewResult } from "../../shared-model/analysis/protocol.ts";
import type { Severity } from "../../shared-model/answers/finding.ts";
import type { TypedCall } from "../../shared-model/commands/command-args.ts";
import type { Refusal } from "../../shared-model/commands/define-command.ts";
import type { BoxDrawing } from "../../shared-model/geometry/box-drawing.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { At } from "../../shared-model/model/place.ts";
import type { Point, StateName } from "../../shared-model/model/project.ts";
import { SEVERITIES } from "../../shared-model/model/severity.ts";
import { nameOfTerminal } from "../../shared-model/queries/terminals-of.ts";
import { broughtEverywhere } from "../state/brought-everywhere.ts";
import { keyOfPlace, type LandingChoice, type LandingPlace } from "../state/landing-choices.ts";
import { nextJumperName } from "../state/naming.ts";
import { clearSpot } from "./clear-spot.ts";
import type { HeldThing } from "./gesture-store.ts";
import { laterWording } from "./later-words.ts";

/** What is known of a target: not possible and why, possible with the finding that would follow, or nothing against it. */
export type TargetVerdict =
  | { readonly kind: "refused"; readonly reason: string }
  | { readonly kind: "finding"; readonly severity: Severity; readonly message: string }
  /** `everywhere`: what follows wherever it is landed, and so tells this place from no other. */
  | { readonly kind: "open"; readonly everywhere?: { readonly severity: Severity; readonly message: string } };

/**
 * Drawing units from the middle of a place to the rim of its ring: half a pitch, for holes, rows and ends lie one pitch
 * apart, and two rings must not touch; more where the drawing has room around a place.
 */
export const RADIUS: Readonly<Record<LandingTarget["kind"], number>> = {
  terminal: 8,
  splice: 8,
  bond: 8,
  capped: 14,
  loose: 8,
  "new-splice": 8,
};

/** Of a place that the drawing does not show yet. */
export const UNDRAWN_RADIUS = 14;

/** A place of the drawing where what is held could go, with the command that puts it there. */
export interface LandingTarget {
  readonly key: string;
  readonly kind: LandingPlace["kind"];
  /** In drawing units of the box. */
  readonly at: Point;
  /** Which way its sign stands: away from the body that the place belongs to. */
  readonly outward: 1 | -1;
  /** Set for a place that the drawing does not show yet, so that the target draws it. */
  readonly undrawn?: true;
  readonly name: string;
  readonly note: string;
  readonly call: TypedCall;
  readonly verdict: TargetVerdict;
}

/**
 * Targets of a held end: the choices that Details lists, where the drawing has them.
 * @param heldName "C1 BK".
 */
export function targetsOfEnd(
  drawing: BoxDrawing,
  held: Extract<HeldThing, { kind: "end" }>,
  choices: readonly LandingChoice[],
  previews: ReadonlyMap<string, PreviewResult>,
  heldName: string,
): readonly LandingTarget[] {
  const isEverywhere = broughtEverywhere(choices, previews, heldName);
  const targets = choices.flatMap(({ key, place, name, note, call, refusal }): readonly LandingTarget[] => {
    const spot = place.kind === "capped" ? capSpot(drawing, held) : spotOf(drawing, place);
    if (spot === undefined) return [];
    return [
      {
        key,
        kind: place.kind,
        ...spot,
        name,
        note,
        call,
        verdict: verdictOf(refusal, previews.get(key), isEverywhere),
      },
    ];
  });
  return apart(drawing, targets);
}

/** A place that the drawing does not show has its sign where there is room for it. */
const isFree = ({ kind, undrawn }: LandingTarget): boolean => kind === "capped" || undrawn === true;

function apart(drawing: BoxDrawing, targets: readonly LandingTarget[]): readonly LandingTarget[] {
  const discs = targets.flatMap((target) => (isFree(target) ? [] : [{ ...target.at, radius: RADIUS[target.kind] }]));
  return targets.map((target) => {
    if (!isFree(target)) return target;
    const radius = target.undrawn ? UNDRAWN_RADIUS : RADIUS[target.kind];
    const at = clearSpot(drawing, target.at, radius, discs);
    discs.push({ ...at, radius });
    return { ...target, at };
  });
}

/** Targets of the second end of a jumper: terminals, splices and the bond of its box. */
export function targetsOfJumper(
  drawing: BoxDrawing,
  enclosure: Enclosure,
  held: Extract<HeldThing, { kind: "jumper" }>,
  state: StateName,
  refuse: (call: TypedCall) => Refusal | undefined,
): readonly LandingTarget[] {
  const { jumper, from, awg, colour } = held;
  const name = nextJumperName(enclosure);
  const targets = placesOf(drawing).flatMap((to): readonly LandingTarget[] => {
    const spot = spotOf(drawing, to);
    if (spot === undefined || keyOfPlace(to) === keyOfPlace(from)) return [];
    const args = { state, enclosure: enclosure.id, jumper, name, awg, colour, from, to };
    const call: TypedCall = { command: "add-jumper", args };
    const verdict = verdictOf(refuse(call), undefined, nowhere);
    return [{ key: keyOfPlace(to), kind: to.kind, ...spot, name: nameOfPlace(enclosure, to), note: "", call, verdict }];
  });
  return apart(drawing, targets);
}

function placesOf(drawing: BoxDrawing): readonly At[] {
  const holes = drawing.devices.flatMap(({ device, terminals }) =>
    terminals.flatMap(({ terminal, holes: each }) =>
      each.map(({ hole }): At => ({ kind: "terminal", device, terminal, hole })),
    ),
  );
  const splices = drawing.splices.map(({ splice }): At => ({ kind: "splice", splice }));
  return [...splices, ...holes, { kind: "bond" }];
}

function nameOfPlace(enclosure: Enclosure, at: At): string {
  if (at.kind === "splice") return enclosure.splices[at.splice]?.name ?? "";
  if (at.kind !== "terminal") return laterWording.boxGroundScrew;
  const device = enclosure.devices[at.device];
  return device === undefined ? "" : nameOfTerminal(device, at.terminal);
}

type Spot = Pick<LandingTarget, "at" | "outward" | "undrawn">;

/** Where the drawing shows a place; undefined for one that has no spot of its own, such as lying loose. */
export function spotOf(drawing: BoxDrawing, place: LandingPlace): Spot | undefined {
  switch (place.kind) {
    case "splice": {
      const splice = drawing.splices.find((each) => each.splice === place.splice);
      return splice && { at: splice.freeRow, outward: 1 };
    }
    case "terminal": {
      const device = drawing.devices.find((each) => each.device === place.device);
      const terminal = device?.terminals.find((each) => each.terminal === place.terminal);
      const hole = terminal?.holes.find((each) => each.hole === place.hole);
      if (device === undefined || hole === undefined) return undefined;
      return { at: hole.at, outward: hole.at.x < device.body.x + device.body.width / 2 ? -1 : 1 };
    }
    case "new-splice": {
      const cap = drawing.caps.find((each) => each.end === place.end);
      return cap && { at: cap.at, outward: cap.from === "right" ? -1 : 1 };
    }
    case "bond":
      if (drawing.bond !== undefined) return { at: drawing.bond.at, outward: -1 };
      return { at: { x: drawing.width - 44, y: drawing.height - 40 }, outward: -1, undrawn: true };
    default:
      return undefined;
  }
}

/** A cap to hand: beside the sheath that the held end comes from, clear of its conductors. */
function capSpot(drawing: BoxDrawing, { end }: Extract<HeldThing, { kind: "end" }>): Spot | undefined {
  const start = drawing.conductors.find((conductor) => conductor.ends.includes(end))?.points[0];
  if (start === undefined) return undefined;
  const inward = start.x < drawing.width / 2 ? 1 : -1;
  const x = Math.min(Math.max(start.x + inward * 30, 40), drawing.width - 40);
  return { at: { x, y: Math.max(28, start.y - 62) }, outward: inward };
}

type Judge = ReturnType<typeof broughtEverywhere>;
const nowhere = (): boolean => false;

function verdictOf(
  refusal: Refusal | undefined,
  preview: PreviewResult | undefined,
  isEverywhere: Judge,
): TargetVerdict {
  if (refusal !== undefined) return { kind: "refused", reason: refusal.message };
  if (preview === undefined) return { kind: "open" };
  if ("refused" in preview) return { kind: "refused", reason: preview.refused };
  const [worst, alike] = [false, true].map((isAlike) => {
    const own = preview.introduces.filter((each) => isEverywhere(each) === isAlike);
    return SEVERITIES.flatMap((severity) => own.filter((each) => each.severity === severity))[0];
  });
  if (worst !== undefined) return { kind: "finding", severity: worst.severity, message: worst.message };
  return alike === undefined
    ? { kind: "open" }
    : { kind: "open", everywhere: { severity: alike.severity, message: alike.message } };
}
