import type { RuleStatus, SectionConfidence, SectionPointer, Severity } from "../answers/finding.ts";
import { EDITIONS, type Edition } from "../model/project.ts";
import { type CubicInches, formatVolume } from "../units/volume.ts";
import type { EditionData, Sourced, ValueName } from "./editions/edition-data.ts";
import { editions } from "./editions/editions.ts";
import type { Rule } from "./rule.ts";

const CONFIDENCE: Readonly<Record<SectionConfidence, string>> = {
  sourced: "a source text states it",
  "from-memory": "number not checked against the text",
  unconfirmed: "unconfirmed, look it up",
  doubtful: "doubtful, look it up",
  "own-rule": "our own rule",
};

const MEANING: Readonly<Record<Severity, string>> = {
  danger: "danger (shock or fire now)",
  violation: "violation (breaks the adopted rule)",
  caution: "caution (will not work, is a nuisance, or depends on a fact)",
  advice: "advice",
};

const STATUS: Readonly<Record<RuleStatus, string>> = {
  draft: "It is a draft: no licensed person has reviewed it yet.",
  stable: "It has been reviewed.",
  retired: "It is no longer checked.",
};

const LOOKS_AT: Readonly<Record<Rule["scope"], string>> = {
  box: "It looks at one box or panel at a time.",
  section: "It follows the wires from box to box, as far as the panel.",
  project: "It looks at the drawing as a whole.",
};

/** What stands in braces is filled in with the names of the drawing. */
const WHAT_IT_SAYS = "## What it says";

/** The help page of a rule in Markdown, made from the rule itself, so that it cannot say something else. */
export function helpPage(rule: Rule): string {
  const parts = [
    `# ${rule.summary.replace(/\.$/, "")}`,
    `At worst a ${MEANING[rule.severity]}. ${STATUS[rule.status]} ${LOOKS_AT[rule.scope]}`,
    "## Why",
    rule.why,
    WHAT_IT_SAYS,
    Object.values<string>(rule.messages)
      .map((message) => `- ${message}`)
      .join("\n"),
    "## Sections",
    "Section numbers are pointers for looking up; the adopted text and its local amendments decide.",
    sectionTable(rule),
    ...valueParts(rule),
    `For local amendments and the command line this rule is called \`${rule.id}\`.`,
  ];
  return `${parts.join("\n\n")}\n`;
}

const cell = (text: string): string => text.replaceAll("|", "\\|");

const table = (heads: readonly string[], rows: readonly (readonly string[])[]): string =>
  [heads, heads.map(() => "---"), ...rows].map((row) => `| ${row.map(cell).join(" | ")} |`).join("\n");

function sectionTable({ sections }: Rule): string {
  const rows = EDITIONS.map((edition) => [nameOf(editions[edition]), ...pointerCells(sections[edition])]);
  return table(["Edition", "Section", "How well it is backed"], rows);
}

const pointerCells = (pointer: SectionPointer | undefined): readonly string[] =>
  pointer === undefined ? ["-", "-"] : [pointer.section, CONFIDENCE[pointer.confidence]];

function nameOf({ year, verified, textOf, countingOnly }: EditionData): string {
  if (!verified) return `${year} (${textOf} text, not verified)`;
  return countingOnly ? `${year} (box fill only)` : `${year}`;
}

function valueParts({ values = [] }: Rule): readonly string[] {
  if (values.length === 0) return [];
  const rows = values.flatMap((name) => valueRows(name));
  return [
    "## Values",
    "A plain number can be replaced by a local amendment under its name.",
    table(["Value", "Editions", "Is", "Section", "Source", "How well it is backed"], rows),
  ];
}

/** One row for each run of editions that hold the same. */
function valueRows(name: ValueName): readonly (readonly string[])[] {
  const runs: { readonly editions: Edition[]; readonly held: Sourced<unknown> | undefined; readonly text: string }[] =
    [];
  for (const edition of EDITIONS) {
    const held: Sourced<unknown> | undefined = editions[edition].values[name];
    const text = JSON.stringify(held ?? null);
    const last = runs.at(-1);
    if (last?.text === text) last.editions.push(edition);
    else runs.push({ editions: [edition], held, text });
  }
  return runs.map(({ editions: years, held }) => {
    const when = years.join(", ");
    if (held === undefined)
      return [name, when, years.every((year) => editions[year].countingOnly) ? "not held" : "none", "-", "-", "-"];
    return [name, when, valueText(name, held.value), held.section, held.source, CONFIDENCE[held.confidence]];
  });
}

function valueText(name: ValueName, value: unknown): string {
  if (name === "conductorAllowance") return pairs(value, (in3) => `${formatVolume(in3 as CubicInches, 2)} in³`);
  if (name === "smallConductorAmps") return pairs(value, (rows) => pairs(rows, (limit) => `${limit} A`));
  if (Array.isArray(value)) return value.join(", ");
  if (name.endsWith("In")) return `${value} in.`;
  return name === "protectedUpToA" ? `${value} A` : `${value}`;
}

const pairs = (value: unknown, text: (one: unknown) => string): string =>
  Object.entries(value as Readonly<Record<string, unknown>>)
    .map(([key, one]) => `${key}: ${text(one)}`)
    .join("; ");
