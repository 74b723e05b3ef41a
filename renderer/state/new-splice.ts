import type { TypedCall } from "../../shared-model/commands/command-args.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EnclosureId, EndKey, SpliceId } from "../../shared-model/model/ids.ts";
import type { Installation, StateName } from "../../shared-model/model/project.ts";
import { getEndFacts, nameOfEnd } from "../../shared-model/queries/end-facts.ts";
import { inOrder } from "../../shared-model/queries/in-order.ts";
import { usualConnector } from "../../shared-model/queries/usual-connector.ts";
import { documentStore, shownInstallation } from "./document-store.ts";
import { mintId } from "./mint-id.ts";
import { nextSpliceName } from "./naming.ts";
import { openPick, type PickLine, runOrTell } from "./pick-store.ts";
import { placeWords } from "./place-words.ts";
import { select } from "./session-store.ts";
import { wording } from "./words.ts";

/** Moves ends, wherever they are, into a new splice with its usual name and connector. */
export function newSpliceCall(
  installation: Installation,
  state: StateName,
  enclosure: Enclosure,
  ends: readonly EndKey[],
): TypedCall<"splice-ends"> {
  return {
    command: "splice-ends",
    args: {
      state,
      enclosure: enclosure.id,
      splice: mintId<SpliceId>("s"),
      name: nextSpliceName(installation, enclosure, ends),
      connector: usualConnector(installation, enclosure, ends),
      connectorAssumed: true,
      ends,
    },
  };
}

/**
 * Asks which ends of a box go into a new splice, the likely ones first; `chosen` are chosen already.
 * @param cancelled Called when no splice is made after all.
 */
export function pickNewSplice(id: EnclosureId, chosen: readonly EndKey[] = [], cancelled?: () => void): void {
  const { enclosures } = shownInstallation();
  const enclosure = enclosures[id];
  if (enclosure === undefined) return;
  const names = chosen.map((end) => nameOfEnd(shownInstallation(), enclosure, end)).join(", ");
  openPick({
    title: wording.newSpliceIn(enclosure.name),
    hint: [
      wording.chooseTwoEndsOrMoreEach,
      wording.withWhichEndComesToIt(names),
      wording.withChooseMoreOrMakeThe(names),
    ][Math.min(chosen.length, 2)] as string,
    lines: () => splicingLines(id, chosen, cancelled),
    ...(cancelled && { cancelled }),
  });
}

function splicingLines(
  id: EnclosureId,
  chosen: readonly EndKey[],
  cancelled: (() => void) | undefined,
): readonly PickLine[] {
  const installation = shownInstallation();
  const enclosure = installation.enclosures[id];
  if (enclosure === undefined) return [];
  const lines = endsToChoose(installation, enclosure, chosen).map((end): PickLine => {
    const rest = chosen.filter((other) => other !== end);
    const isChosen = rest.length < chosen.length;
    return {
      key: end,
      title: nameOfEnd(installation, enclosure, end),
      note: isChosen ? wording.chosenPressAgainToLeaveIt : placeWords(enclosure, end),
      stay: true,
      run: () => pickNewSplice(id, isChosen ? rest : [...chosen, end], cancelled),
    };
  });
  if (chosen.length < 2) return lines;
  const call = newSpliceCall(installation, documentStore.get().state, enclosure, chosen);
  const make = (): void => {
    if (runOrTell(call)) select({ kind: "splice", id: call.args.splice });
  };
  return [{ key: "make", title: wording.makeTheSpliceOfEnds(chosen.length), call, run: make }, ...lines];
}

/** What goes well with the ends that are chosen comes first, by colour, then what lies free; the chosen come last. */
function endsToChoose(installation: Installation, enclosure: Enclosure, chosen: readonly EndKey[]): readonly EndKey[] {
  const colourOf = (end: EndKey): string => getEndFacts(installation, enclosure, end).colour;
  const [first] = chosen;
  const colour = first === undefined ? undefined : colourOf(first);
  const rank = (end: EndKey): number => {
    const kind = enclosure.places[end]?.at.kind;
    const isFree = kind === "capped" || kind === "loose";
    const isKin = colour === undefined || colourOf(end) === colour;
    return (chosen.includes(end) ? 4 : 0) + (isKin ? 0 : 2) + (isFree ? 0 : 1);
  };
  const ends = (Object.keys(enclosure.places) as EndKey[]).sort();
  return ends.sort((a, b) => rank(a) - rank(b));
}

/** Asks in which box, where none is known. */
export function pickBoxOfNewSplice(): void {
  openPick({
    title: wording.newSplice2,
    hint: wording.inWhichBox,
    lines: () =>
      inOrder<Enclosure>(shownInstallation().enclosures).map(({ id, name, places }) => ({
        key: id,
        title: name,
        note: wording.ends(Object.keys(places).length),
        run: () => pickNewSplice(id),
      })),
  });
}
