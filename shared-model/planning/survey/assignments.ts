import type { Lead } from "./lead.ts";

/** A lead that cables may have, with its odds before anything is read. */
export interface Option {
  readonly lead: Lead;
  /** By cable; 0 where the cable cannot have it. */
  readonly odds: readonly number[];
}

/**
 * All ways to give each cable one lead: some cables bring power, listed groups go to one cable each, and the rest leads to
 * what may be there any number of times.
 */
export interface Menu {
  readonly cables: number;
  readonly sources: readonly Option[];
  readonly groups: readonly Option[];
  readonly specials: readonly Option[];
  /** Odds of two sources against one. */
  readonly two: number;
  /** Odds of a listed group on none of the cables, where there is room for it. */
  readonly omitted: number;
  /** Lights that switches of this box still want, and what each one too many or too few costs. */
  readonly legsWanted: number;
  readonly legMiscount: number;
  /** Whether a source gives power to what is joined to it. */
  readonly givesPower: ReadonlySet<Lead>;
  /** Places of the cables that were joined, for each observation of what works. */
  readonly joinings: readonly ReadonlySet<number>[];
}

/** What a sum over all assignments is made of: terms of cables and leads, of groups left out, of pairs of sources. */
export interface Terms {
  /** Of one cable with one lead, given which joinings had power. */
  term(cable: number, lead: Lead, energised: readonly boolean[]): number;
  /** Of a group that hangs on none of the cables. */
  omitted(group: Lead, energised: readonly boolean[]): number;
  /** Of which cables bring power. */
  sources(cables: readonly number[]): number;
}

/** How terms are put together: as weights with the odds of the structure, or alone. */
export interface Sum {
  readonly terms: Terms;
  /** The largest instead of the sum. */
  readonly isBest: boolean;
  /** What becomes of odds of the structure: two sources, lights too many, groups left out. */
  readonly prior: (odds: number) => number;
  /** What becomes of odds of a lead that are more than nothing; 1 for a count or a best. */
  readonly odds: (odds: number) => number;
  /** What becomes of one of several ways that are all alike; 1 for a count or a best. */
  readonly even: (share: number) => number;
}

/** How far a lead of a cable takes part, 0 for not at all, by cable and place of the option (sources, groups, specials). */
export type Part = (cable: number, option: number) => number;

/** Which cables bring power, and which of these give it to what is joined to them. */
interface Class {
  readonly cables: readonly number[];
  readonly giving: readonly boolean[];
  /** Place of its pattern of power in the joinings. */
  readonly pattern: number;
}

/** One way to have sources, with the sum over everything else. */
export interface SourceClass {
  readonly cables: readonly number[];
  /** By source of the menu: its value on each of the cables, in their order; 0 where it belongs to another class. */
  readonly values: readonly (readonly number[])[];
  readonly others: number;
}

/**
 * Sums over all assignments without listing them. Sources are taken apart one by one; given these, each term belongs to one
 * cable, so that the rest is a sum over which cables hold listed groups: work grows as 2^cables, not as cables!.
 */
export class Assignments {
  readonly menu: Menu;
  readonly options: readonly Option[];
  private readonly classes: readonly Class[];
  private readonly patterns: readonly (readonly boolean[])[];
  private readonly share: readonly number[];
  private readonly known = new WeakMap<Sum, readonly Values[]>();

  constructor(menu: Menu) {
    this.menu = menu;
    this.options = [...menu.sources, ...menu.groups, ...menu.specials];
    const patterns: (readonly boolean[])[] = [];
    this.classes = classesOf(menu, patterns);
    this.patterns = patterns;
    this.share = Array.from({ length: menu.cables + 1 }, (_, listed) => shareOf(menu, listed));
  }

  /** The sum, over assignments by how far their leads take part. */
  total(sum: Sum, part?: Part): number {
    const { menu } = this;
    const rests = this.restsOf(sum, part);
    const all = (1 << menu.cables) - 1;
    const two = sum.prior(menu.two);
    let total = 0;
    for (const { cables, giving, pattern } of this.classes) {
      const rest = rests[pattern] as Rest;
      const [one, other] = cables as [number, number?];
      let here = rest.sources(one, giving[0] === true, other !== undefined);
      if (here !== 0 && other !== undefined) here *= two * rest.sources(other, giving[1] === true, true);
      if (here === 0) continue;
      const left = all & ~(1 << one) & (other === undefined ? -1 : ~(1 << other));
      here *= sum.terms.sources(cables) * rest.of(left);
      total = sum.isBest ? Math.max(total, here) : total + here;
    }
    return total;
  }

  /** What one assignment adds to the sum, by the option of each cable; 0 for what is none. */
  one(sum: Sum, chosen: readonly number[]): number {
    const { menu, options } = this;
    const leadOf = (cable: number): Lead => (options[chosen[cable] as number] as Option).lead;
    const places = chosen.map((_, cable) => cable);
    const sources = places.filter((cable) => (chosen[cable] as number) < menu.sources.length);
    const groups = new Set(places.flatMap((cable) => leadOf(cable).group ?? []));
    const listed = places.filter((cable) => leadOf(cable).group !== undefined).length;
    const isNone = sources.length === 0 || sources.length > 2 || groups.size < listed;
    if (isNone || (sources.length === 2 && sources.some((cable) => leadOf(cable).off === true))) return 0;
    const giving = sources.filter((cable) => menu.givesPower.has(leadOf(cable)));
    const pattern = patternOf(menu, giving);
    const place = this.patterns.findIndex((one) => one.join() === pattern.join());
    const values = this.valuesOf(sum)[place] as Values;
    const legs = places.filter((cable) => leadOf(cable).kind === "leg" && leadOf(cable).group === undefined).length;
    const miscount = Math.abs(Math.min(legs, menu.legsWanted + 1) - menu.legsWanted);
    let value = (sources.length === 1 ? 1 : sum.prior(menu.two)) * sum.terms.sources(sources);
    for (const cable of places) value *= values.of[cable * values.width + (chosen[cable] as number)] as number;
    menu.groups.forEach(({ lead }, index) => {
      if (lead.group !== undefined && !groups.has(lead.group)) value *= values.omitted[index] as number;
    });
    const odds = miscount === 0 ? 1 : menu.legMiscount === 0 ? 0 : sum.prior(menu.legMiscount ** miscount);
    return value * odds * sum.even(this.share[listed] as number);
  }

  /** The sum taken apart by sources; classes that add nothing are left out. */
  bySources(sum: Sum, part?: Part): readonly SourceClass[] {
    const { menu } = this;
    const rests = this.restsOf(sum, part);
    const found: SourceClass[] = [];
    for (const { cables, giving, pattern } of this.classes) {
      const rest = rests[pattern] as Rest;
      const isTwo = cables.length > 1;
      if (!cables.every((cable, index) => rest.sources(cable, giving[index] === true, isTwo) !== 0)) continue;
      const values = menu.sources.map((_, option) =>
        cables.map((cable, index) => rest.source(cable, option, giving[index] === true, isTwo)),
      );
      let left = (1 << menu.cables) - 1;
      for (const cable of cables) left &= ~(1 << cable);
      const odds = (isTwo ? sum.prior(menu.two) : 1) * sum.terms.sources(cables);
      const others = odds === 0 ? 0 : odds * rest.of(left);
      if (others !== 0) found.push({ cables, values, others });
    }
    return found;
  }

  private restsOf(sum: Sum, part: Part | undefined): readonly Rest[] {
    return this.valuesOf(sum).map((values) => new Rest(this.menu, this.share, sum, values, part));
  }

  /** Odds with terms, by pattern of power: the same for every sum that only allows less. */
  private valuesOf(sum: Sum): readonly Values[] {
    let all = this.known.get(sum);
    if (all === undefined) {
      const { menu, options } = this;
      all = this.patterns.map((energised) => ({
        of: Float64Array.from({ length: menu.cables * options.length }, (_, place) => {
          const cable = Math.floor(place / options.length);
          const { lead, odds } = options[place % options.length] as Option;
          const own = odds[cable] as number;
          return own === 0 ? 0 : sum.odds(own) * sum.terms.term(cable, lead, energised);
        }),
        omitted: menu.groups.map(
          ({ lead }) => (menu.omitted === 1 ? 1 : sum.prior(menu.omitted)) * sum.terms.omitted(lead, energised),
        ),
        width: options.length,
      }));
      this.known.set(sum, all);
    }
    return all;
  }
}

interface Values {
  /** By cable and option. */
  readonly of: Float64Array;
  /** By group. */
  readonly omitted: readonly number[];
  readonly width: number;
}

/** Whether each joining had power, from cables that give it. */
export const patternOf = ({ joinings }: Menu, giving: readonly number[]): readonly boolean[] =>
  joinings.map((joined) => giving.some((cable) => joined.has(cable)));

function classesOf(menu: Menu, patterns: (readonly boolean[])[]): readonly Class[] {
  const known = new Map<string, number>();
  const placeOf = (giving: readonly number[]): number => {
    const pattern = patternOf(menu, giving);
    const key = pattern.join();
    const place = known.get(key) ?? patterns.push(pattern) - 1;
    known.set(key, place);
    return place;
  };
  const classes: Class[] = [];
  const add = (cables: readonly number[], giving: readonly boolean[]): void => {
    classes.push({ cables, giving, pattern: placeOf(cables.filter((_, index) => giving[index])) });
  };
  for (let one = 0; one < menu.cables; one++) {
    for (const gives of [true, false]) add([one], [gives]);
    if (menu.two > 0)
      for (let other = one + 1; other < menu.cables; other++)
        for (const gives of [true, false]) for (const too of [true, false]) add([one, other], [gives, too]);
  }
  return classes;
}

/** Share of one way to put groups on so many cables, all ways alike. */
function shareOf({ groups }: Menu, listed: number): number {
  let ways = 1;
  for (let index = 0; index < listed; index++) ways *= Math.max(1, groups.length - index);
  return 1 / ways;
}

/** What the cables that bring no power lead to, for one pattern of power in the joinings. */
class Rest {
  private readonly menu: Menu;
  private readonly share: readonly number[];
  private readonly sum: Sum;
  private readonly values: Values;
  private readonly part: Part | undefined;
  private readonly known = new Map<number, number>();
  /** By cable, whether it gives power, and whether there is another: the sum over sources. */
  private readonly bySource = new Map<number, number>();
  private onGroups: Float64Array | undefined;
  private onOthers: Float64Array | undefined;

  constructor(menu: Menu, share: readonly number[], sum: Sum, values: Values, part: Part | undefined) {
    this.menu = menu;
    this.share = share;
    this.sum = sum;
    this.values = values;
    this.part = part;
  }

  private value(cable: number, option: number): number {
    const { of, width } = this.values;
    const value = of[cable * width + option] as number;
    return value === 0 || this.part === undefined ? value : value * this.part(cable, option);
  }

  /** Of one source on a cable; 0 where it belongs to another class. */
  source(cable: number, option: number, gives: boolean, isTwo: boolean): number {
    const { lead } = this.menu.sources[option] as Option;
    if (this.menu.givesPower.has(lead) !== gives || (isTwo && lead.off === true)) return 0;
    return this.value(cable, option);
  }

  sources(cable: number, gives: boolean, isTwo: boolean): number {
    const key = 4 * cable + (gives ? 2 : 0) + (isTwo ? 1 : 0);
    let total = this.bySource.get(key);
    if (total !== undefined) return total;
    total = 0;
    for (let option = 0; option < this.menu.sources.length; option++) {
      const value = this.source(cable, option, gives, isTwo);
      total = this.sum.isBest ? Math.max(total, value) : total + value;
    }
    this.bySource.set(key, total);
    return total;
  }

  /** Sum over what these cables lead to. */
  of(cables: number): number {
    const known = this.known.get(cables);
    if (known !== undefined) return known;
    const { legsWanted, legMiscount } = this.menu;
    const { isBest, even, prior } = this.sum;
    this.onGroups ??= this.listed();
    this.onOthers ??= this.others();
    const counts = legsWanted + 2;
    const oddsOf = Array.from({ length: counts }, (_, legs) => {
      const miscount = Math.abs(legs - legsWanted);
      return miscount === 0 ? 1 : legMiscount === 0 ? 0 : prior(legMiscount ** miscount);
    });
    let total = 0;
    for (let listed = cables; ; listed = (listed - 1) & cables) {
      const onGroups = this.onGroups[listed] as number;
      if (onGroups !== 0) {
        const from = (cables & ~listed) * counts;
        let others = 0;
        for (let legs = 0; legs < counts; legs++) {
          const here = (this.onOthers[from + legs] as number) * (oddsOf[legs] as number);
          others = isBest ? Math.max(others, here) : others + here;
        }
        if (others !== 0) {
          const here = onGroups * others * even(this.share[bits(listed)] as number);
          total = isBest ? Math.max(total, here) : total + here;
        }
      }
      if (listed === 0) break;
    }
    this.known.set(cables, total);
    return total;
  }

  /** By set of cables: the sum over ways in which listed groups fill exactly these. */
  private listed(): Float64Array {
    const { cables, groups, sources } = this.menu;
    const { isBest } = this.sum;
    const size = 1 << cables;
    let now = new Float64Array(size);
    let next = new Float64Array(size);
    now[0] = 1;
    const on = new Float64Array(cables);
    for (let group = 0; group < groups.length; group++) {
      const left = this.values.omitted[group] as number;
      for (let cable = 0; cable < cables; cable++) on[cable] = this.value(cable, sources.length + group);
      for (let set = 0; set < size; set++) {
        let sum = (now[set] as number) * left;
        for (let cable = 0; cable < cables; cable++) {
          if ((set & (1 << cable)) === 0) continue;
          const here = (now[set & ~(1 << cable)] as number) * (on[cable] as number);
          sum = isBest ? Math.max(sum, here) : sum + here;
        }
        next[set] = sum;
      }
      [now, next] = [next, now];
    }
    return now;
  }

  /** By set of cables and number of lights for switches here: the sum over leads that may be there any number of times. */
  private others(): Float64Array {
    const { cables, specials, sources, groups, legsWanted } = this.menu;
    const { isBest } = this.sum;
    const counts = legsWanted + 2;
    const first = sources.length + groups.length;
    const sums = new Float64Array(counts << cables);
    sums[0] = 1;
    const legs = new Float64Array(cables);
    const plain = new Float64Array(cables);
    specials.forEach(({ lead }, index) => {
      const into = lead.kind === "leg" ? legs : plain;
      for (let cable = 0; cable < cables; cable++) {
        const value = this.value(cable, first + index);
        into[cable] = isBest ? Math.max(into[cable] as number, value) : (into[cable] as number) + value;
      }
    });
    for (let set = 1; set < 1 << cables; set++) {
      const cable = 31 - Math.clz32(set & -set);
      const from = (set & (set - 1)) * counts;
      const to = set * counts;
      for (let count = 0; count < counts; count++) {
        const before = sums[from + count] as number;
        if (before === 0) continue;
        const here = before * (plain[cable] as number);
        sums[to + count] = isBest ? Math.max(sums[to + count] as number, here) : (sums[to + count] as number) + here;
        const more = to + Math.min(counts - 1, count + 1);
        const leg = before * (legs[cable] as number);
        sums[more] = isBest ? Math.max(sums[more] as number, leg) : (sums[more] as number) + leg;
      }
    }
    return sums;
  }
}

function bits(set: number): number {
  let count = 0;
  for (let left = set; left !== 0; left &= left - 1) count++;
  return count;
}
