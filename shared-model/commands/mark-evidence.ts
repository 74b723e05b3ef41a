import { catalogue, type Part } from "../lib/catalogue.ts";
import { inSentence } from "../lib/in-sentence.ts";
import type { Project, StateName } from "../model/project.ts";
import { propertyTarget } from "./args-of-model.ts";
import { catalogText, evidenceMark, orNull, record, stateName } from "./args-shape.ts";
import type { Property } from "./catalog/properties.ts";
import type { CommandArgs, PropertyTarget } from "./command-args.ts";
import { defineCommand, type Refusal, refusal } from "./define-command.ts";
import { markOf, noEvidenceHere, writeMark } from "./evidence-of.ts";
import { callTarget, entityOf, fieldValue, noSuchTarget, propertiesOfTarget } from "./property-target.ts";

type Args = CommandArgs["mark-evidence"];

/** Fields that are no properties. */
const othersFields = catalogue({
  at: "place",
  conductors: "conductors",
  connector: "connector",
  plug: "plug",
  sides: "sides",
  spare: "spare",
  type: "type",
});

const wording = catalogue({
  assumed: (field: Part, item: Part) => `Mark ${field} of ${item} as assumed`,
  measured: (field: Part, item: Part) => `Mark ${field} of ${item} as measured`,
  noField: (item: Part, field: Part) => `${item} has no field "${field}" to mark. Pick one of its fields.`,
  noValue: (field: Part, item: Part) => `Nothing is recorded about ${field} of ${item}. Give it a value first.`,
  seen: (field: Part, item: Part) => `Mark ${field} of ${item} as seen`,
  told: (field: Part, item: Part) => `Mark ${field} of ${item} as told`,
  unknown: (field: Part, item: Part) => `Mark ${field} of ${item} as unknown`,
  unmark: (field: Part, item: Part) => `Unmark ${field} of ${item}`,
});

/** Facts that other commands set, and that can be seen, measured, told or assumed all the same. */
const OF_OTHER_COMMANDS: Readonly<Partial<Record<PropertyTarget["kind"], readonly (keyof typeof othersFields)[]>>> = {
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
    return evidence === null ? wording.unmark(what, name) : wording[evidence](what, name);
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
  if (property === undefined && OF_OTHER_COMMANDS[target.kind]?.some((one) => one === field) !== true)
    return refusal("unknown-field", wording.noField(name, field));
  const entity = entityOf(project, state, target);
  const value = property === undefined ? (entity as Record<string, unknown>)[field] : fieldValue(entity, property);
  if (value !== undefined) return undefined;
  return refusal("nothing-to-mark", wording.noValue(wordOf(property, field), name));
}

const wordOf = (property: Property | undefined, field: string): string =>
  property === undefined
    ? ((othersFields as Readonly<Record<string, string>>)[field] ?? field)
    : inSentence(property.label);

const nameOfField = (project: Project, state: StateName, target: PropertyTarget, field: string): string =>
  wordOf(
    propertiesOfTarget(project, state, target).find((property) => property.field === field),
    field,
  );
