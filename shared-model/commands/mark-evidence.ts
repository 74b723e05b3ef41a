import type { Project, StateName } from "../model/project.ts";
import { propertyTarget } from "./args-of-model.ts";
import { catalogText, evidenceMark, orNull, record, stateName } from "./args-shape.ts";
import type { CommandArgs, PropertyTarget } from "./command-args.ts";
import { defineCommand, type Refusal, refusal } from "./define-command.ts";
import { markOf, noEvidenceHere, writeMark } from "./evidence-of.ts";
import { callTarget, entityOf, fieldValue, noSuchTarget, propertiesOfTarget } from "./property-target.ts";

type Args = CommandArgs["mark-evidence"];

/** Facts that other commands set, and that can be seen, measured, told or assumed all the same. */
const OF_OTHER_COMMANDS: Readonly<Partial<Record<PropertyTarget["kind"], readonly string[]>>> = {
  end: ["at", "spare"],
  splice: ["connector"],
  cable: ["conductors", "sides"],
  device: ["type"],
  load: ["plug"],
};

/** Says how a fact is known without changing it; null takes the mark off. */
export const markEvidence = defineCommand<Args>({
  id: "mark-evidence",
  args: record<Args>({
    state: stateName,
    target: propertyTarget,
    field: catalogText,
    evidence: orNull(evidenceMark),
  }),
  label(project, { state, target, field, evidence }) {
    const name = callTarget(project, state, target);
    const what = nameOfField(project, state, target, field);
    return evidence === null ? `Unmark ${what} of ${name}` : `Mark ${what} of ${name} as ${evidence}`;
  },
  refuse(project, { state, target, field }) {
    return (
      noSuchTarget(project, state, target) ?? noEvidenceHere(target) ?? nothingToMark(project, state, target, field)
    );
  },
  apply(draft, { state, target, field, evidence }, before) {
    if (markOf(before, state, target, field) !== (evidence ?? undefined))
      writeMark(draft, state, target, field, evidence, before);
  },
});

function nothingToMark(project: Project, state: StateName, target: PropertyTarget, field: string): Refusal | undefined {
  const name = callTarget(project, state, target);
  const property = propertiesOfTarget(project, state, target).find((one) => one.field === field);
  if (property === undefined && OF_OTHER_COMMANDS[target.kind]?.includes(field) !== true)
    return refusal("unknown-field", `${name} has no field "${field}" to mark. Pick one of its fields.`);
  const entity = entityOf(project, state, target);
  const value = property === undefined ? (entity as Record<string, unknown>)[field] : fieldValue(entity, property);
  if (value !== undefined) return undefined;
  const what = property?.label.toLowerCase() ?? field;
  return refusal("nothing-to-mark", `Nothing is recorded about ${what} of ${name}. Give it a value first.`);
}

const nameOfField = (project: Project, state: StateName, target: PropertyTarget, field: string): string =>
  propertiesOfTarget(project, state, target)
    .find((property) => property.field === field)
    ?.label.toLowerCase() ?? field;
