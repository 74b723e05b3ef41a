import { expect } from "vitest";
import type { Project } from "../../shared-model/model/project.ts";
import { sectionProof } from "../../shared-model/solver/circuit/section-proof.ts";
import { allSections } from "../../shared-model/solver/sections.ts";
import type { Drawing } from "./drawing.ts";
import { proposing, tryFix } from "./fix-tester.ts";

/** Names of the outlets of proposed that some device protects. */
export function protectedNames({ proposed }: Project): ReadonlySet<string> {
  const sections = proposed === undefined ? [] : allSections(proposed);
  const held = sections
    .flatMap((section) => sectionProof(section).outlets)
    .filter(({ protectedBy }) => protectedBy.length > 0);
  return new Set(held.map(({ standing }) => standing.outlet.name));
}

/** As `tryFix`, and no outlet loses its protection. `gained` are the outlets that have it now and had it not. */
export function trySectionFix(drawing: Drawing, rule: string, on: string, offer?: string) {
  const before = protectedNames(proposing(drawing));
  const tried = tryFix(drawing, rule, on, { ...(offer !== undefined && { offer }) });
  const after = protectedNames(tried.project);
  expect([...before].filter((name) => !after.has(name))).toEqual([]);
  return { ...tried, gained: [...after].filter((name) => !before.has(name)).sort() };
}
