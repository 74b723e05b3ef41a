import type { Patch } from "immer";
import type { TypedCall } from "../../shared-model/commands/command-args.ts";
import type { Refusal } from "../../shared-model/commands/define-command.ts";
import * as historyOf from "../../shared-model/commands/history.ts";
import { applyPatches, refusalOf as refusalOn, runCommand } from "../../shared-model/commands/run-command.ts";
import type { FileText } from "../../shared-model/format/text-to-save.ts";
import { emptyProject, type Installation, type Project, type StateName } from "../../shared-model/model/project.ts";
import { currentState, findInstallation, getInstallation } from "../../shared-model/queries/installation-of.ts";
import type { FileTarget } from "../platform/file-host.ts";
import { scopeStore } from "./scope/scope-store.ts";
import { wording as scopeWording } from "./scope/words.ts";
import { createStore, type Store } from "./store.ts";
import { wording } from "./words.ts";

/** The document of this window, with the way back through its edits and the file it belongs to. */
export interface DocumentState {
  readonly project: Project;
  /** Counts changes, undo and redo included; never goes back. */
  readonly revision: number;
  /** The account of the wiring that is shown and edited; always one that the document has. */
  readonly state: StateName;
  readonly history: historyOf.History;
  /** The file as it was read or written last: saving an unedited document keeps every byte of it. */
  readonly file: FileText | undefined;
  readonly fileName: string | undefined;
  readonly target: FileTarget | undefined;
  /** Written by a newer version that lets us look, not edit. */
  readonly readOnly: boolean;
}

export interface OpenedDocument {
  readonly project: Project;
  readonly readOnly?: boolean;
  /** Text of the file it was read from; absent for a new drawing or a copy of a sample. */
  readonly text?: string;
  readonly fileName?: string;
  readonly target?: FileTarget;
  /** Work that no file holds yet: `project` is not what `saved` says. */
  readonly unsaved?: { readonly saved: FileText | undefined };
}

/** One change of the document, for whoever mirrors it. No patches: it is another document. */
export interface DocumentChange {
  readonly base: number;
  readonly revision: number;
  readonly patches?: readonly Patch[];
}

export type Dispatched = { readonly ok: true } | { readonly ok: false; readonly refusal: Refusal };

const NEW_TITLE = wording.untitledDrawing;
const NEW_EDITION = 2023;

const asOpened = (opened: OpenedDocument, revision: number): DocumentState => ({
  project: opened.project,
  revision,
  state: currentState(opened.project),
  history: opened.unsaved === undefined ? historyOf.emptyHistory : historyOf.unsavedHistory,
  file: fileOf(opened),
  fileName: opened.fileName,
  target: opened.target,
  readOnly: opened.readOnly ?? false,
});

function fileOf({ project, text, unsaved }: OpenedDocument): FileText | undefined {
  if (unsaved !== undefined) return unsaved.saved;
  return text === undefined ? undefined : { text, project };
}

export const newDocument = (): OpenedDocument => ({ project: emptyProject(NEW_TITLE, NEW_EDITION) });

export const documentStore: Store<DocumentState> = createStore(asOpened(newDocument(), 0));

const followers = new Set<(change: DocumentChange) => void>();

/** Calls `follower` after every change of the document, until the returned function is called. */
export function followDocument(follower: (change: DocumentChange) => void): () => void {
  followers.add(follower);
  return () => followers.delete(follower);
}

function replace(next: DocumentState, patches?: readonly Patch[]): void {
  const base = documentStore.get().revision;
  documentStore.set(next);
  for (const follower of followers) follower({ base, revision: next.revision, ...(patches && { patches }) });
}

/** Takes a document into the window in place of the one before; asking about unsaved work comes before this. */
export function openDocument(opened: OpenedDocument): void {
  replace(asOpened(opened, documentStore.get().revision + 1));
}

const READ_ONLY: Refusal = {
  code: "read-only",
  message: wording.thisDrawingWasWrittenByA,
};

const ONLY_LOOKED: Refusal = { code: "only-looked", message: scopeWording.onlyLooked };

/** What changes the drawing though it names no account of the wiring. */
const OF_THE_DRAWING: ReadonlySet<string> = new Set<TypedCall["command"]>([
  "move-enclosures",
  "pin-enclosures",
  "bend-cable",
  "move-splice",
  "reset-proposed",
  "discard-proposed",
  "run-together",
]);

/** Why nothing of the kind is run now: the document, or what is shown of it, can only be looked at. */
function refusalNow({ command, args }: TypedCall): Refusal | undefined {
  if (documentStore.get().readOnly) return READ_ONLY;
  return scopeStore.get().on && ("state" in args || OF_THE_DRAWING.has(command)) ? ONLY_LOOKED : undefined;
}

/** Why a command does not apply to the document as it is now; undefined when it does. Changes nothing. */
export const refusalOf = (call: TypedCall): Refusal | undefined =>
  refusalNow(call) ?? refusalOn(documentStore.get().project, call);

/** What the document would be after a command, or why it would not run. Changes nothing. */
export function tryCall(
  call: TypedCall,
): { readonly ok: true; readonly project: Project } | { readonly ok: false; readonly refusal: Refusal } {
  const refusal = refusalNow(call);
  return refusal === undefined ? runCommand(documentStore.get().project, call) : { ok: false, refusal };
}

/** Runs a command as one undo step. A refused command changes nothing and says why. */
export function dispatch(call: TypedCall): Dispatched {
  const now = documentStore.get();
  const refusal = refusalNow(call);
  if (refusal !== undefined) return { ok: false, refusal };
  const ran = runCommand(now.project, call);
  if (!ran.ok) return ran;
  const { project, patches } = ran;
  if (patches.length === 0) return { ok: true };
  const history = historyOf.record(now.history, ran, performance.now());
  const state = has(project, now.state) ? now.state : currentState(project);
  replace({ ...now, project, state, history, revision: now.revision + 1 }, patches);
  return { ok: true };
}

/** Takes the last step back. @returns Its name; undefined when there is nothing to undo. */
export const undo = (): string | undefined => travel(historyOf.undo(documentStore.get().history));

/** Does again what was undone last. @returns Its name; undefined when there is nothing to redo. */
export const redo = (): string | undefined => travel(historyOf.redo(documentStore.get().history));

function travel(step: historyOf.Travel | undefined): string | undefined {
  if (step === undefined) return undefined;
  const now = documentStore.get();
  const project = applyPatches(now.project, step.patches);
  const state = stateAfter(project, now.state, step.patches);
  replace({ ...now, project, state, history: step.history, revision: now.revision + 1 }, step.patches);
  return step.title;
}

/** A step back or forth is seen: where it changed only the other account of the wiring, that one is shown. */
function stateAfter(project: Project, shown: StateName, patches: readonly Patch[]): StateName {
  const touched = new Set(patches.map(({ path }) => path[0]));
  const changed = STATES.filter((state) => touched.has(PART[state]) && has(project, state));
  if (changed.length > 0 && !changed.includes(shown)) return changed[0] ?? shown;
  return has(project, shown) ? shown : currentState(project);
}

const STATES: readonly StateName[] = ["as-found", "proposed"];
const PART: Readonly<Record<StateName, string>> = { "as-found": "asFound", proposed: "proposed" };
const has = (project: Project, state: StateName): boolean => findInstallation(project, state) !== undefined;

/** Shows the other account of the wiring. @returns False when the document does not have it. */
export function setShownState(state: StateName): boolean {
  if (!has(documentStore.get().project, state)) return false;
  documentStore.merge({ state });
  return true;
}

/** Selector: whether a second account of the wiring was started. */
export const hasProposed = ({ project }: DocumentState): boolean => project.proposed !== undefined;

/** What was written into which file. `serial` is the step that the text ended with: edits made since stay unsaved. */
export interface Saved {
  readonly serial: number;
  readonly file: FileText;
  readonly fileName: string;
  readonly target: FileTarget | undefined;
}

export function markSaved({ serial, file, fileName, target }: Saved): void {
  const { history } = documentStore.get();
  documentStore.merge({ history: { ...history, saved: serial }, file, fileName, target });
}

/** Serial of the step that the document ends with. */
export const lastSerial = ({ history }: DocumentState): number => historyOf.markSaved(history).saved;

export const shownInstallation = (): Installation => installationOf(documentStore.get());

/** Selector: the account of the wiring that is shown. */
export const installationOf = ({ project, state }: DocumentState): Installation => getInstallation(project, state);

/** Selector: whether there are changes that no file holds. */
export const isDirty = ({ history }: DocumentState): boolean => historyOf.isDirty(history);

/** Selectors: names of the steps that undo and redo would take. */
export const nextUndo = ({ history }: DocumentState): string | undefined => historyOf.undoTitle(history);
export const nextRedo = ({ history }: DocumentState): string | undefined => historyOf.redoTitle(history);
