import { rules } from "../../shared-model/rules/registry.ts";
import { amendableValues } from "../../shared-model/rules/rule-book.ts";

const LONGEST = 120;

/** Source of `catalog/amendable-rules.ts`, as the formatter leaves it: made from the rules, which commands do not know. */
export function amendableText(): string {
  const entries = [...rules]
    .filter(({ status }) => status !== "retired")
    .sort((a, b) => (a.id < b.id ? -1 : 1))
    .map((rule) => entryOf(rule.id, amendableValues(rule)));
  return `/**
 * Rules by id, with the plain numbers that each reads: what a local amendment may name. Made from the rules themselves
 * (\`LOADSIDE_WRITE=1 npx vitest run tests/rules/help-pages.test.ts\`); commands do not know the rules.
 */
export const amendableRules: Readonly<Record<string, readonly string[]>> = {
${entries.join("\n")}
};
`;
}

function entryOf(id: string, values: readonly string[]): string {
  const key = /^[a-z]+$/.test(id) ? id : JSON.stringify(id);
  const quoted = values.map((value) => JSON.stringify(value));
  const line = `  ${key}: [${quoted.join(", ")}],`;
  if (line.length <= LONGEST) return line;
  return [`  ${key}: [`, ...quoted.map((value) => `    ${value},`), "  ],"].join("\n");
}
