import { getDeviceType } from "../catalog/device-types.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import { parseOutlet } from "../model/ids.ts";
import type { DeviceProof, ProofTest } from "../solver/circuit/proof-answers.ts";
import type { OutletStanding, Section } from "../solver/section.ts";
import { hotLeavesBoxOf } from "./bypass-words.ts";
import { breakersOf, multiwiresOf } from "./multiwire-parts.ts";
import { nameOfDevice } from "./proof-words.ts";
import { listed } from "./rule-parts.ts";
import { breakersFeeding, hotOf, lastCableStep, neutralOf } from "./section-parts.ts";
import { listedShort } from "./trip-parts.ts";

const wording = catalogue({
  oneMore: (outlet: Part) => ` ${outlet} needs it too, and lacks it for the same reason.`,
  more: (count: Part, outlets: Part) => ` ${count} more need it and lack it for the same reason: ${outlets}.`,
  landSupply: "Land the supply on its LINE, and on its LOAD nothing but what it is to protect.",
  putRight: (device: Part) => `Put LINE and LOAD of ${device} right first.`,
  landNeutral: (device: Part) => `Land its neutral on ${device}.`,
  bringFromLoad: (device: Part) =>
    `Bring both of its conductors from the LOAD side of ${device}, or fit a device of its own.`,
  fitReceptacle: (outlet: Part) => `Fit a ground-fault receptacle at ${outlet} with its supply on LINE`,
  putDeviceBefore: (outlet: Part) => `Put a ground-fault device before ${outlet}`,
  orDeviceBefore: (own: Part) => `${own}, or put a device before it.`,
  andOnLoad: (own: Part) => `${own} and the way on to the others on LOAD, or put a device before them.`,
  deviceBeforeAll: (outlet: Part) =>
    `A device before all of them will do, as a ground-fault breaker; else fit a ground-fault receptacle at ${outlet}, and at each that does not hang behind it.`,
  splitBreakers: (breakers: Part) =>
    `A ground-fault receptacle cannot be split: fit ground-fault breakers in place of ${breakers}.`,
  splitDeviceBefore: (device: Part) =>
    `A ground-fault receptacle cannot be split: put a ground-fault device before ${device}.`,
  twoPole: (breakers: Part) =>
    `Fit a two-pole ground-fault breaker in place of ${breakers}, with the shared neutral on it, or ground-fault receptacles past the split, where each leg has a neutral of its own.`,
  twoPoleOfSplit: (breakers: Part) =>
    `Fit a two-pole ground-fault breaker in place of ${breakers}, with the shared neutral on it: a ground-fault receptacle cannot be split between two circuits.`,
});

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
  if (others.length === 1) return wording.oneMore(names);
  return wording.more(others.length, names);
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
  if (one.device === outlet.device.id) return wording.landSupply;
  if (!one.fedOnLine) return wording.putRight(nameOfDevice(section, one.device));
  if (isLeftAtBreaker(section, one)) return wording.landNeutral(nameOfDevice(section, one.device));
  if (hotLeavesBoxOf(section, standing, one.device) === undefined) return `${ownWords(outlet)}.`;
  return wording.bringFromLoad(nameOfDevice(section, one.device));
}

const ownWords = ({ receptacle, name }: OutletStanding["outlet"]): string =>
  receptacle ? wording.fitReceptacle(name) : wording.putDeviceBefore(name);

/** Where no device for people stands before it. A neutral that two hots share passes no single-pole device whole. */
function beforeWords(section: Section, standing: OutletStanding, others: readonly OutletStanding[]): string {
  const { outlet } = standing;
  if (!outlet.receptacle) return wording.orDeviceBefore(ownWords(outlet));
  const isSplit = parseOutlet(outlet.key).half !== undefined;
  const shared = multiwiresOf(section).find(({ net }) => net.outlets.some((fed) => fed.standing.outlet === outlet));
  if (shared !== undefined) {
    const breakers = listed(breakersOf(shared.poles).map(({ name }) => name));
    return (isSplit ? wording.twoPoleOfSplit : wording.twoPole)(breakers);
  }
  if (isSplit) {
    const halves = [standing, ...others].filter((half) => half.outlet.device.id === outlet.device.id);
    const breakers = new Set(halves.flatMap((half) => breakersFeeding(section, half).map(({ device }) => device.name)));
    return breakers.size > 1
      ? wording.splitBreakers(listed([...breakers]))
      : wording.splitDeviceBefore(outlet.device.name);
  }
  if (others.length === 0) return wording.orDeviceBefore(ownWords(outlet));
  const isBehind = others.every((other) => comesThrough(section, other, standing));
  return isBehind ? wording.andOnLoad(ownWords(outlet)) : wording.deviceBeforeAll(outlet.name);
}

/** Its hot comes by the box of the other, so that it can be fed from LOAD there. */
const comesThrough = (section: Section, of: OutletStanding, { enclosure }: OutletStanding): boolean =>
  of.enclosure.id === enclosure.id ||
  lastCableStep(section.wayFrom("ungrounded", hotOf(of)), "fromEnclosure", enclosure.id) !== undefined;
