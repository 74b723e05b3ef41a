import type { SheetInput, SheetKind } from "../answers/sheet-input.ts";
import { CARD } from "./cards/card-words.ts";
import { makeUpCards, noCards } from "./cards/make-up-card.ts";
import type { Page } from "./display-list.ts";
import { drawingSheet, nothingDrawn } from "./drawing/drawing-sheet.ts";
import { DRAWING } from "./drawing/drawing-words.ts";
import { asFoundPages, nothingFound } from "./lists/as-found.ts";
import { asFoundTables } from "./lists/as-found-tables.ts";
import { AS_FOUND } from "./lists/as-found-words.ts";
import { boxFillPages, boxFillTables, noBoxes } from "./lists/box-fill.ts";
import { BOX_FILL } from "./lists/box-fill-words.ts";
import { directoryPages, directoryTables, noPanels } from "./lists/directory.ts";
import { DIRECTORY } from "./lists/directory-words.ts";
import { findingsPages, findingsTables, noFindings } from "./lists/findings.ts";
import { FINDINGS } from "./lists/findings-words.ts";
import { LABELS, SLIPS } from "./lists/label-words.ts";
import { labelPages, labelTables, noLabels } from "./lists/labels.ts";
import { MATERIALS } from "./lists/material-words.ts";
import { materialPages, materialTables, noMaterials } from "./lists/materials.ts";
import { noOutlets, protectionPages, protectionTables } from "./lists/protection.ts";
import { PROTECTION } from "./lists/protection-words.ts";
import { noTests, recordPages, recordTables } from "./lists/record-sheet.ts";
import { RECORD } from "./lists/record-sheet-words.ts";
import { noSlips, resetSlipPages, resetSlipTables } from "./lists/reset-slips.ts";
import { noScope, scopePages, scopeTables } from "./lists/scope.ts";
import { SCOPE } from "./lists/scope-words.ts";
import { noSteps, stepPages, stepTables } from "./lists/steps.ts";
import { STEPS } from "./lists/steps-words.ts";
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
  { kind: "drawing", title: DRAWING.title, shows: "either", make: drawingSheet, nothing: nothingDrawn },
  { kind: "make-up", title: CARD.title, shows: "either", make: makeUpCards, nothing: noCards },
  {
    kind: "box-fill",
    title: BOX_FILL.title,
    shows: "either",
    make: boxFillPages,
    nothing: noBoxes,
    tables: boxFillTables,
  },
  {
    kind: "protection",
    title: PROTECTION.title,
    shows: "either",
    make: protectionPages,
    nothing: noOutlets,
    tables: protectionTables,
  },
  {
    kind: "findings",
    title: FINDINGS.title,
    shows: "either",
    make: findingsPages,
    nothing: noFindings,
    tables: findingsTables,
  },
  { kind: "scope", title: SCOPE.title, shows: "difference", make: scopePages, nothing: noScope, tables: scopeTables },
  { kind: "steps", title: STEPS.title, shows: "difference", make: stepPages, nothing: noSteps, tables: stepTables },
  {
    kind: "test-record",
    title: RECORD.title,
    shows: "either",
    make: recordPages,
    nothing: noTests,
    tables: recordTables,
  },
  { kind: "labels", title: LABELS.title, shows: "either", make: labelPages, nothing: noLabels, tables: labelTables },
  {
    kind: "directory",
    title: DIRECTORY.title,
    shows: "either",
    make: directoryPages,
    nothing: noPanels,
    tables: directoryTables,
  },
  {
    kind: "reset-slips",
    title: SLIPS.title,
    shows: "either",
    make: resetSlipPages,
    nothing: noSlips,
    tables: resetSlipTables,
  },
  {
    kind: "as-found",
    title: AS_FOUND.title,
    shows: "as-found",
    make: asFoundPages,
    nothing: nothingFound,
    tables: asFoundTables,
  },
  {
    kind: "materials",
    title: MATERIALS.title,
    shows: "difference",
    make: materialPages,
    nothing: noMaterials,
    tables: materialTables,
  },
];

/** @returns Undefined where there is no such sheet. */
export const findSheet = (kind: string): SheetDefinition | undefined => SHEETS.find((sheet) => sheet.kind === kind);
