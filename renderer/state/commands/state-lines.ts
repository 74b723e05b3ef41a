import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { type DocumentState, hasProposed, installationOf, refusalOf } from "../document-store.ts";
import type { Selected } from "../selection.ts";
import {
  discardProposed,
  otherState,
  resetProposed,
  STATE_WORDS,
  showOtherState,
  startProposed,
} from "../shown-state.ts";

/** Something to do with the two accounts of the wiring, as menu and command field offer it. */
export interface StateLine {
  readonly title: string;
  readonly keys?: string;
  readonly run: () => void;
}

/** Shows the account of the wiring that is not shown, from anywhere in the window. */
export const OTHER_STATE_KEY = "F8";

/** What can be done with proposed now; the boxes that are selected can be reset alone. */
export function stateLines(document: DocumentState, selection: readonly Selected[]): readonly StateLine[] {
  if (!hasProposed(document))
    return document.readOnly ? [] : [{ title: "Start proposed as a copy of as found", run: startProposed }];
  const show = `Show ${STATE_WORDS[otherState(document.state)].toLowerCase()}`;
  const lines = [{ title: show, keys: OTHER_STATE_KEY, run: showOtherState }];
  if (document.readOnly) return lines;
  return [
    ...lines,
    ...boxesOf(document, selection).map(({ id, name }) => ({
      title: `Reset ${name} in proposed to as found`,
      run: () => resetProposed(id),
    })),
    { title: "Reset all of proposed to as found", run: () => resetProposed() },
    { title: "Discard proposed", run: discardProposed },
  ];
}

function boxesOf(document: DocumentState, selection: readonly Selected[]) {
  const { enclosures } = installationOf(document);
  const ids = selection.flatMap((item): readonly EnclosureId[] => (item.kind === "enclosure" ? [item.id] : []));
  return ids
    .filter((enclosure) => refusalOf({ command: "reset-proposed", args: { enclosure } }) === undefined)
    .flatMap((id) => enclosures[id] ?? []);
}
