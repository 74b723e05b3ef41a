import { refusalOf } from "../../state/document-store.ts";
import type { PickLine } from "../../state/pick-store.ts";

/** Asked only for what is shown. */
export function withRefusal(line: PickLine): PickLine {
  if (line.refusal !== undefined || line.call === undefined) return line;
  const refusal = refusalOf(line.call)?.message;
  return refusal === undefined ? line : { ...line, refusal };
}
