import { catalogue, type Part } from "../lib/catalogue.ts";
import type { DeviceId, OutletKey } from "../model/ids.ts";
import { findOutlet } from "../queries/outlets-of.ts";
import { type DeviceProof, LEAST_SHARE, type OutletProof, type ProofTest } from "../solver/circuit/proof-answers.ts";
import type { OutletStanding, Section } from "../solver/section.ts";
import { bypassWords, hotLeavesBoxOf } from "./bypass-words.ts";
import { positionWords, stopWords } from "./path-words.ts";
import { andOthers, listed } from "./rule-parts.ts";
import { lineLoadDevices, neutralOf, swappedPole } from "./section-parts.ts";

const wording = catalogue({
  noSource: "No source reaches it in this drawing.",
  tooManySwitches: "More switches bear on it than are tried: judge it by hand.",
  nothingBefore: "no ground-fault device stands before it",
  withPositions: (positions: Part) => `with ${positions}`,
  notForPeople: (who: Part) => `${who} is not of the class that protects people`,
  fedOnLoad: (who: Part) => `${who} is fed on its LOAD terminals`,
  itsHot: "its hot",
  itsNeutral: "its neutral",
  reached: (poles: Part) => `a source reaches ${poles} without passing its own sensor`,
  neitherBehind: (device: Part, round: Part) => `neither its hot nor its neutral is behind ${device}${round}`,
  hotRound: (device: Part, round: Part, share: Part) =>
    `its hot comes round ${device}${round}; of a leak ${device} sees ${share}`,
  neutralRound: (device: Part, round: Part, share: Part) =>
    `its neutral goes round ${device}${round}; of what it uses ${share} is missing there`,
  throughLoad: (device: Part) => `with ${device} open, a load still brings a live conductor to it`,
  neutralAdrift: "its neutral is joined to nothing, and what it uses does not come back",
  noNeutral: (who: Part) => `${who} has no neutral on its LINE to work with`,
  leakSeen: (device: Part, share: Part, round: Part) => `of a leak ${device} sees ${share}${round}`,
  usedRound: (share: Part, device: Part, round: Part) => `${share} of what it uses goes round ${device}${round}`,
  noHotAndNeutral: (who: Part) => `${who} has no hot and neutral on its LINE to work with`,
  hotFedOnLoad: (device: Part) => `${device} has its hot fed on LOAD`,
  it: "it",
  neutralFedOnLoad: (device: Part) => `${device} has its neutral fed on LOAD`,
  passAll: (devices: Part) => `Both of its conductors pass ${devices} wherever it is live.`,
  passByTurns: (devices: Part) => `Both of its conductors pass ${devices} by turns, as switches stand.`,
  tripsAtUse: (device: Part, outlets: Part) => `${device} trips when something is used at ${outlets}.`,
});

const PROTECTING = ["P1", "P2", "P3", "P4", "P5"] as const;

/**
 * The device that an outlet is told by: one that protects it, a quiet one first; else, of those that one of its
 * conductors passes or that stand where its hot passes by, the one that comes nearest to protecting it. Undefined where
 * none bears on it.
 */
export function decisiveProof(section: Section, proof: OutletProof): DeviceProof | undefined {
  const protecting = proof.devices.filter(({ device }) => proof.protectedBy.includes(device));
  if (protecting.length > 0) return protecting.find(({ tests }) => tests.P6 === "pass") ?? protecting[0];
  const score = ({ tests, personnelClass }: DeviceProof): number =>
    (personnelClass ? 10 : 0) + PROTECTING.filter((test) => tests[test] === "pass").length;
  return proof.devices
    .filter((one) => bearsOn(section, proof, one))
    .sort((p, q) => score(q) - score(p) || (p.device < q.device ? -1 : 1))[0];
}

/** Of a leak or a use at the outlet the device sees something; or it is its own; or its hot passes it by in its box. */
function bearsOn(section: Section, { standing }: OutletProof, one: DeviceProof): boolean {
  if (one.detection > LEAST_SHARE || one.balance > LEAST_SHARE || one.device === standing.outlet.device.id) return true;
  return standing.live && hotLeavesBoxOf(section, standing, one.device) !== undefined;
}

/** Why an outlet is protected, or which test fails and where the path leaves, as sentences; told by its `decisiveProof`. */
export function proofWords(section: Section, proof: OutletProof, one: DeviceProof | undefined): string {
  const { standing, verdict } = proof;
  const name = (id: DeviceId): string => nameOfDevice(section, id);
  if (verdict === "not-live") return wording.noSource;
  if (verdict === "cannot-tell") return wording.tooManySwitches;
  const quiet = one === undefined ? "" : quietWords(section, one);
  if (verdict === "by-setting") return `${wording.passByTurns(listed(proof.protectedBy.map(name)))}${quiet}`;
  if (verdict === "all") return `${wording.passAll(listed(proof.protectedBy.map(name)))}${quiet}`;
  const gap = gapOf(section, standing, one);
  if (one === undefined || gap.test === undefined) return `${capital(gap.words)}.`;
  const when = gap.when === "" ? "" : ` ${gap.when}`;
  return `${gap.test}${when}: ${gap.words}.${stopsAt(section, standing, one)}${quiet}`;
}

const capital = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;

/** Why an outlet is not protected. */
export interface Gap {
  /** Absent where no device bears on it. */
  readonly test?: ProofTest;
  /** "with S1 up"; empty where it fails in every position. */
  readonly when: string;
  /** "its hot comes round R1b: jumper y joins splice HD to splice HL in B1; ...", to go on a sentence with. */
  readonly words: string;
}

/** Which test of its decisive device an outlet fails, and where the path leaves. Only for an outlet that is not protected. */
export function gapOf(section: Section, standing: OutletStanding, one: DeviceProof | undefined): Gap {
  if (one === undefined) return { when: "", words: wording.nothingBefore };
  const [test, words] = failureWords(section, standing, one);
  return {
    test,
    when: one.failsWhen.length === 0 ? "" : wording.withPositions(positionWords(section, one.failsWhen)),
    words,
  };
}

/** The first test that fails, in the order of what it means to a person. */
function failureWords(section: Section, standing: OutletStanding, one: DeviceProof): readonly [ProofTest, string] {
  const name = nameOfDevice(section, one.device);
  const isOwn = one.device === standing.outlet.device.id;
  const round = (source: "ungrounded" | "grounded"): string => {
    const words = bypassWords(section, standing, one.device, source);
    return words === undefined ? "" : `: ${words}`;
  };
  const share = (part: number): string => `${Math.round(100 * part)} %`;
  const who = isOwn ? wording.it : name;
  if (!one.personnelClass) return ["P5", wording.notForPeople(who)];
  if (!one.fedOnLine) {
    const found = lineLoadDevices(section).find(({ device }) => device.id === one.device);
    const pole = found === undefined ? undefined : swappedPole(found);
    return [
      "P5",
      pole === undefined
        ? wording.fedOnLoad(who)
        : (pole === "hot" ? wording.hotFedOnLoad : wording.neutralFedOnLoad)(who),
    ];
  }
  if (isOwn && (one.hotReached || one.neutralReached)) {
    const poles = [...(one.hotReached ? [wording.itsHot] : []), ...(one.neutralReached ? [wording.itsNeutral] : [])];
    return ["P1", wording.reached(listed(poles))];
  }
  if (one.hotReached && one.neutralReached && one.detection <= LEAST_SHARE)
    return ["P1", wording.neitherBehind(name, round("ungrounded"))];
  if (one.hotReached) return ["P1", wording.hotRound(name, round("ungrounded"), share(one.detection))];
  if (one.neutralReached) return ["P1", wording.neutralRound(name, round("grounded"), share(one.balance))];
  if (one.reachedThroughLoad) return ["P1", wording.throughLoad(name)];
  if (one.neutralAdrift && one.powered) return ["P2", wording.neutralAdrift];
  if (one.neutralAdrift) return ["P4", wording.noNeutral(who)];
  if (one.tests.P3 === "fail") return ["P3", wording.leakSeen(name, share(one.detection), round("ungrounded"))];
  if (one.tests.P2 === "fail") return ["P2", wording.usedRound(share(one.balance), name, round("grounded"))];
  return ["P4", wording.noHotAndNeutral(who)];
}

function stopsAt(section: Section, standing: OutletStanding, { neutralAdrift, tests }: DeviceProof): string {
  if (!neutralAdrift || tests.P1 === "fail" || section.reach().isAlwaysGrounded(neutralOf(standing))) return "";
  const words = stopWords(section, section.whereNeutralStops(standing.outlet.key), standing.enclosure.id);
  return words === "being-surveyed" ? "" : ` ${words}`;
}

/** Outlets named in a sentence at most. */
const MOST_NAMED = 6;

function quietWords(section: Section, { device, offenders }: DeviceProof): string {
  if (offenders.length === 0) return "";
  const names = offenders.slice(0, MOST_NAMED).map(({ outlet }) => nameOfOutlet(section, outlet));
  const left = offenders.length - names.length;
  const who = left > 0 ? andOthers(names, left) : listed(names);
  return ` P6: ${wording.tripsAtUse(nameOfDevice(section, device), who)}`;
}

export const nameOfDevice = (section: Section, id: DeviceId): string =>
  section.sensingDevices().find(({ device }) => device.id === id)?.device.name ?? id;

/** The offender may stand in another section of the building. */
function nameOfOutlet({ installation }: Section, key: OutletKey): string {
  for (const enclosure of Object.values(installation.enclosures)) {
    const outlet = findOutlet(enclosure, key);
    if (outlet !== undefined) return outlet.name;
  }
  return key;
}
