import type { SectionConfidence, SectionPointer, Subject, SubjectKind } from "../answers/finding.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import { type EvidenceMark, type WithEvidence, weakestMark } from "../model/evidence.ts";
import { DATED_EDITIONS, type Edition } from "../model/project.ts";
import type { EditionData } from "./editions/edition-data.ts";

const wording = catalogue({
  and: (names: Part, last: Part) => `${names} and ${last}`,
  andOther: (names: Part, left: Part) => `${names} and ${left} other`,
  andOthers: (names: Part, left: Part) => `${names} and ${left} others`,
  oneOfOthers: (left: Part) => `one of ${left} others`,
  or: (names: Part, last: Part) => `${names} or ${last}`,
});

type Sections = Readonly<Partial<Record<Edition, SectionPointer>>>;

/**
 * The same section in every edition of NFPA 70. `differing` gives editions whose number or mark differs. No number of 2026 is
 * asserted: it points at the text of 2023, which stands in for it. A check of our own rests on no text of any edition.
 */
export function everyEdition(
  section: string,
  confidence: SectionConfidence,
  differing: Readonly<Partial<Record<Edition, SectionPointer>>> = {},
): Sections {
  const sections: Partial<Record<Edition, SectionPointer>> = {};
  for (const edition of DATED_EDITIONS) sections[edition] = differing[edition] ?? { section, confidence };
  if (confidence === "own-rule") return sections;
  const standIn = differing[2023]?.section ?? section;
  sections[2026] = { section: `${standIn} (2023)`, confidence: "doubtful" };
  return sections;
}

/** And one of CSA C22.1. */
export const withCanada = (
  sections: Sections,
  section: string,
  confidence: SectionConfidence = "sourced",
): Sections => ({ ...sections, "CSA-C22.1": { section, confidence } });

/** As `everyEdition`, without the editions that are held for counting box fill only. */
export function everyJudgedEdition(...which: Parameters<typeof everyEdition>): Sections {
  const { 2011: _first, 2014: _second, ...judged } = everyEdition(...which);
  return judged;
}

/** A section for one finding. No number of an edition that is not verified is asserted: it points at the text that stands in. */
export const sectionIn = (
  { verified, textOf }: Pick<EditionData, "verified" | "textOf">,
  section: string,
  confidence: SectionConfidence,
): SectionPointer =>
  verified ? { section, confidence } : { section: `${section} (${textOf})`, confidence: "doubtful" };

/** Puts values into the braces of a message. A value that is missing is a bug of the rule. */
export function fillIn(template: string, values: Readonly<Record<string, string | number>>): string {
  return template.replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = values[name];
    if (value === undefined) throw new Error(`The message has no value for {${name}}: ${template}`);
    return String(value);
  });
}

export const subject = (kind: SubjectKind, item: { readonly id: string; readonly name: string }): Subject => ({
  kind,
  id: item.id,
  name: item.name,
});

/** Marks that entities carry on some of their fields; fields without one are left out. */
export const marksOn = (entity: WithEvidence, ...fields: readonly string[]): readonly EvidenceMark[] =>
  fields.flatMap((field) => entity.evidence?.[field] ?? []);

/** The basis of a report resting on these marks, ready to be spread into it. */
export function basisOf(...marks: readonly (readonly EvidenceMark[])[]): { readonly basis?: EvidenceMark } {
  const basis = weakestMark(marks.flat());
  return basis === undefined ? {} : { basis };
}

/** "R2", "R2 and R3", "R2, R3 and R5". */
export function listed(names: readonly string[]): string {
  if (names.length < 2) return names[0] ?? "";
  return wording.and(names.slice(0, -1).join(", "), names.at(-1) ?? "");
}

/** "R2, R3 and 4 others". */
export const andOthers = (names: readonly string[], left: number): string =>
  (left === 1 ? wording.andOther : wording.andOthers)(names.join(", "), left);

const MOST_OF_ANY = 3;

/** "L1", "L1 or L2"; of many the first few: "L1, L2, L3 or one of 4 others". */
export function anyOf(names: readonly string[]): string {
  const left = names.length - MOST_OF_ANY;
  const shown = left > 1 ? [...names.slice(0, MOST_OF_ANY), wording.oneOfOthers(left)] : names;
  return eitherOf(shown);
}

/** "15", "15 or 20", "15, 20 or 30". */
export const eitherOf = (names: readonly Part[]): string =>
  names.length < 2 ? String(names[0] ?? "") : wording.or(names.slice(0, -1).join(", "), names.at(-1) ?? "");

/** "1 conductor", "3 conductors". */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;
