import type { SpliceId } from "../model/ids.ts";
import type { SpliceMember } from "../queries/connector-takes.ts";

/** A conductor end that must be in one of the splices of its net. */
export interface SharedItem {
  readonly member: SpliceMember;
  /** Splice that it is in now. */
  readonly now: SpliceId | undefined;
  /** What it costs to put it anywhere else. */
  readonly move: number;
  readonly isCable: boolean;
}

/** One splice of a net: where it may be made, and the links that end in it. */
export interface SharedBin {
  readonly links: readonly SpliceMember[];
  readonly home: SpliceId | undefined;
  /** Number of cable ends and pigtails that it has now and must have then, where it cannot be opened. */
  readonly closed: number | undefined;
  /** @param counts How many of each kind of item, in the order of their first, as a text: equal texts have equal members. */
  accepts(members: () => readonly SpliceMember[], counts: string): boolean;
}

export interface Shared {
  readonly cost: number;
  /** Number of the bin of each item. */
  readonly binOf: readonly number[];
}

interface Kind {
  readonly member: SpliceMember;
  /** Numbers of items, those that cost most to move first, cables before pigtails. */
  readonly items: readonly number[];
}

/**
 * Shares the ends of a net out among its splices at the least cost of moves. Exact: ends that are alike count alike, and
 * every set of numbers that connectors take is tried. Among equals the first splice holds as many cable ends as it can.
 * Undefined when connectors do not take them so, or none costs less than `below`.
 */
export function shareOut(
  items: readonly SharedItem[],
  bins: readonly SharedBin[],
  below = Number.POSITIVE_INFINITY,
): Shared | undefined {
  const kinds = kindsOf(items);
  const all = items.reduce((sum, { move }) => sum + move, 0);
  const left = kinds.map(({ items: numbers }) => numbers.length);
  const counts: number[][] = bins.map(() => []);
  let best = below;
  let found: readonly (readonly number[])[] | undefined;
  const most = bins.map((_, at) => mostSaved(items, bins.slice(at)));
  const step = (at: number, saved: number): void => {
    const bin = bins[at];
    if (all - saved - (most[at] ?? 0) >= best) return;
    if (bin === undefined) {
      if (left.some((count) => count > 0) || all - saved >= best) return;
      best = all - saved;
      found = counts.map((row) => [...row]);
      return;
    }
    const isLast = at === bins.length - 1;
    for (const row of isLast ? [[...left]] : rowsUpTo(left)) {
      const kept = keptIn(items, kinds, bin, row);
      if (kept === undefined || !bin.accepts(() => membersOf(kinds, bin, row), row.join())) continue;
      counts[at] = row;
      row.forEach((count, kind) => {
        left[kind] = (left[kind] ?? 0) - count;
      });
      step(at + 1, saved + kept);
      row.forEach((count, kind) => {
        left[kind] = (left[kind] ?? 0) + count;
      });
    }
  };
  step(0, 0);
  return found && { cost: best, binOf: placed(items, kinds, bins, found) };
}

/** What some splices could save at most, if all that is in them stayed. */
const mostSaved = (items: readonly SharedItem[], bins: readonly SharedBin[]): number =>
  items.reduce(
    (sum, { now, move }) => sum + (now !== undefined && bins.some(({ home }) => home === now) ? move : 0),
    0,
  );

const kindKeys = new WeakMap<SpliceMember, string>();

function kindKey({ member }: SharedItem): string {
  let key = kindKeys.get(member);
  if (key === undefined) {
    key = `${member.awg} ${member.material} ${member.stranded} ${member.grounding}`;
    kindKeys.set(member, key);
  }
  return key;
}

function kindsOf(items: readonly SharedItem[]): readonly Kind[] {
  const byKey = new Map<string, { member: SpliceMember; items: number[] }>();
  items.forEach((item, number) => {
    const key = kindKey(item);
    const kind = byKey.get(key);
    if (kind === undefined) byKey.set(key, { member: item.member, items: [number] });
    else kind.items.push(number);
  });
  const rank = (number: number): SharedItem => items[number] as SharedItem;
  for (const { items: numbers } of byKey.values())
    numbers.sort((a, b) => rank(b).move - rank(a).move || Number(rank(b).isCable) - Number(rank(a).isCable) || a - b);
  return [...byKey.values()];
}

/** Every way to take some of each kind and at least one in all, the most of the first kind first. */
function rowsUpTo(most: readonly number[]): readonly number[][] {
  let rows: number[][] = [[]];
  for (const count of most)
    rows = rows.flatMap((row) => Array.from({ length: count + 1 }, (_, taken) => [...row, count - taken]));
  return rows.filter((row) => row.some((count) => count > 0));
}

const membersOf = (kinds: readonly Kind[], { links }: SharedBin, row: readonly number[]): readonly SpliceMember[] => [
  ...row.flatMap((count, kind) => Array.from({ length: count }, () => kinds[kind]?.member as SpliceMember)),
  ...links,
];

/**
 * What is saved by leaving in a splice what is in it; undefined where the splice could not be kept for that: a link alone is
 * no reason to keep one.
 */
function keptIn(
  items: readonly SharedItem[],
  kinds: readonly Kind[],
  { home, closed, links }: SharedBin,
  row: readonly number[],
): number | undefined {
  if (home === undefined) return 0;
  let saved = 0;
  let stay = 0;
  kinds.forEach(({ items: numbers }, kind) => {
    const here = numbers.filter((number) => items[number]?.now === home).slice(0, row[kind] ?? 0);
    stay += here.length;
    for (const number of here) saved += items[number]?.move ?? 0;
  });
  const total = row.reduce((sum, count) => sum + count, links.length);
  if (closed !== undefined && (stay !== closed || total !== closed)) return undefined;
  return stay === 0 ? undefined : saved;
}

function placed(
  items: readonly SharedItem[],
  kinds: readonly Kind[],
  bins: readonly SharedBin[],
  counts: readonly (readonly number[])[],
): readonly number[] {
  const binOf: number[] = items.map(() => -1);
  kinds.forEach(({ items: numbers }, kind) => {
    const room = bins.map((_, bin) => counts[bin]?.[kind] ?? 0);
    bins.forEach(({ home }, bin) => {
      if (home === undefined) return;
      for (const number of numbers) {
        if (items[number]?.now !== home || (room[bin] ?? 0) === 0) continue;
        binOf[number] = bin;
        room[bin] = (room[bin] ?? 0) - 1;
      }
    });
    const others = numbers.filter((number) => binOf[number] === -1);
    const inOrder = others.sort((a, b) => Number(items[b]?.isCable) - Number(items[a]?.isCable) || a - b);
    for (const number of inOrder) {
      const bin = room.findIndex((count) => count > 0);
      binOf[number] = bin;
      room[bin] = (room[bin] ?? 0) - 1;
    }
  });
  return binOf;
}
