import type { Migration } from "./migrations.ts";

/** What a program can read; values other than those of this program are for tests of the chain itself. */
export interface Reader {
  readonly version: number;
  readonly chain: readonly Migration[];
}
