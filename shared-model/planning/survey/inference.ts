import { Assignments, type Menu, type Option, type Part, type Sum, type Terms } from "./assignments.ts";
import { type Fit, fitAtCable, fitJoined } from "./evidence.ts";
import type { Lead } from "./lead.ts";
import type { SortedReadings } from "./sort-readings.ts";
import { CONTRADICTED_BELOW, ERRORS, RARE, REJECTED_BELOW } from "./survey-values.ts";

/** Two hots on different legs, or of two phases: more than one of them has against ground. */
const BETWEEN_LEGS_FROM_V = 180;

/** What readings make of a menu: weights, what is ruled out, how much is left to be found out. */
export class Inference {
  readonly menu: Menu;
  readonly assignments: Assignments;
  /** By cable and option: ruled out. */
  private readonly out: Uint8Array;
  private readonly fits: readonly (readonly Fit[])[];
  private readonly joined = new Map<Lead, Map<number, Fit>>();
  private readonly sorted: SortedReadings;
  private readonly optionOf: ReadonlyMap<Lead, number>;
  private readonly width: number;
  readonly weights: Sum;
  private readonly best: Sum;
  private readonly withSlips: Sum;
  private readonly twins: readonly number[];
  private marginal: readonly Float64Array[] | undefined;
  private sum: number | undefined;
  /** The best fit of any assignment, every reading taken as true: small where the readings contradict. */
  readonly bestFit: number;

  constructor(menu: Menu, sorted: SortedReadings, nominalV: number) {
    this.menu = menu;
    this.sorted = sorted;
    this.assignments = new Assignments(menu);
    const { options } = this.assignments;
    this.width = options.length;
    this.optionOf = new Map(options.map(({ lead }, index) => [lead, index]));
    this.fits = sorted.atCable.map((reads) => options.map(({ lead }) => fitAtCable(lead, reads, nominalV)));
    this.out = new Uint8Array(menu.cables * this.width);
    for (let cable = 0; cable < menu.cables; cable++)
      options.forEach((_, option) => {
        if (this.fitOf(cable, option).isOut) this.out[cable * this.width + option] = 1;
      });
    this.twins = this.findTwins();
    const same = (value: number): number => value;
    this.weights = { terms: this.termsOf("likelihood"), isBest: false, prior: same, odds: same, even: same };
    this.withSlips = { ...this.weights, terms: this.termsOf("slips") };
    this.best = {
      terms: this.termsOf("best"),
      isBest: true,
      prior: (odds) => (odds > 0 ? 1 : 0),
      odds: () => 1,
      even: () => 1,
    };
    this.bestFit = this.rejectUnlikely();
  }

  get isContradicted(): boolean {
    return this.bestFit < CONTRADICTED_BELOW;
  }

  fitOf(cable: number, option: number): Fit {
    return (this.fits[cable] as readonly Fit[])[option] as Fit;
  }

  isOut(cable: number, option: number): boolean {
    return this.out[cable * this.width + option] === 1;
  }

  /** Neither ruled out nor impossible. */
  mayBe(cable: number, option: number): boolean {
    return !this.isOut(cable, option) && this.option(option).odds[cable] !== 0;
  }

  /** The first cable of which everything known is the same, so that what holds of one holds of the other. */
  alike(cable: number): number {
    return this.twins[cable] as number;
  }

  /** Whether an option is not rare against the most usual one of the cable, at the start or of those left now. */
  isUsual(cable: number, option: number, when: "start" | "left" = "start"): boolean {
    let most = 0;
    this.assignments.options.forEach(({ odds }, other) => {
      if (when === "start" || !this.isOut(cable, other)) most = Math.max(most, odds[cable] as number);
    });
    return (this.option(option).odds[cable] as number) >= RARE * most;
  }

  option(index: number): Option {
    return this.assignments.options[index] as Option;
  }

  /** Weight of all assignments that are left, by how far their leads take part. */
  weight(part?: Part): number {
    if (part === undefined) {
      this.sum ??= this.assignments.total(this.weights, this.left());
      return this.sum;
    }
    return this.assignments.total(this.weights, this.left(part));
  }

  /** Share of each option, by cable. */
  get shares(): readonly Float64Array[] {
    if (this.marginal === undefined) {
      const all = this.weight();
      const made: Float64Array[] = [];
      for (let cable = 0; cable < this.menu.cables; cable++) {
        const like = this.alike(cable);
        const known = made[like];
        made.push(
          known ??
            Float64Array.from({ length: this.width }, (_, option) =>
              all === 0 || !this.mayBe(cable, option)
                ? 0
                : this.weight((at, one) => (at !== cable || one === option ? 1 : 0)) / all,
            ),
        );
      }
      this.marginal = made;
    }
    return this.marginal;
  }

  /** Bits still to be found out: entropy of the weights, from how their sum changes as all are raised to a power. */
  get bits(): number {
    const step = 1e-4;
    const logOf = (power: number): number => {
      const terms = this.termsOf("likelihood", power);
      const raise = (value: number): number => value ** power;
      return Math.log(
        this.assignments.total({ terms, isBest: false, prior: raise, odds: raise, even: raise }, this.left()),
      );
    };
    if (this.weight() === 0) return 0;
    const slope = (logOf(1 + step) - logOf(1 - step)) / (2 * step);
    return Math.max(0, (logOf(1) - slope) / Math.LN2);
  }

  /**
   * How many assignments of usual leads there are: at the start, or left now. Rare ones count where no usual one is left.
   * @param part Counts only those of which it takes every lead: 1 or 0.
   */
  count(when: "start" | "left", part?: Part): number {
    const of = (prior: (odds: number) => number): number =>
      this.assignments.total(
        { terms: when === "start" ? EVEN : this.termsOf("count"), isBest: false, prior, odds: () => 1, even: () => 1 },
        (cable, option) =>
          this.isUsual(cable, option, when) && !(when === "left" && this.isOut(cable, option))
            ? (part?.(cable, option) ?? 1)
            : 0,
      );
    return Math.round(of((odds) => (odds >= RARE ? 1 : 0)) || of(() => 1));
  }

  /** The best fit of one cable and lead with everything else, against the best of all. */
  fitWithin(cable: number, option: number): number {
    return this.assignments.total(
      this.best,
      this.left((at, one) => (at !== cable || one === option ? 1 : 0)),
    );
  }

  /** A fit of what was seen to work, for a lead on a cable. */
  joinedFit(cable: number | undefined, lead: Lead, energised: readonly boolean[]): Fit {
    let fits = this.joined.get(lead);
    if (fits === undefined) {
      fits = new Map();
      this.joined.set(lead, fits);
    }
    let key = cable ?? this.menu.cables;
    for (const is of energised) key = 2 * key + (is ? 1 : 0);
    let fit = fits.get(key);
    if (fit === undefined) {
      const isLong = this.menu.groups.length >= this.menu.cables;
      fit = fitJoined(cable, lead, this.sorted.joinings, energised, isLong);
      fits.set(key, fit);
    }
    return fit;
  }

  /** Weight of one assignment, by the option of each cable; with `slips` any reading may be wrong. */
  weightOf(chosen: readonly number[], slips = false): number {
    return this.assignments.one(slips ? this.withSlips : this.weights, chosen);
  }

  /** What is not ruled out takes part. */
  left(part?: Part): Part {
    return (cable, option) => (this.isOut(cable, option) ? 0 : part === undefined ? 1 : part(cable, option));
  }

  private findTwins(): readonly number[] {
    const { menu, sorted, assignments, fits } = this;
    const first = new Map<string, number>();
    return fits.map((row, cable) => {
      const key = JSON.stringify([
        row.map(({ likelihood, best, isOut }, option) => [
          assignments.options[option]?.odds[cable],
          likelihood,
          best,
          isOut,
        ]),
        menu.joinings.map((joined) => joined.has(cable)),
        sorted.between.map((read) => read.cables.includes(cable) && read.taken.index),
      ]);
      const like = first.get(key) ?? cable;
      first.set(key, like);
      return like;
    });
  }

  /** Rules out what fits less than a thousandth as well as the best. */
  private rejectUnlikely(): number {
    const best = this.assignments.total(this.best, this.left());
    if (best < CONTRADICTED_BELOW) return best;
    const unlikely = new Set<number>();
    for (let cable = 0; cable < this.menu.cables; cable++)
      for (let option = 0; option < this.width; option++) {
        if (!this.mayBe(cable, option)) continue;
        const like = this.alike(cable);
        const isUnlikely =
          like < cable
            ? unlikely.has(like * this.width + option)
            : this.fitWithin(cable, option) < REJECTED_BELOW * best;
        if (isUnlikely) unlikely.add(cable * this.width + option);
      }
    for (const place of unlikely) this.out[place] = 1;
    return best;
  }

  private termsOf(kind: "likelihood" | "best" | "count" | "slips", power = 1): Terms {
    const of = (fit: Fit, counts = fit.likelihood): number => {
      if (kind === "slips") return counts;
      if (fit.isOut) return 0;
      return kind === "best" ? fit.best : kind === "count" ? 1 : power === 1 ? counts : counts ** power;
    };
    const sourceOdds = (odds: number): number =>
      kind === "count" ? (odds < 1 ? 0 : 1) : power === 1 ? odds : odds ** power;
    return {
      term: (cable, lead, energised) => {
        const at = of(this.fitOf(cable, this.optionOf.get(lead) as number));
        return at === 0 || this.sorted.joinings.length === 0 ? at : at * of(this.joinedFit(cable, lead, energised));
      },
      omitted: (group, energised) =>
        this.sorted.joinings.length === 0 ? 1 : of(this.joinedFit(undefined, group, energised)),
      sources: (cables) => {
        let odds = 1;
        for (const { cables: pair, volts } of this.sorted.between)
          if (volts >= BETWEEN_LEGS_FROM_V && !pair.every((cable) => cables.includes(cable))) odds *= ERRORS.meter;
        return sourceOdds(odds);
      },
    };
  }
}

const EVEN: Terms = { term: () => 1, omitted: () => 1, sources: () => 1 };
