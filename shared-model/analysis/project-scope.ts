import type { ScopeKey } from "../answers/finding.ts";

/** The scope of what is said of a drawing as a whole. */
export const PROJECT_SCOPE = "project" as ScopeKey;
