import type { Severity } from "../../shared-model/answers/finding.ts";
import { Glyph } from "../ui/glyph.tsx";

/** Outline and letter of a severity; the word stands beside it. */
export function SeveritySign({ kind, size }: { readonly kind: Severity | "unknown"; readonly size: number }) {
  return <Glyph id={`sev-${kind}`} size={size} />;
}
