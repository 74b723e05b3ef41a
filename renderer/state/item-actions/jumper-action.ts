import type { Device } from "../../../shared-model/model/device.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { EnclosureId, JumperId } from "../../../shared-model/model/ids.ts";
import type { At } from "../../../shared-model/model/place.ts";
import { COLOURS, colourCode } from "../../../shared-model/units/colour.ts";
import { documentStore, shownInstallation } from "../document-store.ts";
import { endsAt, JUMPER_SIZES, type JumperMake, likelyEnds, usualMake } from "../jumper-make.ts";
import { keyOfPlace } from "../landing-choices.ts";
import { mintId } from "../mint-id.ts";
import { nextJumperName } from "../naming.ts";
import { openPick, type PickLine, runOrTell } from "../pick-store.ts";
import { type NamedPlace, placesIn } from "../places-in.ts";
import { select } from "../session-store.ts";
import { wording } from "./words.ts";

/** Asks from where to where a jumper goes and what it is made of; the first place may be known already. */
export function addJumperFrom({ id, name }: Enclosure, from?: At): void {
  if (from !== undefined) {
    chooseTo(id, from);
    return;
  }
  openPick({
    title: wording.addAPigtailOrJumperIn2(name),
    hint: wording.firstWhereItBegins,
    lines: () => placeLines(id, (place) => chooseTo(id, place.at)),
  });
}

/** The same from one of the terminals of a device, which is asked for. */
export function addJumperOn({ id }: Enclosure, { id: device, name }: Device): void {
  openPick({
    title: wording.pigtailOrJumperFrom2(name),
    hint: wording.firstTheTerminal,
    lines: () =>
      placeLines(
        id,
        (place) => chooseTo(id, place.at),
        (places) => places.filter(({ at }) => at.kind === "terminal" && at.device === device),
      ),
  });
}

function placeLines(
  id: EnclosureId,
  run: (place: NamedPlace) => void,
  choose: (places: readonly NamedPlace[], enclosure: Enclosure) => readonly NamedPlace[] = (places) => places,
): readonly PickLine[] {
  const enclosure = shownInstallation().enclosures[id];
  if (enclosure === undefined) return [];
  return choose(placesIn(enclosure), enclosure).map((place) => {
    const there = endsAt(enclosure, place.at).length;
    const note = there === 0 ? "free" : wording.there(there);
    return { key: place.key, title: titleOf(place), note, run: () => run(place) };
  });
}

/** "Splice E1" and "Box ground screw" as the landing lists have it. */
const titleOf = ({ at, name }: NamedPlace): string => {
  if (at.kind === "splice") return wording.splice(name);
  return name.charAt(0).toUpperCase() + name.slice(1);
};

function chooseTo(id: EnclosureId, from: At): void {
  const enclosure = shownInstallation().enclosures[id];
  const first = enclosure && placesIn(enclosure).find(({ at }) => keyOfPlace(at) === keyOfPlace(from));
  openPick({
    title: wording.pigtailOrJumperFrom3(first === undefined ? "there" : titleOf(first)),
    hint: wording.whereDoesItEndTheLikely,
    lines: () =>
      placeLines(
        id,
        (place) => chooseMake(id, from, place.at),
        (places, now) => (first === undefined ? places : likelyEnds(shownInstallation(), now, first, places)),
      ),
  });
}

/** What a jumper between two places would usually be made of comes first. */
function chooseMake(id: EnclosureId, from: At, to: At): void {
  const enclosure = shownInstallation().enclosures[id];
  if (enclosure === undefined) return;
  const usual = usualMake(shownInstallation(), enclosure, from, to);
  const makes = JUMPER_SIZES.flatMap((awg) => COLOURS.map((colour) => ({ awg, colour })));
  const rank = (make: JumperMake): number => (make.colour === usual.colour ? 0 : 2) + (make.awg === usual.awg ? 0 : 1);
  makes.sort((a, b) => rank(a) - rank(b));
  openPick({
    title: wording.whatIsTheMadeOf([from, to].some(({ kind }) => kind === "splice") ? "pigtail" : "jumper"),
    hint: wording.whatIsJoinedThereComesFirst,
    lines: () =>
      makes.map(({ awg, colour }) => ({
        key: `${awg} ${colour}`,
        title: wording.awg(awg, colour),
        ...(colour !== "bare" && { note: colourCode(colour) }),
        run: () => make(id, from, to, { awg, colour }),
      })),
  });
}

function make(id: EnclosureId, from: At, to: At, { awg, colour }: JumperMake): void {
  const enclosure = shownInstallation().enclosures[id];
  if (enclosure === undefined) return;
  const { state } = documentStore.get();
  const jumper = mintId<JumperId>("j");
  const name = nextJumperName(enclosure);
  const call = { command: "add-jumper", args: { state, enclosure: id, jumper, name, awg, colour, from, to } } as const;
  if (runOrTell(call)) select({ kind: "jumper", id: jumper });
}
