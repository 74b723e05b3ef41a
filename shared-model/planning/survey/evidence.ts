import type { SurveyLamp } from "../../model/survey.ts";
import { bandOf, isIn, type Probe } from "./bands.ts";
import { isSource, type Lead } from "./lead.ts";
import { chanceOn, lampChoices, type Surroundings, variantsWith } from "./lead-variants.ts";
import { CLOSED_BELOW_OHM, HIGH_IMPEDANCE_LEAST, HIGH_IMPEDANCE_POWER } from "./survey-values.ts";
import type { NotedReading } from "./taken-reading.ts";

/** Something read at the wires of one cable alone, with what it takes to compare it with a circuit. */
export type ReadAtCable = { readonly taken: NotedReading; readonly error: number } & (
  | {
      readonly kind: "figure";
      readonly probe: Probe;
      readonly value: number;
      readonly around: Surroundings;
      /** Rules out on its own what it cannot be: the low-impedance meter among voltages. */
      readonly settles: boolean;
      /** Counts only a little: the meter of high impedance. */
      readonly weak: boolean;
    }
  /** Seen: true where the cable is the switch end of a loop, by what lies in the luminaire's box. */
  | { readonly kind: "look"; readonly isLoop: boolean }
  | { readonly kind: "glow"; readonly glows: boolean }
  | { readonly kind: "current"; readonly flows: boolean }
  /** Known to a person: it comes from the panel, or leads to these; empty where it leads to what nobody listed. */
  | { readonly kind: "told"; readonly leadsTo: "panel" | readonly string[] }
);

/** How well readings fit one lead of one cable. */
export interface Fit {
  /** Averaged over what is not known, readings of a weak meter included. */
  readonly likelihood: number;
  /** The same without the weak meter: what may settle. */
  readonly settling: number;
  /** At the best for the lead: one reading that it cannot explain makes it small. */
  readonly best: number;
  /** Ruled out by one reading on its own. */
  readonly isOut: boolean;
  /** Readings that it cannot explain. */
  readonly against: readonly NotedReading[];
}

/** Compares what was read at a cable with the circuit of a lead. */
export function fitAtCable(lead: Lead, reads: readonly ReadAtCable[], nominalV: number): Fit {
  let [likelihood, settling, best] = [0, 0, 0];
  const explained = new Set<NotedReading>();
  for (const { share, lamps } of lampChoices(lead)) {
    let [sum, sumOfWeak, top] = [1, 1, 1];
    for (const read of reads) {
      const { mean, most } = chances(lead, lamps, read, nominalV);
      if (most === 1) explained.add(read.taken);
      if (read.kind === "figure" && read.weak) sumOfWeak *= mean ** HIGH_IMPEDANCE_POWER;
      else {
        sum *= mean;
        top *= most;
      }
    }
    likelihood += share * sum * Math.max(HIGH_IMPEDANCE_LEAST, sumOfWeak);
    settling += share * sum;
    best = Math.max(best, top);
  }
  const against = [...new Set(reads.map(({ taken }) => taken))].filter((taken) => !explained.has(taken));
  const out = new Set(reads.flatMap((read) => (settlesAlone(read) ? [read.taken] : [])));
  return { likelihood, settling, best, isOut: against.some((taken) => out.has(taken)), against };
}

/** Rules out what it does not fit without a second reading. */
const settlesAlone = (read: ReadAtCable): boolean => read.kind === "told" || (read.kind === "figure" && read.settles);

/** Whether a lead is what a person knows of the cable. */
function isAsTold({ kind, items, group }: Lead, leadsTo: "panel" | readonly string[]): boolean {
  if (leadsTo === "panel") return kind.endsWith("supply");
  if (kind !== "feeds" && kind !== "leg") return false;
  return leadsTo.length === 0 ? group === undefined : leadsTo.every((id) => items.some((item) => item.id === id));
}

const isOnRed = ({ from, to }: { readonly from: string; readonly to: string }): boolean => from === "r" || to === "r";

function chances(lead: Lead, lamps: readonly SurveyLamp[], read: ReadAtCable, nominalV: number): Chance {
  const said = (isSo: boolean) => (isSo ? explains(1 - read.error) : plain(read.error));
  switch (read.kind) {
    case "told":
      return said(isAsTold(lead, read.leadsTo));
    case "look":
      return said(read.isLoop === (lead.kind === "loop-fed"));
    case "glow":
      // An LED lamp in series may glow or not.
      if (lead.kind === "loop-fed" && lamps[0] === "led") return explains(0.5);
      return said(read.glows === (lead.kind === "loop-fed" && lamps[0] === "filament"));
    case "current":
      // A supply carries the current of what is on behind it; with nothing flowing nothing is told.
      if (!read.flows) return explains(lead.kind === "other-neutral" ? 0.5 : 1 - read.error);
      if (lead.kind === "supply") return explains(0.3);
      return said(lead.kind === "other-neutral");
    case "figure": {
      // What hangs on the second hot of a cable that feeds is not modelled: anything but a short goes with it.
      if (read.probe.kind === "ohms" && isOnRed(read.probe) && (lead.kind === "feeds" || lead.kind === "leg"))
        return read.value > CLOSED_BELOW_OHM ? explains(0.5) : plain(read.error);
      let [mean, most] = [0, 0];
      for (const variant of variantsWith(lead, lamps, read.around)) {
        const fits = isIn(read.value, bandOf(lead, variant, read.probe, nominalV));
        mean += variant.share * (fits ? 1 - read.error : read.error);
        most = Math.max(most, fits ? 1 : read.error);
      }
      return { mean, most };
    }
  }
}

/** What was seen to work with some cables joined. */
export interface Joining {
  readonly taken: NotedReading;
  /** Places of the joined cables. */
  readonly cables: ReadonlySet<number>;
  readonly works: ReadonlySet<string>;
  /** What worked and is in no group: an outlet or a light, see `UNLISTED`. */
  readonly unlisted: ReadonlySet<string>;
  readonly around: Surroundings;
  readonly error: number;
}

/**
 * How well what was seen with cables joined fits one lead of one cable.
 * @param energised Whether a supply was among the joined cables, for each joining.
 * @param cable Its place; undefined for a group that hangs on none of the cables.
 * @param mayBeFed More is listed than the cables can feed, so that some of it has another feed.
 */
export function fitJoined(
  cable: number | undefined,
  lead: Lead,
  joinings: readonly Joining[],
  energised: readonly boolean[],
  mayBeFed = false,
): Fit {
  let [mean, best] = [1, 1];
  const against: NotedReading[] = [];
  joinings.forEach((joining, index) => {
    const powered = cable !== undefined && joining.cables.has(cable) && energised[index] === true;
    const chance = cable === undefined ? elsewhere(lead, joining, mayBeFed) : seenWith(lead, joining, powered);
    mean *= chance.mean;
    best *= chance.most;
    if (chance.most < 1) against.push(joining.taken);
  });
  return { likelihood: mean, settling: mean, best, isOut: against.length > 0, against };
}

interface Chance {
  readonly mean: number;
  /** At the best for the lead: 1 where it can explain what was seen. */
  readonly most: number;
}

const plain = (chance: number): Chance => ({ mean: chance, most: chance });
const explains = (chance: number): Chance => ({ mean: chance, most: 1 });

/** What hangs on none of the cables does not work while they are apart, unless things of other circuits are listed too. */
function elsewhere({ items }: Lead, { works, error }: Joining, mayBeFed: boolean): Chance {
  if (mayBeFed) return explains(0.5 ** items.length);
  const working = items.filter(({ id }) => works.has(id)).length;
  return { mean: error ** working * (1 - error) ** (items.length - working), most: error ** working };
}

/** How likely a list of what works is, for what hangs on one cable. */
function seenWith(lead: Lead, joining: Joining, powered: boolean): Chance {
  if (isSource(lead)) return explains(1);
  const { works, unlisted, around, error, cables } = joining;
  const isAlone = cables.size <= 2;
  const isJoined = isAlone && powered;
  if (lead.group === undefined) {
    const own = lead.items[0]?.id;
    // A thing that nobody listed must be on the one cable that was joined.
    const strays = [UNLISTED.light, UNLISTED.outlets].some((id) => id !== own && worksUnlisted(joining, id));
    if (isJoined && strays) return plain(error);
    if (own === undefined || !powered) return explains(1);
    // Nobody listed what is there, so that it may have been overlooked, or its lamp is broken.
    return worksUnlisted(joining, own) ? explains(1 - error) : explains(OVERLOOKED);
  }
  let [mean, most] = [1, 1];
  for (const item of lead.items) {
    const lit =
      item.kind === "outlet"
        ? 1
        : chanceOn(item, around.switches) * (item.lamp === "none" ? 0 : item.lamp === undefined ? LIT : 1);
    const working = powered ? lit : 0;
    const seen = works.has(item.id) ? working : 1 - working;
    mean *= seen * (1 - error) + (1 - seen) * error;
    most *= seen > 0 ? 1 : error;
  }
  // What nobody listed may hang on the same cable as well.
  return isJoined && unlisted.size > 0 ? { mean: mean * OVERLOOKED, most } : { mean, most };
}

/** What is on a cable and not on the list, as a person ticks it. */
export const UNLISTED = { light: "light", outlets: "outlets" } as const;

const worksUnlisted = ({ unlisted }: Joining, id: string): boolean => unlisted.has(id);

/** How often something that is fed is not seen to work, because nobody looks for it there. */
const OVERLOOKED = 0.3;

/** Lights of which nobody knows the lamp have one in two of three cases, see `lampChoices`. */
const LIT = 2 / 3;
