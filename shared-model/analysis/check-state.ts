import type { Patch } from "immer";
import type { BoxRoles, OutletAnswer } from "../answers/circuit.ts";
import type { FillLedger } from "../answers/fill.ts";
import type { ScopeAnswers, ScopeKey } from "../answers/finding.ts";
import { sameValue } from "../lib/same-value.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { DeviceId, EnclosureId, EndKey } from "../model/ids.ts";
import type { Installation, Project, StateName } from "../model/project.ts";
import { getInstallation } from "../queries/installation-of.ts";
import { fillLedger } from "../rules/fill/fill-ledger.ts";
import { fillEdition } from "../rules/fill-edition.ts";
import { checksRunIn, fold } from "../rules/fold.ts";
import {
  checkBox,
  checkProject,
  checkSection,
  type InState,
  type RawAnswers,
  type RuleWatch,
} from "../rules/run-rules.ts";
import { boxRoles, outletAnswers } from "../solver/circuit/section-answers.ts";
import { type SectionProof, sectionProof } from "../solver/circuit/section-proof.ts";
import type { Section } from "../solver/section.ts";
import { inputsOf, panelRoles, sectionFingerprint, sectionKey, sectionOf } from "../solver/sections.ts";
import { type Changes, findChanges } from "./find-changes.ts";
import { PROJECT_SCOPE } from "./project-scope.ts";
import { type SeenOfAsFound, seenOfAsFound, standing } from "./seen-of-as-found.ts";

/** What an enclosure says without what lies beyond its cables. */
interface OwnAnswers {
  readonly raw: RawAnswers;
  readonly ledger: FillLedger;
}

/** What is known of one section; `fingerprint` is the same object as long as its wiring is. */
interface SectionAnswers {
  readonly members: readonly EnclosureId[];
  /** Panels that feed it and boxes on the way of their feeders. */
  readonly beyond: ReadonlySet<EnclosureId>;
  /** Breakers that feed it. */
  readonly breakers: readonly DeviceId[];
  readonly fingerprint: object;
  /** The same object as long as wiring and plugged loads are. */
  readonly proof: SectionProof;
  readonly raw: RawAnswers;
}

/** Answers of one scope, folded, and what they were folded from. */
export interface FoldedAnswers {
  readonly parts: readonly RawAnswers[];
  readonly answers: ScopeAnswers;
  readonly checksRun: number;
}

/** All answers about one state of a document. Changed by `takeOver` only. */
export interface CheckState {
  project: Project;
  readonly state: StateName;
  readonly watch?: RuleWatch;
  /** What stood as found, where that is not the state itself: rules about new work read it. */
  readonly stood: Map<EnclosureId, Enclosure["devices"]>;
  readonly own: Map<EnclosureId, OwnAnswers>;
  /** Section of every box. */
  readonly sectionOfBox: Map<EnclosureId, EnclosureId>;
  readonly sections: Map<EnclosureId, SectionAnswers>;
  readonly roles: Map<EnclosureId, BoxRoles>;
  readonly outlets: Map<EnclosureId, readonly OutletAnswer[]>;
  readonly scopes: Map<ScopeKey, FoldedAnswers>;
}

/** Entries of a table that an edit changed; undefined for those that it took away. */
type Changed<K, V> = ReadonlyMap<K, V | undefined>;

/** What an edit changes in the answers, before it is taken over. */
export interface CheckDelta {
  readonly project: Project;
  readonly stood: SeenOfAsFound["stood"];
  readonly own: Changed<EnclosureId, OwnAnswers>;
  readonly sectionOfBox: Changed<EnclosureId, EnclosureId>;
  readonly sections: Changed<EnclosureId, SectionAnswers>;
  readonly roles: Changed<EnclosureId, BoxRoles>;
  readonly outlets: Changed<EnclosureId, readonly OutletAnswer[]>;
  readonly scopes: Changed<ScopeKey, FoldedAnswers>;
}

const sectionScope = (section: EnclosureId): ScopeKey => `section:${section}` as ScopeKey;
const panelScope = (panel: EnclosureId): ScopeKey => `panel:${panel}` as ScopeKey;

/** Checks a document from nothing. Throws when it has no such state. */
export function checkAll(project: Project, state: StateName, watch?: RuleWatch): CheckState {
  const checked: CheckState = {
    project,
    state,
    ...(watch !== undefined && { watch }),
    stood: new Map(state === "proposed" ? standing(project) : []),
    own: new Map(),
    sectionOfBox: new Map(),
    sections: new Map(),
    roles: new Map(),
    outlets: new Map(),
    scopes: new Map(),
  };
  const { enclosures } = getInstallation(project, state);
  const all = new Set(Object.keys(enclosures) as EnclosureId[]);
  takeOver(checked, check(checked, project, { enclosures: all, circumstances: new Set(), breakers: new Set() }));
  return checked;
}

/**
 * What the answers differ in after an edit, given as the changed document and its patches. Undefined when nothing before
 * counts any more, so that `checkAll` is due. Costs the sections that the edit touched.
 */
export function checkEdit(before: CheckState, project: Project, patches: readonly Patch[]): CheckDelta | undefined {
  const changes = findChanges(before.project, project, before.state, patches);
  const seen = before.state === "proposed" ? seenOfAsFound(before.stood, project, patches) : undefined;
  if (changes.everything || (seen !== undefined && seen.enclosures === undefined)) return undefined;
  if (seen?.enclosures === undefined) return check(before, project, changes);
  const due = {
    enclosures: new Set([...changes.enclosures, ...seen.enclosures]),
    circumstances: new Set([...changes.circumstances, ...seen.enclosures]),
    breakers: new Set([...changes.breakers, ...seen.breakers]),
  };
  return check(before, project, due, seen.stood);
}

export function takeOver(checked: CheckState, delta: CheckDelta): void {
  checked.project = delta.project;
  update(checked.stood, delta.stood);
  update(checked.own, delta.own);
  update(checked.sectionOfBox, delta.sectionOfBox);
  update(checked.sections, delta.sections);
  update(checked.roles, delta.roles);
  update(checked.outlets, delta.outlets);
  update(checked.scopes, delta.scopes);
}

function update<K, V>(table: Map<K, V>, changes: Changed<K, V>): void {
  for (const [key, value] of changes) {
    if (value === undefined) table.delete(key);
    else table.set(key, value);
  }
}

function check(
  before: CheckState,
  project: Project,
  { enclosures: touched, circumstances: named, breakers }: Omit<Changes, "everything">,
  stood: SeenOfAsFound["stood"] = new Map(),
): CheckDelta {
  const { state, watch } = before;
  const circumstances = new Set([...named, ...boxesOnBreakers(before, breakers)]);
  const installation = getInstallation(project, state);
  const where: InState = { project, installation, state, ...(watch !== undefined && { watch }) };
  const edition = fillEdition(project);
  const own = new Map<EnclosureId, OwnAnswers | undefined>();
  const sectionOfBox = new Map<EnclosureId, EnclosureId | undefined>();
  const sections = new Map<EnclosureId, SectionAnswers | undefined>();
  const roles = new Map<EnclosureId, BoxRoles | undefined>();
  const outlets = new Map<EnclosureId, readonly OutletAnswer[] | undefined>();
  const scopes = new Map<ScopeKey, FoldedAnswers | undefined>();

  /** Panels whose ends may have other roles because a section that hangs on them changed. */
  const rewiredPanels = new Set<EnclosureId>();
  /** Then every panel may: one feeds another. */
  let feederChanged = false;

  const ownOf = (id: EnclosureId): OwnAnswers | undefined => (own.has(id) ? own.get(id) : before.own.get(id));
  for (const id of touched) {
    const enclosure = installation.enclosures[id];
    if (enclosure === undefined) {
      for (const table of [own, sectionOfBox, roles, outlets]) table.set(id, undefined);
      feederChanged = true;
      scopes.set(panelScope(id), undefined);
      continue;
    }
    own.set(id, {
      raw: checkBox({ ...where, enclosure }),
      ledger: fillLedger(installation, enclosure, edition),
    });
    if (enclosure.kind !== "panel") continue;
    feederChanged = true;
    outlets.set(id, []);
    scopes.set(panelScope(id), folded([ownOf(id)?.raw]));
  }

  const gone = new Set<EnclosureId>();
  const walked = new Set<EnclosureId>();
  for (const id of boxesToWalk(before, touched, circumstances)) {
    const key = before.sectionOfBox.get(id);
    if (key !== undefined) gone.add(key);
    if (walked.has(id)) continue;
    const section = sectionOf(installation, id);
    if (section === undefined) continue;
    walk(section);
  }
  for (const key of gone) {
    if (sections.has(key)) continue;
    noteRewired(before.sections.get(key)?.beyond);
    sections.set(key, undefined);
    scopes.set(sectionScope(key), undefined);
  }
  for (const id of feederChanged ? panelsOf(installation) : rewiredPanels) {
    const panel = installation.enclosures[id];
    if (panel?.kind !== "panel") continue;
    const was = feederChanged ? undefined : before.roles.get(id);
    const isKnown = (end: EndKey, far: EnclosureId) => (walked.has(far) ? undefined : was?.ends[end]);
    setIfOther(before.roles, roles, id, panelRoles(installation, panel, isKnown));
  }
  scopes.set(PROJECT_SCOPE, folded([checkProject(where)]));
  return { project, stood, own, sectionOfBox, sections, roles, outlets, scopes };

  function walk(section: Section): void {
    const key = sectionKey(section);
    const members = section.enclosures.map((enclosure) => enclosure.id);
    const known = before.sections.get(key);
    const fingerprint = sectionFingerprint(section);
    const sameWiring = known !== undefined && known.fingerprint === fingerprint;
    const sameCircumstances = !members.some((id) => circumstances.has(id));
    const proof = sectionProof(section);
    const sameAnswers = sameWiring && known.proof === proof;
    const raw = sameAnswers && sameCircumstances ? known.raw : checkSection({ ...where, section });
    for (const { id } of section.enclosures) {
      walked.add(id);
      const formerKey = before.sectionOfBox.get(id);
      if (formerKey !== undefined) gone.add(formerKey);
      if (formerKey !== key) sectionOfBox.set(id, key);
    }
    if (!sameAnswers) {
      const standing = outletAnswers(section);
      for (const { id } of section.enclosures) {
        setIfOther(before.roles, roles, id, boxRoles(section, id));
        setIfOther(before.outlets, outlets, id, standing.get(id) ?? []);
      }
    }
    const beyond = beyondOf(section);
    if (!sameWiring) {
      noteRewired(known?.beyond);
      noteRewired(beyond);
    }
    const feeding = section.breakers().map(({ device }) => device.id);
    sections.set(key, { members, beyond, breakers: feeding, fingerprint, proof, raw });
    scopes.set(sectionScope(key), folded([...members.map((id) => ownOf(id)?.raw), raw]));
  }

  /** A section that hangs on two enclosures beyond it carries a feeder, and through it the roles of further panels. */
  function noteRewired(beyond: ReadonlySet<EnclosureId> | undefined): void {
    if (beyond === undefined) return;
    for (const id of beyond) rewiredPanels.add(id);
    if (beyond.size > 1) feederChanged = true;
  }

  function folded(parts: readonly (RawAnswers | undefined)[]): FoldedAnswers {
    const present = parts.filter((part) => part !== undefined);
    return { parts: present, answers: fold(state, project.edition, present), checksRun: checksRunIn(present) };
  }
}

/** Boxes of the sections that some breakers feed. */
function boxesOnBreakers({ sections }: CheckState, breakers: ReadonlySet<DeviceId>): readonly EnclosureId[] {
  if (breakers.size === 0) return [];
  return [...sections.values()].flatMap((section) =>
    section.breakers.some((id) => breakers.has(id)) ? section.members : [],
  );
}

/** Boxes whose section is to be walked again: those touched, and all of the sections that these belonged to or hang on. */
function boxesToWalk(
  before: CheckState,
  touched: ReadonlySet<EnclosureId>,
  circumstances: ReadonlySet<EnclosureId>,
): ReadonlySet<EnclosureId> {
  const boxes = new Set<EnclosureId>([...touched, ...circumstances]);
  const addMembers = (section: SectionAnswers | undefined) => {
    for (const member of section?.members ?? []) boxes.add(member);
  };
  for (const id of [...boxes]) {
    const key = before.sectionOfBox.get(id);
    if (key !== undefined) addMembers(before.sections.get(key));
  }
  for (const section of before.sections.values()) {
    for (const id of section.beyond) if (touched.has(id)) addMembers(section);
  }
  return boxes;
}

/** Enclosures that the answers of a scope speak of, for the most part. */
export function enclosuresOfScope({ sections }: CheckState, scope: ScopeKey): readonly EnclosureId[] {
  const [kind, id] = scope.split(":") as [string, EnclosureId | undefined];
  if (id === undefined) return [];
  const section = kind === "section" ? sections.get(id) : undefined;
  return section === undefined ? [id] : [...section.members, ...section.beyond];
}

const panelsOf = (installation: Installation): readonly EnclosureId[] =>
  Object.values(installation.enclosures).flatMap(({ kind, id }) => (kind === "panel" ? [id] : []));

function beyondOf(section: Section): ReadonlySet<EnclosureId> {
  const { enclosures, panels } = inputsOf(section);
  const members = new Set(section.enclosures.map((enclosure) => enclosure.id));
  return new Set([...panels, ...enclosures].filter((id) => !members.has(id)));
}

/** Notes a value as changed unless it says what is known already, so that nothing is sent or drawn for it. */
function setIfOther<V>(
  known: ReadonlyMap<EnclosureId, V>,
  changed: Map<EnclosureId, V | undefined>,
  id: EnclosureId,
  value: V,
): void {
  const was = known.get(id);
  if (was === undefined || !sameValue(was, value)) changed.set(id, value);
}
