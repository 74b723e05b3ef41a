import type { Cable } from "../../../shared-model/model/cable.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import {
  type DeviceId,
  type EndKey,
  otherSide,
  parseEnd,
  type Side,
  type SpliceId,
} from "../../../shared-model/model/ids.ts";
import type { At } from "../../../shared-model/model/place.ts";
import type { Installation } from "../../../shared-model/model/project.ts";
import { cablesInto, enclosureAtSide } from "../../../shared-model/queries/cables-into.ts";
import { cableOfEnd, farEnd, nameOfEnd } from "../../../shared-model/queries/end-facts.ts";
import { landedAt, membersOf } from "../../../shared-model/queries/landings.ts";
import { terminalsOf } from "../../../shared-model/queries/terminals-of.ts";
import { placeWords } from "../end-words.ts";
import type { Place } from "./place.ts";
import { wording } from "./words.ts";

/** What lies beyond a place along what is connected, or why nothing does, as a sentence. */
export type Beyond = { readonly to: Place } | { readonly why: string };

/**
 * Goes along what is connected: box, cable, box; conductor end, the place it is in, another end there, the far end of
 * that conductor. A place with several ways on takes the one after the way that was come by.
 * @param from The place before.
 */
export function beyond(installation: Installation, at: Place, from: Place | undefined): Beyond {
  const box = installation.enclosures[at.box];
  if (box === undefined) return GONE;
  if (at.kind === "box") return beyondBox(installation, box, from);
  if (at.kind === "cable") return beyondCable(installation, installation.cables[at.cable], at);
  const [kind, id = "", side] = at.key.split(" ");
  const came = from?.kind === "item" && from.box === at.box ? from.key : undefined;
  switch (kind) {
    case "end":
      return beyondEnd(installation, box, id as EndKey, came);
    case "splice":
      return nextOf(box, membersOf(box, id as SpliceId), came, wording.nothingElseIsInThisSplice);
    case "cable":
      return beyondStub(installation, installation.cables[id as Cable["id"]], side as Side);
    default:
      return nextOf(box, endsOn(box, id as DeviceId), came, wording.nothingElseIsLandedHere);
  }
}

/** The cables of a box in order, for choosing another one of them. */
export function besideCable(installation: Installation, at: Extract<Place, { kind: "cable" }>, by: 1 | -1): Place {
  const ids = [...new Set(cablesInto(installation.cables, at.box).map(({ cable }) => cable.id))];
  const next = ids[(ids.indexOf(at.cable) + by + ids.length) % ids.length];
  return next === undefined ? at : { ...at, cable: next };
}

const GONE: Beyond = { why: wording.itIsNotThereAnyMore };

function beyondBox(installation: Installation, box: Enclosure, from: Place | undefined): Beyond {
  const ids = [...new Set(cablesInto(installation.cables, box.id).map(({ cable }) => cable.id))];
  const came = from?.kind === "cable" ? ids.indexOf(from.cable) : -1;
  const next = ids[(came + 1) % Math.max(1, ids.length)];
  if (next === undefined) return { why: wording.noCableComesTo(box.name) };
  return { to: { kind: "cable", cable: next, box: box.id } };
}

function beyondCable(installation: Installation, cable: Cable | undefined, at: Place): Beyond {
  if (cable === undefined) return GONE;
  const { a } = cable.sides;
  const far = enclosureAtSide(installation, cable, "enclosure" in a && a.enclosure === at.box ? "b" : "a");
  return far === undefined ? leaves(cable) : { to: { kind: "box", box: far.id } };
}

function beyondStub(installation: Installation, cable: Cable | undefined, side: Side): Beyond {
  if (cable === undefined) return GONE;
  const there = otherSide(side);
  const far = enclosureAtSide(installation, cable, there);
  return far === undefined ? leaves(cable) : { to: { kind: "item", box: far.id, key: `cable ${cable.id} ${there}` } };
}

const leaves = ({ name }: Cable): Beyond => ({ why: wording.leavesThisDrawing(name) });

function beyondEnd(installation: Installation, box: Enclosure, end: EndKey, came: string | undefined): Beyond {
  const at = box.places[end]?.at;
  const parsed = parseEnd(end);
  if (at === undefined || parsed === undefined) return GONE;
  const holder = keyOfHolder(at);
  if (holder !== undefined && holder !== came) return { to: { kind: "item", box: box.id, key: holder } };
  const far = farEnd(end);
  const key = `end ${far}`;
  if (parsed.of === "jumper") {
    if (key === came) return endsHere(installation, box, end, at);
    return { to: { kind: "item", box: box.id, key } };
  }
  const cable = cableOfEnd(installation, end);
  if (cable === undefined) return GONE;
  const there = enclosureAtSide(installation, cable, otherSide(parsed.side));
  return there === undefined ? leaves(cable) : { to: { kind: "item", box: there.id, key } };
}

const endsHere = (installation: Installation, box: Enclosure, end: EndKey, at: At): Beyond => ({
  why: wording.endsHere(nameOfEnd(installation, box, end), placeWords(box, at)),
});

/** What an end is in or on, where that is a thing of its own. */
function keyOfHolder(at: At): string | undefined {
  if (at.kind === "splice") return `splice ${at.splice}`;
  return at.kind === "terminal" ? `device ${at.device}` : undefined;
}

/** Ends on the terminals of a device, in the order of the terminals. */
function endsOn(box: Enclosure, id: DeviceId): readonly EndKey[] {
  const device = box.devices[id];
  if (device === undefined) return [];
  return terminalsOf(device).flatMap(({ name }) => landedAt(box, id, name).map(({ end }) => end));
}

/** The end after the one that was come by. */
function nextOf({ id: box }: Enclosure, ends: readonly EndKey[], came: string | undefined, none: string): Beyond {
  const at = ends.findIndex((end) => `end ${end}` === came);
  const next = ends[(at + 1) % Math.max(1, ends.length)];
  if (next === undefined || `end ${next}` === came) return { why: none };
  return { to: { kind: "item", box, key: `end ${next}` } };
}
