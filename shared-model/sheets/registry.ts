import type { SheetInput, SheetKind } from "../answers/sheet-input.ts";
import { makeUpCards, noCards } from "./cards/make-up-card.ts";
import type { Page } from "./display-list.ts";
import { drawingSheet, nothingDrawn } from "./drawing/drawing-sheet.ts";
import { asFoundPages, nothingFound } from "./lists/as-found.ts";
import { asFoundTables } from "./lists/as-found-tables.ts";
import { boxFillPages, boxFillTables, noBoxes } from "./lists/box-fill.ts";
import { directoryPages, directoryTables, noPanels } from "./lists/directory.ts";
import { findingsPages, findingsTables, noFindings } from "./lists/findings.ts";
import { labelPages, labelTables, noLabels } from "./lists/labels.ts";
import { materialPages, materialTables, noMaterials } from "./lists/materials.ts";
import { noOutlets, protectionPages, protectionTables } from "./lists/protection.ts";
import { noTests, recordPages, recordTables } from "./lists/record-sheet.ts";
import { noSlips, resetSlipPages, resetSlipTables } from "./lists/reset-slips.ts";
import { noScope, scopePages, scopeTables } from "./lists/scope.ts";
import { noSteps, stepPages, stepTables } from "./lists/steps.ts";
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
  /** Why it has nothing to say of an input, as a sentence that its page says too; undefined where it has. */
  readonly nothing: (input: SheetInput) => string | undefined;
  /** The same list for writers of tables; absent where it is no list. */
  readonly tables?: (input: SheetInput) => readonly ListTable[];
}

/** A line for every sheet, in the order of a job folder. */
export const SHEETS: readonly SheetDefinition[] = [
  { kind: "drawing", title: "Drawing", shows: "either", make: drawingSheet, nothing: nothingDrawn },
  { kind: "make-up", title: "Make-up card", shows: "either", make: makeUpCards, nothing: noCards },
  {
    kind: "box-fill",
    title: "Box fill",
    shows: "either",
    make: boxFillPages,
    nothing: noBoxes,
    tables: boxFillTables,
  },
  {
    kind: "protection",
    title: "Protection schedule",
    shows: "either",
    make: protectionPages,
    nothing: noOutlets,
    tables: protectionTables,
  },
  {
    kind: "findings",
    title: "Findings",
    shows: "either",
    make: findingsPages,
    nothing: noFindings,
    tables: findingsTables,
  },
  { kind: "scope", title: "Scope", shows: "difference", make: scopePages, nothing: noScope, tables: scopeTables },
  { kind: "steps", title: "Work steps", shows: "difference", make: stepPages, nothing: noSteps, tables: stepTables },
  {
    kind: "test-record",
    title: "Test record",
    shows: "either",
    make: recordPages,
    nothing: noTests,
    tables: recordTables,
  },
  { kind: "labels", title: "Labels", shows: "either", make: labelPages, nothing: noLabels, tables: labelTables },
  {
    kind: "directory",
    title: "Panel directory",
    shows: "either",
    make: directoryPages,
    nothing: noPanels,
    tables: directoryTables,
  },
  {
    kind: "reset-slips",
    title: "Reset slips",
    shows: "either",
    make: resetSlipPages,
    nothing: noSlips,
    tables: resetSlipTables,
  },
  {
    kind: "as-found",
    title: "As-found record",
    shows: "as-found",
    make: asFoundPages,
    nothing: nothingFound,
    tables: asFoundTables,
  },
  {
    kind: "materials",
    title: "Materials",
    shows: "difference",
    make: materialPages,
    nothing: noMaterials,
    tables: materialTables,
  },
];

/** @returns Undefined where there is no such sheet. */
export const findSheet = (kind: string): SheetDefinition | undefined => SHEETS.find((sheet) => sheet.kind === kind);
