import type { Enclosure, Jumper } from "../../model/enclosure.ts";
import { type EndKey, type JumperId, jumperEnd, parseEnd, type Side, type SpliceId } from "../../model/ids.ts";
import type { At } from "../../model/place.ts";
import { membersOf } from "../../queries/landings.ts";
import { splicesJoined } from "../joint-cost.ts";

/** The jumper of as found that one of proposed is; `flipped` says that its end a is the old end b. */
interface JumperHome {
  readonly jumper: JumperId;
  readonly flipped: boolean;
}

/** What in a box of proposed is a thing of as found: by its id, else by what is in it and what it joins. */
export interface BoxHomes {
  readonly splices: ReadonlyMap<SpliceId, SpliceId>;
  readonly jumpers: ReadonlyMap<JumperId, JumperHome>;
  /** The end of as found that an end of proposed is; the same key but for jumpers that stand for others. */
  formerEnd(end: EndKey): EndKey;
}

/**
 * Finds again what was drawn anew. A splice that is gone is the new one with the most of its members; a jumper that is gone
 * is a new one of the same make that still has an end where the old one had it, a pigtail for a pigtail and a link for a
 * link. Whoever does the work opens a joint and closes it again: it is no new one.
 */
export function boxHomes(before: Enclosure, after: Enclosure): BoxHomes {
  const splices = spliceHomes(before, after);
  const jumpers = jumperHomes(before, after, splices);
  return {
    splices,
    jumpers,
    formerEnd(end) {
      const parsed = parseEnd(end);
      const home = parsed?.of === "jumper" ? jumpers.get(parsed.jumper) : undefined;
      if (parsed === undefined || home === undefined) return end;
      return jumperEnd(home.jumper, turned(parsed.side, home.flipped));
    },
  };
}

export const turned = (side: Side, flipped: boolean): Side => ((side === "a") !== flipped ? "a" : "b");

function spliceHomes(before: Enclosure, after: Enclosure): ReadonlyMap<SpliceId, SpliceId> {
  const homes = new Map<SpliceId, SpliceId>();
  const fresh: SpliceId[] = [];
  for (const id of Object.keys(after.splices).sort() as SpliceId[])
    if (id in before.splices) homes.set(id, id);
    else fresh.push(id);
  const gone = (Object.keys(before.splices) as SpliceId[]).filter((id) => !(id in after.splices)).sort();
  if (fresh.length === 0 || gone.length === 0) return homes;
  const shares = fresh.map((id) => {
    const members = new Set(membersOf(after, id));
    return gone.map((old) => membersOf(before, old).filter((end) => members.has(end)).length);
  });
  bestPairs(shares).forEach((column, row) => {
    const [id, old] = [fresh[row], column === undefined ? undefined : gone[column]];
    if (id !== undefined && old !== undefined) homes.set(id, old);
  });
  return homes;
}

/** Up to so many rows every pairing is tried; a box with more joints drawn anew takes the largest shares first. */
const MOST_TRIED = 6;

/** By row: the column that it is paired with, so that the sum of the shares is greatest. Nothing is paired for no share. */
function bestPairs(shares: readonly (readonly number[])[]): readonly (number | undefined)[] {
  return shares.length > MOST_TRIED ? largestFirst(shares) : tryAll(shares, 0, new Set()).pairs;
}

interface Pairing {
  readonly sum: number;
  readonly pairs: readonly (number | undefined)[];
}

function tryAll(shares: readonly (readonly number[])[], row: number, taken: ReadonlySet<number>): Pairing {
  const own = shares[row];
  if (own === undefined) return { sum: 0, pairs: [] };
  const without = tryAll(shares, row + 1, taken);
  let best: Pairing = { sum: without.sum, pairs: [undefined, ...without.pairs] };
  own.forEach((share, column) => {
    if (share === 0 || taken.has(column)) return;
    const rest = tryAll(shares, row + 1, new Set([...taken, column]));
    if (share + rest.sum > best.sum) best = { sum: share + rest.sum, pairs: [column, ...rest.pairs] };
  });
  return best;
}

function largestFirst(shares: readonly (readonly number[])[]): readonly (number | undefined)[] {
  const pairs: (number | undefined)[] = shares.map(() => undefined);
  const all = shares.flatMap((own, row) => own.map((share, column) => ({ share, row, column })));
  const taken = new Set<number>();
  for (const { share, row, column } of all.sort((p, q) => q.share - p.share || p.row - q.row || p.column - q.column)) {
    if (share === 0 || pairs[row] !== undefined || taken.has(column)) continue;
    pairs[row] = column;
    taken.add(column);
  }
  return pairs;
}

function jumperHomes(
  before: Enclosure,
  after: Enclosure,
  splices: ReadonlyMap<SpliceId, SpliceId>,
): ReadonlyMap<JumperId, JumperHome> {
  const homes = new Map<JumperId, JumperHome>();
  const fresh: JumperId[] = [];
  for (const id of Object.keys(after.jumpers).sort() as JumperId[])
    if (id in before.jumpers) homes.set(id, { jumper: id, flipped: false });
    else fresh.push(id);
  const gone = (Object.keys(before.jumpers) as JumperId[]).filter((id) => !(id in after.jumpers)).sort();
  if (fresh.length === 0 || gone.length === 0) return homes;
  const ways = fresh.flatMap((id) =>
    gone.flatMap((old) =>
      isOneMake(after.jumpers[id], before.jumpers[old]) && splicesJoined(after, id) === splicesJoined(before, old)
        ? [false, true].map((flipped) => ({
            id,
            home: { jumper: old, flipped },
            stays: (["a", "b"] as const).filter((side) => {
              const was = before.places[jumperEnd(old, turned(side, flipped))]?.at;
              const is = after.places[jumperEnd(id, side)]?.at;
              return was !== undefined && is !== undefined && isAtHome(was, is, splices);
            }).length,
          }))
        : [],
    ),
  );
  const taken = new Set<JumperId>();
  for (const { id, home, stays } of ways.sort((p, q) => q.stays - p.stays)) {
    if (stays === 0 || homes.has(id) || taken.has(home.jumper)) continue;
    homes.set(id, home);
    taken.add(home.jumper);
  }
  return homes;
}

const isOneMake = (one: Jumper | undefined, other: Jumper | undefined): boolean =>
  one !== undefined &&
  other !== undefined &&
  one.awg === other.awg &&
  one.colour === other.colour &&
  one.material === other.material &&
  one.stranded === other.stranded;

/** Whether a place of proposed is that of as found: the same one, or the same joint under another id. */
export function isAtHome(was: At, is: At, splices: ReadonlyMap<SpliceId, SpliceId>): boolean {
  if (was.kind === "splice") return is.kind === "splice" && splices.get(is.splice) === was.splice;
  if (was.kind === "terminal")
    return is.kind === "terminal" && was.device === is.device && was.terminal === is.terminal && was.hole === is.hole;
  return was.kind === is.kind;
}
