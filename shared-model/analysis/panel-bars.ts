import type { UnionFind } from "../lib/union-find.ts";
import type { Leg } from "../model/device.ts";
import type { Circuit } from "../solver/circuit/circuit.ts";
import { JOINED_METAL } from "../solver/circuit/metal.ts";

/** What a piece of metal hangs on. */
interface Hangs {
  readonly legs: readonly Leg[];
  readonly neutral: boolean;
  readonly ground: boolean;
  /** Its neutral bar is one that a main bond joins to a ground bar. */
  readonly bonded: boolean;
}

/** Buses and bars of a circuit's panels with the legs, the neutral and the ground that reach them. */
export interface Bars {
  /** What reaches the metal at a node. */
  on(node: number): Hangs;
}

const NOTHING: Hangs = { legs: [], neutral: false, ground: false, bonded: false };
const BONDED = "bonded";
const LEGS: readonly Leg[] = ["A", "B", "C"];

/**
 * Spreads the legs, the neutral and the ground of the supply from service panels over pieces of metal, `sets`, to the
 * buses and bars of other panels. Neutral and ground are told apart up to the main bond; past it they are one.
 */
export function barsOf(
  circuit: Circuit,
  sets: UnionFind,
  cut: ReadonlySet<number>,
  { ending, bonds }: BarBranches,
): Bars {
  const marks = new Map<number, Set<string>>();
  const pieces = piecesAtBars(circuit.network, sets, cut, ending);
  const mark = (key: number, what: Iterable<string>): boolean => {
    let own = marks.get(key);
    if (own === undefined) {
      own = new Set();
      marks.set(key, own);
    }
    const before = own.size;
    for (const one of what) own.add(one);
    return own.size > before;
  };
  circuit.network.sources.forEach(({ plus, minus }, index) => {
    mark(plus, [circuit.legs[index]?.leg ?? ""]);
    mark(minus, ["N"]);
  });
  const roots = new Set(circuit.network.sources.flatMap(({ plus, minus }) => [plus, minus]));
  for (let changed = true; changed; ) {
    changed = false;
    for (const [neutral, ground] of bonds) {
      if (!marks.get(neutral)?.has("N")) continue;
      changed = mark(neutral, [BONDED]) || changed;
      changed = mark(ground, ["G"]) || changed;
      roots.add(ground);
    }
    for (const [bar, own] of pieces)
      for (const piece of own) {
        changed = mark(~piece, marks.get(bar) ?? []) || changed;
        // A fault in one circuit is not said of the bar that feeds them all.
        if (!roots.has(bar)) changed = mark(bar, marks.get(~piece) ?? []) || changed;
      }
  }
  const known = new Map<number, Hangs>();
  return {
    on(node) {
      const key = cut.has(node) ? node : ~sets.find(node);
      let hangs = known.get(key);
      if (hangs === undefined) {
        hangs = hangsOn(marks.get(key));
        known.set(key, hangs);
      }
      return hangs;
    },
  };
}

function hangsOn(marks: ReadonlySet<string> | undefined): Hangs {
  if (marks === undefined || marks.size === 0) return NOTHING;
  return {
    legs: LEGS.filter((leg) => marks.has(leg)),
    neutral: marks.has("N"),
    ground: marks.has("G"),
    bonded: marks.has(BONDED),
  };
}

/** Branches of metal that end at a bus or a bar, and the main bonds: neither depends on the setting. */
export interface BarBranches {
  readonly ending: readonly number[];
  readonly bonds: readonly (readonly [neutral: number, ground: number])[];
}

export function barBranchesOf({ network: { a, b }, parts }: Circuit, cut: ReadonlySet<number>): BarBranches {
  const ending: number[] = [];
  const bonds: (readonly [number, number])[] = [];
  parts.forEach(({ kind }, branch) => {
    const [from, to] = [a[branch] as number, b[branch] as number];
    if (kind === "main-bond") bonds.push([from, to]);
    else if (JOINED_METAL.has(kind) && (cut.has(from) || cut.has(to))) ending.push(branch);
  });
  return { ending, bonds };
}

/** Pieces of metal that are joined to each bus and bar by a closed branch. */
function piecesAtBars(
  { a, b, g }: Circuit["network"],
  sets: UnionFind,
  cut: ReadonlySet<number>,
  ending: readonly number[],
): ReadonlyMap<number, ReadonlySet<number>> {
  const found = new Map<number, Set<number>>();
  const note = (bar: number, node: number): void => {
    if (cut.has(node)) return;
    let own = found.get(bar);
    if (own === undefined) {
      own = new Set();
      found.set(bar, own);
    }
    own.add(sets.find(node));
  };
  for (const branch of ending) {
    if (g[branch] === 0) continue;
    const [from, to] = [a[branch] as number, b[branch] as number];
    if (cut.has(from)) note(from, to);
    if (cut.has(to)) note(to, from);
  }
  return found;
}
