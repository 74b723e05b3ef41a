import type { Json } from "./json.ts";

/**
 * One step of the file format: takes a document of version `from` and gives one of version `from + 1`. Pure; what it
 * does not know it leaves as it is. A step that has been published never changes.
 */
export interface Migration {
  readonly from: number;
  migrate(document: Json): Json;
}

/** All steps, oldest first. Version 1 is the first, so there is none yet. */
export const migrations: readonly Migration[] = [];

/**
 * A document of an older version brought up to `target`, one step at a time. The steps must lead there without a gap:
 * a missing one is a bug.
 */
export function migrate(document: Json, version: number, chain: readonly Migration[], target: number): Json {
  let current = document;
  for (let from = version; from < target; from++) {
    const step = chain.find((each) => each.from === from);
    if (step === undefined) throw new Error(`No migration leads from version ${from} to ${from + 1}.`);
    current = { ...step.migrate(current), version: from + 1 };
  }
  return current;
}
