import type { Property } from "../../shared-model/commands/catalog/properties.ts";
import type { PropertyTarget } from "../../shared-model/commands/command-args.ts";
import { markOf } from "../../shared-model/commands/evidence-of.ts";
import { entityOf, noSuchTarget, propertiesOfTarget } from "../../shared-model/commands/property-target.ts";
import type { EvidenceMark } from "../../shared-model/model/evidence.ts";
import type { DocumentState } from "./document-store.ts";

/** A field of a thing, what it holds now, and how that is known. */
export interface PropertyFact {
  readonly property: Property;
  /** As the document holds it; undefined when the field is absent. */
  readonly value: unknown;
  readonly mark: EvidenceMark | undefined;
}

/** Every field that means something on a thing, in the order of its form; none when it is gone. */
export function propertyFacts({ project, state }: DocumentState, target: PropertyTarget): readonly PropertyFact[] {
  if (noSuchTarget(project, state, target) !== undefined) return [];
  const entity = entityOf(project, state, target);
  return propertiesOfTarget(project, state, target).map((property) => ({
    property,
    value: valueAt(entity, property.path ?? [property.field]),
    mark: markOf(project, state, target, property.field),
  }));
}

function valueAt(entity: object, path: readonly string[]): unknown {
  let value: unknown = entity;
  for (const key of path) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, key)) return undefined;
    value = Reflect.get(value, key);
  }
  return value;
}
