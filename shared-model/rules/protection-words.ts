import { getDeviceType } from "../catalog/device-types.ts";
import { parseOutlet } from "../model/ids.ts";
import type { DeviceProof, ProofTest } from "../solver/circuit/proof-answers.ts";
import type { OutletStanding, Section } from "../solver/section.ts";
import { hotLeavesBoxOf } from "./bypass-words.ts";
import { breakersOf, multiwiresOf } from "./multiwire-parts.ts";
import { nameOfDevice } from "./proof-words.ts";
import { listed } from "./rule-parts.ts";
import { breakersFeeding, hotOf, lastCableStep, neutralOf } from "./section-parts.ts";
import { listedShort } from "./trip-parts.ts";

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

/** That others lack what the first of a cause lacks, as a sentence to go on with; empty where there are none. */
export function othersWords(others: readonly OutletStanding[]): string {
  const names = listedShort(others.map(({ outlet }) => outlet.name));
  if (others.length === 0) return "";
  if (others.length === 1) return ` ${names} needs it too, and lacks it for the same reason.`;
  return ` ${others.length} more need it and lack it for the same reason: ${names}.`;
}

/**
 * What would bring an outlet its protection, as a sentence; told by the device that comes nearest to protecting it.
 * @param others Outlets that lack it by the same cause.
 */
export function protectionWords(
  section: Section,
  standing: OutletStanding,
  one: DeviceProof | undefined,
  others: readonly OutletStanding[] = [],
): string {
  if (one === undefined || !one.personnelClass) return beforeWords(section, standing, others);
  const { outlet } = standing;
  if (one.device === outlet.device.id)
    return "Land the supply on its LINE, and on its LOAD nothing but what it is to protect.";
  if (!one.fedOnLine) return `Put LINE and LOAD of ${nameOfDevice(section, one.device)} right first.`;
  if (isLeftAtBreaker(section, one)) return `Land its neutral on ${nameOfDevice(section, one.device)}.`;
  if (hotLeavesBoxOf(section, standing, one.device) === undefined) return `${ownWords(outlet)}.`;
  return `Bring both of its conductors from the LOAD side of ${nameOfDevice(section, one.device)}, or fit a device of its own.`;
}

const ownWords = ({ receptacle, name }: OutletStanding["outlet"]): string =>
  receptacle
    ? `Fit a ground-fault receptacle at ${name} with its supply on LINE`
    : `Put a ground-fault device before ${name}`;

/** Where no device for people stands before it. A neutral that two hots share passes no single-pole device whole. */
function beforeWords(section: Section, standing: OutletStanding, others: readonly OutletStanding[]): string {
  const { outlet } = standing;
  if (!outlet.receptacle) return `${ownWords(outlet)}, or put a device before it.`;
  const isSplit = parseOutlet(outlet.key).half !== undefined;
  const shared = multiwiresOf(section).find(({ net }) => net.outlets.some((fed) => fed.standing.outlet === outlet));
  if (shared !== undefined) {
    const breaker = `Fit a two-pole ground-fault breaker in place of ${listed(breakersOf(shared.poles).map(({ name }) => name))}, with the shared neutral on it`;
    return isSplit
      ? `${breaker}: a ground-fault receptacle cannot be split between two circuits.`
      : `${breaker}, or ground-fault receptacles past the split, where each leg has a neutral of its own.`;
  }
  if (isSplit) {
    const halves = [standing, ...others].filter((half) => half.outlet.device.id === outlet.device.id);
    const breakers = new Set(halves.flatMap((half) => breakersFeeding(section, half).map(({ device }) => device.name)));
    const where =
      breakers.size > 1
        ? `fit ground-fault breakers in place of ${listed([...breakers])}`
        : `put a ground-fault device before ${outlet.device.name}`;
    return `A ground-fault receptacle cannot be split: ${where}.`;
  }
  if (others.length === 0) return `${ownWords(outlet)}, or put a device before it.`;
  const isBehind = others.every((other) => comesThrough(section, other, standing));
  return isBehind
    ? `${ownWords(outlet)} and the way on to the others on LOAD, or put a device before them.`
    : `A device before all of them will do, as a ground-fault breaker; else fit a ground-fault receptacle at ${outlet.name}, and at each that does not hang behind it.`;
}

/** Its hot comes by the box of the other, so that it can be fed from LOAD there. */
const comesThrough = (section: Section, of: OutletStanding, { enclosure }: OutletStanding): boolean =>
  of.enclosure.id === enclosure.id ||
  lastCableStep(section.wayFrom("ungrounded", hotOf(of)), "fromEnclosure", enclosure.id) !== undefined;
