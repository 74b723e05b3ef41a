import type { Cable, Conductor } from "../../model/cable.ts";
import type { Enclosure, Jumper, Splice } from "../../model/enclosure.ts";
import {
  asId,
  type ConductorKey,
  cableEnd,
  type EndKey,
  type JumperId,
  jumperEnd,
  parseEnd,
  type SpliceId,
} from "../../model/ids.ts";
import type { At, Place } from "../../model/place.ts";
import type { Installation } from "../../model/project.ts";
import { cablesInto } from "../../queries/cables-into.ts";
import { inOrder, nextOrder } from "../../queries/in-order.ts";
import { landedAt, landingsOf } from "../../queries/landings.ts";
import { terminalsOf } from "../../queries/terminals-of.ts";
import type { Colour } from "../../units/colour.ts";
import { kindOfEnd } from "./box-plan.ts";
import { likelySides, type Sides } from "./likely-sides.ts";
import { type Kind, kindOfConductor } from "./net.ts";
import {
  type DeviceSide,
  firstHole,
  hasLoadSide,
  type OpenTerminal,
  openTerminals,
  PURPOSES,
  SWITCHED,
  unfedTerminals,
} from "./open-terminals.ts";

const COLOURS: Readonly<Record<Kind, Colour>> = { 0: "black", 1: "white", 2: "bare" };
const PIGTAIL = { name: "p", awg: "12", material: "copper", stranded: false } as const;

/**
 * A box as it will probably be made up: what still waits under a cap is joined with its kind, grounds with grounds, and
 * devices hang on pigtails from those joints. The box is laid out so, and only what is really there is drawn: a landing
 * that was to be expected finds its place kept free and moves nothing. What is made up is laid out as it is.
 * @returns The same box where nothing is to be expected.
 */
export function likelyMadeUp(installation: Installation, box: Enclosure): Enclosure {
  if (box.kind !== "box" || !isBegun(box)) return box;
  const likely: Likely = { places: {}, splices: {}, jumpers: {} };
  const waiting = waitingEnds(installation, box);
  const sides = likelySides(installation, box);
  for (const kind of [2, 1, 0] as const)
    for (const side of hasLoadSide(box) && kind !== 2 ? (["LINE", "LOAD"] as const) : [undefined])
      joinKind(installation, box, { kind, side, sides }, waiting, likely);
  if (Object.keys(likely.places).length === 0) return box;
  return {
    ...box,
    places: { ...box.places, ...likely.places },
    splices: { ...box.splices, ...likely.splices },
    jumpers: { ...box.jumpers, ...likely.jumpers },
  };
}

/**
 * Whether anything in a box is landed yet. Until then it is drawn as small as it is, so that it is readable as a whole in a
 * narrow window; the first landing takes the room for all that will follow.
 */
const isBegun = ({ places }: Enclosure): boolean =>
  Object.values(places).some(({ at }) => at.kind === "splice" || at.kind === "terminal" || at.kind === "bond");

/** What a box will have that it has not now. */
interface Likely {
  readonly places: Record<EndKey, Place>;
  readonly splices: Record<SpliceId, Splice>;
  readonly jumpers: Record<JumperId, Jumper>;
}

/** What is joined together; hots and neutrals in two lots, where some of them are to be protected by a device. */
interface Joint {
  readonly kind: Kind;
  readonly side: DeviceSide;
  readonly sides: Sides;
}

interface Waiting {
  readonly end: EndKey;
  readonly kind: Kind;
}

const isWaiting = (place: Place | undefined): boolean =>
  place !== undefined &&
  (place.at.kind === "capped" || place.at.kind === "loose") &&
  place.spare !== true &&
  place.markedAs === undefined;

/**
 * Of each cable the first hot, the neutral and the ground that wait: what a second hot is for, nobody can know, nor which
 * of several lone conductors feeds what.
 */
function waitingEnds(installation: Installation, box: Enclosure): readonly Waiting[] {
  return cablesInto(installation.cables, box.id).flatMap(({ cable, side }) => {
    const conductors = inCable(cable);
    const firsts = conductors.filter(
      ([, { kind }], nth) => conductors.findIndex(([, other]) => other.kind === kind) === nth,
    );
    return conductors.length < 2
      ? []
      : firsts.flatMap(([key, { kind }]) => {
          const end = cableEnd(cable.id, key, side);
          return isWaiting(box.places[end]) ? [{ end, kind }] : [];
        });
  });
}

const inCable = ({ conductors }: Cable): readonly (readonly [ConductorKey, { readonly kind: Kind }])[] =>
  (Object.entries(conductors) as [ConductorKey, Conductor][])
    .sort(([p, a], [q, b]) => a.order - b.order || (p < q ? -1 : 1))
    .map(([key, conductor]) => [key, { kind: kindOfConductor(conductor) }] as const);

function joinKind(
  installation: Installation,
  box: Enclosure,
  joint: Joint,
  waiting: readonly Waiting[],
  likely: Likely,
): void {
  const { kind, side } = joint;
  const known = splicesOf(installation, box, joint);
  // Where there are several such joints, which of them an end will go to nobody can know.
  if (known.length > 1) return;
  const rest = waiting.flatMap(({ end, kind: own }) => (own === kind && isOnSide(end, joint) ? [end] : []));
  const isOpenRun = known.length === 0 && kind !== 2 && side === undefined && isFedThrough(installation, box);
  const straight = isOpenRun ? onScrews(box, kind, rest) : straightToDevices(box, joint, rest, known.length > 0);
  for (const [end, terminal] of straight) likely.places[end] = { at: firstHole(terminal) };
  const joined = rest.filter((end) => !straight.has(end));
  if (known.length === 0 && joined.length < 2) return;
  const splice = known[0] ?? asId<SpliceId>(freeId(`likely-${kind}${side ?? ""}`, box.splices));
  const order = nextOrder(box.splices) + 2 - kind;
  if (known.length === 0) likely.splices[splice] = { id: splice, name: "", connector: "twist-large", order };
  const at: At = { kind: "splice", splice };
  for (const end of joined) likely.places[end] = { at };
  const used = new Set([...straight.values()].map(({ terminal }) => terminal));
  for (const terminal of unfedTerminals(box, kind, side)) {
    if (used.has(terminal.terminal)) continue;
    const nth = Object.keys(likely.jumpers).length;
    const id = asId<JumperId>(freeId(`likely-${nth}`, box.jumpers));
    likely.jumpers[id] = { ...PIGTAIL, id, colour: COLOURS[kind], order: nextOrder(box.jumpers) + nth };
    likely.places[jumperEnd(id, "a")] = { at };
    likely.places[jumperEnd(id, "b")] = { at: firstHole(terminal) };
  }
}

/** An id that a table does not have. */
function freeId(base: string, table: Readonly<Record<string, unknown>>): string {
  let id = base;
  for (let nth = 2; id in table; nth += 1) id = `${base}-${nth}`;
  return id;
}

/** Whether an end belongs to the side of the protecting device that a joint is for. */
function isOnSide(end: EndKey, { side, sides }: Joint): boolean {
  const parsed = parseEnd(end);
  return side === undefined || parsed?.of !== "cable" || sides(parsed.cable) === side;
}

/**
 * Ends that go to a device without a joint: the last hot to what a switch switches, the only one of its kind to what
 * waits for it.
 */
function straightToDevices(
  box: Enclosure,
  { kind, side }: Joint,
  ends: readonly EndKey[],
  hasJoint: boolean,
): ReadonlyMap<EndKey, OpenTerminal> {
  const rest = [...ends];
  const found = new Map<EndKey, OpenTerminal>();
  const take = (end: EndKey | undefined, terminal: OpenTerminal): void => {
    if (end !== undefined) found.set(end, terminal);
  };
  const unfed = unfedTerminals(box, kind, side);
  const isFed = ({ device }: OpenTerminal): boolean => unfed.every((each) => each.device !== device);
  if (kind === 0)
    for (const terminal of openTerminals(box, SWITCHED))
      if (rest.length > 1 || hasJoint || isFed(terminal)) take(rest.pop(), terminal);
  if (!hasJoint && rest.length === 1) for (const terminal of unfed) take(rest.shift(), terminal);
  return found;
}

/** Ends on the screws that are free, one after the other. */
const onScrews = (box: Enclosure, kind: Kind, ends: readonly EndKey[]): ReadonlyMap<EndKey, OpenTerminal> => {
  const screws = openTerminals(box, kind === 0 ? HOT_OR_SWITCHED : PURPOSES[kind]);
  return new Map(screws.flatMap((screw, nth) => (ends[nth] === undefined ? [] : [[ends[nth], screw] as const])));
};

const HOT_OR_SWITCHED = new Set([...PURPOSES[0], ...SWITCHED]);

/** Whether a hot or neutral of a cable feeds a device without a joint: then those of the others probably hang on it too. */
const isFedThrough = (installation: Installation, box: Enclosure): boolean =>
  Object.values(box.devices).some((device) =>
    terminalsOf(device).some(
      ({ name, purpose }) =>
        !SWITCHED.has(purpose) &&
        landedAt(box, device.id, name).some(
          ({ end }) => parseEnd(end)?.of === "cable" && kindOfEnd(box, installation, end) !== 2,
        ),
    ),
  );

/** Splices that hold ends of a kind and of a side, and no others. */
function splicesOf(installation: Installation, box: Enclosure, joint: Joint): readonly SpliceId[] {
  const { bySplice } = landingsOf(box);
  return inOrder(box.splices).flatMap(({ id }) => {
    const ends = bySplice.get(id) ?? [];
    const cables = ends.filter((end) => parseEnd(end)?.of === "cable");
    const isOf = ends.length > 0 && ends.every((end) => kindOfEnd(box, installation, end) === joint.kind);
    return isOf && cables.every((end) => isOnSide(end, joint)) ? [id] : [];
  });
}
