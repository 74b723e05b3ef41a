import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { EnclosureId, EndKey, JumperId } from "../../../shared-model/model/ids.ts";
import type { At } from "../../../shared-model/model/place.ts";
import { findEndFacts } from "../../../shared-model/queries/end-facts.ts";
import { landedAt, landingsOf, membersOf } from "../../../shared-model/queries/landings.ts";
import { COLOURS, type Colour, colourCode } from "../../../shared-model/units/colour.ts";
import type { WireSize } from "../../../shared-model/units/wire-size.ts";
import { documentStore, shownInstallation } from "../document-store.ts";
import { keyOfPlace } from "../landing-choices.ts";
import { mintId } from "../mint-id.ts";
import { nextJumperName } from "../naming.ts";
import { openPick, type PickLine, runOrTell } from "../pick-store.ts";
import { type NamedPlace, placesIn } from "../places-in.ts";
import { select } from "../session-store.ts";

/** Sizes that a jumper in a dwelling's box is made of. */
const SIZES: readonly WireSize[] = ["14", "12", "10"];

/** Asks from where to where a jumper goes and what it is made of; the first place may be known already. */
export function addJumperFrom({ id, name }: Enclosure, from?: At): void {
  if (from !== undefined) {
    chooseTo(id, from);
    return;
  }
  openPick({
    title: `Add a jumper in ${name}`,
    hint: "First where it begins.",
    lines: () => placeLines(id, (place) => chooseTo(id, place.at)),
  });
}

function placeLines(id: EnclosureId, run: (place: NamedPlace) => void): readonly PickLine[] {
  const enclosure = shownInstallation().enclosures[id];
  if (enclosure === undefined) return [];
  return placesIn(enclosure).map((place) => {
    const there = endsAt(enclosure, place.at).length;
    const note = there === 0 ? "free" : `${there} there`;
    return { key: place.key, title: titleOf(place), note, run: () => run(place) };
  });
}

/** "Splice E1" and "Box bond" as the landing lists have it. */
const titleOf = ({ at, name }: NamedPlace): string => {
  if (at.kind === "splice") return `Splice ${name}`;
  return name.charAt(0).toUpperCase() + name.slice(1);
};

function chooseTo(id: EnclosureId, from: At): void {
  const enclosure = shownInstallation().enclosures[id];
  const first = enclosure && placesIn(enclosure).find(({ at }) => keyOfPlace(at) === keyOfPlace(from));
  openPick({
    title: `Jumper from ${first === undefined ? "there" : titleOf(first)}`,
    hint: "Where does it end?",
    lines: () => placeLines(id, (place) => chooseMake(id, from, place.at)).filter(({ key }) => key !== first?.key),
  });
}

/** What a jumper between two places would usually be made of comes first. */
function chooseMake(id: EnclosureId, from: At, to: At): void {
  const enclosure = shownInstallation().enclosures[id];
  if (enclosure === undefined) return;
  const usual = usualMake(enclosure, from, to);
  const makes = SIZES.flatMap((awg) => COLOURS.map((colour) => ({ awg, colour })));
  const rank = (make: Make): number => (make.colour === usual.colour ? 0 : 2) + (make.awg === usual.awg ? 0 : 1);
  makes.sort((a, b) => rank(a) - rank(b));
  openPick({
    title: "What is the jumper made of?",
    hint: "What is joined there comes first.",
    lines: () =>
      makes.map(({ awg, colour }) => ({
        key: `${awg} ${colour}`,
        title: `${awg} AWG ${colour}`,
        ...(colour !== "bare" && { note: colourCode(colour) }),
        run: () => make(id, from, to, { awg, colour }),
      })),
  });
}

interface Make {
  readonly awg: WireSize;
  readonly colour: Colour;
}

/** By the ends that are there: bare among grounds, white among whites, else black; as thick as the first of them. */
function usualMake(enclosure: Enclosure, from: At, to: At): Make {
  const installation = shownInstallation();
  const ends = [...endsAt(enclosure, from), ...endsAt(enclosure, to)];
  const facts = ends.flatMap((end) => findEndFacts(installation, enclosure, end) ?? []);
  const awg = SIZES.find((size) => size === facts[0]?.awg) ?? "12";
  const isGround = facts.some(({ grounding }) => grounding) || from.kind === "bond" || to.kind === "bond";
  if (isGround) return { awg, colour: "bare" };
  return { awg, colour: facts.length > 0 && facts.every(({ colour }) => colour === "white") ? "white" : "black" };
}

/** Ends at a splice, in any hole of a terminal, or on the bond. */
function endsAt(enclosure: Enclosure, at: At): readonly EndKey[] {
  if (at.kind === "splice") return membersOf(enclosure, at.splice);
  if (at.kind === "terminal") return landedAt(enclosure, at.device, at.terminal).map(({ end }) => end);
  return at.kind === "bond" ? landingsOf(enclosure).bonded : [];
}

function make(id: EnclosureId, from: At, to: At, { awg, colour }: Make): void {
  const enclosure = shownInstallation().enclosures[id];
  if (enclosure === undefined) return;
  const { state } = documentStore.get();
  const jumper = mintId<JumperId>("j");
  const name = nextJumperName(enclosure);
  const call = { command: "add-jumper", args: { state, enclosure: id, jumper, name, awg, colour, from, to } } as const;
  if (runOrTell(call)) select({ kind: "jumper", id: jumper });
}
