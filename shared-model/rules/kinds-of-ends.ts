import { catalogue } from "../lib/catalogue.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { EndKey } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { findEndFacts } from "../queries/end-facts.ts";
import { listed } from "./rule-parts.ts";

type Kind = "hot" | "neutral" | "ground";

const KINDS: Readonly<Record<Kind, string>> = catalogue({
  hot: "a hot",
  neutral: "a neutral",
  ground: "a ground",
});

/**
 * What a conductor end is made for, by make and colour; a white or grey that is marked otherwise is a hot. Colours prove
 * nothing, but what they tell apart must not be spliced, nor spread over the holes of one terminal, by a fix.
 */
function kindOf(installation: Installation, enclosure: Enclosure, end: EndKey): Kind | undefined {
  const facts = findEndFacts(installation, enclosure, end);
  if (facts === undefined) return undefined;
  if (facts.grounding) return "ground";
  const colour = enclosure.places[end]?.markedAs ?? facts.colour;
  return colour === "white" || colour === "grey" ? "neutral" : "hot";
}

/** The kinds of several ends when they are more than one: "a hot and a ground"; undefined when all are alike. */
export function unlikeKinds(
  installation: Installation,
  enclosure: Enclosure,
  ends: readonly EndKey[],
): string | undefined {
  const kinds = new Set(ends.map((end) => kindOf(installation, enclosure, end)));
  const words = (["hot", "neutral", "ground"] as const).filter((kind) => kinds.has(kind)).map((kind) => KINDS[kind]);
  if (words.length < 2) return undefined;
  return listed(words);
}
