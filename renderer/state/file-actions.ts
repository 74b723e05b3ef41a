import { textToSave } from "../../shared-model/format/text-to-save.ts";
import type { Problem, Result } from "../../shared-model/lib/result.ts";
import type { Project } from "../../shared-model/model/project.ts";
import type { ParseOutcome } from "../analysis/client-contract.ts";
import { type ChosenFile, FILE_ENDING, type FileHost, type FileTarget } from "../platform/file-host.ts";
import { ask } from "./dialog-store.ts";
import {
  type DocumentState,
  documentStore,
  followDocument,
  isDirty,
  lastSerial,
  markSaved,
  newDocument,
  type OpenedDocument,
  openDocument,
} from "./document-store.ts";
import { closeNotice, notify, resetSession } from "./session-store.ts";
import { openStart } from "./start.ts";
import { wording } from "./words.ts";

/** What opening and saving needs of the outside. */
export interface FileTools {
  readonly host: FileHost;
  /** @param atStart Whether it is the file that the window is started with. */
  parse(text: string, atStart: boolean): Promise<ParseOutcome>;
}

export interface FileActions {
  startNew(): Promise<void>;
  open(): Promise<void>;
  /** Opens a sample as a copy that belongs to no file. */
  openSample(name: string, load: () => Promise<string>): Promise<void>;
  /** Opens a file that was dropped on the window; call it within the drop event. */
  openDropped(dropped: DataTransfer): Promise<void>;
  openStartFile(): Promise<void>;
  /** Opens a file that the host was given while this window is at work. */
  openWaiting(): Promise<void>;
  /** Asks about unsaved work. True when the document may go: nothing unsaved, or saved now, or given up. */
  mayLeave(): Promise<boolean>;
  /** Opens a file of the list of recent ones. */
  openRecent(id: string): Promise<void>;
  /** Takes a document that is at hand into the window. @returns False when unsaved work there may not go. */
  takeOver(document: OpenedDocument): Promise<boolean>;
  /** @returns False when nothing was saved. */
  save(): Promise<boolean>;
  saveAs(): Promise<boolean>;
}

const SAVE = wording.save;
const DISCARD = wording.doNotSave;
const OVERWRITE = wording.replaceIt;
const ELSEWHERE = wording.saveAs;

export function createFileActions({ host, parse }: FileTools): FileActions {
  async function mayLeave(): Promise<boolean> {
    if (!isDirty(documentStore.get())) return true;
    const name = shownName(documentStore.get());
    const lines = [wording.changesSinceTheLastSaveWould];
    const answer = await ask(wording.saveFirst(name), lines, [SAVE, DISCARD]);
    if (answer === DISCARD) return true;
    // Saving takes time in which a person goes on: what they do then is asked about as well.
    return answer === SAVE && (await save()) && (await mayLeave());
  }

  async function takeOver(document: OpenedDocument): Promise<boolean> {
    if (!(await mayLeave())) return false;
    resetSession();
    closeNotice();
    openDocument(document);
    return true;
  }

  /**
   * Takes a file into the window once it is read; unsaved work may go as it was at `left`, and reading takes time in which
   * a person goes on. Where it is not told, nothing was asked yet: it is asked about once the file is known to be a drawing.
   * @returns False when it is not a drawing, or when what was done meanwhile is to stay.
   */
  async function take(
    { name, text, target }: ChosenFile,
    { belongs, atStart = false }: { readonly belongs: boolean; readonly atStart?: boolean },
    left: Project | undefined,
  ): Promise<boolean> {
    const outcome = await parse(text, atStart);
    if (!outcome.ok) {
      showProblems(name, outcome.problems, isNamedAsDrawing(name) ? undefined : wording.drawingsEndIn(FILE_ENDING));
      return false;
    }
    if (documentStore.get().project !== left && !(await mayLeave())) return false;
    const { project, readOnly, verdict } = outcome;
    resetSession();
    openDocument({ project, readOnly, ...(belongs && { text, fileName: name }), ...(belongs && target && { target }) });
    target?.shown?.();
    if (verdict !== undefined) void closeWhenRefused(name, verdict);
    if (readOnly) notify("note", wording.wasWrittenByANewerVersion(name), [wording.itCanBeReadHereNot]);
    else closeNotice();
    return true;
  }

  /** A drawing is seen before all of it was judged: one that is at odds with itself goes again, with the reasons. */
  async function closeWhenRefused(name: string, verdict: Promise<readonly Problem[]>): Promise<void> {
    let isThere = true;
    const stop = followDocument(({ patches }) => {
      if (patches === undefined) isThere = false;
    });
    const problems = await verdict;
    stop();
    if (problems.length === 0 || !isThere) return;
    resetSession();
    openDocument(newDocument());
    openStart();
    showProblems(name, problems);
    await host.refuseStartFile?.();
  }

  /** @returns Whether there is a drawing now. */
  async function takeChosen(chosen: Result<ChosenFile>, left: Project, atStart = false): Promise<boolean> {
    if (chosen.ok) return take(chosen.value, { belongs: true, atStart }, left);
    showProblems(wording.theFile, chosen.problems);
    return false;
  }

  /** What the host answered when a person chose a file: nothing where they thought better of it. */
  async function takeAnswered(chosen: Result<ChosenFile> | "failed" | undefined, left: Project): Promise<void> {
    if (chosen === "failed") notify("problem", wording.nothingWasOpened, [wording.theBrowserDidNotLetA]);
    else if (chosen !== undefined) await takeChosen(chosen, left);
  }

  async function takeStartFile(): Promise<void> {
    const left = shownProject();
    const chosen = await host.startFile();
    // Where none waited there is none to refuse: a refusal would fall on one that comes in the same moment.
    if (chosen === undefined) return;
    // The host takes a file that is not opened for one that this window does not show.
    if (!(await takeChosen(chosen, left, true))) await host.refuseStartFile?.();
  }

  async function write(target: FileTarget, overwrite = false): Promise<boolean> {
    const { project, text, serial } = textNow();
    const outcome = await target.write(text, overwrite);
    if (outcome.kind === "saved") {
      markSaved({ serial, file: { text, project }, fileName: target.name, target });
      if (outcome.note !== undefined) notify("note", wording.isSaved(target.name), [outcome.note]);
      return true;
    }
    if (outcome.kind === "failed") {
      notify("problem", wording.notSaved, [outcome.message]);
      return false;
    }
    const answer = await ask(wording.replace(target.name), [outcome.message], [ELSEWHERE, OVERWRITE]);
    if (answer === OVERWRITE) return write(target, true);
    return answer === ELSEWHERE && (await saveAs());
  }

  async function save(): Promise<boolean> {
    const { target } = documentStore.get();
    return target === undefined ? saveAs() : write(target);
  }

  async function saveAs(): Promise<boolean> {
    const { project, text, serial } = textNow();
    try {
      const saved = await host.saveAs(suggestedName(), text);
      if (saved === undefined) return false;
      const { outcome, target } = saved;
      if (outcome.kind !== "saved") {
        notify("problem", wording.notSaved, [outcome.message]);
        return false;
      }
      markSaved({ serial, file: { text, project }, fileName: target?.name ?? suggestedName(), target });
      if (outcome.note !== undefined) notify("note", wording.saved, [outcome.note]);
      return true;
    } catch {
      notify("problem", wording.notSaved, [wording.theBrowserDidNotLetThe]);
      return false;
    }
  }

  return {
    save,
    saveAs,
    takeOver,
    async startNew() {
      await takeOver(newDocument());
    },
    async openRecent(id) {
      const left = shownProject();
      if (!(await mayLeave())) return;
      await takeAnswered(await host.recent?.open(id).catch(() => "failed" as const), left);
    },
    async open() {
      const left = shownProject();
      if (!(await mayLeave())) return;
      await takeAnswered(await host.chooseFile().catch(() => "failed" as const), left);
    },
    async openSample(name, load) {
      const left = shownProject();
      if (!(await mayLeave())) return;
      await take({ name, text: await load() }, { belongs: false }, left);
    },
    async openDropped(dropped) {
      const read = host.takeDropped(dropped);
      const name = dropped.files[0]?.name ?? wording.theFile;
      const chosen = await read?.();
      if (chosen === undefined) return;
      if (!chosen.ok) showProblems(name, chosen.problems);
      // As with the file of the start: the host would take it for the one that is shown.
      else if (!(await take(chosen.value, { belongs: true }, undefined))) await host.refuseStartFile?.();
    },
    openStartFile: takeStartFile,
    async openWaiting() {
      if (await mayLeave()) await takeStartFile();
      else await host.refuseStartFile?.();
    },
    mayLeave,
  };
}

const shownProject = (): Project => documentStore.get().project;

/** The text to save, and the step it belongs to: an unedited document keeps the bytes of its file. */
function textNow() {
  const state = documentStore.get();
  const { project, file } = state;
  return { project, text: textToSave(project, file), serial: lastSerial(state) };
}

/** Selector: what the document is called in questions and in the title strip: its file, else its title. */
export const shownName = ({ fileName, project }: DocumentState): string => fileName ?? project.title;

function suggestedName(): string {
  const { fileName, project } = documentStore.get();
  if (fileName !== undefined) return fileName;
  const stem = project.title
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "");
  return `${stem === "" ? "drawing" : stem}${FILE_ENDING}`;
}

const SHOWN_PROBLEMS = 5;

/** The document on the sheet stays; the person reads what is wrong with the other one, and where. */
function showProblems(name: string, problems: readonly Problem[], remedy?: string): void {
  const lines = problems
    .slice(0, SHOWN_PROBLEMS)
    .map(({ path, message }) => (path === "" ? message : `${path}: ${message}`));
  const more = problems.length - lines.length;
  const all = more > 0 ? [...lines, wording.andMore(more)] : lines;
  notify("problem", wording.wasNotOpened(name), remedy === undefined ? all : [remedy, ...all]);
}

/** A drawing under another name opens as well; a file that is none is told what a drawing is called. */
const isNamedAsDrawing = (name: string): boolean => /\.(loadside|json)$/i.test(name);
