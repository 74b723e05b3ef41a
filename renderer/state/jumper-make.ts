import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import type { At } from "../../shared-model/model/place.ts";
import type { Installation } from "../../shared-model/model/project.ts";
import { type EndFacts, findEndFacts } from "../../shared-model/queries/end-facts.ts";
import { landedAt, landingsOf, membersOf } from "../../shared-model/queries/landings.ts";
import { findTerminal } from "../../shared-model/queries/terminals-of.ts";
import type { Colour } from "../../shared-model/units/colour.ts";
import { compareWireSize, type WireSize } from "../../shared-model/units/wire-size.ts";
import { keyOfPlace } from "./landing-choices.ts";
import type { NamedPlace } from "./places-in.ts";

/** Sizes that a jumper in a dwelling's box is made of, thinnest first. */
export const JUMPER_SIZES: readonly WireSize[] = ["14", "12", "10"];

export interface JumperMake {
  readonly awg: WireSize;
  readonly colour: Colour;
}

/** Ends at a splice, in any hole of a terminal, or on the bond. */
export function endsAt(enclosure: Enclosure, at: At): readonly EndKey[] {
  if (at.kind === "splice") return membersOf(enclosure, at.splice);
  if (at.kind === "terminal") return landedAt(enclosure, at.device, at.terminal).map(({ end }) => end);
  return at.kind === "bond" ? landingsOf(enclosure).bonded : [];
}

/**
 * What a jumper between two places would usually be made of: bare among grounds, else the one colour that is there,
 * white for a neutral, black; as thick as the thickest that it joins, or, where nothing is yet, as most conductors of
 * the enclosure. A first choice only, common practice: shown, and changeable.
 */
export function usualMake(installation: Installation, enclosure: Enclosure, from: At, to: At): JumperMake {
  const ends = [...endsAt(enclosure, from), ...endsAt(enclosure, to)];
  const there = factsOf(installation, enclosure, ends);
  const awg = thickest(there) ?? commonest(factsOf(installation, enclosure, Object.keys(enclosure.places) as EndKey[]));
  const parts = [partAt(installation, enclosure, from), partAt(installation, enclosure, to)];
  if (parts.includes("ground")) return { awg, colour: "bare" };
  const [first, ...others] = there.map(({ colour }) => colour);
  if (first !== undefined && others.every((colour) => colour === first)) return { awg, colour: first };
  return { awg, colour: parts.includes("neutral") && !parts.includes("hot") ? "white" : "black" };
}

type Fact = Pick<EndFacts, "awg" | "colour" | "grounding">;

/** Facts of ends; one that was marked again counts as the colour it was marked. */
const factsOf = (installation: Installation, enclosure: Enclosure, ends: readonly EndKey[]): readonly Fact[] =>
  ends.flatMap((end): readonly Fact[] => {
    const facts = findEndFacts(installation, enclosure, end);
    if (facts === undefined) return [];
    const { awg, grounding, colour } = facts;
    return [{ awg, grounding, colour: enclosure.places[end]?.markedAs ?? colour }];
  });

/** The thickest of them that jumpers are made of. */
const thickest = (facts: readonly Fact[]): WireSize | undefined =>
  JUMPER_SIZES.findLast((size) => facts.some(({ awg }) => compareWireSize(awg, size) === 0));

/** The size that most of them have, the thicker of two that are as common; 12 where there are none. */
function commonest(facts: readonly Fact[]): WireSize {
  const count = (size: WireSize): number => facts.filter(({ awg }) => awg === size).length;
  const most = Math.max(...JUMPER_SIZES.map(count));
  return most === 0 ? "12" : (JUMPER_SIZES.findLast((size) => count(size) === most) ?? "12");
}

type Part = "ground" | "neutral" | "hot";

/** What a place is for: a terminal by its make, a splice by who is in it; undefined for an empty one. */
function partAt(installation: Installation, enclosure: Enclosure, at: At): Part | undefined {
  if (at.kind === "bond") return "ground";
  if (at.kind === "terminal") {
    const device = enclosure.devices[at.device];
    const purpose = device && findTerminal(device, at.terminal)?.purpose;
    return purpose === "ground" || purpose === "neutral" ? purpose : "hot";
  }
  const facts = factsOf(installation, enclosure, endsAt(enclosure, at));
  if (facts.length === 0) return undefined;
  if (facts.some(({ grounding }) => grounding)) return "ground";
  return facts.every(({ colour }) => NEUTRAL.has(colour)) ? "neutral" : "hot";
}

/** Common practice of a grounded conductor's insulation. */
const NEUTRAL: ReadonlySet<Colour> = new Set(["white", "grey"]);

/** Whether nobody is there yet; a splice is never. */
export const isFreePlace = (enclosure: Enclosure, { at }: NamedPlace): boolean =>
  at.kind === "terminal"
    ? landedAt(enclosure, at.device, at.terminal).every(({ hole }) => hole !== at.hole)
    : at.kind === "bond" && endsAt(enclosure, at).length === 0;

/** Other places of the enclosure, most likely first: a free terminal of the same part, whatever else is of that part. */
export function likelyEnds(
  installation: Installation,
  enclosure: Enclosure,
  from: NamedPlace,
  places: readonly NamedPlace[],
): readonly NamedPlace[] {
  const part = partAt(installation, enclosure, from.at);
  const rank = (place: NamedPlace): number => {
    const free = isFreePlace(enclosure, place);
    if (part === undefined || partAt(installation, enclosure, place.at) !== part) return free ? 3 : 4;
    if (!free) return 2;
    return isUnused(enclosure, place) ? 0 : 1;
  };
  return places
    .filter(({ at }) => keyOfPlace(at) !== keyOfPlace(from.at))
    .map((place) => ({ place, rank: rank(place) }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ place }) => place);
}

/** No conductor is on that terminal's device for the same purpose: it still waits for one. */
function isUnused(enclosure: Enclosure, { at }: NamedPlace): boolean {
  if (at.kind !== "terminal") return false;
  const device = enclosure.devices[at.device];
  const purpose = device && findTerminal(device, at.terminal)?.purpose;
  if (device === undefined || purpose === undefined) return false;
  return Object.values(enclosure.places).every((place) => {
    if (place.at.kind !== "terminal" || place.at.device !== device.id) return true;
    return findTerminal(device, place.at.terminal)?.purpose !== purpose;
  });
}

/** Where a jumper is most likely wanted: from a splice whose part waits for one, else between the first two places. */
export function usualSpan(
  installation: Installation,
  enclosure: Enclosure,
  places: readonly NamedPlace[],
): readonly [from: NamedPlace, to: NamedPlace] | undefined {
  for (const from of places) {
    if (from.at.kind !== "splice") continue;
    const [to] = likelyEnds(installation, enclosure, from, places);
    const alike = to && partAt(installation, enclosure, to.at) === partAt(installation, enclosure, from.at);
    if (to !== undefined && alike && isUnused(enclosure, to)) return [from, to];
  }
  const [from] = places;
  const to = from && likelyEnds(installation, enclosure, from, places)[0];
  return from === undefined || to === undefined ? undefined : [from, to];
}
