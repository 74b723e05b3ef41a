import { toJsonSchema } from "@valibot/to-json-schema";
import { canonicalText } from "../lib/canonical-text.ts";
import { FORMAT_VERSION } from "../model/project.ts";
import { PATTERNS } from "./schema/basics.ts";
import { documentSchema } from "./schema/document.ts";
import { installation } from "./schema/wiring.ts";

/**
 * JSON Schema (draft 2020-12) of a `.loadside` file, as text. What a schema cannot say, such as that references lead
 * somewhere, is judged by the program alone.
 */
export function jsonSchemaText(): string {
  const schema = toJsonSchema(documentSchema, {
    target: "draft-2020-12",
    definitions: { installation },
    errorMode: "ignore",
    typeMode: "input",
    overrideAction: ({ valibotAction, jsonSchema }) => {
      const pattern = PATTERNS.get((valibotAction as { readonly requirement?: unknown }).requirement);
      return pattern === undefined ? undefined : { ...jsonSchema, pattern };
    },
  });
  return canonicalText({
    ...schema,
    title: "Loadside document",
    description: `A wiring drawing, format version ${FORMAT_VERSION}. Keys end in their unit; unknown fields are kept.`,
  });
}
