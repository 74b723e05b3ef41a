import type { PreviewResult } from "../../shared-model/analysis/protocol.ts";
import type { LandingChoice } from "./landing-choices.ts";

type Introduced = Extract<PreviewResult, { readonly introduces: unknown }>["introduces"][number];

/** Fewer places than this are no choice that could be told apart. */
const FEW = 3;

/**
 * Tells findings that are about the rest of the box, such as its metal that is not bonded yet, from those that tell one
 * place from another. The first are of a rule that objects wherever the held end is landed, and do not name that end; a
 * danger never is one. Lying loose and under a cap do not count as landed.
 * @param held Name of the held end: "C1 BK".
 */
export function broughtEverywhere(
  choices: readonly LandingChoice[],
  previews: ReadonlyMap<string, PreviewResult>,
  held: string,
): (finding: Introduced) => boolean {
  const judged = choices.flatMap(({ key, place }): ReadonlySet<string>[] => {
    const preview = previews.get(key);
    const isLanded = place.kind !== "loose" && place.kind !== "capped";
    return isLanded && preview !== undefined && "introduces" in preview
      ? [new Set(preview.introduces.map(({ rule }) => rule))]
      : [];
  });
  const [first = [], ...others] = judged;
  const rules = new Set(
    judged.length < FEW ? [] : [...first].filter((rule) => others.every((brought) => brought.has(rule))),
  );
  return ({ rule, severity, message }) => severity !== "danger" && rules.has(rule) && !message.includes(held);
}
