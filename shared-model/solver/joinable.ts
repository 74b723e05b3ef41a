import type { ConductionGraph } from "./conduction-graph.ts";
import { isOpened, type Opened, type SourceReach } from "./source-reach.ts";

/** Ways tried before the search gives up and answers yes; far more than a drawing of a house has. */
const MOST_STEPS = 20_000;

/**
 * True when some setting joins two nodes by metal, sources left out. A way may use a switch in one position only, so
 * every way is tried with the positions that it asks for.
 */
export function areJoinable(
  graph: ConductionGraph,
  reach: SourceReach,
  one: number,
  other: number,
  opened?: Opened,
): boolean {
  const from = reach.net[one] as number;
  const to = reach.net[other] as number;
  if (from === to) return true;
  const paths = new Map<number, { readonly to: number; readonly handle: string; readonly position: number }[]>();
  for (const edge of graph.edges) {
    if (edge.kind !== "switch" || isOpened(edge, opened)) continue;
    const a = reach.net[edge.a] as number;
    const b = reach.net[edge.b] as number;
    for (const [near, far] of [
      [a, b],
      [b, a],
    ] as const) {
      const list = paths.get(near) ?? [];
      list.push({ to: far, handle: edge.handle ?? "", position: edge.position ?? -1 });
      paths.set(near, list);
    }
  }
  const set = new Map<string, number>();
  const on = new Set<number>();
  let steps = 0;
  const search = (net: number): boolean => {
    if (net === to || ++steps > MOST_STEPS) return true;
    on.add(net);
    for (const path of paths.get(net) ?? []) {
      const stands = set.get(path.handle);
      if (on.has(path.to) || (stands !== undefined && stands !== path.position)) continue;
      set.set(path.handle, path.position);
      const found = search(path.to);
      if (stands === undefined) set.delete(path.handle);
      if (found) return true;
    }
    on.delete(net);
    return false;
  };
  return search(from);
}
