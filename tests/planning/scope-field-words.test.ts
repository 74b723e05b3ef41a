/** What the scope says of facts that were changed: in words, with units, for every fact that a person can enter. */
import { describe, expect, test } from "vitest";
import { type Property, properties } from "../../shared-model/commands/catalog/properties.ts";
import { scopeDifference } from "../../shared-model/planning/scope/difference.ts";
import { fieldAndValue, partValueWords } from "../../shared-model/planning/scope/field-words.ts";
import { fieldWords } from "../../shared-model/queries/field-words.ts";
import { fillEdition } from "../../shared-model/rules/fill-edition.ts";
import { boxId } from "../builders/drawing.ts";
import { Drawing } from "../builders/drawing-by-commands.ts";
import { openSample } from "../builders/samples/open-sample.ts";

const PLACES = ["device", "enclosure", "end", "cable", "jumper", "load"] as const;

/** Facts that the scope does not tell: how a thing stands in the drawing, and what the survey says of it. */
const NOT_TOLD = ["zones", "roomId", "beingSurveyed"];

/** What a fact may be, one of each. */
function valuesOf({ takes }: Property): readonly unknown[] {
  if (takes.kind === "choice") return takes.choices.map(({ value }) => value);
  if (takes.kind === "choices") return [takes.choices.map(({ value }) => value)];
  if (takes.kind === "number") return [takes.most];
  return takes.kind === "flag" ? [true, false] : [];
}

describe.each(PLACES)("facts of a %s", (kind) => {
  const told = properties[kind].filter(({ field }) => !NOT_TOLD.includes(field));
  test.each(told.map((property) => [property.field, property] as const))("%s", (field, property) => {
    expect(fieldWords(field)).not.toMatch(/[a-z][A-Z]|\b(led|gfci|afci|lb)\b/);
    // Of cables and what is smaller the scope names the fact and says no value.
    if (kind !== "device" && kind !== "enclosure") return;
    for (const value of valuesOf(property)) {
      const words = fieldAndValue(field, value).replace(/\bmA\b/, "");
      expect(words).not.toMatch(/[a-z]-([a-z]+-|\d)|\b(led|gfci|afci)\b|[a-z][A-Z]/);
    }
  });
});

test("figures have their unit, and parts are said as they are on the face", () => {
  expect(fieldAndValue("weightLb", 20)).toBe("weight 20 lb");
  expect(fieldAndValue("ledRatingW", 150)).toBe("LED rating 150 W");
  expect(fieldAndValue("supplyC", 90)).toBe("supply temperature 90 °C");
  expect(fieldAndValue("bodyDepthIn", 1.5)).toBe("body depth 1-1/2 in.");
  expect(fieldAndValue("breakerRatingA", 15)).toBe("breaker rating 15 A");
  expect(fieldAndValue("function", "gfci")).toBe("function GFCI");
  expect(fieldAndValue("gangs", 2)).toBe("gangs 2");
  expect(partValueWords("faceContact", "tied-to-load")).toBe("tied to LOAD");
});

test("an end of which a fact is changed is told with the name of the fact", () => {
  const project = openSample("laundry-proposed");
  const end = Object.keys(project.proposed?.enclosures[boxId("B2")]?.places ?? {})[0];
  if (end === undefined) throw new Error("B2 has no ends.");
  const changed = new Drawing(project, "proposed").run("set-property", {
    target: { kind: "end", enclosure: boxId("B2"), id: end as never },
    field: "freeLengthIn",
    value: 7,
  }).project;
  if (changed.proposed === undefined) throw new Error("Nothing is proposed.");
  const { boxes } = scopeDifference(changed.asFound, changed.proposed, fillEdition(changed));
  const said = boxes.flatMap(({ lines }) => lines.map(({ will }) => will));
  expect(said.filter((words) => words.includes("free length"))).toHaveLength(1);
  expect(JSON.stringify(said)).not.toContain("freeLengthIn");
});
