import type { Subject } from "../answers/finding.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import type { Material } from "../model/cable.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import type { EvidenceMark } from "../model/evidence.ts";
import { type DeviceId, type EndKey, parseEnd } from "../model/ids.ts";
import type { Section } from "../solver/section.ts";
import { keptWithWiring } from "../solver/sections.ts";
import type { Amps } from "../units/quantity.ts";
import { compareWireSize, type WireSize } from "../units/wire-size.ts";
import type { SmallConductorLimits } from "./editions/edition-data.ts";
import { marksOn, subject } from "./rule-parts.ts";

const wording = catalogue({
  jumperIn: (jumper: Part, box: Part) => `jumper ${jumper} in ${box}`,
});

/** A cable or jumper with its thinnest conductor in the circuit. */
export interface Piece {
  readonly subject: Subject;
  /** What a person calls it: "C6", "jumper c in B1". */
  readonly path: string;
  readonly awg: WireSize;
  readonly material: Material;
  readonly marks: readonly EvidenceMark[];
  /** Enclosure of a jumper. */
  readonly box?: Enclosure;
}

const piecesOf = keptWithWiring(() => new Map<DeviceId, readonly Piece[]>());

/**
 * Everything that the current of a breaker runs in, switch legs and returns included, grounds not. Sorted by id. Kept as
 * long as the wiring is the same.
 */
export function piecesBehind(section: Section, breaker: Device): readonly Piece[] {
  const known = piecesOf(section);
  let pieces = known.get(breaker.id);
  if (pieces === undefined) {
    pieces = findPieces(section, breaker);
    known.set(breaker.id, pieces);
  }
  return pieces;
}

function findPieces(section: Section, breaker: Device): readonly Piece[] {
  const boxOfJumper = new Map<string, Enclosure>();
  for (const box of [...section.breakers().map(({ panel }) => panel), ...section.enclosures])
    for (const id of Object.keys(box.jumpers)) boxOfJumper.set(id, box);
  const { hotEnds, neutralEnds } = section.circuitOf(breaker.id);
  const pieces = new Map<string, Piece>();
  for (const end of [...hotEnds, ...neutralEnds]) {
    const piece = pieceOf(section, end, boxOfJumper);
    if (piece === undefined) continue;
    const known = pieces.get(piece.subject.id);
    if (known === undefined || compareWireSize(piece.awg, known.awg) < 0) pieces.set(piece.subject.id, piece);
  }
  return [...pieces.values()].sort((a, b) => (a.subject.id < b.subject.id ? -1 : 1));
}

function pieceOf(
  { installation }: Section,
  end: EndKey,
  boxOfJumper: ReadonlyMap<string, Enclosure>,
): Piece | undefined {
  const parsed = parseEnd(end);
  if (parsed === undefined) return undefined;
  if (parsed.of === "cable") {
    const cable = installation.cables[parsed.cable];
    const conductor = cable?.conductors[parsed.conductor];
    if (cable === undefined || conductor === undefined) return undefined;
    const { awg, material } = conductor;
    return {
      subject: subject("cable", cable),
      path: cable.name,
      awg,
      material,
      marks: marksOn(cable, "item", "conductors"),
    };
  }
  const box = boxOfJumper.get(parsed.jumper);
  const jumper = box?.jumpers[parsed.jumper];
  if (box === undefined || jumper === undefined) return undefined;
  const { awg, material } = jumper;
  return {
    subject: subject("jumper", jumper),
    path: wording.jumperIn(jumper.name, box.name),
    awg,
    material,
    marks: marksOn(jumper, "awg", "material"),
    box,
  };
}

/** Whether a breaker of some rating suits a piece: it does, nothing is known of it, or the most that the piece allows. */
export type Verdict = "passes" | "cannot-tell" | { readonly limit: Amps };

/**
 * The table names small sizes only. A thicker conductor carries at least what a thinner one does, so a size without a row
 * passes where a thinner row passes, and fails where a thicker row fails; between the two nothing is known.
 */
export function judgePiece(
  { awg, material }: Pick<Piece, "awg" | "material">,
  rating: Amps,
  limits: SmallConductorLimits,
): Verdict {
  const own = limits[material][awg];
  if (own !== undefined) return rating > own ? { limit: own } : "passes";
  const rows = Object.entries(limits[material]) as [WireSize, Amps][];
  if (rows.some(([size, limit]) => compareWireSize(size, awg) < 0 && rating <= limit)) return "passes";
  const above = rows.filter(([size]) => compareWireSize(size, awg) > 0).map(([, limit]) => limit);
  const least = Math.min(...above) as Amps;
  return above.length > 0 && rating > least ? { limit: least } : "cannot-tell";
}
