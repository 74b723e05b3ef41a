import type { Draft } from "immer";
import { catalogue, type Part } from "../lib/catalogue.ts";
import { inSentence } from "../lib/in-sentence.ts";
import { sameValue } from "../lib/same-value.ts";
import type { Project, StateName } from "../model/project.ts";
import { propertyTarget } from "./args-of-model.ts";
import { type Check, catalogText, evidenceMark, optional, record, stateName } from "./args-shape.ts";
import { argsWording } from "./args-words.ts";
import type { Property } from "./catalog/properties.ts";
import type { CommandArgs, PropertyTarget, PropertyValue } from "./command-args.ts";
import { defineCommand, type Refusal, refusal } from "./define-command.ts";
import { noEvidenceHere, writeMark } from "./evidence-of.ts";
import { copyOf } from "./plain-data.ts";
import { afterChange, wouldBreak } from "./property-consequences.ts";
import {
  callTarget,
  draftEntityOf,
  entityOf,
  fieldValue,
  noSuchTarget,
  pathOf,
  propertiesOfTarget,
} from "./property-target.ts";
import { wrongValue } from "./property-value.ts";

type Args = CommandArgs["set-property"];

const wording = catalogue({
  clear: (field: Part, item: Part) => `Clear ${field} of ${item}`,
  noField: (item: Part, field: Part, fields: Part) => `${item} has no field "${field}". It has: ${fields}.`,
  noFields: (item: Part, field: Part) => `${item} has no field "${field}". Its facts are set by other commands.`,
  set: (field: Part, item: Part) => `Set ${field} of ${item}`,
});

/** Any shape of value; the field says what it takes. Depth and size are bounded by that. */
const anyValue: Check = (value, at) => (value === undefined ? argsWording.missing(at) : undefined);

/**
 * Sets any field that a person enters, with how it is known. Without a mark, a changed value is of unknown evidence: the
 * old mark was about the old value.
 */
export const setProperty = defineCommand<Args>({
  id: "set-property",
  args: record<Args>({
    state: stateName,
    target: propertyTarget,
    field: catalogText,
    value: anyValue,
    evidence: optional(evidenceMark),
  }),
  label(project, { state, target, field, value }) {
    const property = findField(project, state, target, field);
    const what = property === undefined ? field : inSentence(property.label);
    return wording[value === null ? "clear" : "set"](what, callTarget(project, state, target));
  },
  refuse(project, { state, target, field, value, evidence }) {
    const missing = noSuchTarget(project, state, target);
    if (missing !== undefined) return missing;
    const property = findField(project, state, target, field);
    if (property === undefined) return noSuchField(project, state, target, field);
    const wrong = wrongValue(property, value) ?? wouldBreak(project, state, target, property, value);
    return wrong ?? (evidence === undefined ? undefined : noEvidenceHere(target));
  },
  apply(draft, { state, target, field, value, evidence }, before) {
    const property = findField(before, state, target, field);
    if (property === undefined) throw new Error(`No field ${field}.`);
    const changes = !sameValue(fieldValue(entityOf(before, state, target), property), value ?? undefined);
    if (changes) {
      write(draftEntityOf(draft, state, target, before), property, value);
      afterChange(draft, state, target, property, before);
    }
    // A mark says how a value is known: without a value there is nothing to know.
    if (evidence !== undefined && value !== null) writeMark(draft, state, target, field, evidence, before);
    else if (changes) writeMark(draft, state, target, field, null, before);
  },
  mergeKey: ({ state, target, field }) => `${state} ${JSON.stringify(target)} ${field}`,
});

const findField = (project: Project, state: StateName, target: PropertyTarget, field: string): Property | undefined =>
  propertiesOfTarget(project, state, target).find((property) => property.field === field);

function noSuchField(project: Project, state: StateName, target: PropertyTarget, field: string): Refusal {
  const labels = propertiesOfTarget(project, state, target).map((property) => inSentence(property.label));
  const name = callTarget(project, state, target);
  const message = labels.length === 0 ? wording.noFields(name, field) : wording.noField(name, field, labels.join(", "));
  return refusal("unknown-field", message);
}

function write(entity: object, property: Property, value: PropertyValue): void {
  const path = pathOf(property);
  let home = entity as Draft<Record<string, unknown>>;
  for (const key of path.slice(0, -1)) home = home[key] as Draft<Record<string, unknown>>;
  const last = path[path.length - 1];
  if (last === undefined) throw new Error("A property without a path.");
  if (value === null) delete home[last];
  else home[last] = copyOf(value);
}
