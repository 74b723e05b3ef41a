import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { type DocumentState, hasProposed, installationOf, refusalOf } from "../document-store.ts";
import { keysNow } from "../keys/keys.ts";
import type { Selected } from "../selection.ts";
import {
  discardProposed,
  otherState,
  resetProposed,
  STATE_WORDS,
  showOtherState,
  startProposed,
} from "../shown-state.ts";
import { wording } from "./words.ts";

/** Something to do with the two accounts of the wiring, as menu and command field offer it. */
export interface StateLine {
  readonly title: string;
  readonly keys?: string;
  /** All that is proposed goes by it. */
  readonly takesAll?: true;
  readonly run: () => void;
}

/** What can be done with proposed now; the boxes that are selected can be reset alone. */
export function stateLines(document: DocumentState, selection: readonly Selected[]): readonly StateLine[] {
  if (!hasProposed(document))
    return document.readOnly ? [] : [{ title: wording.startProposedAsACopyOf, run: startProposed }];
  const show = wording.show(STATE_WORDS[otherState(document.state)].toLowerCase());
  const keys = keysNow("other-state");
  const lines = [{ title: show, ...(keys !== undefined && { keys }), run: showOtherState }];
  if (document.readOnly) return lines;
  return [
    ...lines,
    ...boxesOf(document, selection).map(({ id, name }) => ({
      title: wording.resetInProposedToAsFound(name),
      run: () => resetProposed(id),
    })),
    { title: wording.resetAllOfProposedToAs, takesAll: true, run: () => resetProposed() },
    { title: wording.discardProposed, takesAll: true, run: discardProposed },
  ];
}

function boxesOf(document: DocumentState, selection: readonly Selected[]) {
  const { enclosures } = installationOf(document);
  const ids = selection.flatMap((item): readonly EnclosureId[] => (item.kind === "enclosure" ? [item.id] : []));
  return ids
    .filter((enclosure) => refusalOf({ command: "reset-proposed", args: { enclosure } }) === undefined)
    .flatMap((id) => enclosures[id] ?? []);
}
