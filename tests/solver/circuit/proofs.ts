import type { JumperId } from "../../../shared-model/model/ids.ts";
import type { Installation, Supply } from "../../../shared-model/model/project.ts";
import { type PlacedProof, proveInstallation } from "../../../shared-model/solver/circuit/proof.ts";
import type { DeviceProof, OutletProof } from "../../../shared-model/solver/circuit/proof-answers.ts";
import { feet, inches } from "../../../shared-model/units/quantity.ts";
import type { Drawing } from "../../rules/drawing.ts";

export const SUPPLY: Supply = { system: "120/240" };

/** Lengths of cables in feet, and of all jumpers: 0.6 ft, as the independent reference has them. */
export function measured(drawing: Drawing, lengths: Readonly<Record<string, number>>): Drawing {
  for (const [name, length] of Object.entries(lengths)) {
    const cable = drawing.cables[name];
    if (cable === undefined) throw new Error(`No cable ${name}.`);
    cable.lengthFt = feet(length);
  }
  for (const { jumpers } of Object.values(drawing.enclosures))
    for (const [id, jumper] of Object.entries(jumpers)) jumpers[id as JumperId] = { ...jumper, lengthIn: inches(7.2) };
  return drawing;
}

export const proofs = (installation: Installation): readonly PlacedProof[] => proveInstallation(installation);

export function proofOf<P extends OutletProof>(all: readonly P[], outlet: string): P {
  const found = all.find(({ standing }) => standing.outlet.key === outlet);
  if (found === undefined) throw new Error(`No outlet ${outlet}.`);
  return found;
}

export function proofBy(all: readonly OutletProof[], outlet: string, device: string): DeviceProof {
  const found = proofOf(all, outlet).devices.find((one) => one.device === device);
  if (found === undefined) throw new Error(`${outlet} was not proved by ${device}.`);
  return found;
}

/** What fails, as the tables have it: "P1(H)", "P2", "P5(class)"; P6 left out. Empty when the device protects. */
export function failing(all: readonly OutletProof[], outlet: string, device: string): readonly string[] {
  const proof = proofBy(all, outlet, device);
  const { tests } = proof;
  const failed = [
    proof.hotReached && "P1(H)",
    proof.neutralReached && "P1(N)",
    proof.reachedThroughLoad && "P1(load)",
    tests.P2 === "fail" && "P2",
    tests.P3 === "fail" && "P3",
    tests.P4 === "fail" && "P4",
    !proof.fedOnLine && "P5(reversed)",
    !proof.personnelClass && "P5(class)",
  ].filter((one) => one !== false);
  if ((failed.length === 0) !== proof.protects) throw new Error("The verdict is not that of its parts.");
  return failed;
}

/** Outlets that set a device off in use, with the share of their current that it sees. */
export const offenders = (all: readonly OutletProof[], device: string): Readonly<Record<string, number>> => {
  const found = all.flatMap(({ devices }) => devices).find((one) => one.device === device);
  return Object.fromEntries((found?.offenders ?? []).map(({ outlet, share }) => [outlet, share]));
};

/** Every outlet with the devices that protect it. */
export const protectors = (all: readonly OutletProof[]): Readonly<Record<string, readonly string[]>> =>
  Object.fromEntries(all.map(({ standing, protectedBy }) => [standing.outlet.key, protectedBy]));
