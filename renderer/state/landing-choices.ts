import type { CommandArgs, TypedCall } from "../../shared-model/commands/command-args.ts";
import type { Refusal } from "../../shared-model/commands/define-command.ts";
import type { Device } from "../../shared-model/model/device.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EndKey } from "../../shared-model/model/ids.ts";
import type { At } from "../../shared-model/model/place.ts";
import type { Installation, StateName } from "../../shared-model/model/project.ts";
import { nameOfEnd } from "../../shared-model/queries/end-facts.ts";
import { inOrder } from "../../shared-model/queries/in-order.ts";
import { landedAt, landingsOf, membersOf } from "../../shared-model/queries/landings.ts";
import { nameOfTerminal, type PlacedTerminal, terminalsOf } from "../../shared-model/queries/terminals-of.ts";
import { refusalOf } from "./document-store.ts";
import { newSpliceCall } from "./new-splice.ts";
import type { HeldEnd } from "./selection.ts";
import { wording } from "./words.ts";

/** Somewhere a held end may go: a place that exists, or a new splice with an end that lies free. */
export type LandingPlace = At | { readonly kind: "new-splice"; readonly end: EndKey };

/** One line of the three landing lists. What would follow from it is in the landing store, by `key`. */
export interface LandingChoice {
  readonly key: string;
  readonly place: LandingPlace;
  /** What a person calls the place: "R1 LINE N", "Splice E1", "Splice with C2 BK". */
  readonly name: string;
  /** Who is there already. */
  readonly note: string;
  readonly call: TypedCall;
  readonly refusal: Refusal | undefined;
}

/** Key of a place, for finding the choice that belongs to a target on the sheet. */
export function keyOfPlace(place: LandingPlace): string {
  if (place.kind === "terminal") return `terminal ${place.device} ${place.terminal} ${place.hole}`;
  if (place.kind === "splice") return `splice ${place.splice}`;
  return place.kind === "new-splice" ? `new-splice ${place.end}` : place.kind;
}

interface Hand {
  readonly installation: Installation;
  readonly enclosure: Enclosure;
  readonly end: EndKey;
  readonly args: CommandArgs["lift-end"];
}

/** Every place in its enclosure where an end could be put, in drawing order, the one it has now left out. */
export function landingChoices(installation: Installation, state: StateName, held: HeldEnd): readonly LandingChoice[] {
  const enclosure = installation.enclosures[held.enclosure];
  const now = enclosure?.places[held.end];
  if (enclosure === undefined || now === undefined) return [];
  const hand: Hand = { installation, enclosure, end: held.end, args: { state, ...held } };
  const choices = [
    ...spliceChoices(hand),
    ...inOrder(enclosure.devices).flatMap((device) => terminalChoices(hand, device)),
    ...freeEndChoices(hand),
    bondChoice(hand),
    choice(wording.capIt, wording.underAConnectorOfItsOwn, { kind: "capped" }, { command: "cap-end", args: hand.args }),
    choice(
      wording.leaveItLoose,
      wording.bareAndUnattached,
      { kind: "loose" },
      { command: "lift-end", args: hand.args },
    ),
  ];
  const here = keyOfPlace(now.at);
  return choices.filter(({ key }) => key !== here);
}

/** Whether it is a terminal hole with nobody on it. */
export const isFree = ({ place, note }: LandingChoice): boolean => place.kind === "terminal" && note === "free";

/** A bar has dozens of holes: of those of one terminal that are free, the first stands for all. */
export function oneFreeHoleEach(choices: readonly LandingChoice[]): readonly LandingChoice[] {
  const seen = new Set<string>();
  return choices.filter((choice) => {
    if (choice.place.kind !== "terminal" || !isFree(choice)) return true;
    const terminal = `${choice.place.device} ${choice.place.terminal}`;
    if (seen.has(terminal)) return false;
    seen.add(terminal);
    return true;
  });
}

function choice(name: string, note: string, place: LandingPlace, call: TypedCall): LandingChoice {
  return { key: keyOfPlace(place), place, name, note, call, refusal: refusalOf(call) };
}

function spliceChoices({ installation, enclosure, end, args }: Hand): readonly LandingChoice[] {
  return inOrder(enclosure.splices).map(({ id, name }) => {
    const others = membersOf(enclosure, id).filter((member) => member !== end);
    const note = wording.withWord(listEnds(installation, enclosure, others));
    return choice(
      wording.splice(name),
      note,
      { kind: "splice", splice: id },
      { command: "join-splice", args: { ...args, splice: id } },
    );
  });
}

function terminalChoices(hand: Hand, device: Device): readonly LandingChoice[] {
  return terminalsOf(device).flatMap((terminal) =>
    Array.from({ length: terminal.holes }, (_, index) => holeChoice(hand, device, terminal, index + 1)),
  );
}

function holeChoice(hand: Hand, device: Device, terminal: PlacedTerminal, hole: number): LandingChoice {
  const { installation, enclosure, end, args } = hand;
  const there = landedAt(enclosure, device.id, terminal.name)
    .filter((landing) => landing.hole === hole && landing.end !== end)
    .map((landing) => landing.end);
  const which = terminal.holes > 1 ? wording.hole(hole) : "";
  const at: At = { kind: "terminal", device: device.id, terminal: terminal.name, hole };
  return choice(
    `${nameOfTerminal(device, terminal.name)}${which}`,
    there.length === 0 ? "free" : wording.withWord(listEnds(installation, enclosure, there)),
    at,
    { command: "land-end", args: { ...args, at } },
  );
}

/** Ends that lie free can be joined with this one in a new splice. */
function freeEndChoices({ installation, enclosure, end, args }: Hand): readonly LandingChoice[] {
  const free = (Object.keys(enclosure.places) as EndKey[]).filter((other) => {
    const kind = enclosure.places[other]?.at.kind;
    return other !== end && (kind === "capped" || kind === "loose");
  });
  return free.sort().map((other) => {
    const call = newSpliceCall(installation, args.state, enclosure, [end, other]);
    const name = wording.spliceWith(nameOfEnd(installation, enclosure, other));
    return choice(name, wording.makesANewSplice, { kind: "new-splice", end: other }, call);
  });
}

function bondChoice({ installation, enclosure, end, args }: Hand): LandingChoice {
  const bonded = landingsOf(enclosure).bonded.filter((other) => other !== end);
  const note =
    bonded.length === 0
      ? wording.groundingScrewOfTheMetal
      : wording.withWord(listEnds(installation, enclosure, bonded));
  const at: At = { kind: "bond" };
  return choice(enclosure.kind === "panel" ? wording.panelBond : wording.boxGroundScrew, note, at, {
    command: "land-end",
    args: { ...args, at },
  });
}

const listEnds = (installation: Installation, enclosure: Enclosure, ends: readonly EndKey[]): string =>
  ends.map((end) => nameOfEnd(installation, enclosure, end)).join(", ");
