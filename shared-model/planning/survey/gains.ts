import type { Part } from "./assignments.ts";
import { bandOf } from "./bands.ts";
import { UNLISTED } from "./evidence.ts";
import type { Inference } from "./inference.ts";
import type { Lead, Wire } from "./lead.ts";
import { chanceOn, lampChoices, type Surroundings, variantsWith } from "./lead-variants.ts";
import { CLOSED_BELOW_OHM } from "./survey-values.ts";

/** What an instrument without error would show of a lead, by outcome; the chances add up to 1. */
export type Outcomes = ReadonlyMap<string, number>;

const PAIRS = [
  ["b", "w"],
  ["b", "ground"],
  ["w", "ground"],
] as const satisfies readonly (readonly [Wire | "ground", Wire | "ground"])[];

/** Switches on and nothing plugged in: how dead readings are to be taken. */
export const allOn = (inference: Inference): Surroundings => ({
  nothingPlugged: true,
  switches: inference.menu.groups.flatMap(({ lead }) =>
    lead.items.flatMap(({ switches = [] }) => switches.map((name) => ({ switch: name, on: true }))),
  ),
});

/** Shares of what is seen, from every way in which a lead may stand. */
function outcomesOf(
  lead: Lead,
  around: Surroundings,
  seen: (variant: ReturnType<typeof variantsWith>[number]) => string,
) {
  const found = new Map<string, number>();
  for (const { share, lamps } of lampChoices(lead))
    for (const variant of variantsWith(lead, lamps, around)) {
      const key = seen(variant);
      found.set(key, (found.get(key) ?? 0) + share * variant.share);
    }
  return found;
}

/** Volts of all three pairs by low-impedance meter, apart and energised. */
export const liveOutcomes = (lead: Lead, nominalV: number): Outcomes =>
  outcomesOf(lead, { nothingPlugged: true, switches: [] }, (variant) =>
    PAIRS.map(([from, to]) => {
      const { least, most } = bandOf(lead, variant, { kind: "volts", from, to, meter: "low" }, nominalV);
      return Math.round((least + most) / 2 / nominalV);
    }).join(),
  );

/** Ohms from hot to white, apart and dead. */
export const deadOutcomes = (lead: Lead, around: Surroundings, nominalV: number): Outcomes =>
  outcomesOf(lead, around, (variant) =>
    ohmsSeen(bandOf(lead, variant, { kind: "ohms", from: "b", to: "w" }, nominalV)),
  );

/** Ohms of the hot and of the white to ground, apart and dead. */
export const groundOutcomes = (lead: Lead, nominalV: number): Outcomes =>
  outcomesOf(lead, { nothingPlugged: true, switches: [] }, (variant) =>
    (["b", "w"] as const)
      .map((from) => ohmsSeen(bandOf(lead, variant, { kind: "ohms", from, to: "ground" }, nominalV)))
      .join(),
  );

const ohmsSeen = ({ least, most }: { readonly least: number; readonly most: number }): string =>
  least === Number.POSITIVE_INFINITY ? "open" : most < CLOSED_BELOW_OHM ? "closed" : "some";

/** Volts across a test lamp. */
export const lampOutcomes = (lead: Lead, nominalV: number): Outcomes =>
  outcomesOf(lead, { nothingPlugged: true, switches: [] }, (variant) => {
    const { least, most } = bandOf(lead, variant, { kind: "test-lamp" }, nominalV);
    return String(Math.round((least + most) / nominalV));
  });

/** What works on a cable that is joined to a supply. */
export function workOutcomes(lead: Lead, around: Surroundings): Outcomes {
  let found = new Map<string, number>([["", 1]]);
  for (const item of lead.items) {
    const lit = item.kind === "outlet" ? 1 : chanceOn(item, around.switches) * workingLamp(item.lamp, lead);
    const next = new Map<string, number>();
    for (const [key, chance] of found) {
      if (lit > 0) next.set(`${key}${item.id} `, chance * lit);
      if (lit < 1) next.set(key, (next.get(key) ?? 0) + chance * (1 - lit));
    }
    found = next;
  }
  return found;
}

const workingLamp = (lamp: string | undefined, { items }: Lead): number =>
  lamp === "none" ? 0 : lamp !== undefined || items[0]?.id === UNLISTED.light ? 1 : 2 / 3;

const plogp = (share: number): number => (share > 0 ? -share * Math.log2(share) : 0);

export const entropy = (shares: Iterable<number>): number => {
  let bits = 0;
  for (const share of shares) bits += plogp(share);
  return bits;
};

/** What one reading at one cable is expected to tell, bits: of what is seen, less what would be seen by chance alone. */
export function gainAtCable(inference: Inference, cable: number, of: (lead: Lead) => Outcomes): number {
  const seen = new Map<string, number>();
  let byChance = 0;
  (inference.shares[cable] as Float64Array).forEach((share, option) => {
    if (share === 0) return;
    const outcomes = of(inference.option(option).lead);
    for (const [key, chance] of outcomes) seen.set(key, (seen.get(key) ?? 0) + share * chance);
    byChance += share * entropy(outcomes.values());
  });
  return Math.max(0, entropy(seen.values()) - byChance);
}

/** What reading volts at all cables at once is expected to tell. */
export function gainOfAllLive(inference: Inference, nominalV: number): number {
  const { menu, assignments, weights } = inference;
  const outcomes = menu.sources.map(({ lead }) => liveOutcomes(lead, nominalV));
  const seen = new Map<string, number>();
  let all = 0;
  let byChance = 0;
  for (const { cables, values, others } of assignments.bySources(weights, inference.left())) {
    let combined: { readonly key: string; readonly weight: number }[] = [{ key: "", weight: others }];
    cables.forEach((cable, index) => {
      combined = combined.flatMap(({ key, weight }) => {
        const by = new Map<string, number>();
        values.forEach((value, option) => {
          for (const [shown, chance] of outcomes[option] as Outcomes)
            by.set(shown, (by.get(shown) ?? 0) + (value[index] as number) * chance);
        });
        return [...by].map(([shown, share]) => ({
          key: shown === DEAD ? key : `${key}${cable}:${shown};`,
          weight: weight * share,
        }));
      });
    });
    for (const { key, weight } of combined) {
      seen.set(key, (seen.get(key) ?? 0) + weight);
      all += weight;
    }
  }
  for (const shares of inference.shares)
    outcomes.forEach((of, option) => {
      byChance += (shares[option] as number) * entropy(of.values());
    });
  return all === 0 ? 0 : Math.max(0, entropy([...seen.values()].map((weight) => weight / all)) - byChance);
}

const DEAD = "0,0,0";

/** More outcomes than these are counted as one. */
const MOST_OUTCOMES = 80;

/** What measuring ohms at all of some cables is expected to tell: at least, where there are very many outcomes. */
export function gainOfAllDead(inference: Inference, cables: readonly number[], of: (lead: Lead) => Outcomes): number {
  const all = inference.weight();
  const seen: number[] = [];
  let byChance = 0;
  for (const cable of cables)
    (inference.shares[cable] as Float64Array).forEach((share, option) => {
      byChance += share * (share === 0 ? 0 : entropy(of(inference.option(option).lead).values()));
    });
  const measured = new Set(cables);
  const outcomes = inference.assignments.options.map(({ lead }) => of(lead));
  const chanceOf = (option: number, key: string): number => outcomes[option]?.get(key) ?? 0;
  // Every cable open, or some with a path of ohms, fewest first.
  for (const closed of subsets(cables, MOST_OUTCOMES)) {
    const inClosed = new Set(closed);
    const weight = inference.weight((cable, option) =>
      measured.has(cable) ? chanceOf(option, inClosed.has(cable) ? "some" : "open") : 1,
    );
    if (weight > 0) seen.push(weight / all);
  }
  const rest = 1 - seen.reduce((sum, share) => sum + share, 0);
  const alone = Math.max(0, ...cables.map((cable) => gainAtCable(inference, cable, of)));
  return Math.max(alone, entropy([...seen, Math.max(0, rest)]) - byChance);
}

/** Subsets, the smallest first, at most so many. */
function subsets(of: readonly number[], most: number): readonly (readonly number[])[] {
  let found: (readonly number[])[] = [[]];
  let last: (readonly number[])[] = [[]];
  while (found.length < most && last.length > 0) {
    last = last.flatMap((set) => of.filter((one) => set.every((other) => other < one)).map((one) => [...set, one]));
    found = [...found, ...last];
  }
  return found.slice(0, most);
}

/**
 * What joining some cables to the supply and listing what works is expected to tell.
 * @param cables One or two besides the supply.
 */
export function gainOfJoining(inference: Inference, cables: readonly number[], around: Surroundings): number {
  const works = (option: number): Outcomes => workOutcomes(inference.option(option).lead, around);
  const [one, other] = cables as [number, number?];
  if (other === undefined) return gainAtCable(inference, one, (lead) => workOutcomes(lead, around));
  const all = inference.weight();
  const seen = new Map<string, number>();
  let byChance = 0;
  const may = (cable: number): readonly number[] =>
    [...(inference.shares[cable] as Float64Array)].flatMap((share, option) => (share > 0 ? [option] : []));
  const mine = may(one);
  const others = may(other);
  for (const option of mine)
    for (const too of others) {
      const only: Part = (at, which) => ((at === one && which !== option) || (at === other && which !== too) ? 0 : 1);
      const share = inference.weight(only) / all;
      if (share === 0) continue;
      const [first, second] = [works(option), works(too)];
      for (const [p, chance] of first)
        for (const [q, with_] of second) {
          const key = [...new Set(`${p}${q}`.split(" "))].sort().join(" ");
          seen.set(key, (seen.get(key) ?? 0) + share * chance * with_);
        }
      byChance += share * (entropy(first.values()) + entropy(second.values()));
    }
  return Math.max(0, entropy(seen.values()) - byChance);
}
