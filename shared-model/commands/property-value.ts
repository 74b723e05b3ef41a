import { findStandardBox } from "../catalog/standard-boxes.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { VolumeFact } from "../model/enclosure.ts";
import { volumeFact } from "./args-of-model.ts";
import { isPlainText } from "./args-shape.ts";
import type { Property, PropertyKind } from "./catalog/properties.ts";
import type { PropertyValue } from "./command-args.ts";
import { type Refusal, refusal } from "./define-command.ts";

const wording = catalogue({
  breaker: "Pick another breaker of the same panel.",
  choice: (labels: Part) => `Pick one of: ${labels}.`,
  choices: (labels: Part) => `Pick any of: ${labels}.`,
  empty: (field: Part, instead: Part) => `${field} cannot be left empty. ${instead}`,
  flag: "Say yes or no.",
  noSize: (size: Part) =>
    `The table of standard boxes has no "${size}". Pick a size of the table, or give the marked volume.`,
  number: (least: Part, most: Part) => `Give a number from ${least} to ${most}.`,
  room: "Pick a room of the drawing.",
  text: (longest: Part) => `Write at most ${longest} characters.`,
  volume: "Give the marked volume from 0.1 to 1000 in³, pick a standard size, or say that it is unknown.",
  whole: (least: Part, most: Part) => `Give a whole number from ${least} to ${most}.`,
  wrong: (field: Part, instead: Part) => `${field} does not take that value. ${instead}`,
});

/** Why a field does not take a value, in words; rooms and breakers are looked up by the caller. */
export function wrongValue({ label, takes, optional }: Property, value: PropertyValue): Refusal | undefined {
  if (value === null) {
    if (optional) return undefined;
    return refusal("value-required", wording.empty(label, whatItTakes(takes)));
  }
  if (takes.kind === "volume") {
    const wrong = volumeFact(value, "value");
    return wrong === undefined ? noSuchVolume(value as VolumeFact) : badValue(label, takes);
  }
  return fits(takes, value) ? undefined : badValue(label, takes);
}

const badValue = (label: string, takes: PropertyKind): Refusal =>
  refusal("wrong-value", wording.wrong(label, whatItTakes(takes)));

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
      return wording.text(takes.longest);
    case "number": {
      const most = takes.unit === "" ? takes.most : `${takes.most} ${takes.unit}`;
      return takes.whole === true ? wording.whole(takes.least, most) : wording.number(takes.least, most);
    }
    case "flag":
      return wording.flag;
    case "choice":
      return wording.choice(takes.choices.map((choice) => choice.label).join(", "));
    case "choices":
      return wording.choices(takes.choices.map((choice) => choice.label).join(", "));
    case "volume":
      return wording.volume;
    case "room":
      return wording.room;
    case "breaker":
      return wording.breaker;
  }
}

/** A table volume names a size that the table has. */
export function noSuchVolume(fact: VolumeFact): Refusal | undefined {
  if (fact.kind !== "table" || findStandardBox(fact.size) !== undefined) return undefined;
  return refusal("unknown-standard-box", wording.noSize(fact.size));
}
