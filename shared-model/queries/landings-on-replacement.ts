import { getDeviceType } from "../catalog/device-types.ts";
import type { Device } from "../model/device.ts";
import type { Enclosure } from "../model/enclosure.ts";
import { type EndKey, jumperEnd } from "../model/ids.ts";
import type { At } from "../model/place.ts";
import { type Correspondence, correspondences } from "./corresponding-terminals.ts";
import { inOrder } from "./in-order.ts";
import { type Landing, landedAt } from "./landings.ts";
import { terminalsOf } from "./terminals-of.ts";

type TerminalAt = Extract<At, { kind: "terminal" }>;

const CAPPED: At = { kind: "capped" };

/**
 * Where every end on a device goes when another device takes its place in the same enclosure: to a terminal that does
 * the same, one end to a hole while holes last, and under a cap otherwise. `recorded` says that the wiring stays as it
 * is and only the record of the device is corrected: ends that shared a hole go on sharing it.
 */
export function landingsOnReplacement(
  enclosure: Enclosure,
  old: Device,
  next: Device,
  recorded = false,
): ReadonlyMap<EndKey, At> {
  const moves = new Map<EndKey, At>();
  for (const terminal of terminalsOf(old))
    for (const { end } of landedAt(enclosure, old.id, terminal.name)) moves.set(end, CAPPED);
  const pairs = correspondences(old, next);
  for (const pair of pairs) land(moves, enclosure, old, next, pair, recorded);
  landNeutralsOnBar(moves, enclosure, old, pairs);
  capJumpersToThemselves(moves, enclosure);
  return moves;
}

interface OnTerminal extends Landing {
  readonly at: TerminalAt;
}

function land(
  moves: Map<EndKey, At>,
  enclosure: Enclosure,
  old: Device,
  next: Device,
  { from, to }: Correspondence,
  recorded: boolean,
): void {
  const landed = from.terminals.flatMap(({ name }): readonly OnTerminal[] =>
    [...landedAt(enclosure, old.id, name)]
      .sort((a, b) => a.hole - b.hole)
      .map((one) => ({ ...one, at: { kind: "terminal", device: next.id, terminal: name, hole: one.hole } })),
  );
  const holes = holesOf(to, next);
  const taken = new Set<string>();
  const left = landed.filter(({ end, at }) => {
    const key = keyOf(at);
    const stays = holes.some((hole) => keyOf(hole) === key) && (recorded || !taken.has(key));
    if (stays) {
      taken.add(key);
      moves.set(end, at);
    }
    return !stays;
  });
  const free = holes.filter((hole) => !taken.has(keyOf(hole)));
  left.forEach(({ end }, index) => {
    const hole = free[index];
    if (hole !== undefined) moves.set(end, hole);
  });
}

const keyOf = ({ terminal, hole }: TerminalAt): string => `${terminal} ${hole}`;

/** The first hole of each terminal, then the second: a screw of its own before a plate shared. */
function holesOf({ terminals }: Correspondence["to"], { id: device }: Device): readonly TerminalAt[] {
  const holes = terminals.flatMap((terminal) =>
    Array.from({ length: terminal.holes }, (_, index): TerminalAt => {
      return { kind: "terminal", device, terminal: terminal.name, hole: index + 1 };
    }),
  );
  return holes.sort((a, b) => a.hole - b.hole);
}

/** The neutral of a breaker that senses is the neutral of its panel: without that terminal it is at home on the bar. */
function landNeutralsOnBar(
  moves: Map<EndKey, At>,
  enclosure: Enclosure,
  old: Device,
  pairs: readonly Correspondence[],
): void {
  const placed = new Set(pairs.flatMap(({ from }) => from.terminals.map(({ name }) => name)));
  const { paths } = getDeviceType(old.type);
  const free = freeBarHoles(enclosure);
  for (const { name } of terminalsOf(old)) {
    const neutral = paths.some(({ a, b, when }) => a === "@neutral" && b === name && when === "always");
    if (!neutral || placed.has(name)) continue;
    for (const { end } of landedAt(enclosure, old.id, name)) {
      const { value: hole } = free.next();
      if (hole !== undefined) moves.set(end, hole);
    }
  }
}

function* freeBarHoles(enclosure: Enclosure): Generator<TerminalAt, undefined> {
  for (const { id, type } of inOrder(enclosure.devices)) {
    const { family, terminals } = getDeviceType(type);
    for (const { name, holes } of family === "neutral-bar" ? terminals : []) {
      const taken = new Set(landedAt(enclosure, id, name).map(({ hole }) => hole));
      for (let hole = 1; hole <= holes; hole++)
        if (!taken.has(hole)) yield { kind: "terminal", device: id, terminal: name, hole };
    }
  }
  return undefined;
}

/** A jumper between two terminals that became one joins nothing any more: neither end is left bare. */
function capJumpersToThemselves(moves: Map<EndKey, At>, enclosure: Enclosure): void {
  for (const { id } of Object.values(enclosure.jumpers)) {
    const ends = [jumperEnd(id, "a"), jumperEnd(id, "b")];
    if (!ends.some((end) => moves.has(end))) continue;
    const [a, b] = ends.map((end) => moves.get(end) ?? enclosure.places[end]?.at);
    if (a?.kind !== "terminal" || b?.kind !== "terminal" || a.device !== b.device || a.terminal !== b.terminal)
      continue;
    for (const end of ends) moves.set(end, CAPPED);
  }
}
