import type { DeviceId, OutletKey } from "../../model/ids.ts";
import type { Installation, Supply } from "../../model/project.ts";
import type { Section } from "../section.ts";
import { allSections, modelOf } from "../sections.ts";
import { buildCircuit } from "./build-circuit.ts";
import { EVERYTHING_ON } from "./circuit.ts";
import { scopeOfSection } from "./circuit-scope.ts";
import { DeadNetwork } from "./dead-network.ts";
import { byOutlet, type Offender, type OutletProof } from "./proof-answers.ts";
import { ProofGround } from "./proof-ground.ts";
import { proveOutlet } from "./prove-outlet.ts";
import { Quiet } from "./quiet.ts";

/**
 * Proof of protection for every outlet of a section, sorted as `section.outlets()`: by isolation, and by what sensors see
 * of currents in the dead network, loads removed. Supply voltages, names, and what is in use do not enter. P6 covers the
 * outlets of the section; `proveInstallation` covers all.
 */
export function proveSection(section: Section, supply: Supply): readonly OutletProof[] {
  return proved(section, supply).proofs;
}

interface ProvedSection {
  readonly proofs: readonly OutletProof[];
  readonly quiet: Quiet;
}

function proved(section: Section, supply: Supply): ProvedSection {
  const ground = new ProofGround(section, () => {
    const { walked } = modelOf(section);
    const scope = scopeOfSection(section.installation, walked);
    return buildCircuit(section.installation, supply, EVERYTHING_ON, scope);
  });
  const quiet = new Quiet(ground);
  return { proofs: ground.outlets.map((outlet) => proveOutlet(ground, outlet, quiet)), quiet };
}

/**
 * Proof of every outlet of an installation, by section. A sensing device may be set off by an outlet of another section
 * too, through a feeder panel: where the currents of one do not stay within its section, the whole installation is solved
 * for it, with the switches as drawn.
 */
export function proveInstallation(installation: Installation, supply: Supply): readonly OutletProof[] {
  const sections = allSections(installation).map((section) => proved(section, supply));
  const offenders = new Map<DeviceId, Map<OutletKey, number>>();
  const note = (device: DeviceId, { outlet, share }: Offender): void => {
    let own = offenders.get(device);
    if (own === undefined) {
      own = new Map();
      offenders.set(device, own);
    }
    own.set(outlet, Math.max(share, own.get(outlet) ?? 0));
  };
  const spilling = new Set<DeviceId>();
  for (const { quiet } of sections) {
    for (const device of quiet.devices) for (const one of quiet.of(device).offenders) note(device, one);
    for (const device of quiet.spilling()) spilling.add(device);
  }
  if (spilling.size > 0) {
    const circuit = buildCircuit(installation, supply);
    const whole = new DeadNetwork(circuit);
    for (const { quiet } of sections)
      for (const device of spilling) for (const one of quiet.asDrawnIn(circuit, whole, device)) note(device, one);
  }
  return sections.flatMap(({ proofs }) => proofs.map((proof) => withOffenders(proof, offenders)));
}

function withOffenders(
  proof: OutletProof,
  offenders: ReadonlyMap<DeviceId, ReadonlyMap<OutletKey, number>>,
): OutletProof {
  if (offenders.size === 0) return proof;
  const devices = proof.devices.map((one) => {
    const found = offenders.get(one.device);
    if (found === undefined || found.size === one.offenders.length) return one;
    const all = [...found].map(([outlet, share]) => ({ outlet, share })).sort(byOutlet);
    return { ...one, offenders: all, tests: { ...one.tests, P6: "fail" as const } };
  });
  return { ...proof, devices };
}
