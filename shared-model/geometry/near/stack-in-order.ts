const MARGIN = 10;

export interface Item {
  readonly rows: number;
  /** Rows from its last row to the first of the next item, at least. */
  readonly gap: number;
  /** Cost of its first row. */
  readonly cost: (top: number) => number;
}

/**
 * First rows of some items that stand under one another in the given order, at the least total cost: dynamic
 * programming over rows, ties to the upper row. `over` and `under` are the rows next to the devices; as many more are
 * looked at on both sides as the items need. The same items always give the same rows.
 */
export function stackInOrder(items: readonly Item[], over: number, under: number): number[] {
  if (items.length === 0) return [];
  const needed = items.reduce((sum, item) => sum + item.rows + item.gap, 0);
  const low = over - MARGIN - needed;
  const count = under - over + 2 * MARGIN + 2 * needed;
  const best: { cost: number; at: number }[][] = [];
  items.forEach((item, index) => {
    const before = best[index - 1];
    const previous = items[index - 1];
    const row: { cost: number; at: number }[] = [];
    let running = { cost: Number.POSITIVE_INFINITY, at: -1 };
    for (let offset = 0; offset < count; offset += 1) {
      let base = { cost: 0, at: -1 };
      if (before !== undefined && previous !== undefined) {
        // The previous item may stand at any row that leaves room: keep the best of those seen so far.
        const latest = offset - (previous.rows - 1) - previous.gap;
        const candidate = latest >= 0 ? before[latest] : undefined;
        if (candidate !== undefined && candidate.cost < running.cost) running = { cost: candidate.cost, at: latest };
        base = running;
      }
      row.push({ cost: base.cost + (Number.isFinite(base.cost) ? item.cost(low + offset) : 0), at: base.at });
    }
    best.push(row);
  });
  const tops: number[] = [];
  let at = -1;
  for (let index = items.length - 1; index >= 0; index -= 1) {
    const row = best[index] ?? [];
    if (at < 0) {
      let least = Number.POSITIVE_INFINITY;
      row.forEach((cell, offset) => {
        if (cell.cost < least) {
          least = cell.cost;
          at = offset;
        }
      });
    }
    tops[index] = low + at;
    at = row[at]?.at ?? -1;
  }
  return tops;
}
