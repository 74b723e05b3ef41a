import type { SurveyTold } from "../../../shared-model/model/survey.ts";

/** What became of an outlet with a breaker off. */
export type Went = "dead" | "half" | "live";

/** By outlet; what was not looked at is absent. */
export type WentOf = Readonly<Record<string, Went>>;

/** What was written of a breaker before. What went dead and stayed live is half dead. */
export function wentOf(told: Extract<SurveyTold, { readonly kind: "breaker-off" }> | undefined): WentOf {
  const went: Record<string, Went> = {};
  for (const key of told?.dead ?? []) went[key] = "dead";
  for (const key of told?.stillLive ?? []) went[key] = went[key] === "dead" ? "half" : "live";
  return went;
}
