import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Cable, Material } from "../model/cable.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { cableEnd, type EndKey, otherSide, type ParsedEnd, parseEnd } from "../model/ids.ts";
import type { Installation } from "../model/project.ts";
import { type Colour, colourCode } from "../units/colour.ts";
import type { WireSize } from "../units/wire-size.ts";

const wording = catalogue({
  markedAs: (end: Part, code: Part) => `${end} as ${code}`,
});

/** What the conductor of an end is made of. */
export interface EndFacts {
  readonly parsed: ParsedEnd;
  readonly awg: WireSize;
  readonly colour: Colour;
  readonly material: Material;
  readonly stranded: boolean;
  /** Made as an equipment grounding conductor: grounding by make in a cable, bare or green as a jumper. */
  readonly grounding: boolean;
  /** Name of the cable or jumper it belongs to: "C1", "a". */
  readonly owner: string;
}

/** Facts of an end; undefined when it does not exist. */
export function findEndFacts(installation: Installation, enclosure: Enclosure, end: EndKey): EndFacts | undefined {
  const parsed = parseEnd(end);
  if (parsed === undefined) return undefined;
  if (parsed.of === "jumper") {
    const jumper = enclosure.jumpers[parsed.jumper];
    if (jumper === undefined) return undefined;
    const { awg, colour, material, stranded, name } = jumper;
    return { parsed, awg, colour, material, stranded, grounding: colour === "bare" || colour === "green", owner: name };
  }
  const cable = installation.cables[parsed.cable];
  const conductor = cable?.conductors[parsed.conductor];
  if (cable === undefined || conductor === undefined) return undefined;
  const { awg, colour, material, stranded, grounding } = conductor;
  return { parsed, awg, colour, material, stranded, grounding, owner: cable.name };
}

/** As `findEndFacts`; throws when the end does not exist, which is a bug in a valid document. */
export function getEndFacts(installation: Installation, enclosure: Enclosure, end: EndKey): EndFacts {
  const facts = findEndFacts(installation, enclosure, end);
  if (facts === undefined) throw new Error(`No conductor has the end ${end}.`);
  return facts;
}

/** What a person calls an end: "C1 BK", "a WH", "C4 WH as BK". The second white of a cable is "WH 2". */
export function nameOfEnd(installation: Installation, enclosure: Enclosure, end: EndKey): string {
  const facts = findEndFacts(installation, enclosure, end);
  if (facts === undefined) return end;
  const marked = enclosure.places[end]?.markedAs;
  const twin = facts.parsed.of === "cable" && /\d$/.test(facts.parsed.conductor) ? " 2" : "";
  const name = `${facts.owner} ${colourCode(facts.colour)}${twin}`;
  return marked === undefined ? name : wording.markedAs(name, colourCode(marked));
}

/** The end at the other side of the same conductor. */
export function farEnd(end: EndKey): EndKey {
  const parsed = parseEnd(end);
  if (parsed === undefined) throw new Error(`Not an end: ${end}`);
  if (parsed.of === "jumper") return `${parsed.jumper}.${otherSide(parsed.side)}` as EndKey;
  return cableEnd(parsed.cable, parsed.conductor, otherSide(parsed.side));
}

/** The cable that an end belongs to; undefined for a jumper. */
export function cableOfEnd({ cables }: Installation, end: EndKey): Cable | undefined {
  const parsed = parseEnd(end);
  return parsed?.of === "cable" ? cables[parsed.cable] : undefined;
}
