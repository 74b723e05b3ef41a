import type { EnclosureId } from "../model/ids.ts";
import type { Project, StateName } from "../model/project.ts";
import type { PaperName, SheetKind } from "./sheet-input.ts";

/** What is to be printed or saved: sheets of one document, on one paper. */
export interface PaperJob {
  /** In any order: a job folder has its own. */
  readonly sheets: readonly SheetKind[];
  /** For sheets that may show either state. */
  readonly state: StateName;
  readonly paper: PaperName;
  /** Day of printing, "2026-05-04". */
  readonly date: string;
  /** Boxes of the sheets that can be of some boxes, or of one; absent: all. */
  readonly boxes?: readonly EnclosureId[];
  /** Name of the file that the document was opened from. */
  readonly fileName?: string;
}

/** A kind of sheet as a list of sheets offers it. */
export interface SheetOffer {
  readonly kind: SheetKind;
  /** "Make-up card". */
  readonly title: string;
  readonly shows: "either" | "as-found" | "proposed" | "difference";
  /** Whether it can be of some boxes alone, of one box alone, or is always of the whole. */
  readonly boxes: "several" | "one" | "whole";
  /** The same can be had as a list for other programs. */
  readonly hasList: boolean;
}

/** One sheet that was laid out. */
export interface LaidSheet {
  readonly kind: SheetKind;
  readonly title: string;
  readonly hasList: boolean;
  readonly pages: readonly LaidPage[];
}

/** One page, in millimetres, as it lies. */
export interface LaidPage {
  readonly title: string;
  readonly width: number;
  readonly height: number;
}

/** A text of the document that paper cannot show as it was written: letters that the face lacks are question marks. */
export interface LostText {
  readonly text: string;
  /** "note of box B1". */
  readonly where: string;
  /** The first that shows it, counted from 1 through all sheets. */
  readonly page: number;
}

/** Why a sheet would be empty, by its kind. */
export type EmptySheets = Readonly<Partial<Record<SheetKind, string>>>;

/** Files that the paper worker makes. Pictures of points are made in the window, from an SVG. */
export type PaperFile =
  /** Of the whole job, or of one of its sheets by its place in the job, numbered by itself. */
  | { readonly format: "pdf"; readonly sheet?: number }
  /** Of all lists of the job in one workbook, or of one sheet. */
  | { readonly format: "xlsx"; readonly sheet?: number }
  | { readonly format: "csv"; readonly sheet: number };

export interface PaperProgress {
  readonly done: number;
  readonly of: number;
  /** Title of the sheet at hand; absent while the drawing is checked. */
  readonly at?: string;
}

/** What the window asks of the paper worker. Requests count up; of two layouts the later counts. */
export type ToPaper =
  /** The document that later requests are about. */
  | { readonly type: "document"; readonly revision: number; readonly project: Project }
  | { readonly type: "offers"; readonly request: number }
  | { readonly type: "lay-out"; readonly request: number; readonly revision: number; readonly job: PaperJob }
  /** The SVG of a page of the layout `of`, counted from 0 through all sheets. */
  | { readonly type: "page"; readonly request: number; readonly of: number; readonly page: number }
  | { readonly type: "file"; readonly request: number; readonly of: number; readonly file: PaperFile }
  | { readonly type: "stop"; readonly request: number };

/** Each request has one end: `offers`, `laid-out`, `page`, `file`, `stopped` or `failed`. */
export type FromPaper =
  | { readonly type: "offers"; readonly request: number; readonly offers: readonly SheetOffer[] }
  | ({ readonly type: "progress"; readonly request: number } & PaperProgress)
  | {
      readonly type: "laid-out";
      readonly request: number;
      /** Without those that have nothing to say. */
      readonly sheets: readonly LaidSheet[];
      /** Asked for or not, as far as the states of the job tell. */
      readonly empty: EmptySheets;
      readonly lost: readonly LostText[];
    }
  | { readonly type: "page"; readonly request: number; readonly svg: string }
  | { readonly type: "file"; readonly request: number; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly type: "stopped"; readonly request: number }
  /** Something went wrong at it; the worker goes on. `at` is the title of the sheet. */
  | { readonly type: "failed"; readonly request: number; readonly at?: string; readonly reason: string };
