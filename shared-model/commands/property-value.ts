import { findStandardBox } from "../catalog/standard-boxes.ts";
import type { VolumeFact } from "../model/enclosure.ts";
import { volumeFact } from "./args-of-model.ts";
import { isPlainText } from "./args-shape.ts";
import type { Property, PropertyKind } from "./catalog/properties.ts";
import type { PropertyValue } from "./command-args.ts";
import { type Refusal, refusal } from "./define-command.ts";

/** Why a field does not take a value, in words; rooms and breakers are looked up by the caller. */
export function wrongValue({ label, takes, optional }: Property, value: PropertyValue): Refusal | undefined {
  if (value === null) {
    if (optional) return undefined;
    return refusal("value-required", `${label} cannot be left empty. ${whatItTakes(takes)}`);
  }
  if (takes.kind === "volume") {
    const wrong = volumeFact(value, "value");
    return wrong === undefined ? noSuchVolume(value as VolumeFact) : badValue(label, takes);
  }
  return fits(takes, value) ? undefined : badValue(label, takes);
}

const badValue = (label: string, takes: PropertyKind): Refusal =>
  refusal("wrong-value", `${label} does not take that value. ${whatItTakes(takes)}`);

function fits(takes: Exclude<PropertyKind, { kind: "volume" }>, value: PropertyValue): boolean {
  switch (takes.kind) {
    case "text":
      return typeof value === "string" && value.length <= takes.longest && isPlainText(value);
    case "number":
      return (
        typeof value === "number" &&
        Number.isFinite(value) &&
        value >= takes.least &&
        value <= takes.most &&
        (takes.whole !== true || Number.isInteger(value))
      );
    case "flag":
      return typeof value === "boolean";
    case "choice":
      return takes.choices.some((choice) => choice.value === value);
    case "choices":
      return (
        Array.isArray(value) &&
        value.length <= 100 &&
        value.every((one) => takes.choices.some((choice) => choice.value === one)) &&
        (takes.repeats === true || new Set(value).size === value.length)
      );
    case "room":
    case "breaker":
      return typeof value === "string";
  }
}

function whatItTakes(takes: PropertyKind): string {
  switch (takes.kind) {
    case "text":
      return `Write at most ${takes.longest} characters.`;
    case "number": {
      const unit = takes.unit === "" ? "" : ` ${takes.unit}`;
      return `Give a ${takes.whole === true ? "whole " : ""}number from ${takes.least} to ${takes.most}${unit}.`;
    }
    case "flag":
      return "Say yes or no.";
    case "choice":
      return `Pick one of: ${takes.choices.map((choice) => choice.label).join(", ")}.`;
    case "choices":
      return `Pick any of: ${takes.choices.map((choice) => choice.label).join(", ")}.`;
    case "volume":
      return "Give the marked volume from 0.1 to 1000 in³, pick a standard size, or say that it is unknown.";
    case "room":
      return "Pick a room of the drawing.";
    case "breaker":
      return "Pick another breaker of the same panel.";
  }
}

/** A table volume names a size that the table has. */
export function noSuchVolume(fact: VolumeFact): Refusal | undefined {
  if (fact.kind !== "table" || findStandardBox(fact.size) !== undefined) return undefined;
  return refusal(
    "unknown-standard-box",
    `The table of standard boxes has no "${fact.size}". Pick a size of the table, or give the marked volume.`,
  );
}
