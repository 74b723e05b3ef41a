import { catalogue, type Part } from "../lib/catalogue.ts";
import type { EvidenceMark } from "../model/evidence.ts";
import { type EnclosureId, type EndKey, parseEnd, type TerminalName } from "../model/ids.ts";
import { farEnd, nameOfEnd } from "../queries/end-facts.ts";
import { landedAt } from "../queries/landings.ts";
import { nameOfTerminal } from "../queries/terminals-of.ts";
import type { HandlePosition, PathStep, Section, WrongPlace } from "../solver/section.ts";
import { listed, marksOn } from "./rule-parts.ts";

const wording = catalogue({
  stopNotFound: "Where it stops is not found.",
  splice: (name: Part) => `splice ${name}`,
  metalOf: (box: Part) => `the metal of ${box}`,
  openEnd: "an open end",
  joinsIn: (name: Part, from: Part, to: Part, box: Part) => `${name} joins ${from} to ${to} in ${box}`,
  joinsAcross: (name: Part, from: Part, first: Part, to: Part, last: Part) =>
    `${name} joins ${from} in ${first} to ${to} in ${last}`,
  positioned: (handle: Part, position: Part) => `${handle} ${position}`,
  stopsBetween: (right: Part, there: Part) => `It stops between ${right} and ${there}.`,
  stopsBetweenAt: (right: Part, there: Part, at: Part) => `It stops between ${right} and ${there} at ${at}.`,
  stopsIn: (there: Part) => `It stops in ${there}.`,
  stopsInAt: (there: Part, at: Part) => `It stops in ${there} at ${at}.`,
});

/**
 * Where a conductor stops, as a sentence: "It stops between B1 and B6 at C5 BK." Loose and capped ends of a box that is
 * being surveyed are no break yet.
 */
export function stopWords(
  section: Section,
  place: WrongPlace | undefined,
  home: EnclosureId,
): string | "being-surveyed" {
  const around = place === undefined ? [home] : [place.enclosure, ...(place.lastRight ? [place.lastRight] : [])];
  if (around.some((id) => isBeingSurveyed(section, id))) return "being-surveyed";
  if (place === undefined) return wording.stopNotFound;
  const name = (id: EnclosureId): string => section.installation.enclosures[id]?.name ?? id;
  const found = section.installation.enclosures[place.enclosure];
  const [end] = place.ends;
  const at = end === undefined || found === undefined ? undefined : nameOfEnd(section.installation, found, end);
  const there = name(place.enclosure);
  if (place.lastRight === undefined || place.lastRight === place.enclosure)
    return at === undefined ? wording.stopsIn(there) : wording.stopsInAt(there, at);
  const right = name(place.lastRight);
  return at === undefined ? wording.stopsBetween(right, there) : wording.stopsBetweenAt(right, there, at);
}

/** Who says that the ends at a break are where they are. */
export function marksAtStop(section: Section, place: WrongPlace | undefined): readonly EvidenceMark[] {
  const enclosure = place === undefined ? undefined : section.installation.enclosures[place.enclosure];
  return (place?.ends ?? []).flatMap((end) => {
    const found = enclosure?.places[end];
    return found === undefined ? [] : marksOn(found, "at");
  });
}

export function isBeingSurveyed(section: Section, id: EnclosureId): boolean {
  const enclosure = section.installation.enclosures[id];
  return enclosure?.kind === "box" && enclosure.beingSurveyed === true;
}

/** The enclosures that a piece of a way lies in: two for a cable, else one. */
export const enclosuresOfStep = (step: PathStep): readonly [first: EnclosureId, last: EnclosureId] =>
  step.kind === "cable" ? [step.fromEnclosure, step.toEnclosure] : [step.enclosure, step.enclosure];

/** What one side of a piece of a way lies on: "splice HL", "R3 N", "the metal of B3", "a loose end". */
export function nameOfSide(section: Section, step: PathStep, side: "from" | "to"): string {
  const [first, last] = enclosuresOfStep(step);
  const enclosure = section.installation.enclosures[side === "from" ? first : last];
  if (enclosure === undefined) return "";
  if (step.kind === "device") {
    const device = enclosure.devices[step.device];
    return device === undefined ? step.device : nameOfTerminal(device, step[side] as TerminalName);
  }
  const at = enclosure.places[step[side] as EndKey]?.at;
  switch (at?.kind) {
    case "terminal": {
      const device = enclosure.devices[at.device];
      return device === undefined ? at.terminal : nameOfTerminal(device, at.terminal);
    }
    case "splice":
      return wording.splice(enclosure.splices[at.splice]?.name ?? at.splice);
    case "bond":
      return wording.metalOf(enclosure.name);
    default:
      return wording.openEnd;
  }
}

/**
 * What one side of a piece of a way leads on to. For a path of a device with one conductor on its terminal that is where
 * a jumper goes, "splice HL", or the conductor of a cable, "C4 BK"; else what the side lies on.
 */
export function nameOfWhatIsAt(section: Section, step: PathStep, side: "from" | "to"): string {
  if (step.kind !== "device") return nameOfSide(section, step, side);
  const enclosure = section.installation.enclosures[step.enclosure];
  const [only, ...more] = enclosure === undefined ? [] : landedAt(enclosure, step.device, step[side] as TerminalName);
  if (enclosure === undefined || only === undefined || more.length > 0) return nameOfSide(section, step, side);
  const parsed = parseEnd(only.end);
  if (parsed?.of !== "jumper") return nameOfEnd(section.installation, enclosure, only.end);
  const far = farEnd(only.end);
  return nameOfSide(
    section,
    { kind: "jumper", jumper: parsed.jumper, from: only.end, to: far, enclosure: enclosure.id },
    "to",
  );
}

/** Positions of handles as a person names them. */
const POSITIONS: Readonly<Record<string, string>> = catalogue({
  on: "on",
  off: "off",
  up: "up",
  down: "down",
  straight: "straight",
  crossed: "crossed",
});

/** "S1 on and S2 up"; empty for what is so in every position. */
export const positionWords = (section: Section, when: readonly HandlePosition[]): string =>
  listed(
    when.map(({ device, at, position }) => {
      const home = section.enclosureOf(device);
      const found = home === undefined ? undefined : section.installation.enclosures[home]?.devices[device];
      const name =
        found === undefined ? device : at === undefined ? found.name : nameOfTerminal(found, at as TerminalName);
      return wording.positioned(name, POSITIONS[position] ?? position);
    }),
  );

/** What a piece joins, with its boxes: "jumper y joins splice NL to splice ND in B1". */
export function joinWords(section: Section, by: PathStep, name: string): string {
  const [first, last] = enclosuresOfStep(by);
  const box = (id: EnclosureId): string => section.installation.enclosures[id]?.name ?? id;
  const from = nameOfSide(section, by, "from");
  const to = nameOfSide(section, by, "to");
  return box(first) === box(last)
    ? wording.joinsIn(name, from, to, box(first))
    : wording.joinsAcross(name, from, box(first), to, box(last));
}
