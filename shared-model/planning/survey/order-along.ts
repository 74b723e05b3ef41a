import type { CircuitOrder } from "../../answers/survey.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { OutletKey } from "../../model/ids.ts";
import type { Project, Reading } from "../../model/project.ts";
import type { SurveyTold } from "../../model/survey.ts";
import { inOrder } from "../../queries/in-order.ts";
import { outletsOf } from "../../queries/outlets-of.ts";
import { listWords } from "./survey-words.ts";

const wording = catalogue({
  comesIn: (outlets: Part) => `Where ${outlets} comes in is not known yet.`,
  eachBeyond: (one: Part, other: Part) => `${one} and ${other} are each found beyond the other. Repeat it.`,
  eachBeyondOrShared: (one: Part, other: Part) =>
    `${one} and ${other} are each found beyond the other: they may share a box. Repeat it.`,
  opened: (near: Part, far: Part) => `With the joints at ${near} opened, ${far} went dead.`,
  outletGone: "an outlet that is gone",
  shared: (near: Part, there: Part, far: Part, own: Part) =>
    `A load at ${near} costs ${there} V at ${far} and ${own} V at ${near} itself: the whole way to it is shared.`,
});

/** What tells the order along a circuit. */
export type OrderSeen = Extract<SurveyTold, { readonly kind: "drop" | "opened" }>;

/** Observations that the document keeps, in their order. */
export const keptOrder = ({ readings }: Pick<Project, "readings">): readonly OrderSeen[] =>
  inOrder<Reading>(readings).flatMap(({ survey, computed }) =>
    (survey?.test.kind === "drop" || survey?.test.kind === "opened") && computed !== true ? [survey.test] : [],
  );

/** Two drops of one load are alike within this share, and within what a meter can tell. Modelling values. */
const ALIKE_SHARE = 0.08;
const ALIKE_V = 0.1;
/** A load too small to lose as much tells nothing. */
const LEAST_DROP_V = 0.5;

/**
 * Which outlet is fed through which. Opened joints prove it: what goes dead is beyond. A drop under load makes it likely:
 * a load at one outlet costs another as many volts only where the whole way to the first is shared, so that the other is
 * beyond it.
 */
export function orderAlong(project: Project, seen: readonly OrderSeen[]): CircuitOrder {
  const names = new Map(
    Object.values(project.asFound.enclosures).flatMap(({ devices }) =>
      Object.values(devices).flatMap((device) => outletsOf(device).map(({ key, name }) => [key, name] as const)),
    ),
  );
  const nameOf = (key: OutletKey): string => names.get(key) ?? wording.outletGone;
  const found = new Map<string, CircuitOrder["before"][number]>();
  const put = (near: OutletKey, far: OutletKey, proved: boolean, why: string): void => {
    const key = `${near} ${far}`;
    if (near !== far && found.get(key)?.proved !== true) found.set(key, { near, far, proved, why });
  };
  for (const one of seen)
    if (one.kind === "opened")
      for (const far of one.dead) put(one.at, far, true, wording.opened(nameOf(one.at), nameOf(far)));
  for (const { near, far, own, there } of sharedWays(seen))
    put(near, far, false, wording.shared(nameOf(near), there, nameOf(far), own));
  const before = [...found.values()];
  const asked = [
    ...new Set(seen.flatMap((one) => (one.kind === "opened" ? [one.at, ...one.dead] : [one.at, one.loadAt]))),
  ];
  const isBehind = (far: string): boolean => before.some((one) => one.far === far);
  const isTold = (key: string): boolean => before.some(({ near, far }) => near === key || far === key);
  return {
    before,
    first: asked.filter((key) => isTold(key) && !isBehind(key)),
    contradictions: before.flatMap(({ near, far, proved }) =>
      near < far && found.has(`${far} ${near}`)
        ? [
            (proved ? wording.eachBeyond : wording.eachBeyondOrShared)(
              nameOf(near as OutletKey),
              nameOf(far as OutletKey),
            ),
          ]
        : [],
    ),
    notKnown: asked.some((key) => !isTold(key))
      ? [wording.comesIn(listWords(asked.filter((key) => !isTold(key)).map(nameOf)))]
      : [],
  };
}

/** Drops under one load that are as large elsewhere as where the load is. */
function sharedWays(seen: readonly OrderSeen[]) {
  const drops = seen.filter((one) => one.kind === "drop");
  return drops.flatMap(({ loadAt, at, volts }) => {
    const own = drops.findLast((one) => one.loadAt === loadAt && one.at === loadAt)?.volts;
    if (at === loadAt || own === undefined || own < LEAST_DROP_V) return [];
    const isAlike = Math.abs(own - volts) <= Math.max(ALIKE_V, ALIKE_SHARE * own);
    return isAlike ? [{ near: loadAt, far: at, own, there: volts }] : [];
  });
}
