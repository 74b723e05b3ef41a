import type { Fix } from "../answers/finding.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { TerminalName } from "../model/ids.ts";
import type { StateName } from "../model/project.ts";
import { nameOfEnd } from "../queries/end-facts.ts";
import { landedAt } from "../queries/landings.ts";
import type { OutletStanding, PathStep, Section, WrongPlace } from "../solver/section.ts";
import { fixTogether } from "./fix-parts.ts";
import { isCure } from "./fix-trial.ts";
import type { Report } from "./rule.ts";
import { listed } from "./rule-parts.ts";
import { hotOf, neutralOf } from "./section-parts.ts";

const wording = catalogue({
  notFound: "Where they cross is not found.",
  exchange: (one: Part, other: Part, device: Part) => `Exchange ${one} and ${other} at ${device}`,
  crossAt: (enclosure: Part, at: Part) => `They first cross in ${enclosure} at ${at}.`,
  crossIn: (enclosure: Part) => `They first cross in ${enclosure}.`,
});

/** Where hot and neutral of an outlet first change places, as a sentence. */
export function crossingWords(section: Section, standing: OutletStanding): string {
  const place = crossingOf(section, standing);
  const enclosure = place === undefined ? undefined : section.installation.enclosures[place.enclosure];
  if (place === undefined || enclosure === undefined) return wording.notFound;
  const device = place.device === undefined ? undefined : enclosure.devices[place.device]?.name;
  const ends = place.ends.map((end) => nameOfEnd(section.installation, enclosure, end));
  const at = ends.length > 0 ? listed(ends) : device;
  return at === undefined ? wording.crossIn(enclosure.name) : wording.crossAt(enclosure.name, at);
}

/** What is hard-wired has no slots behind its terminals: where every conductor is right, the two cross on these. */
function crossingOf(section: Section, { outlet, enclosure }: OutletStanding): WrongPlace | undefined {
  const found = section.wherePolarityCrosses(outlet.key);
  if (found !== undefined) return found;
  const ends = [outlet.hot, outlet.neutral].flatMap((node) =>
    landedAt(enclosure, outlet.device.id, node as TerminalName).map(({ end }) => end),
  );
  return ends.length === 0 ? undefined : { enclosure: enclosure.id, ends: ends.sort(), device: outlet.device.id };
}

/** Where the two conductors cross on the terminals of one device, each takes the place of the other. */
export function exchangeFix(section: Section, standing: OutletStanding, state: StateName): Fix | undefined {
  const place = crossingOf(section, standing);
  const enclosure = place === undefined ? undefined : section.installation.enclosures[place.enclosure];
  const [one, other, ...more] = place?.ends ?? [];
  if (enclosure === undefined || one === undefined || other === undefined || more.length > 0) return undefined;
  const atOne = enclosure.places[one]?.at;
  const atOther = enclosure.places[other]?.at;
  if (atOne?.kind !== "terminal" || atOther?.kind !== "terminal" || atOne.device !== atOther.device) return undefined;
  const name = (end: typeof one): string => nameOfEnd(section.installation, enclosure, end);
  const device = enclosure.devices[atOne.device]?.name ?? atOne.device;
  const land = (end: typeof one, at: typeof atOne) => ({
    command: "land-end",
    args: { state, enclosure: enclosure.id, end, at },
  });
  const calls = [land(one, atOther), land(other, atOne)];
  const fix = fixTogether(wording.exchange(name(one), name(other), device), calls);
  return isCure(section, fix) ? fix : undefined;
}

/** Colours of the conductors that an exchange makes right: to mark them would make the mistake lasting. */
export function colourConsequences(section: Section, standing: OutletStanding): NonNullable<Report["hides"]> {
  return [
    { rule: "white-hot-unmarked", subjects: idsOnWay(section.wayFrom("ungrounded", neutralOf(standing))) },
    { rule: "white-as-switched-return", subjects: idsOnWay(section.wayFrom("ungrounded", neutralOf(standing))) },
    { rule: "coloured-as-neutral", subjects: idsOnWay(section.wayFrom("grounded", hotOf(standing))) },
  ];
}

/** Cables and jumpers that a way runs over. */
const idsOnWay = (way: readonly PathStep[] | undefined): readonly string[] =>
  (way ?? []).flatMap((step) => (step.kind === "cable" ? step.cable : step.kind === "jumper" ? step.jumper : []));
