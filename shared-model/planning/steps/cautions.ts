import type { Caution } from "../../answers/scope.ts";
import { CAUTIONS } from "../../catalog/cautions.ts";

/** Those that some instructions name, in their usual order. */
export function cautionsOf(used: ReadonlySet<string>): readonly Caution[] {
  return Object.entries(CAUTIONS).flatMap(([id, text]) => (used.has(id) ? [{ id, text }] : []));
}
