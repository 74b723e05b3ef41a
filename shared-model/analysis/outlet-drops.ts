import type { OutletDropAnswer } from "../answers/outlet-drop.ts";
import type { DeviceId } from "../model/ids.ts";
import type { Installation, Project, StateName } from "../model/project.ts";
import { findDevice } from "../queries/find-item.ts";
import { findInstallation } from "../queries/installation-of.ts";
import { type DropTerms, dropTerms, jointWords, loadWords, longestWords, pastLimit } from "../rules/drop-words.ts";
import { dropEdition } from "../rules/run-rules.ts";
import { type OutletDrop, sectionDrops } from "../solver/circuit/section-drops.ts";
import type { OutletStanding, Section } from "../solver/section.ts";
import { allSections, sectionOf } from "../solver/sections.ts";

/**
 * Voltage drop at every outlet of a device. Costs its section; what its circuit is made of is kept as long as the wiring of
 * the section is the same. Empty where there is no such device or no figure for the load.
 */
export function deviceDrops(project: Project, state: StateName, device: DeviceId): readonly OutletDropAnswer[] {
  const installation = findInstallation(project, state);
  const home = installation && findDevice(installation, device)?.enclosure;
  const section = installation && home && sectionOf(installation, home.id);
  return section === undefined ? [] : answersOf(project, section, device);
}

/** The same of every outlet of an installation. */
export const allDrops = (project: Project, installation: Installation): readonly OutletDropAnswer[] =>
  allSections(installation).flatMap((section) => answersOf(project, section));

function answersOf(project: Project, section: Section, device?: DeviceId): readonly OutletDropAnswer[] {
  const terms = dropTerms(project, dropEdition(project));
  if (terms === undefined) return [];
  const isAsked = ({ outlet }: OutletStanding): boolean => device === undefined || outlet.device.id === device;
  const drops = sectionDrops(section, project.supply, terms.loadPercent, isAsked);
  return drops.map((drop) => answerOf(section, drop, terms));
}

function answerOf({ installation }: Section, drop: OutletDrop, terms: DropTerms): OutletDropAnswer {
  const named = { outlet: drop.outlet.key, name: drop.outlet.name };
  if (drop.kind === "not-fed") return { ...named, known: false, why: "not-fed" };
  if (drop.kind === "no-rating") return { ...named, known: false, why: "no-rating", breaker: drop.breaker.name };
  const way = drop.way();
  if (way.unmeasured.length > 0)
    return { ...named, known: false, why: "no-length", cables: way.unmeasured.map(({ id, name }) => ({ id, name })) };
  const { load, breaker, panel, total, branch } = drop;
  const past = pastLimit(drop, terms);
  const [longest, words, joint] = [way.cables[0], longestWords(way.cables), jointWords(installation, way)];
  const isFed = panel.kind === "panel" && panel.supply === "feeder";
  return {
    ...named,
    known: true,
    dropV: total.dropV,
    percent: total.percent,
    limit: past?.limit ?? (isFed ? terms.totalPercent : terms.branchPercent),
    isPast: past !== undefined,
    load: loadWords(load, breaker),
    ...(isFed && { fromPanel: { name: panel.name, dropV: branch.dropV, percent: branch.percent } }),
    ...(longest !== undefined && words !== undefined && { longest: { id: longest.id, name: longest.name, words } }),
    ...(joint !== undefined && { joint }),
  };
}
