import type { Enclosure } from "../../../shared-model/model/enclosure.ts";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { documentStore, shownInstallation } from "../document-store.ts";
import { homeOf } from "../home-of.ts";
import { titled } from "../item-actions/enclosure-actions.ts";
import { itemActions } from "../item-actions/item-actions.ts";
import { addJumperFrom } from "../item-actions/jumper-action.ts";
import type { ItemAction } from "../item-actions/subject.ts";
import { goToLeftTab } from "../left-pane-store.ts";
import { makeUpOffers } from "../make-up/make-up-offers.ts";
import { openPick } from "../pick-store.ts";
import type { Selected } from "../selection.ts";
import { surveyOffers } from "../survey/survey-offers.ts";
import type { CommandLine } from "./entry.ts";
import { GROUP_WORDS } from "./group-words.ts";
import { laterWording } from "./later-words.ts";

const line = ({ title, run, keys }: ItemAction, note: string): CommandLine => ({
  key: `action ${title}`,
  title,
  note,
  run,
  ...(keys !== undefined && { shortcut: keys }),
});

/** What the outline offers for the one thing that is selected, and for the drawing. */
export function itemLines(selection: readonly Selected[]): readonly CommandLine[] {
  const item = selection.at(-1);
  const home = item === undefined ? undefined : homeOf(shownInstallation(), item);
  const own = item === undefined ? [] : itemActions(item).map((action) => line(action, laterWording.whatIsSelected));
  return [
    ...own,
    // The box itself offers it among its own.
    ...(item?.kind === "enclosure" ||
    documentStore.get().readOnly ||
    Object.keys(shownInstallation().enclosures).length === 0
      ? []
      : [line({ title: JUMPER, run: () => addJumper(home) }, laterWording.inABox)]),
    ...makeUpOffers().map((offer) => line(offer, laterWording.plan)),
    ...surveyOffers().map((offer) => line(offer, laterWording.survey)),
    ...itemActions({ kind: "drawing" }).map((action) => line(action, GROUP_WORDS.draw)),
    line({ title: laterWording.showTheOutline, run: () => goToLeftTab("outline") }, GROUP_WORDS.window),
    line({ title: laterWording.showTheStock, run: () => goToLeftTab("stock") }, GROUP_WORDS.window),
  ];
}

const JUMPER = laterWording.addAPigtailOrJumper;

/** In the box that the selection is in, else in the one that is chosen. */
function addJumper(home: EnclosureId | undefined): void {
  const { enclosures } = shownInstallation();
  const all = inOrder<Enclosure>(enclosures);
  const box = home === undefined ? undefined : enclosures[home];
  const only = box ?? (all.length === 1 ? all[0] : undefined);
  if (only !== undefined) {
    addJumperFrom(only);
    return;
  }
  openPick({
    title: laterWording.addAPigtailOrJumper2,
    hint: laterWording.firstInWhichBox,
    lines: () => all.map((one) => ({ ...titled(one), run: () => addJumperFrom(one) })),
  });
}
