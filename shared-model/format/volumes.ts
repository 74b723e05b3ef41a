import type { Enclosure, VolumeFact } from "../model/enclosure.ts";
import type { Installation, Project } from "../model/project.ts";
import { type CubicInches, cubicInches, toDecimal } from "../units/volume.ts";
import type { DocumentInFile } from "./schema/document.ts";

/** A value as files have it: a volume is decimal cubic inches there and an exact count in memory. */
export type InFile<T> = T extends CubicInches
  ? number
  : T extends string | number | boolean
    ? T
    : { readonly [K in keyof T]: InFile<T[K]> };

/** What is known to be a document becomes one. It is changed in place: it belongs to whoever has just parsed it. */
export function projectOf(document: DocumentInFile): Project {
  // The compiler holds the schema to the model here, volumes apart.
  const checked: InFile<Project> = document;
  for (const installation of [checked.asFound, checked.proposed]) {
    for (const enclosure of Object.values(installation?.enclosures ?? {})) {
      if (enclosure.kind !== "box") continue;
      makeExact(enclosure.volume);
      for (const ring of Object.values(enclosure.rings)) makeExact(ring.volume);
    }
  }
  return checked as unknown as Project;
}

function makeExact(fact: InFile<VolumeFact>): void {
  if (fact.kind === "marked") (fact as { volumeIn3: number }).volumeIn3 = cubicInches(fact.volumeIn3);
}

/** The document as its file has it. Nothing of `project` is changed; what holds no volume is shared. */
export function documentOf(project: Project): InFile<Project> {
  return {
    ...project,
    asFound: installationInFile(project.asFound),
    ...(project.proposed !== undefined && { proposed: installationInFile(project.proposed) }),
  };
}

function installationInFile(installation: Installation): InFile<Installation> {
  return { ...installation, enclosures: mapped(installation.enclosures, enclosureInFile) };
}

function enclosureInFile(enclosure: Enclosure): InFile<Enclosure> {
  if (enclosure.kind === "panel") return enclosure;
  const rings = mapped(enclosure.rings, (ring) => ({ ...ring, volume: volumeInFile(ring.volume) }));
  return { ...enclosure, volume: volumeInFile(enclosure.volume), rings };
}

const volumeInFile = (fact: VolumeFact): InFile<VolumeFact> =>
  fact.kind === "marked" ? { ...fact, volumeIn3: toDecimal(fact.volumeIn3) } : fact;

function mapped<K extends string, A, B>(table: Readonly<Record<K, A>>, change: (value: A) => B): Record<K, B> {
  const out = {} as Record<K, B>;
  for (const key in table) out[key] = change(table[key]);
  return out;
}
