import type { RuleStatus, SectionConfidence, SectionPointer, Severity } from "../answers/finding.ts";
import { DATED_EDITIONS, EDITIONS, type Edition } from "../model/project.ts";
import { formatMillilitres, type Millilitres } from "../units/millilitres.ts";
import { type CubicInches, formatVolume } from "../units/volume.ts";
import type { EditionData, EquipmentGroundRow, Sourced, TableBox, ValueName } from "./editions/edition-data.ts";
import { coversRule, editions } from "./editions/editions.ts";
import { helpWords } from "./help/words-of-rule.ts";
import type { Rule } from "./rule.ts";

const CONFIDENCE: Readonly<Record<SectionConfidence, string>> = {
  sourced: "a source text states it",
  "from-memory": "number not checked against the text",
  unconfirmed: "unconfirmed, look it up",
  doubtful: "doubtful, look it up",
  "own-rule": "our own rule",
};

const MEANING: Readonly<Record<Severity, string>> = {
  danger: "a danger (shock or fire now)",
  violation: "a violation (breaks the adopted rule)",
  caution: "a caution (will not work, is a nuisance, or depends on a fact)",
  advice: "advice",
};

const STATUS: Readonly<Record<RuleStatus, string>> = {
  draft: "It is a draft: it has not been tried on enough drawings, and no licensed person has reviewed it yet.",
  stable:
    "It is stable: it gave no false finding on any sample or drawing that we expect findings of. No licensed person has reviewed it yet.",
  retired: "It is no longer checked.",
};

const LOOKS_AT: Readonly<Record<Rule["scope"], string>> = {
  box: "It looks at one box or panel at a time.",
  section: "It follows the wires from box to box, as far as the panel.",
  project: "It looks at the drawing as a whole.",
};

/** What stands in braces is filled in with the names of the drawing. */
const WHAT_IT_SAYS = "## What it says";

/** Where there is room for pictures, they take the place of this list. */
const WRONG_AND_RIGHT = "## Wrong and right";

/** The help page of a rule in Markdown, made from the rule itself, so that it cannot say something else. */
export function helpPage(rule: Rule): string {
  const parts = [
    `# ${rule.summary.replace(/\.$/, "")}`,
    `At worst ${MEANING[rule.severity]}. ${STATUS[rule.status]} ${LOOKS_AT[rule.scope]}`,
    WHAT_IT_SAYS,
    Object.values<string>(rule.messages)
      .map((message) => `- ${message}`)
      .join("\n"),
    ...exampleParts(rule),
    "## What it protects",
    rule.why,
    ...askedParts(rule),
    "## Sections",
    "Section numbers are pointers for looking up; the adopted text and its local amendments decide.",
    sectionTable(rule),
    ...valueParts(rule),
    `For local amendments and the command line this rule is called \`${rule.id}\`.`,
  ];
  return `${parts.join("\n\n")}\n`;
}

function exampleParts({ id }: Rule): readonly string[] {
  const words = helpWords[id];
  return words === undefined ? [] : [WRONG_AND_RIGHT, `- Wrong: ${words.wrong}\n- Right: ${words.right}`];
}

function askedParts({ id }: Rule): readonly string[] {
  const asked = helpWords[id]?.asked;
  if (asked === undefined) return [];
  return [
    "## What inspectors commonly ask",
    asked,
    "Common practice, from no code text; the inspector at hand decides.",
  ];
}

const cell = (text: string): string => text.replaceAll("|", "\\|");

const table = (heads: readonly string[], rows: readonly (readonly string[])[]): string =>
  [heads, heads.map(() => "---"), ...rows].map((row) => `| ${row.map(cell).join(" | ")} |`).join("\n");

function sectionTable(rule: Rule): string {
  const { sections } = rule;
  const rows = EDITIONS.filter((edition) => coversRule(editions[edition], rule.id)).map((edition) => [
    nameOf(editions[edition]),
    ...pointerCells(sections[edition]),
  ]);
  return table(["Edition", "Section", "How well it is backed"], rows);
}

const pointerCells = (pointer: SectionPointer | undefined): readonly string[] =>
  pointer === undefined ? ["-", "-"] : [pointer.section, CONFIDENCE[pointer.confidence]];

function nameOf({ year, verified, textOf, countingOnly }: EditionData): string {
  if (!verified) return `${year} (${textOf} text, not verified)`;
  return countingOnly ? `${year} (box fill only)` : `${year}`;
}

function valueParts({ id, values = [] }: Rule): readonly string[] {
  if (values.length === 0) return [];
  const rows = values.flatMap((name) => valueRows(name, id));
  return [
    "## Values",
    "A plain number can be replaced by a local amendment under its name.",
    table(["Value", "Editions", "Is", "Section", "Source", "How well it is backed"], rows),
  ];
}

/** Of two codes side by side: what only one of them knows is no gap of the other. */
const isOfOtherCode = (name: ValueName, edition: Edition): boolean =>
  edition === "CSA-C22.1" ||
  (DATED_EDITIONS.every((year) => editions[year].values[name] === undefined) &&
    editions["CSA-C22.1"].values[name] !== undefined);

/** One row for each run of editions that hold the same. */
function valueRows(name: ValueName, ruleId: string): readonly (readonly string[])[] {
  const runs: { readonly editions: Edition[]; readonly held: Sourced<unknown> | undefined; readonly text: string }[] =
    [];
  for (const edition of EDITIONS) {
    const held: Sourced<unknown> | undefined = editions[edition].values[name];
    if (!coversRule(editions[edition], ruleId) || (held === undefined && isOfOtherCode(name, edition))) continue;
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
  if (name === "conductorMl") return pairs(value, (ml) => `${formatMillilitres(ml as Millilitres)} mL`);
  if (name === "tableBoxes")
    return pairs(
      value,
      (box) => `${formatVolume((box as TableBox).in3)} in³ (${formatMillilitres((box as TableBox).ml)} mL)`,
    );
  if (name === "deepDeviceMlPerCm") return `${value} mL for each cm`;
  if (name === "conductorAllowance") return pairs(value, (in3) => `${formatVolume(in3 as CubicInches, 2)} in³`);
  if (name === "smallConductorAmps") return pairs(value, (rows) => pairs(rows, (limit) => `${limit} A`));
  if (name === "receptacleAmps") return pairs(value, (ratings) => `${(ratings as readonly number[]).join(" or ")} A`);
  if (name === "equipmentGrounds")
    return (value as readonly EquipmentGroundRow[])
      .map(({ upToA, copper, aluminium }) => `to ${upToA} A: copper ${copper}, aluminium ${aluminium}`)
      .join("; ");
  if (name.endsWith("Awg")) return `${value} AWG`;
  if (Array.isArray(value)) return value.join(", ");
  if (name.endsWith("In")) return `${value} in.`;
  if (name.endsWith("Lb")) return `${value} lb`;
  if (name.endsWith("Percent")) return `${value} %`;
  if (name.endsWith("Ft")) return `${value} ft`;
  return name === "protectedUpToA" || name === "arcFaultToA" ? `${value} A` : `${value}`;
}

const pairs = (value: unknown, text: (one: unknown) => string): string =>
  Object.entries(value as Readonly<Record<string, unknown>>)
    .map(([key, one]) => `${key}: ${text(one)}`)
    .join("; ");
