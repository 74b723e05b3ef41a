import type { Finding, Standing } from "../answers/finding.ts";
import type { ScopeAnswer, ScopeFindings, ScopePart, ScopeWork } from "../answers/scope.ts";
import { copyTable } from "../lib/copy-table.ts";
import { allAtOnce } from "../lib/in-slices.ts";
import type { Installation, Project } from "../model/project.ts";
import { scopeDifference } from "../planning/scope/difference.ts";
import { scopeLabels } from "../planning/scope/labels.ts";
import { scopeMaterials, scopeRemoved } from "../planning/scope/materials.ts";
import { breakersOf, workInSteps } from "../planning/steps/work-steps.ts";
import { fillEdition } from "../rules/fill-edition.ts";
import type { Session } from "./session.ts";

/**
 * Everything that the difference of as found and proposed leads to: changes, counts, findings by how they stand, labels,
 * materials, and the work step by step with the values that commissioning should find.
 * @returns Undefined while nothing is proposed.
 */
export function scopeAnswer(session: Session): ScopeAnswer | undefined {
  const begun = beginScope(session);
  return begun && { ...begun.part, ...allAtOnce(begun.work()) };
}

/** The difference, and the work that it leads to, which takes longer. */
interface BegunScope {
  readonly part: ScopePart;
  /** In steps, between which others may have their turn: a session that goes on changes nothing of it. */
  readonly work: () => Generator<undefined, ScopeWork, undefined>;
}

/** As `scopeAnswer`, the difference at once and the work in steps. */
export function beginScope(session: Session): BegunScope | undefined {
  const project = fixed(session.project);
  const { asFound, proposed } = project;
  if (proposed === undefined) return undefined;
  const difference = scopeDifference(asFound, proposed, fillEdition(project));
  const labels = scopeLabels(asFound, proposed, difference);
  return {
    part: {
      ...difference,
      findings: findingsOf(session),
      labels,
      materials: scopeMaterials(proposed, difference, labels),
      removed: scopeRemoved(asFound, difference),
      breakers: breakersOf(difference.boxes),
    },
    work: () => workInSteps(project, proposed, difference, labels),
  };
}

/** A session changes its tables of enclosures in place; caches go by identity, so that they get those of this moment. */
function fixed(project: Project): Project {
  const copy = (installation: Installation): Installation => ({
    ...installation,
    enclosures: copyTable(installation.enclosures),
  });
  const { asFound, proposed } = project;
  return { ...project, asFound: copy(asFound), ...(proposed !== undefined && { proposed: copy(proposed) }) };
}

function findingsOf(session: Session): ScopeFindings {
  const by = (findings: readonly Finding[], standing: Standing): readonly Finding[] =>
    findings.filter((finding) => finding.standing === standing);
  const asFound = session.findings("as-found");
  const proposed = session.findings("proposed");
  return {
    repaired: by(asFound, "repaired"),
    inherited: by(proposed, "inherited"),
    inheritedTouched: by(proposed, "inherited-touched"),
    introduced: by(proposed, "introduced"),
  };
}
