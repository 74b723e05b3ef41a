import type { Draft } from "immer";
import { catalogue } from "../lib/catalogue.ts";
import type { EvidenceMark } from "../model/evidence.ts";
import type { Project, StateName } from "../model/project.ts";
import type { PropertyTarget } from "./command-args.ts";
import { type Refusal, refusal } from "./define-command.ts";
import { draftEntityOf, entityOf } from "./property-target.ts";

const wording = catalogue({
  ofRoom: "A room is what you say it is, so it carries no mark of how it is known. Leave the mark out.",
});

type Marked = { evidence?: Record<string, EvidenceMark> };

/** Where the mark of a field stands: a conductor's stands on its cable, under a name of its own. */
function homeOf(target: PropertyTarget, field: string): { readonly target: PropertyTarget; readonly field: string } {
  if (target.kind !== "conductor") return { target, field };
  return { target: { kind: "cable", id: target.cable }, field: `conductors-${target.id}-${field}` };
}

/** Rooms and labels' words are what a person decides, not what was found out: they carry no mark. */
export function noEvidenceHere(target: PropertyTarget): Refusal | undefined {
  if (target.kind !== "room") return undefined;
  return refusal("no-evidence-here", wording.ofRoom);
}

export function markOf(
  project: Project,
  state: StateName,
  target: PropertyTarget,
  field: string,
): EvidenceMark | undefined {
  const home = homeOf(target, field);
  const { evidence } = entityOf(project, state, home.target) as Marked;
  return evidence !== undefined && Object.hasOwn(evidence, home.field) ? evidence[home.field] : undefined;
}

/** Sets the mark of a field, or takes it off with null. */
export function writeMark(
  draft: Draft<Project>,
  state: StateName,
  target: PropertyTarget,
  field: string,
  mark: EvidenceMark | null,
  before: Project,
): void {
  if (target.kind === "room") return;
  const home = homeOf(target, field);
  const entity = draftEntityOf(draft, state, home.target, before) as Marked;
  if (mark !== null) {
    if (entity.evidence === undefined) entity.evidence = { [home.field]: mark };
    else entity.evidence[home.field] = mark;
    return;
  }
  if (entity.evidence === undefined || !(home.field in entity.evidence)) return;
  delete entity.evidence[home.field];
  if (Object.keys(entity.evidence).length === 0) delete entity.evidence;
}
