/**
 * A list as rows of typed cells: what a list sheet shows, for writers of tables (`hosts/tables.ts`). Values are bare:
 * numbers are numbers with their unit in the head of the column, and no text is ever a formula.
 */
export interface ListTable {
  /** Name of the worksheet, at most 31 characters: "Box fill". */
  readonly name: string;
  readonly columns: readonly ListColumn[];
  /** Each as long as `columns`. */
  readonly rows: readonly (readonly ListCell[])[];
}

export interface ListColumn {
  /** "Volume, in³". */
  readonly head: string;
  readonly kind: "text" | "number" | "date" | "yes-no";
  /** Places after the point that are always shown; of numbers alone. Absent: as many as the number has. */
  readonly decimals?: number;
  /** Width in characters, as a hint. */
  readonly width?: number;
}

/** Dates are written "2026-05-04". Undefined is an empty cell. */
export type ListCell = string | number | boolean | undefined;
