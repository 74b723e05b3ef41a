import type { AppliedAmendment } from "../answers/finding.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Amendment } from "../model/project.ts";
import { takesFractions } from "../model/value-unit.ts";
import type { EditionData, EditionValues, Sourced, ValueName } from "./editions/edition-data.ts";
import { coversRule } from "./editions/editions.ts";
import type { Rule } from "./rule.ts";

const wording = catalogue({
  noRule: (rule: Part) => `There is no rule "${rule}".`,
  notCovered: (rule: Part, edition: Part) => `Rule "${rule}" is not covered by edition ${edition}.`,
  isTable: (name: Part) => `The value "${name}" is a table and cannot be replaced by one number.`,
  holdsNoValue: (edition: Part, value: Part) => `Edition ${edition} holds no value "${value}".`,
  notBelowNought: (value: Part) => `The value "${value}" must be 0 or more.`,
  mustBeWhole: (value: Part) => `The value "${value}" must be a whole number.`,
  local: "local amendment of this document",
  readsNone: (rule: Part, value: Part) => `Rule "${rule}" reads no value "${value}".`,
  readsOthers: (rule: Part, value: Part, values: Part) =>
    `Rule "${rule}" reads no value "${value}"; it reads ${values}.`,
});

/** Words on every value that a document's own amendment replaced. */
const LOCAL = wording.local;

/** Whether the document's amendments switch a rule off. */
export const isSwitchedOff = (rule: Rule, amendments: readonly Amendment[]): boolean =>
  amendments.some(({ rule: id, change }) => id === rule.id && change.kind === "off");

/**
 * The edition as one rule sees it: values that the document amends for that rule replaced. Only a plain number can be
 * amended; `amendmentProblem` says why one changes nothing.
 */
export function amendedEdition(edition: EditionData, rule: Rule, amendments: readonly Amendment[]): EditionData {
  let values: EditionValues = edition.values;
  for (const amendment of amendments) {
    if (amendment.rule !== rule.id || amendment.change.kind !== "value") continue;
    if (amendmentProblem(amendment, [rule], edition) !== undefined) continue;
    const name = amendment.change.name as ValueName;
    const before = values[name] as Sourced<number> | undefined;
    values = {
      ...values,
      [name]: { section: "", ...before, value: amendment.change.value, source: LOCAL, confidence: "own-rule" },
    };
  }
  return values === edition.values ? edition : { ...edition, values };
}

const NONE: readonly AppliedAmendment[] = [];

/** The amendments by which a rule judges, of several for one value the last. Those that change nothing are left out. */
export function appliedAmendments(
  edition: EditionData,
  rule: Rule,
  amendments: readonly Amendment[],
): readonly AppliedAmendment[] {
  if (amendments.length === 0) return NONE;
  const applied = new Map<string, AppliedAmendment>();
  for (const amendment of amendments) {
    const { change, reason, by } = amendment;
    if (amendment.rule !== rule.id || change.kind !== "value") continue;
    if (amendmentProblem(amendment, [rule], edition) !== undefined) continue;
    const was = edition.values[change.name as ValueName]?.value;
    applied.set(change.name, {
      value: change.name,
      is: change.value,
      ...(typeof was === "number" && { was }),
      reason,
      ...(by !== undefined && { by }),
    });
  }
  return [...applied.values()];
}

/** Why an amendment changes nothing, in a sentence; undefined when it takes effect. */
export function amendmentProblem(
  amendment: Amendment,
  rules: readonly Rule[],
  edition: EditionData,
): string | undefined {
  const rule = rules.find(({ id }) => id === amendment.rule);
  if (rule === undefined) return wording.noRule(amendment.rule);
  if (!coversRule(edition, rule.id)) return wording.notCovered(rule.id, edition.year);
  if (amendment.change.kind === "off") return undefined;
  const { name, value } = amendment.change;
  const names = rule.values ?? [];
  if (!(names as readonly string[]).includes(name))
    return names.length > 0 ? wording.readsOthers(rule.id, name, names.join(", ")) : wording.readsNone(rule.id, name);
  const before = edition.values[name as ValueName];
  if (before !== undefined && typeof before.value !== "number") return wording.isTable(name);
  if (before === undefined && name !== "protectedUpToA") return wording.holdsNoValue(edition.year, name);
  if (!Number.isFinite(value) || value < 0) return wording.notBelowNought(name);
  if (!takesFractions(name) && !Number.isInteger(value)) return wording.mustBeWhole(name);
  return undefined;
}
