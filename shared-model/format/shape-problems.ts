import * as v from "valibot";
import { catalogue, type Part } from "../lib/catalogue.ts";
import { type Problem, problem } from "../lib/result.ts";
import { jsonPath, type Step, shown } from "./json-path.ts";
import { LIMITS } from "./limits.ts";
import { documentSchema } from "./schema/document.ts";

const wording = catalogue({
  either: ", or ",
  fields: (sets: Part) => `an object with one of these sets of fields: ${sets}`,
  key: (field: Part, wanted: Part) => `The key ${field} must be ${wanted}. Rename it.`,
  missing: (field: Part) => `The field ${field} is missing. Add it.`,
  ofTheSchema: "those of the schema",
  oneOf: (options: Part) => `one of ${options}`,
  listForObject: "It must be an object; it is a list. Correct it.",
  value: (wanted: Part, found: Part) => `It must be ${wanted}; it is ${found}. Correct it.`,
});

/**
 * What keeps a value from being a document, field by field. `refused` is the way to the value that the quick check
 * stopped at: the library lets a list pass for an object, so there it may have nothing to say.
 */
export function shapeProblems(value: unknown, refused: readonly Step[]): readonly Problem[] {
  const result = v.safeParse(documentSchema, value);
  if (!result.success) return result.issues.slice(0, LIMITS.problems).map((issue) => asProblem(issue));
  if (!Array.isArray(valueAt(value, refused))) throw new Error("A document was refused without a reason.");
  return [problem("wrong-value", jsonPath(refused), wording.listForObject)];
}

function valueAt(value: unknown, steps: readonly Step[]): unknown {
  let inner = value;
  for (const step of steps) inner = (inner as Record<Step, unknown>)[step];
  return inner;
}

type Issue = v.BaseIssue<unknown>;

function asProblem(issue: Issue): Problem {
  const steps = (issue.path ?? []).map(({ key }) => key as Step);
  const path = jsonPath(steps);
  const last = issue.path?.[issue.path.length - 1];
  const field = shown(String(steps[steps.length - 1] ?? ""));
  if (last?.origin === "key" && issue.kind !== "schema")
    return problem("wrong-key", path, wording.key(field, issue.message));
  if (issue.received === "undefined") return problem("missing-field", path, wording.missing(field));
  const wanted = issue.kind === "validation" ? issue.message : wantedBy(issue);
  return problem("wrong-value", path, wording.value(wanted, shown(issue.input)));
}

const KINDS: Readonly<Record<string, string>> = catalogue({
  string: "a text",
  number: "a number",
  boolean: "true or false",
  loose_object: "an object",
  record: "an object",
  array: "a list",
});

function wantedBy(issue: Issue): string {
  const kind = KINDS[issue.type];
  if (kind !== undefined) return kind;
  if (issue.type === "union") return wording.fields(formsOf(issue));
  const options = (issue.expected ?? "").replace(/^\(|\)$/g, "").split(" | ");
  return options.length === 1 ? (options[0] as string) : wording.oneOf(options.join(", "));
}

/** The fields that each form of a union wants, from the issues that the library collects for each. */
function formsOf(issue: Issue): string {
  const wanted = (issue.issues ?? []).map((each) => each.expected).filter((each) => each?.startsWith('"') === true);
  return wanted.length === 0 ? wording.ofTheSchema : [...new Set(wanted)].join(wording.either);
}
