import type { RuleStatus, SectionConfidence, SectionPointer, Severity } from "../answers/finding.ts";
import { sizeWords } from "../catalog/standard-boxes.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Material } from "../model/cable.ts";
import { DATED_EDITIONS, EDITIONS, type Edition } from "../model/project.ts";
import type { RoomKind } from "../model/room.ts";
import { valueWords } from "../model/value-unit.ts";
import { METAL_WORDS } from "../queries/metal-words.ts";
import { formatMillilitres, type Millilitres } from "../units/millilitres.ts";
import { type CubicInches, formatVolume } from "../units/volume.ts";
import type { EditionData, EquipmentGroundRow, Sourced, TableBox, ValueName } from "./editions/edition-data.ts";
import { coversRule, editions } from "./editions/editions.ts";
import { helpWords } from "./help/words-of-rule.ts";
import { placeOfKind } from "./place-words.ts";
import type { Rule } from "./rule.ts";
import { eitherOf } from "./rule-parts.ts";

const wording = catalogue({
  sourced: "a source text states it",
  fromMemory: "number not checked against the text",
  unconfirmed: "unconfirmed, look it up",
  doubtful: "doubtful, look it up",
  ownRule: "our own rule",
  worstDanger: "At worst a danger (shock or fire now).",
  worstViolation: "At worst a violation (breaks the adopted rule).",
  worstCaution: "At worst a caution (will not work, is a nuisance, or depends on a fact).",
  worstAdvice: "At worst advice.",
  draft: "It is a draft: it has not been tried on enough drawings, and no licensed person has reviewed it yet.",
  stable:
    "It is stable: it gave no false finding on any sample or drawing that we expect findings of. No licensed person has reviewed it yet.",
  retired: "It is no longer checked.",
  looksAtBox: "It looks at one box or panel at a time.",
  looksAtSection: "It follows the wires from box to box, as far as the panel.",
  looksAtProject: "It looks at the drawing as a whole.",
  whatItSays: "What it says",
  wrongAndRight: "Wrong and right",
  whatItProtects: "What it protects",
  pointers: "Section numbers are pointers for looking up; the adopted text and its local amendments decide.",
  inspectorsAsk: "What inspectors commonly ask",
  commonPractice: "Common practice, from no code text; the inspector at hand decides.",
  backed: "How well it is backed",
  notVerified: (edition: Part, textOf: Part) => `${edition} (${textOf} text, not verified)`,
  boxFillOnly: (edition: Part) => `${edition} (box fill only)`,
  amendable: "A plain number can be replaced by a local amendment under the name in parentheses.",
  amendedAs: (value: Part, name: Part) => `${value} (${name})`,
  notHeld: "not held",
  millilitres: (volume: Part) => `${volume} mL`,
  in3AndMl: (in3: Part, millilitres: Part) => `${in3} in³ (${millilitres} mL)`,
  mlForEachCm: (value: Part) => `${value} mL for each cm`,
  cubicInches: (volume: Part) => `${volume} in³`,
  upTo: (amps: Part, copper: Part, aluminium: Part) => `to ${amps} A: copper ${copper}, aluminium ${aluminium}`,
  awg: (value: Part) => `${value} AWG`,
  inches: (value: Part) => `${value} in.`,
  pounds: (value: Part) => `${value} lb`,
  feet: (value: Part) => `${value} ft`,
  sections: "Sections",
  values: "Values",
  edition: "Edition",
  section: "Section",
  value: "Value",
  editionsHead: "Editions",
  is: "Is",
  source: "Source",
  none: "none",
  called: (id: Part) => `For local amendments and the command line this rule is called ${id}.`,
  right: (words: Part) => `Right: ${words}`,
  wrong: (words: Part) => `Wrong: ${words}`,
});

const CONFIDENCE: Readonly<Record<SectionConfidence, string>> = {
  sourced: wording.sourced,
  "from-memory": wording.fromMemory,
  unconfirmed: wording.unconfirmed,
  doubtful: wording.doubtful,
  "own-rule": wording.ownRule,
};

const AT_WORST: Readonly<Record<Severity, string>> = {
  danger: wording.worstDanger,
  violation: wording.worstViolation,
  caution: wording.worstCaution,
  advice: wording.worstAdvice,
};

const STATUS: Readonly<Record<RuleStatus, string>> = {
  draft: wording.draft,
  stable: wording.stable,
  retired: wording.retired,
};

const LOOKS_AT: Readonly<Record<Rule["scope"], string>> = {
  box: wording.looksAtBox,
  section: wording.looksAtSection,
  project: wording.looksAtProject,
};

const heading = (words: string): string => `## ${words}`;

/** What stands in braces is filled in with the names of the drawing. */
const WHAT_IT_SAYS = heading(wording.whatItSays);

/** Where there is room for pictures, they take the place of this list. */
const WRONG_AND_RIGHT = heading(wording.wrongAndRight);

/** The help page of a rule in Markdown, made from the rule itself, so that it cannot say something else. */
export function helpPage(rule: Rule): string {
  const parts = [
    `# ${rule.summary.replace(/\.$/, "")}`,
    [AT_WORST[rule.severity], STATUS[rule.status], LOOKS_AT[rule.scope]].join(" "),
    WHAT_IT_SAYS,
    Object.values<string>(rule.messages)
      .map((message) => `- ${message}`)
      .join("\n"),
    ...exampleParts(rule),
    heading(wording.whatItProtects),
    rule.why,
    ...askedParts(rule),
    heading(wording.sections),
    wording.pointers,
    sectionTable(rule),
    ...valueParts(rule),
    wording.called(`\`${rule.id}\``),
  ];
  return `${parts.join("\n\n")}\n`;
}

function exampleParts({ id }: Rule): readonly string[] {
  const words = helpWords[id];
  return words === undefined
    ? []
    : [WRONG_AND_RIGHT, [wording.wrong(words.wrong), wording.right(words.right)].map((line) => `- ${line}`).join("\n")];
}

function askedParts({ id }: Rule): readonly string[] {
  const asked = helpWords[id]?.asked;
  if (asked === undefined) return [];
  return [heading(wording.inspectorsAsk), asked, wording.commonPractice];
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
  return table([wording.edition, wording.section, wording.backed], rows);
}

const pointerCells = (pointer: SectionPointer | undefined): readonly string[] =>
  pointer === undefined ? ["-", "-"] : [pointer.section, CONFIDENCE[pointer.confidence]];

function nameOf({ year, verified, textOf, countingOnly }: EditionData): string {
  if (!verified) return wording.notVerified(year, textOf);
  return countingOnly ? wording.boxFillOnly(year) : `${year}`;
}

function valueParts({ id, values = [] }: Rule): readonly string[] {
  if (values.length === 0) return [];
  const rows = values.flatMap((name) => valueRows(name, id));
  return [
    heading(wording.values),
    wording.amendable,
    table([wording.value, wording.editionsHead, wording.is, wording.section, wording.source, wording.backed], rows),
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
  const isPlain = runs.some(({ held }) => typeof held?.value === "number");
  const called = isPlain ? wording.amendedAs(valueWords(name), `\`${name}\``) : valueWords(name);
  return runs.map(({ editions: years, held }) => {
    const when = years.join(", ");
    if (held === undefined)
      return [
        called,
        when,
        years.every((year) => editions[year].countingOnly) ? wording.notHeld : wording.none,
        "-",
        "-",
        "-",
      ];
    return [called, when, valueText(name, held.value), held.section, held.source, CONFIDENCE[held.confidence]];
  });
}

function valueText(name: ValueName, value: unknown): string {
  if (name === "conductorMl") return pairs(value, (ml) => wording.millilitres(formatMillilitres(ml as Millilitres)));
  if (name === "tableBoxes")
    return pairs(
      value,
      (box) => wording.in3AndMl(formatVolume((box as TableBox).in3), formatMillilitres((box as TableBox).ml)),
      sizeWords,
    );
  if (name === "deepDeviceMlPerCm") return wording.mlForEachCm(String(value));
  if (name === "conductorAllowance")
    return pairs(value, (in3) => wording.cubicInches(formatVolume(in3 as CubicInches, 2)));
  if (name === "smallConductorAmps") return pairs(value, (rows) => pairs(rows, (limit) => `${limit} A`), metalWords);
  if (name === "receptacleAmps") return pairs(value, (ratings) => `${eitherOf(ratings as readonly number[])} A`);
  if (name === "equipmentGrounds")
    return (value as readonly EquipmentGroundRow[])
      .map(({ upToA, copper, aluminium }) => wording.upTo(upToA, copper, aluminium))
      .join("; ");
  if (name.endsWith("Awg")) return wording.awg(String(value));
  if (Array.isArray(value)) return (value as readonly RoomKind[]).map(placeOfKind).join(", ");
  if (name.endsWith("In")) return wording.inches(String(value));
  if (name.endsWith("Lb")) return wording.pounds(String(value));
  if (name.endsWith("Percent")) return `${value} %`;
  if (name.endsWith("Ft")) return wording.feet(String(value));
  return name === "protectedUpToA" || name === "arcFaultToA" ? `${value} A` : `${value}`;
}

const metalWords = (metal: string): string => METAL_WORDS[metal as Material];

const pairs = (value: unknown, text: (one: unknown) => string, said = (key: string): string => key): string =>
  Object.entries(value as Readonly<Record<string, unknown>>)
    .map(([key, one]) => `${said(key)}: ${text(one)}`)
    .join("; ");
