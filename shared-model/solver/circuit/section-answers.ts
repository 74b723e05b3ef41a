import type { BoxRoles, OutletAnswer, Role } from "../../answers/circuit.ts";
import type { DeviceId, EnclosureId, EndKey, SpliceId } from "../../model/ids.ts";
import { endsBehind } from "../ends-behind.ts";
import type { Section } from "../section.ts";
import { type SectionProof, sectionProof } from "./section-proof.ts";

const rolesKept = new WeakMap<SectionProof, Map<EnclosureId, BoxRoles>>();

/**
 * Roles of the ends and splices of one box of a section. Throws when the section does not hold it. Kept as long as the
 * proof of the section is.
 */
export function boxRoles(section: Section, id: EnclosureId): BoxRoles {
  const proof = sectionProof(section);
  const kept = rolesKept.get(proof) ?? new Map<EnclosureId, BoxRoles>();
  rolesKept.set(proof, kept);
  let roles = kept.get(id);
  if (roles === undefined) {
    roles = findRoles(section, id);
    kept.set(id, roles);
  }
  return roles;
}

function findRoles(section: Section, id: EnclosureId): BoxRoles {
  const enclosure = section.enclosures.find((candidate) => candidate.id === id);
  if (enclosure === undefined) throw new Error(`The section has no box ${id}.`);
  const ends = emptyTable<EndKey>();
  for (const end of Object.keys(enclosure.places) as EndKey[]) ends[end] = section.roleOfEnd(end);
  const splices = emptyTable<SpliceId>();
  for (const splice of Object.keys(enclosure.splices) as SpliceId[]) splices[splice] = section.roleOfSplice(splice);
  const behind = endsBehind(section, enclosure, protectorsIn(section));
  return { ends, splices, ...(behind !== undefined && { behind }) };
}

/** Without a prototype it is a plain dictionary: a shape of its own for every set of keys costs far more than the keys. */
const emptyTable = <K extends string>(): Record<K, Role> => Object.create(null);

/** How each outlet of a section stands with regard to ground-fault protection, by box; a box without outlets has an empty list. */
export function outletAnswers(section: Section): ReadonlyMap<EnclosureId, readonly OutletAnswer[]> {
  const answers = new Map<EnclosureId, OutletAnswer[]>(section.enclosures.map(({ id }) => [id, []]));
  for (const { standing, protectedBy } of sectionProof(section).outlets) {
    const { outlet, enclosure, live } = standing;
    answers.get(enclosure.id)?.push({ outlet: outlet.key, name: outlet.name, live, protectedBy });
  }
  return answers;
}

/** Devices that protect some outlet of the section, sorted. */
const protectorsIn = (section: Section): readonly DeviceId[] =>
  [...new Set(sectionProof(section).outlets.flatMap(({ protectedBy }) => protectedBy))].sort();
