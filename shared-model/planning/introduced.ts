import { type DeviceId, type EnclosureId, parseOutlet } from "../model/ids.ts";
import type { Installation, Project, StateName } from "../model/project.ts";
import { isSerious, severityRank } from "../model/severity.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { findingKey, fold } from "../rules/fold.ts";
import { checkBox, checkSection, type RawAnswers, type RuleWatch } from "../rules/run-rules.ts";
import { sectionProof } from "../solver/circuit/section-proof.ts";
import type { Section } from "../solver/section.ts";
import { sectionKey, sectionOf } from "../solver/sections.ts";
import type { MakeUpFinding } from "./joint-group.ts";

export interface Judged {
  /** Dangers and violations that were not there before; none may be, or the make-up is not offered. */
  readonly introduces: readonly MakeUpFinding[];
  /** Everything else that is new: cautions and advice. */
  readonly notes: readonly MakeUpFinding[];
  /** Dangers and violations that were there before, of the box or of what it feeds, and are gone. */
  readonly repairs: readonly MakeUpFinding[];
  /** Outlets that were proved protected and are no longer. */
  readonly unprotects: readonly string[];
}

interface Said extends MakeUpFinding {
  readonly key: string;
  readonly shown: boolean;
}

/** Device of before that stands for one of after. */
export type Replacements = ReadonlyMap<DeviceId, DeviceId>;

/** Compares what the rules and the proof say of the circuits of one box before and after a change of the wiring. */
export function judge(
  before: Project,
  after: Project,
  state: StateName,
  box: EnclosureId,
  replaced: Replacements,
): Judged {
  const sections = sectionsWith(getInstallation(before, state), [box]);
  const was = saidBefore(before, state, sections, box);
  const boxes = sections.flatMap(({ enclosures }) => enclosures.map(({ id }) => id));
  const now = saidOf(after, state, sectionsWith(getInstallation(after, state), [box, ...boxes]), box);
  const worst = new Map<string, number>();
  for (const { key, severity } of was)
    worst.set(key, Math.min(severityRank(severity), worst.get(key) ?? Number.POSITIVE_INFINITY));
  const fresh = now.filter((said) => said.shown && isNew(said, was, worst, replaced));
  const left = new Set(now.map((said) => formerKey(said, replaced)));
  const still = new Set(protectedIn(after, state, box, boxes).map(({ key }) => former(key, replaced)));
  const lost = protectedIn(before, state, box).filter(({ key }) => !still.has(key));
  return {
    introduces: fresh.filter(isSerious).map(asFinding),
    notes: fresh.filter((said) => !isSerious(said)).map(asFinding),
    repairs: was.filter((said) => said.shown && isSerious(said) && !left.has(said.key)).map(asFinding),
    unprotects: lost.map(({ name }) => name),
  };
}

const kept = new WeakMap<Project, Map<string, readonly Said[]>>();

/** Several make-ups of one box start from the same document. */
function saidBefore(
  project: Project,
  state: StateName,
  sections: readonly Section[],
  box: EnclosureId,
): readonly Said[] {
  const known = kept.get(project) ?? new Map<string, readonly Said[]>();
  kept.set(project, known);
  const said = known.get(`${state} ${box}`) ?? saidOf(project, state, sections, box);
  known.set(`${state} ${box}`, said);
  return said;
}

const asFinding = ({ rule, severity, message, subjects }: Said): MakeUpFinding => ({
  rule,
  severity,
  message,
  subjects,
});

/** A make-up changes no length worth a volt; what advises of the drop solves the circuit anew, and speaks once it is made. */
const WATCH: RuleWatch = { skips: (rule) => rule === "voltage-drop-advice", begins: () => undefined };

function saidOf(project: Project, state: StateName, sections: readonly Section[], box: EnclosureId): readonly Said[] {
  const installation = getInstallation(project, state);
  const enclosure = installation.enclosures[box];
  const own = enclosure === undefined ? [] : [checkBox({ project, installation, state, enclosure, watch: WATCH })];
  const parts: RawAnswers[] = [
    ...own,
    ...sections.map((section) => checkSection({ project, installation, state, section, watch: WATCH })),
  ];
  const shown = new Set(fold(state, project.edition, parts).findings.map(({ key }) => key));
  return parts.flatMap(({ reports }) =>
    reports.map(({ rule, report: { severity = rule.severity, message, subjects } }) => {
      const key = findingKey(rule.id, subjects);
      return { key, rule: rule.id, severity, message, subjects, shown: shown.has(key) };
    }),
  );
}

/** Not when the same was said before, of the device that was replaced too, or of these things and more. */
function isNew(said: Said, was: readonly Said[], worst: ReadonlyMap<string, number>, replaced: Replacements): boolean {
  const before = worst.get(formerKey(said, replaced));
  if (before !== undefined) return isSerious(said) && severityRank(said.severity) < before;
  const subjects = said.subjects.map((subject) => former(subject.id, replaced));
  return !was.some(
    (one) =>
      one.rule === said.rule &&
      severityRank(one.severity) <= severityRank(said.severity) &&
      subjects.length > 0 &&
      subjects.every((id) => one.subjects.some((subject) => subject.id === id)),
  );
}

const formerKey = ({ rule, subjects }: Said, replaced: Replacements): string =>
  findingKey(
    rule,
    subjects.map((subject) => ({ ...subject, id: former(subject.id, replaced) })),
  );

/** A device, a terminal or an outlet of it by the name of the device that it replaces. */
function former(id: string, replaced: Replacements): string {
  const device = id.split(/[./]/)[0] as DeviceId;
  const old = replaced.get(device);
  return old === undefined ? id : `${old}${id.slice(device.length)}`;
}

function sectionsWith(installation: Installation, boxes: readonly EnclosureId[]): readonly Section[] {
  const found = new Map<EnclosureId, Section>();
  for (const id of boxes) {
    const section = sectionOf(installation, id);
    if (section !== undefined) found.set(sectionKey(section), section);
  }
  return [...found.values()];
}

function protectedIn(
  project: Project,
  state: StateName,
  box: EnclosureId,
  more: readonly EnclosureId[] = [],
): readonly { readonly key: string; readonly name: string }[] {
  return sectionsWith(getInstallation(project, state), [box, ...more]).flatMap((section) =>
    sectionProof(section)
      .outlets.filter(({ protectedBy }) => protectedBy.length > 0)
      .map(({ standing: { outlet } }) => ({ key: parseOutlet(outlet.key).device as string, name: outlet.name })),
  );
}
