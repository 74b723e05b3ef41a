import { nameOfEnd } from "../../../shared-model/queries/end-facts.ts";
import { findSplice } from "../../../shared-model/queries/find-item.ts";
import { type DocumentState, installationOf } from "../document-store.ts";
import { homeOf } from "../home-of.ts";
import { pickBoxOfNewSplice, pickNewSplice } from "../new-splice.ts";
import type { Selected } from "../selection.ts";
import { canSplit, splitSplice } from "../split-splice.ts";
import type { CommandLine } from "./entry.ts";
import { GROUP_WORDS } from "./group-words.ts";
import { laterWording } from "./later-words.ts";

/** What makes a splice, or two of one: for what is selected, else for a box that is asked for. */
export function spliceLines(document: DocumentState, selection: readonly Selected[]): readonly CommandLine[] {
  if (document.readOnly) return [];
  const installation = installationOf(document);
  const line = (title: string, note: string, run: () => void): CommandLine => ({
    key: `${note} ${title}`,
    title,
    note,
    run,
  });
  const item = selection.at(-1);
  const anywhere = line(laterWording.newSplice, GROUP_WORDS.draw, pickBoxOfNewSplice);
  if (Object.keys(installation.enclosures).length === 0)
    return [{ ...anywhere, whyNot: laterWording.nothingIsDrawnYet }];
  if (item === undefined) return [anywhere];
  const home = homeOf(installation, item);
  const enclosure = home && installation.enclosures[home];
  if (enclosure === undefined) return [anywhere];
  const lines = [line(laterWording.newSpliceIn(enclosure.name), "draw", () => pickNewSplice(enclosure.id))];
  if (item.kind === "end") {
    const name = nameOfEnd(installation, enclosure, item.id);
    lines.unshift(line(laterWording.newSpliceWith(name), SELECTED, () => pickNewSplice(enclosure.id, [item.id])));
  }
  const splice = item.kind === "splice" ? findSplice(installation, item.id)?.splice : undefined;
  if (splice !== undefined && canSplit(enclosure, splice.id))
    lines.unshift(line(laterWording.splitInTwo(splice.name), SELECTED, () => splitSplice(splice.id)));
  return lines;
}

const SELECTED = laterWording.whatIsSelected;
