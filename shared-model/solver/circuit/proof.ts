import type { DeviceId, OutletKey } from "../../model/ids.ts";
import type { Installation } from "../../model/project.ts";
import type { Section } from "../section.ts";
import { allSections } from "../sections.ts";
import { buildCircuit } from "./build-circuit.ts";
import { EVERYTHING_ON } from "./circuit.ts";
import { wholeScope } from "./circuit-scope.ts";
import { DeadNetwork } from "./dead-network.ts";
import { byOutlet, type Offender, type OutletProof } from "./proof-answers.ts";
import { PROOF_SUPPLY, sectionProof } from "./section-proof.ts";

/** A proof with the section that it was made in. */
export interface PlacedProof extends OutletProof {
  readonly section: Section;
}

/**
 * Proof of every outlet of an installation, by section. A sensing device may be set off by an outlet of another section
 * too, through a feeder panel: where the currents of one do not stay within its section, the whole installation is solved
 * for it, with the switches as drawn.
 */
export function proveInstallation(installation: Installation): readonly PlacedProof[] {
  const sections = allSections(installation).map((section) => ({ section, ...sectionProof(section) }));
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
    const circuit = buildCircuit(installation, PROOF_SUPPLY, EVERYTHING_ON, wholeScope(installation), "metal");
    const whole = new DeadNetwork(circuit);
    for (const { quiet } of sections)
      for (const device of spilling) for (const one of quiet.asDrawnIn(circuit, whole, device)) note(device, one);
  }
  return sections.flatMap(({ section, outlets }) =>
    outlets.map((proof) => ({ ...withOffenders(proof, offenders), section })),
  );
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
