import type { SheetInput, SheetKind } from "../answers/sheet-input.ts";
import { makeUpCards } from "./cards/make-up-card.ts";
import type { Page } from "./display-list.ts";
import { drawingSheet } from "./drawing/drawing-sheet.ts";
import { asFoundPages } from "./lists/as-found.ts";
import { asFoundTables } from "./lists/as-found-tables.ts";
import { boxFillPages, boxFillTables } from "./lists/box-fill.ts";
import { directoryPages, directoryTables } from "./lists/directory.ts";
import { findingsPages, findingsTables } from "./lists/findings.ts";
import { labelPages, labelTables } from "./lists/labels.ts";
import { materialPages, materialTables } from "./lists/materials.ts";
import { protectionPages, protectionTables } from "./lists/protection.ts";
import { recordPages, recordTables } from "./lists/record-sheet.ts";
import { resetSlipPages, resetSlipTables } from "./lists/reset-slips.ts";
import { scopePages, scopeTables } from "./lists/scope.ts";
import { stepPages, stepTables } from "./lists/steps.ts";
import type { ListTable } from "./tables/table.ts";

/** Lays out all pages of one sheet. Pure: the same input gives the same pages. */
export type SheetMaker = (input: SheetInput) => readonly Page[];

export interface SheetDefinition {
  readonly kind: SheetKind;
  /** "Make-up card", as in lists of sheets and in the title block. */
  readonly title: string;
  /** Which wiring it may show: one of both as asked, one alone, or the difference, which needs proposed. */
  readonly shows: "either" | "as-found" | "proposed" | "difference";
  readonly make: SheetMaker;
  /** The same list for writers of tables; absent where it is no list. */
  readonly tables?: (input: SheetInput) => readonly ListTable[];
}

/** A line for every sheet, in the order of a job folder. */
export const SHEETS: readonly SheetDefinition[] = [
  { kind: "drawing", title: "Drawing", shows: "either", make: drawingSheet },
  { kind: "make-up", title: "Make-up card", shows: "either", make: makeUpCards },
  { kind: "box-fill", title: "Box fill", shows: "either", make: boxFillPages, tables: boxFillTables },
  {
    kind: "protection",
    title: "Protection schedule",
    shows: "either",
    make: protectionPages,
    tables: protectionTables,
  },
  { kind: "findings", title: "Findings", shows: "either", make: findingsPages, tables: findingsTables },
  { kind: "scope", title: "Scope", shows: "difference", make: scopePages, tables: scopeTables },
  { kind: "steps", title: "Work steps", shows: "difference", make: stepPages, tables: stepTables },
  { kind: "test-record", title: "Test record", shows: "either", make: recordPages, tables: recordTables },
  { kind: "labels", title: "Labels", shows: "either", make: labelPages, tables: labelTables },
  { kind: "directory", title: "Panel directory", shows: "either", make: directoryPages, tables: directoryTables },
  { kind: "reset-slips", title: "Reset slips", shows: "either", make: resetSlipPages, tables: resetSlipTables },
  { kind: "as-found", title: "As-found record", shows: "as-found", make: asFoundPages, tables: asFoundTables },
  { kind: "materials", title: "Materials", shows: "difference", make: materialPages, tables: materialTables },
];

/** @returns Undefined where there is no such sheet. */
export const findSheet = (kind: string): SheetDefinition | undefined => SHEETS.find((sheet) => sheet.kind === kind);
