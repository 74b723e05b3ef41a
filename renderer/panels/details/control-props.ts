import type { Property } from "../../../shared-model/commands/catalog/properties.ts";
import type { PropertyValue } from "../../../shared-model/commands/command-args.ts";

/** What every control of a fact is given. */
export interface ControlProps {
  readonly property: Property;
  readonly value: unknown;
  readonly invalid: boolean;
  readonly onChange: (value: PropertyValue) => void;
}
