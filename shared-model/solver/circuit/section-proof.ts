import type { OutletKey } from "../../model/ids.ts";
import type { Installation, Supply } from "../../model/project.ts";
import type { Section } from "../section.ts";
import { modelOf, sectionFingerprint } from "../sections.ts";
import { buildCircuit } from "./build-circuit.ts";
import { EVERYTHING_ON } from "./circuit.ts";
import { scopeOfSection } from "./circuit-scope.ts";
import { loadsOn } from "./loads-on.ts";
import type { OutletProof } from "./proof-answers.ts";
import { ProofGround } from "./proof-ground.ts";
import { proveOutlet } from "./prove-outlet.ts";
import { Quiet } from "./quiet.ts";

/** Proof of protection of a section. */
export interface SectionProof {
  /** One for each of `section.outlets()`, in their order. */
  readonly outlets: readonly OutletProof[];
  /** P6 of its devices: what sets them off. */
  readonly quiet: Quiet;
  of(outlet: OutletKey): OutletProof | undefined;
}

interface Kept {
  readonly loads: Installation["loads"];
  readonly plugged: string;
  readonly proof: SectionProof;
}

/** Every leg that a supply can have: at 0 V they are all one, and which of them a building has does not enter. */
export const PROOF_SUPPLY: Supply = { system: "208Y/120" };

const keptFor = new WeakMap<object, Kept>();

/**
 * Proof of protection for every outlet of a section: by isolation, and by what sensors see of currents in the dead network,
 * loads removed. Supply voltages, names, and what is in use do not enter; of loads only where they are plugged in. P6
 * covers the outlets of the section; `proveInstallation` covers all.
 *
 * Made when first asked for, and the same object (===) as long as the wiring of the section and what is plugged in there are
 * the same.
 */
export function sectionProof(section: Section): SectionProof {
  const fingerprint = sectionFingerprint(section);
  const { loads } = section.installation;
  const kept = keptFor.get(fingerprint);
  if (kept?.loads === loads) return kept.proof;
  const plugged = pluggedIn(section);
  const proof = kept?.plugged === plugged ? kept.proof : prove(section);
  keptFor.set(fingerprint, { loads, plugged, proof });
  return proof;
}

function prove(section: Section): SectionProof {
  const { installation } = section;
  const model = modelOf(section);
  const ground = new ProofGround(model, installation, () =>
    buildCircuit(installation, PROOF_SUPPLY, EVERYTHING_ON, scopeOfSection(installation, model.walked), "metal"),
  );
  const quiet = new Quiet(ground);
  const outlets = ground.outlets.map((outlet) => proveOutlet(ground, outlet, quiet));
  let byKey: ReadonlyMap<OutletKey, OutletProof> | undefined;
  return {
    outlets,
    quiet,
    of: (key) => {
      byKey ??= new Map(outlets.map((proof) => [proof.standing.outlet.key, proof]));
      return byKey.get(key);
    },
  };
}

/** Where something is plugged in, as text to compare. */
function pluggedIn(section: Section): string {
  const byDevice = loadsOn(section.installation.loads);
  if (byDevice.size === 0) return "";
  const devices = section.enclosures.flatMap((box) => Object.values(box.devices));
  return devices
    .flatMap(({ id }) => (byDevice.get(id) ?? []).map(({ plug }) => plug))
    .sort()
    .join(" ");
}
