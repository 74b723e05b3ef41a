import type { SheetInput, SheetKind } from "../../../shared-model/answers/sheet-input.ts";
import { emptyProject, type Project } from "../../../shared-model/model/project.ts";
import type { Mark, Page, TextMark } from "../../../shared-model/sheets/display-list.ts";
import { findSheet } from "../../../shared-model/sheets/registry.ts";
import type { ListCell, ListTable } from "../../../shared-model/sheets/tables/table.ts";
import { type InputOptions, inputOf } from "../sheet-inputs.ts";

export const LIST_KINDS = [
  "box-fill",
  "protection",
  "findings",
  "scope",
  "steps",
  "test-record",
  "labels",
  "directory",
  "reset-slips",
  "as-found",
  "materials",
] as const satisfies readonly SheetKind[];
export type ListKind = (typeof LIST_KINDS)[number];

const inputs = new WeakMap<Project, Map<string, SheetInput>>();

/** Gathered once for each state and box of a drawing: the paper does not change what is told. */
export function inputFor(project: Project, { paper, ...options }: InputOptions = {}): SheetInput {
  const known = inputs.get(project) ?? new Map<string, SheetInput>();
  inputs.set(project, known);
  const key = JSON.stringify([options.state, options.box]);
  const input = known.get(key) ?? inputOf(project, options);
  known.set(key, input);
  return paper === undefined ? input : { ...input, paper };
}

export function pagesOf(project: Project, kind: ListKind, options: InputOptions = {}): readonly Page[] {
  const sheet = findSheet(kind);
  if (sheet === undefined) throw new Error(`No sheet ${kind}.`);
  return sheet.make(inputFor(project, options));
}

export function tablesOf(project: Project, kind: ListKind, options: InputOptions = {}): readonly ListTable[] {
  const make = findSheet(kind)?.tables;
  if (make === undefined) throw new Error(`${kind} is no list.`);
  return make(inputFor(project, options));
}

/** Every text of some pages in the order in which it is written. */
export const textMarks = (pages: readonly Page[]): readonly TextMark[] =>
  pages.flatMap(({ marks }) => marks.flatMap(textIn));

const textIn = (mark: Mark): readonly TextMark[] =>
  mark.kind === "group" ? mark.marks.flatMap(textIn) : mark.kind === "text" ? [mark] : [];

/** What a person reads, wrapped lines run together. */
export const wordsOf = (pages: readonly Page[]): string =>
  textMarks(pages)
    .map(({ text }) => text)
    .join(" ");

/** Rows of the table of a name, by the heads of its columns. */
export function rowsOf(tables: readonly ListTable[], name: string): readonly Readonly<Record<string, ListCell>>[] {
  const table = tables.find((one) => one.name === name);
  if (table === undefined) throw new Error(`No table ${name}.`);
  return table.rows.map((row) => Object.fromEntries(table.columns.map(({ head }, i) => [head, row[i]])));
}

export const blank = (): Project => emptyProject("", 2020);
