import type { UnionFind } from "../lib/union-find.ts";
import type { Circuit } from "../solver/circuit/circuit.ts";

/** What a piece of metal hangs on. */
interface Hangs {
  readonly legs: readonly string[];
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

/**
 * Spreads the legs, the neutral and the ground of the supply from service panels over pieces of metal, `sets`, to the
 * buses and bars of other panels. Neutral and ground are told apart up to the main bond; past it they are one.
 */
export function barsOf(circuit: Circuit, sets: UnionFind, cut: ReadonlySet<number>): Bars {
  const marks = new Map<number, Set<string>>();
  const pieces = piecesAtBars(circuit, sets, cut);
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
  const bonds = mainBonds(circuit);
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
  return {
    on(node) {
      const own = marks.get(cut.has(node) ? node : ~sets.find(node));
      if (own === undefined || own.size === 0) return NOTHING;
      return {
        legs: [...own].filter((one) => one !== "N" && one !== "G" && one !== BONDED).sort(),
        neutral: own.has("N"),
        ground: own.has("G"),
        bonded: own.has(BONDED),
      };
    },
  };
}

/** Kinds of branches that are metal where they are closed. */
export const METAL: ReadonlySet<string> = new Set(["conductor", "jumper", "joint", "contact"]);

/** Pieces of metal that are joined to each bus and bar by a closed branch. */
function piecesAtBars(
  { network: { a, b, g }, parts }: Circuit,
  sets: UnionFind,
  cut: ReadonlySet<number>,
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
  parts.forEach(({ kind }, branch) => {
    if (!METAL.has(kind) || g[branch] === 0) return;
    const [from, to] = [a[branch] as number, b[branch] as number];
    if (cut.has(from)) note(from, to);
    if (cut.has(to)) note(to, from);
  });
  return found;
}

/** Neutral bar and ground bar of every main bond. */
function mainBonds({ network: { a, b }, parts }: Circuit): readonly (readonly [number, number])[] {
  return parts.flatMap(({ kind }, branch) =>
    kind === "main-bond" ? [[a[branch] as number, b[branch] as number] as const] : [],
  );
}
