import type { BookRule, BookValue } from "../answers/rule-book.ts";
import type { Edition } from "../model/project.ts";
import { severityRank } from "../model/severity.ts";
import { unitOfValue } from "../model/value-unit.ts";
import type { EditionData, Sourced, ValueName } from "./editions/edition-data.ts";
import { coversRule, editions, getEdition } from "./editions/editions.ts";
import { rules } from "./registry.ts";
import type { Rule } from "./rule.ts";

/** Rules that run by an edition, the gravest first, each with the plain numbers that it reads. */
export function ruleBook(edition: Edition): readonly BookRule[] {
  const data = getEdition(edition);
  return rules
    .filter(({ id, status }) => status !== "retired" && coversRule(data, id))
    .map(({ id, summary, severity, status, sections, values = [] }) => {
      const section = sections[edition];
      return {
        id,
        summary,
        severity,
        status,
        ...(section !== undefined && { section }),
        values: values.flatMap((name) => bookValue(name, data)),
      };
    })
    .sort((a, b) => severityRank(a.severity) - severityRank(b.severity) || (a.summary < b.summary ? -1 : 1));
}

function bookValue(name: ValueName, { values }: EditionData): readonly BookValue[] {
  const held: Sourced<unknown> | undefined = values[name];
  if (held === undefined ? !ADDABLE.has(name) : typeof held.value !== "number") return [];
  const unit = unitOfValue(name);
  const value = held?.value;
  return [
    {
      name,
      ...(typeof value === "number" && { value }),
      ...(unit !== undefined && { unit }),
      ...(held !== undefined && {
        section: { section: held.section, confidence: held.confidence },
        source: held.source,
      }),
    },
  ];
}

/** A limit that an edition does not set, and that an amendment may set. */
const ADDABLE: ReadonlySet<ValueName> = new Set<ValueName>(["protectedUpToA"]);

/** Names of the plain numbers that a rule reads by any edition. */
export const amendableValues = ({ values = [] }: Rule): readonly string[] =>
  values.filter((name) => Object.values(editions).some((data) => typeof data.values[name]?.value === "number"));
