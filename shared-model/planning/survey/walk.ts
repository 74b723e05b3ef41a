import { patternOf } from "./assignments.ts";
import type { Inference } from "./inference.ts";

/** One assignment: the option of each cable, and its weight. */
export interface Walked {
  readonly chosen: readonly number[];
  readonly weight: number;
}

/** Ways to have sources that are walked, and assignments kept of all of them while going from cable to cable. */
const MOST_STARTS = 24;
const MOST_KEPT = 600;

/**
 * The heaviest assignments, the first ones exactly as long as there are not very many.
 * @param slips Any reading may be wrong: for what fits least badly.
 */
export function heaviest(inference: Inference, most: number, slips = false): readonly Walked[] {
  const { menu } = inference;
  const sources = menu.sources.length;
  const isOpen = (cable: number, option: number): boolean =>
    slips ? inference.option(option).odds[cable] !== 0 : inference.mayBe(cable, option);
  const found: Walked[] = [];
  const starts = startsOf(inference, isOpen);
  const each = Math.max(most, Math.floor(MOST_KEPT / starts.length));
  for (const start of starts) {
    const giving = [...start].flatMap(([cable, option]) =>
      menu.givesPower.has(inference.option(option).lead) ? [cable] : [],
    );
    const energised = patternOf(menu, giving);
    let kept: { readonly chosen: readonly number[]; readonly groups: number; readonly score: number }[] = [
      { chosen: [], groups: 0, score: 1 },
    ];
    for (let cable = 0; cable < menu.cables; cable++) {
      const own = start.get(cable);
      kept = kept.flatMap(({ chosen, groups, score }) => {
        if (own !== undefined) return [{ chosen: [...chosen, own], groups, score }];
        const next: typeof kept = [];
        for (let option = sources; option < inference.assignments.options.length; option++) {
          const { lead, odds } = inference.option(option);
          const bit = lead.group === undefined ? 0 : 1 << lead.group;
          if ((groups & bit) !== 0 || !isOpen(cable, option)) continue;
          const fit = inference.fitOf(cable, option);
          const joined = inference.joinedFit(cable, lead, energised);
          if (!slips && joined.isOut) continue;
          const here = score * (odds[cable] as number) * fit.likelihood * joined.likelihood;
          next.push({ chosen: [...chosen, option], groups: groups | bit, score: here });
        }
        return next;
      });
      if (kept.length > each) kept = kept.sort((p, q) => q.score - p.score).slice(0, each);
    }
    for (const { chosen } of kept) {
      const weight = inference.weightOf(chosen, slips);
      if (weight > 0) found.push({ chosen, weight });
    }
  }
  return found.sort((p, q) => q.weight - p.weight).slice(0, most);
}

/** Ways to have one or two sources, those first that fit their own readings best. */
function startsOf(inference: Inference, isOpen: (cable: number, option: number) => boolean) {
  const { menu } = inference;
  const starts: { readonly start: ReadonlyMap<number, number>; readonly score: number }[] = [];
  const fitOf = (cable: number, option: number): number =>
    (inference.option(option).odds[cable] as number) * inference.fitOf(cable, option).likelihood;
  const may = Array.from({ length: menu.cables }, (_, cable) =>
    menu.sources.flatMap((__, option) => (isOpen(cable, option) ? [option] : [])),
  );
  may.forEach((options, cable) => {
    for (const option of options) {
      const own = fitOf(cable, option);
      starts.push({ start: new Map([[cable, option]]), score: own });
      if (menu.two === 0) continue;
      for (let other = cable + 1; other < menu.cables; other++)
        for (const second of may[other] ?? []) {
          const start = new Map([
            [cable, option],
            [other, second],
          ]);
          starts.push({ start, score: own * fitOf(other, second) * menu.two });
        }
    }
  });
  return starts
    .sort((p, q) => q.score - p.score)
    .slice(0, MOST_STARTS)
    .map(({ start }) => start);
}
