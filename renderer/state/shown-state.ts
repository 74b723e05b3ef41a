import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { Installation, Project, StateName } from "../../shared-model/model/project.ts";
import { findDevice, findJumper, findSplice } from "../../shared-model/queries/find-item.ts";
import { getInstallation } from "../../shared-model/queries/installation-of.ts";
import { ask } from "./dialog-store.ts";
import {
  type DocumentState,
  dispatch,
  documentStore,
  followDocument,
  installationOf,
  setShownState,
} from "./document-store.ts";
import { linkedDevice } from "./replacing.ts";
import type { Selected } from "./selection.ts";
import { goTo, notify, sessionStore } from "./session-store.ts";
import { wording } from "./words.ts";

/** What a person calls the two accounts of the wiring. */
export const STATE_WORDS: Readonly<Record<StateName, string>> = {
  "as-found": wording.asFound,
  proposed: wording.proposed,
};

export const otherState = (state: StateName): StateName => (state === "as-found" ? "proposed" : "as-found");

export const WHAT_PROPOSED_IS = wording.proposedBeginsAsACopyOf + wording.laterEditsOfAsFoundFlow;

/** Shows one account of the wiring; asks first where proposed has yet to be started. */
export async function showState(state: StateName): Promise<void> {
  if (setShownState(state) || documentStore.get().readOnly) return;
  const start = wording.startProposed;
  if ((await ask(wording.startProposed2, [WHAT_PROPOSED_IS], [start])) === start) startProposed();
}

export const showOtherState = (): Promise<void> => showState(otherState(documentStore.get().state));

/** Makes proposed and shows it. */
export function startProposed(): void {
  if (tell(dispatch({ command: "start-proposed", args: {} }))) setShownState("proposed");
}

/** Makes proposed, or one box of it, equal to as found again. */
export function resetProposed(enclosure?: EnclosureId): void {
  tell(dispatch({ command: "reset-proposed", args: enclosure === undefined ? {} : { enclosure } }));
}

/** Gives the plan up, after asking: much is lost at once, though undo brings it back. */
export async function discardProposed(): Promise<void> {
  const yes = wording.discardProposed;
  const lines = [wording.everythingPlannedIsTakenAwayAs];
  if ((await ask(wording.discardProposed2, lines, [yes])) === yes)
    tell(dispatch({ command: "discard-proposed", args: {} }));
}

function tell(done: ReturnType<typeof dispatch>): boolean {
  if (!done.ok) notify("problem", wording.notDone2, [done.refusal.message]);
  return done.ok;
}

/** Goes to a thing of one account of the wiring, and shows that account. */
export function goToIn(state: StateName, target: Selected): void {
  setShownState(state);
  goTo(target);
}

/**
 * When the other account of the wiring is shown, what is selected stays selected where it exists there too; a device that
 * was replaced hands over to its replacement, and back. Nothing stays in the hand. Until the returned function is called.
 */
export function keepSelectionTrue(): () => void {
  let shown = documentStore.get().state;
  return documentStore.subscribe(() => {
    const document = documentStore.get();
    if (document.state === shown) return;
    shown = document.state;
    const installation = installationOf(document);
    const { selection, routeFrom } = sessionStore.get();
    const kept = selection.flatMap((item) => counterpart(document, item) ?? []);
    sessionStore.merge({
      selection:
        kept.length === selection.length && kept.every((item, at) => item === selection[at]) ? selection : kept,
      held: undefined,
      routeFrom: routeFrom !== undefined && routeFrom in installation.enclosures ? routeFrom : undefined,
    });
  });
}

/** Says at once when an edit of as found was not carried over into proposed. Until the returned function is called. */
export function tellHeldBack(): () => void {
  return followDocument(({ patches }) => {
    const { project, state } = documentStore.get();
    const held = project.heldBack?.at(-1);
    const grew = patches?.some(({ op, path }) => op === "add" && path[0] === "heldBack");
    if (grew !== true || held === undefined || state !== "as-found") return;
    notify("note", wording.notCarriedOverToProposed, [held.because, wording.theFindingsHoldItUntilYou]);
  });
}

/** The same thing in another account of the wiring; for a device that is not there, what replaces it or what it replaces. */
function counterpart({ project, state }: DocumentState, item: Selected): Selected | undefined {
  const installation = getInstallation(project, state);
  if (exists(project, installation, item)) return item;
  const linked = item.kind === "device" ? linkedDevice(project, otherState(state), item.id) : undefined;
  return linked && { kind: "device", id: linked.id };
}

function exists(project: Project, installation: Installation, item: Selected): boolean {
  const { enclosures, cables, loads, labels } = installation;
  switch (item.kind) {
    case "enclosure":
      return item.id in enclosures;
    case "cable":
      return item.id in cables;
    case "device":
      return findDevice(installation, item.id) !== undefined;
    case "splice":
      return findSplice(installation, item.id) !== undefined;
    case "jumper":
      return findJumper(installation, item.id) !== undefined;
    case "load":
      return item.id in loads;
    case "label":
      return item.id in labels;
    case "room":
      return item.id in project.rooms;
    case "entry":
      return item.id in (enclosures[item.enclosure]?.entries ?? {});
    case "end":
      return item.id in (enclosures[item.enclosure]?.places ?? {});
  }
}
