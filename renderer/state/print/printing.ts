import type { SheetKind } from "../../../shared-model/answers/sheet-input.ts";
import type { EnclosureId } from "../../../shared-model/model/ids.ts";
import { paperOf } from "../../analysis/paper.ts";
import type { PaperOutcome, PaperWork } from "../../analysis/paper-client.ts";
import { selectedBoxes } from "../arranging.ts";
import { dialogStore } from "../dialog-store.ts";
import { documentStore, followDocument, hasProposed } from "../document-store.ts";
import { preferencesStore } from "../preferences-store.ts";
import { jobOf, listedPages, type PrintChoice, type PrintScene, pageAfter } from "./print-choice.ts";
import { NO_PRINT, type PrintState, type PrintWork, printStore } from "./print-store.ts";
import { wording } from "./words.ts";

let selected: readonly EnclosureId[] = [];

/** The worker was ended in the middle of something: what it had laid out is laid out again, if somebody looks at it. */
export const paper = paperOf(() => {
  if (printStore.get().laid !== undefined) layOut();
});

/** What is chosen from now. */
export function sceneNow(): PrintScene {
  const { fileName } = documentStore.get();
  return {
    offers: printStore.get().offers ?? [],
    hasProposed: hasProposed(documentStore.get()),
    selected,
    ...(fileName !== undefined && { fileName }),
  };
}

const today = (): string => {
  const now = new Date();
  const two = (part: number): string => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

/** Starts with the state and the boxes that are before the person, and with the sheets that were chosen last or are usual. */
export async function beginPrinting(): Promise<void> {
  selected = selectedBoxes();
  const { state } = documentStore.get();
  const { choice } = NO_PRINT;
  printStore.set({
    ...NO_PRINT,
    choice: { ...choice, state, date: today(), paper: preferencesStore.get().paper, sheets: before, ...cardAsked() },
  });
  const outcome = await follow("lay-out", wording.layingOut, paper.offers());
  if (outcome === undefined) return;
  printStore.merge({ offers: outcome });
  layOut();
}

/** Where the card of one box was asked for, it alone is ticked. */
function cardAsked(): Partial<PrintChoice> {
  const dialog = dialogStore.get();
  card = dialog.kind === "print" ? dialog.card : undefined;
  if (card === undefined) return {};
  return { boxes: card, sheets: new Set<SheetKind>(["make-up"]) };
}

let card: EnclosureId | undefined;

/** What was ticked last in this document; that of a card that was asked for is none. */
let before: PrintChoice["sheets"] = "usual";
followDocument(({ patches }) => {
  if (patches === undefined) before = "usual";
});

/** Leaves off what is under way, and lets go of what was laid out. */
export function endPrinting(): void {
  const { work, choice } = printStore.get();
  if (card === undefined) before = choice.sheets;
  printStore.set(NO_PRINT);
  work?.stop();
}

/** Chooses something else, and shows what follows. */
export function choose(part: Partial<PrintChoice>): void {
  const choice = { ...printStore.get().choice, ...part };
  if (part.paper !== undefined) preferencesStore.merge({ paper: part.paper });
  printStore.merge({ choice });
  layOut();
}

/** Lays out what is chosen of the drawing as it is now. */
export async function layOut(): Promise<void> {
  const { choice, offers } = printStore.get();
  if (offers === undefined) return void beginPrinting();
  const job = jobOf(choice, sceneNow());
  const outcome = await follow(
    "lay-out",
    wording.layingOut,
    paper.layOut(job, (progress) => showProgress(progress)),
  );
  if (outcome === undefined) return;
  const pages = listedPages(outcome.sheets);
  const lost = outcome.lost.length;
  printStore.merge({
    laid: { ...outcome, paper: job.paper, pages },
    page: pageAfter(pageSeen(), outcome.sheets),
    said: [wording.pages(pages.length), ...(lost > 0 ? [wording.textsLoseLetters(lost)] : [])].join(". "),
  });
}

/** Which page of which kind of sheet is before the person now. */
function pageSeen(): Parameters<typeof pageAfter>[0] {
  const { laid, page } = printStore.get();
  const shown = laid?.pages[page];
  const kind = shown && laid?.sheets[shown.sheet]?.kind;
  return kind && shown && { kind, number: shown.number };
}

/** Shows another page, as far as there is one. */
export function showPage(page: number): void {
  const { laid, page: shown } = printStore.get();
  const pages = laid?.pages ?? [];
  const next = Math.min(Math.max(0, page), pages.length - 1);
  const title = pages[next]?.title;
  if (title === undefined || next === shown) return;
  printStore.merge({ page: next, said: wording.pageOf(next + 1, pages.length, title) });
}

/** Leaves off what a person waits for. */
export function cancelWork(): void {
  const { work } = printStore.get();
  if (work === undefined) return;
  printStore.merge({
    work: undefined,
    ...(work.kind === "lay-out"
      ? { laid: undefined, problem: wording.layingOutWasStopped, said: wording.layingOutWasStopped }
      : { note: wording.cancelled, said: wording.cancelled }),
  });
  work.stop();
}

/** Shows how far it has come, while it is still wanted. */
export function showProgress(progress: NonNullable<PrintWork["progress"]>): void {
  const { work } = printStore.get();
  if (work !== undefined) printStore.merge({ work: { ...work, progress } });
}

/**
 * Follows work to its end.
 * @returns Undefined where it was left off, another came in its place, or it failed: that is told.
 */
export async function follow<T>(kind: PrintWork["kind"], title: string, work: PaperWork<T>): Promise<T | undefined> {
  const own = begun({ kind, title, stop: work.stop });
  const outcome: PaperOutcome<T> = await work.outcome;
  if (!own.isWanted()) return undefined;
  if (outcome.kind === "failed") own.fail(outcome.message);
  else own.end();
  return outcome.kind === "done" ? outcome.value : undefined;
}

/** The picture of a page of the layout that is shown; undefined where it could not be had: that is told. */
export async function pagePicture(layout: number, page: number): Promise<string | undefined> {
  const outcome = await paper.page(layout, page).outcome;
  if (outcome.kind === "done") return outcome.value;
  const { laid } = printStore.get();
  if (outcome.kind === "failed" && laid?.layout === layout)
    printStore.merge({ problem: outcome.message, said: outcome.message });
  return undefined;
}

interface OwnWork {
  readonly isWanted: () => boolean;
  end(part?: Partial<PrintState>): void;
  fail(message: string): void;
}

let serial = 0;

/** Shows work as what is waited for, until it ends, is left off, or other work comes. */
export function begun(work: PrintWork): OwnWork {
  const mine = ++serial;
  printStore.merge({ work, problem: undefined, ready: undefined, note: "" });
  const isWanted = (): boolean => serial === mine && printStore.get().work !== undefined;
  const end = (part: Partial<PrintState> = {}): void => {
    if (isWanted()) printStore.merge({ work: undefined, ...part });
  };
  return { isWanted, end, fail: (message) => end({ problem: message, said: message }) };
}
