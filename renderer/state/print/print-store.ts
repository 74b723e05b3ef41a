import type { PaperProgress, SheetOffer } from "../../../shared-model/answers/paper-messages.ts";
import type { PaperName } from "../../../shared-model/answers/sheet-input.ts";
import type { LaidOut } from "../../analysis/paper-client.ts";
import type { CopyKind } from "../../platform/file-host.ts";
import { createStore, type Store } from "../store.ts";
import type { ListedPage, PrintChoice } from "./print-choice.ts";

/** Something that a person may have to wait for, and may leave off. */
export interface PrintWork {
  readonly kind: "lay-out" | "copy" | "print";
  readonly title: string;
  readonly progress?: PaperProgress;
  readonly stop: () => void;
}

/** A file that is made and not saved: the browser asks for a place only right after a press. */
export interface ReadyCopy {
  readonly name: string;
  readonly kind: CopyKind;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** Sheets as they were laid out last. */
export interface ShownLayout extends LaidOut {
  readonly paper: PaperName;
  readonly pages: readonly ListedPage[];
}

export interface PrintState {
  /** What can be printed; undefined until the worker has said it. */
  readonly offers: readonly SheetOffer[] | undefined;
  readonly choice: PrintChoice;
  readonly laid: ShownLayout | undefined;
  /** The page that is shown, from 0. */
  readonly page: number;
  readonly work: PrintWork | undefined;
  /** What went wrong and what helps, until something else is asked for. */
  readonly problem: string | undefined;
  readonly ready: ReadyCopy | undefined;
  /** What came of the last thing that was done: shown until something else is done. */
  readonly note: string;
  /** Said last, for people who hear it. */
  readonly said: string;
}

export const NOTHING_CHOSEN: PrintChoice = {
  sheets: "usual",
  state: "as-found",
  paper: "letter",
  date: "",
  boxes: "all",
};

export const NO_PRINT: PrintState = {
  offers: undefined,
  choice: NOTHING_CHOSEN,
  laid: undefined,
  page: 0,
  work: undefined,
  problem: undefined,
  ready: undefined,
  note: "",
  said: "",
};

export const printStore: Store<PrintState> = createStore<PrintState>(NO_PRINT);
