import type { Finding, Standing } from "../answers/finding.ts";
import type { ScopeAnswer, ScopeFindings } from "../answers/scope.ts";
import type { Installation, Project } from "../model/project.ts";
import { scopeDifference } from "../planning/scope/difference.ts";
import { scopeLabels } from "../planning/scope/labels.ts";
import { scopeMaterials, scopeRemoved } from "../planning/scope/materials.ts";
import { breakersOf, workSteps } from "../planning/steps/work-steps.ts";
import { fillEdition } from "../rules/fill-edition.ts";
import type { Session } from "./session.ts";

/**
 * Everything that the difference of as found and proposed leads to: changes, counts, findings by how they stand, labels,
 * materials, and the work step by step with the values that commissioning should find.
 * @returns Undefined while nothing is proposed.
 */
export function scopeAnswer(session: Session): ScopeAnswer | undefined {
  const project = fixed(session.project);
  const { asFound, proposed } = project;
  if (proposed === undefined) return undefined;
  const difference = scopeDifference(asFound, proposed, fillEdition(project));
  const labels = scopeLabels(asFound, proposed, difference);
  const { steps, signOffs, cautions, assumptions } = workSteps(project, proposed, difference, labels);
  return {
    ...difference,
    findings: findingsOf(session),
    labels,
    materials: scopeMaterials(proposed, difference, labels),
    removed: scopeRemoved(asFound, difference),
    steps,
    signOffs,
    cautions,
    breakers: breakersOf(difference.boxes),
    assumptions,
  };
}

/** A session changes its tables of enclosures in place; caches go by identity, so that they get those of this moment. */
function fixed(project: Project): Project {
  const copy = (installation: Installation): Installation => ({
    ...installation,
    enclosures: { ...installation.enclosures },
  });
  const { asFound, proposed } = project;
  return { ...project, asFound: copy(asFound), ...(proposed !== undefined && { proposed: copy(proposed) }) };
}

function findingsOf(session: Session): ScopeFindings {
  const by = (findings: readonly Finding[], standing: Standing): readonly Finding[] =>
    findings.filter((finding) => finding.standing === standing);
  const asFound = session.report("as-found").findings;
  const proposed = session.report("proposed").findings;
  return {
    repaired: by(asFound, "repaired"),
    inherited: by(proposed, "inherited"),
    inheritedTouched: by(proposed, "inherited-touched"),
    introduced: by(proposed, "introduced"),
  };
}
