import type { Installation, Supply } from "../../model/project.ts";
import type { Section } from "../section.ts";
import { modelOf, sectionFingerprint } from "../sections.ts";
import { buildCircuit } from "./build-circuit.ts";
import { type Circuit, EVERYTHING_ON } from "./circuit.ts";
import { scopeOfSection } from "./circuit-scope.ts";

interface Kept {
  readonly loads: Installation["loads"];
  readonly supply: Supply;
  readonly circuit: Circuit;
}

const kept = new WeakMap<object, Kept>();

/** A section with its panels and their supply as a circuit, everything on. Kept as long as its wiring, the loads and the supply are the same. */
export function circuitOfSection(section: Section, supply: Supply): Circuit {
  const { installation } = section;
  const { loads } = installation;
  const fingerprint = sectionFingerprint(section);
  const known = kept.get(fingerprint);
  if (known?.loads === loads && known.supply === supply) return known.circuit;
  const scope = scopeOfSection(installation, modelOf(section).walked);
  const circuit = buildCircuit(installation, supply, EVERYTHING_ON, scope);
  kept.set(fingerprint, { loads, supply, circuit });
  return circuit;
}
