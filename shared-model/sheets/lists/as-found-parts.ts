import type { SheetInput } from "../../answers/sheet-input.ts";
import type { Cable, CableSide } from "../../model/cable.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { WithEvidence } from "../../model/evidence.ts";
import { type EndKey, type OutletKey, parseOutlet } from "../../model/ids.ts";
import type { At, Place } from "../../model/place.ts";
import type { Installation, Reading } from "../../model/project.ts";
import { findEndFacts, nameOfEnd } from "../../queries/end-facts.ts";
import { outsideWords } from "../../queries/far-side.ts";
import { fieldWords } from "../../queries/field-words.ts";
import { findDevice } from "../../queries/find-item.ts";
import { nameOfHalf } from "../../queries/outlets-of.ts";
import { nameOfTerminal } from "../../queries/terminals-of.ts";
import { inchWords } from "../../units/inch-words.ts";
import { AS_FOUND, BOND_WORDS, CONDITIONS, END_ALONE, ROLE_WORDS } from "./as-found-words.ts";
import { EVIDENCE_LETTERS } from "./signs.ts";

/** " (s)" after a fact that was seen; nothing where no source is recorded. */
export function known(thing: WithEvidence, field: string): string {
  const mark = thing.evidence?.[field];
  return mark === undefined ? "" : ` (${EVIDENCE_LETTERS[mark]})`;
}

/** Every source that a thing carries: "type s, rating a". */
export const knownAll = ({ evidence = {} }: WithEvidence): string =>
  Object.entries(evidence)
    .map(([field, mark]) => `${fieldWords(field)} ${EVIDENCE_LETTERS[mark]}`)
    .join(", ");

export function placeWords({ devices, splices, kind }: Enclosure, at: At): string {
  switch (at.kind) {
    case "splice":
      return splices[at.splice]?.name ?? at.splice;
    case "terminal": {
      const device = devices[at.device];
      return device === undefined ? at.device : nameOfTerminal(device, at.terminal);
    }
    case "bond":
      return BOND_WORDS[kind];
    case "capped":
    case "loose":
      return END_ALONE[at.kind];
  }
}

/** One end of a conductor as it was found. */
export interface EndLine {
  readonly name: string;
  readonly awg: string;
  readonly place: string;
  /** "s", or empty. */
  readonly placeKnown: string;
  readonly role: string;
  readonly more: readonly string[];
}

/** Every end of an enclosure: cables by their order, then jumpers, each in the order of its conductors. */
export function endLines(input: SheetInput, installation: Installation, enclosure: Enclosure): readonly EndLine[] {
  return (Object.keys(enclosure.places) as EndKey[])
    .map((end) => ({ end, key: sortKey(installation, enclosure, end) }))
    .sort((a, b) => (a.key < b.key ? -1 : 1))
    .flatMap(({ end }): readonly EndLine[] => {
      const place = enclosure.places[end];
      if (place === undefined) return [];
      const role = input.roles[enclosure.id]?.ends[end];
      return [
        {
          name: nameOfEnd(installation, enclosure, end),
          awg: findEndFacts(installation, enclosure, end)?.awg ?? "",
          place: placeWords(enclosure, place.at),
          placeKnown: place.evidence?.at === undefined ? "" : EVIDENCE_LETTERS[place.evidence.at],
          role: role === undefined ? "" : ROLE_WORDS[role],
          more: moreOf(place),
        },
      ];
    });
}

function sortKey(installation: Installation, enclosure: Enclosure, end: EndKey): string {
  const facts = findEndFacts(installation, enclosure, end);
  if (facts === undefined) return `9 ${end}`;
  const { parsed } = facts;
  const number = (order: number | undefined): string => String((order ?? 0) + 100_000).padStart(7, "0");
  if (parsed.of === "jumper") return `1 ${number(enclosure.jumpers[parsed.jumper]?.order)} ${end}`;
  const cable = installation.cables[parsed.cable];
  return `0 ${number(cable?.order)} ${number(cable?.conductors[parsed.conductor]?.order)} ${end}`;
}

const moreOf = (place: Place): readonly string[] => [
  ...(place.freeLengthIn === undefined
    ? []
    : [`${AS_FOUND.free(inchWords(place.freeLengthIn))}${known(place, "freeLengthIn")}`]),
  ...(place.outsideOpeningIn === undefined
    ? []
    : [`${AS_FOUND.outsideOpening(inchWords(place.outsideOpeningIn))}${known(place, "outsideOpeningIn")}`]),
  ...(place.condition === undefined ? [] : [`${CONDITIONS[place.condition]}${known(place, "condition")}`]),
  ...(place.spare ? [AS_FOUND.spare] : []),
  ...(place.jointOhm === undefined ? [] : [`${AS_FOUND.jointOf(place.jointOhm)}${known(place, "jointOhm")}`]),
  ...(place.tag === undefined || place.tag === "" ? [] : [AS_FOUND.tag(place.tag)]),
];

export function sideWords({ enclosures }: Installation, side: CableSide): string {
  if ("enclosure" in side) return enclosures[side.enclosure]?.name ?? side.enclosure;
  return outsideWords(side.outside);
}

export const conductorCount = ({ conductors }: Cable): number => Object.keys(conductors).length;

/** What a reading was taken at, as a person calls it. */
export function pointWords(installation: Installation, point: string): string {
  const enclosure = (installation.enclosures as Readonly<Record<string, Enclosure>>)[point];
  if (enclosure !== undefined) return enclosure.name;
  for (const one of Object.values(installation.enclosures))
    if ((one.places as Readonly<Record<string, Place>>)[point] !== undefined)
      return nameOfEnd(installation, one, point as EndKey);
  const [id = "", terminal] = point.split(".");
  const { device, half } = parseOutlet(id as OutletKey);
  const found = findDevice(installation, device)?.device;
  if (found === undefined) return point;
  if (terminal !== undefined) return nameOfTerminal(found, terminal as Parameters<typeof nameOfTerminal>[1]);
  return nameOfHalf(found, half);
}

/** Whether a reading was taken at something of an enclosure. */
export function isReadAt(
  installation: Installation,
  { id, name, devices, places }: Enclosure,
  reading: Reading,
): boolean {
  if (reading.survey?.box === id) return true;
  if (reading.record !== undefined && reading.record.box === name) return true;
  return reading.points.some((point) => {
    if (point === id || point in places) return true;
    const [first = ""] = point.split(/[./]/);
    return first in devices && findDevice(installation, first as keyof typeof devices) !== undefined;
  });
}
