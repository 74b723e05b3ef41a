import type { Finding } from "../../../shared-model/answers/finding.ts";
import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { EndKey, SpliceId } from "../../../shared-model/model/ids.ts";
import { SEVERITIES } from "../../../shared-model/model/severity.ts";
import { nameOfEnd } from "../../../shared-model/queries/end-facts.ts";
import { usualConnector } from "../../../shared-model/queries/usual-connector.ts";
import { broughtEverywhere } from "../brought-everywhere.ts";
import { documentStore, shownInstallation } from "../document-store.ts";
import { isFree, type LandingChoice, landingChoices, oneFreeHoleEach } from "../landing-choices.ts";
import { landingStore } from "../landing-store.ts";
import { mintId } from "../mint-id.ts";
import { nextSpliceName } from "../naming.ts";
import { pickNewSplice } from "../new-splice.ts";
import { openPick, type PickLine, runOrTell } from "../pick-store.ts";
import { placeWords } from "../place-words.ts";
import { hold, select, sessionStore } from "../session-store.ts";
import { recordReading } from "./reading-action.ts";
import type { ItemAction } from "./subject.ts";
import { wording } from "./words.ts";

/** Asks where an end goes: every place of its box, with what would follow from it, or why it is not possible. */
export function landEnd(enclosure: Enclosure, end: EndKey): void {
  hold({ enclosure: enclosure.id, end });
  openPick({
    title: wording.landIn(nameOfEnd(shownInstallation(), enclosure, end), enclosure.name),
    hint: wording.nowWhatBringsNoNewFinding(placeWords(enclosure, end)),
    lines: () => landingLines(nameOfEnd(shownInstallation(), enclosure, end)),
    cancelled: () => hold(undefined),
  });
}

/** What fits comes first, then what brings a finding, then what is not possible. */
function landingLines(held: string): readonly PickLine[] {
  const { choices, previews } = landingStore.get();
  const isEverywhere = broughtEverywhere(choices, previews, held);
  const lines = oneFreeHoleEach(choices).map((choice): PickLine & { readonly rank: number } => {
    const preview = previews.get(choice.key);
    const refused = preview !== undefined && "refused" in preview ? preview.refused : choice.refusal?.message;
    if (refused !== undefined) return { ...lineOf(choice), refusal: refused, rank: 9 };
    const found = preview !== undefined && "introduces" in preview ? preview.introduces : [];
    const own = worstOf(found.filter((each) => !isEverywhere(each)));
    const shown = own ?? worstOf(found);
    // A terminal with nobody on it is the better guess, above all while the checks are asked.
    const rank =
      (own === undefined ? 0 : SEVERITIES.length - SEVERITIES.indexOf(own.severity)) + (isFree(choice) ? 0 : 0.5);
    return {
      ...lineOf(choice),
      ...(shown !== undefined && { severity: shown.severity, note: shown.message }),
      rank,
    };
  });
  return lines.sort((a, b) => a.rank - b.rank);
}

type Introduced = Pick<Finding, "severity" | "message">;

const worstOf = (findings: readonly Introduced[]): Introduced | undefined =>
  SEVERITIES.flatMap((severity) => findings.filter((finding) => finding.severity === severity))[0];

const lineOf = ({ key, name, note, call }: LandingChoice): PickLine => ({
  key,
  title: name,
  note,
  run() {
    if (runOrTell(call)) hold(undefined);
  },
});

/** Everything that can be done with a conductor end. */
export function endActions(enclosure: Enclosure, end: EndKey): readonly ItemAction[] {
  const installation = shownInstallation();
  const name = nameOfEnd(installation, enclosure, end);
  const place = enclosure.places[end];
  if (place === undefined) return [];
  const args = { state: documentStore.get().state, enclosure: enclosure.id, end };
  const { kind } = place.at;
  return [
    { title: wording.land(name), run: () => landEnd(enclosure, end) },
    ...spliceSelected(enclosure, end),
    { title: wording.newSpliceWith(name), run: () => pickNewSplice(enclosure.id, [end]) },
    ...(kind === "splice"
      ? [{ title: wording.takeOutOfItsSplice(name), run: () => void runOrTell({ command: "leave-splice", args }) }]
      : []),
    ...(kind === "capped"
      ? [
          {
            title: place.spare === true ? wording.isNotASpare(name) : wording.markAsASpare(name),
            run: () => void runOrTell({ command: "mark-spare", args: { ...args, spare: place.spare !== true } }),
          },
        ]
      : [{ title: wording.cap(name), run: () => void runOrTell({ command: "cap-end", args }) }]),
    ...(kind === "loose"
      ? []
      : [{ title: wording.leaveLoose(name), run: () => void runOrTell({ command: "lift-end", args }) }]),
    { title: wording.recordAReadingAt(name), run: () => recordReading(enclosure, { point: end, name }) },
  ];
}

/** Joins the ends that are selected together, where this one is among them. */
function spliceSelected(enclosure: Enclosure, end: EndKey): readonly ItemAction[] {
  const { selection } = sessionStore.get();
  const ends = selection.flatMap((item) => (item.kind === "end" && item.enclosure === enclosure.id ? [item.id] : []));
  if (ends.length < 2 || !ends.includes(end)) return [];
  return [{ title: wording.spliceTheSelectedEnds(ends.length), run: () => spliceEnds(enclosure, ends) }];
}

/** Makes a splice of some ends and selects it. */
export function spliceEnds(enclosure: Enclosure, ends: readonly EndKey[]): void {
  const installation = shownInstallation();
  const splice = mintId<SpliceId>("s");
  const done = runOrTell({
    command: "splice-ends",
    args: {
      state: documentStore.get().state,
      enclosure: enclosure.id,
      splice,
      name: nextSpliceName(installation, enclosure, ends),
      connector: usualConnector(installation, enclosure, ends),
      connectorAssumed: true,
      ends,
    },
  });
  if (done) select({ kind: "splice", id: splice });
}

/** Asks which end of the enclosure comes to a place: those that lie free first. */
export function landHere(enclosure: Enclosure, key: string, name: string): void {
  const state = documentStore.get().state;
  openPick({
    title: wording.whichEndComesTo(name),
    lines() {
      const installation = shownInstallation();
      const now = installation.enclosures[enclosure.id];
      if (now === undefined) return [];
      const ends = Object.keys(now.places) as EndKey[];
      const lines = ends.flatMap((end): readonly (PickLine & { readonly free: boolean })[] => {
        const held = { enclosure: now.id, end };
        const choice = landingChoices(installation, state, held).find((one) => one.key === key);
        if (choice === undefined) return [];
        const { kind } = now.places[end]?.at ?? { kind: "loose" };
        const line: PickLine = {
          key: end,
          title: nameOfEnd(installation, now, end),
          note: placeWords(now, end),
          run: () => void runOrTell(choice.call),
          ...(choice.refusal !== undefined && { refusal: choice.refusal.message }),
        };
        return [{ ...line, free: kind === "capped" || kind === "loose" }];
      });
      return lines.sort((a, b) => Number(b.free) - Number(a.free));
    },
  });
}
