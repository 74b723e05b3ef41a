import { getDeviceType } from "../catalog/device-types.ts";
import type { DeviceProof, ProofTest } from "../solver/circuit/proof-answers.ts";
import type { OutletStanding, Section } from "../solver/section.ts";
import { hotLeavesBoxOf } from "./bypass-words.ts";
import { nameOfDevice } from "./proof-words.ts";
import { neutralOf } from "./section-parts.ts";

/** A neutral without its hot, a live one, or a hot whose neutral is joined to nothing: these faults stand on their own. */
export function isOtherFault(section: Section, standing: OutletStanding, one: DeviceProof | undefined): boolean {
  const reach = section.reach();
  const neutral = neutralOf(standing);
  if (!standing.live) return reach.isLive(neutral) || reach.isGrounded(neutral);
  // What leaks is seen all the same, and nothing comes back that could be missing.
  return one?.neutralAdrift === true && SEEING.every((test) => one.tests[test] === "pass");
}

const SEEING: readonly ProofTest[] = ["P1", "P3", "P4", "P5"];

/** Its hot comes from a breaker that has a terminal for the neutral, and its neutral does not go back there. */
function isLeftAtBreaker(section: Section, { device: id, tests }: DeviceProof): boolean {
  if (tests.P1 !== "pass" || tests.P3 !== "pass" || tests.P2 !== "fail") return false;
  const found = section.sensingDevices().find(({ device }) => device.id === id);
  return found?.enclosure.kind === "panel" && getDeviceType(found.device.type).sensing?.load.neutral !== undefined;
}

/** What would bring an outlet its protection, as a sentence; told by the device that comes nearest to protecting it. */
export function protectionWords(section: Section, standing: OutletStanding, one: DeviceProof | undefined): string {
  const own = standing.outlet.receptacle
    ? `Fit a ground-fault receptacle at ${standing.outlet.name} with its supply on LINE`
    : `Put a ground-fault device before ${standing.outlet.name}`;
  if (one === undefined || !one.personnelClass) return `${own}, or put a device before it.`;
  if (one.device === standing.outlet.device.id)
    return "Land the supply on its LINE, and on its LOAD nothing but what it is to protect.";
  if (!one.fedOnLine) return `Put LINE and LOAD of ${nameOfDevice(section, one.device)} right first.`;
  if (isLeftAtBreaker(section, one)) return `Land its neutral on ${nameOfDevice(section, one.device)}.`;
  if (hotLeavesBoxOf(section, standing, one.device) === undefined) return `${own}.`;
  return `Bring both of its conductors from the LOAD side of ${nameOfDevice(section, one.device)}, or fit a device of its own.`;
}
