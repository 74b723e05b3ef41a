import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Cable } from "../model/cable.ts";
import type { Device } from "../model/device.ts";
import type { Installation, Project } from "../model/project.ts";
import { nameOfEnd } from "../queries/end-facts.ts";
import type { DrawnUse } from "../solver/circuit/drawn-uses.ts";
import type { DropWay } from "../solver/circuit/drop-way.ts";
import type { DropLoad, KnownDrop, OutletDrop } from "../solver/circuit/section-drops.ts";
import type { EditionData, Sourced } from "./editions/edition-data.ts";
import { listed } from "./rule-parts.ts";

const wording = catalogue({
  statedLoad: (amps: Part, percent: Part, rating: Part, breaker: Part) =>
    `${amps} A (${percent} % of the ${rating} A of ${breaker}) and nothing else on`,
  everythingOn: (breaker: Part, uses: Part) => `everything drawn behind ${breaker} on: ${uses}`,
  joint: (end: Part, box: Part, ohms: Part) => `the joint of ${end} in ${box}, ${ohms} Ω`,
  assumed: (name: Part, watts: Part) => `${name} ${watts} W assumed`,
  longest: (cable: Part, feet: Part) => `${cable}, ${feet} ft`,
  longestOf: (cable: Part, feet: Part, awg: Part) => `${cable}, ${feet} ft of ${awg} AWG`,
  more: (count: Part) => `${count} more`,
  watts: (name: Part, watts: Part) => `${name} ${watts} W`,
});

/** By what voltage drop is judged, per cent. */
export interface DropTerms {
  readonly loadPercent: number;
  readonly branchPercent: number;
  readonly totalPercent: number;
  /** The document states the figure itself, as a setting or by an amendment. */
  readonly ownBranch: boolean;
  readonly ownTotal: boolean;
}

/** What a document says goes before the edition, whose values may be amended; undefined where neither has a figure. */
export function dropTerms(project: Project, { values }: EditionData): DropTerms | undefined {
  const loadPercent = project.statedLoadPercent ?? values.statedLoadPercent?.value;
  const branchPercent = project.branchDropPercent ?? values.branchDropPercent?.value;
  const totalPercent = project.totalDropPercent ?? values.totalDropPercent?.value;
  if (loadPercent === undefined || branchPercent === undefined || totalPercent === undefined) return undefined;
  const isOwn = (set: number | undefined, held: Sourced<number> | undefined): boolean =>
    set !== undefined || held?.confidence === "own-rule";
  return {
    loadPercent,
    branchPercent,
    totalPercent,
    ownBranch: isOwn(project.branchDropPercent, values.branchDropPercent),
    ownTotal: isOwn(project.totalDropPercent, values.totalDropPercent),
  };
}

/** An outlet with what it loses past a limit. */
export interface Past {
  readonly drop: Extract<OutletDrop, KnownDrop>;
  readonly lost: KnownDrop["total"];
  readonly limit: number;
  readonly isBranch: boolean;
}

/** Past the limit of the branch circuit, or else of the whole way; exactly at it is not past it. */
export function pastLimit(drop: Past["drop"], { branchPercent, totalPercent }: DropTerms): Past | undefined {
  const { branch, total } = drop;
  if (branch.percent > branchPercent + ROUNDING) return { drop, lost: branch, limit: branchPercent, isBranch: true };
  if (total.percent > totalPercent + ROUNDING) return { drop, lost: total, limit: totalPercent, isBranch: false };
  return undefined;
}

const ROUNDING = 1e-9;

/** "12 A (80 % of the 15 A of Q1) and nothing else on"; "everything drawn behind Q1 on: L1 60 W and Freezer 180 W". */
export function loadWords(load: DropLoad, breaker: Device): string {
  if (load.kind === "stated")
    return wording.statedLoad(figure(load.amps), figure(load.percent), load.ratingA, breaker.name);
  const named = load.uses.slice(0, MOST_NAMED).map(useWords);
  const left = load.uses.length - named.length;
  return wording.everythingOn(breaker.name, listed(left > 0 ? [...named, wording.more(left)] : named));
}

const MOST_NAMED = 4;

const useWords = ({ name, watts, assumed }: DrawnUse): string =>
  (assumed ? wording.assumed : wording.watts)(name, figure(watts));

/** "C3, 45 ft of 14 AWG", the longest cable on the way. */
export function longestWords([longest]: readonly Cable[]): string | undefined {
  if (longest?.lengthFt === undefined) return undefined;
  const sizes = new Set(Object.values(longest.conductors).map(({ awg }) => awg));
  const feet = figure(longest.lengthFt);
  return sizes.size === 1
    ? wording.longestOf(longest.name, feet, [...sizes].join(""))
    : wording.longest(longest.name, feet);
}

/** From here a joint is worth naming: it costs 1 % of 120 V at 12 A. */
const BAD_JOINT_OHM = 0.1;

/** "the joint at AB BK, 2 Ω", where there is one that matters. */
export function jointWords(installation: Installation, { joint }: DropWay): string | undefined {
  if (joint === undefined || joint.ohm < BAD_JOINT_OHM) return undefined;
  return wording.joint(nameOfEnd(installation, joint.enclosure, joint.end), joint.enclosure.name, figure(joint.ohm));
}

/** At most two decimals, none that say nothing. */
const figure = (value: number): string => String(Math.round(value * 100) / 100);
