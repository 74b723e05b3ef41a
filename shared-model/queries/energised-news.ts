import type { Energised, EnergisedNews } from "../answers/energised.ts";

/** What is different in an answer from the one before: enclosures and cables that stand otherwise, and all the rest. */
export function newsSince(before: Energised | undefined, now: Energised): EnergisedNews {
  if (before === undefined) return { ...now, whole: true };
  return {
    ...now,
    whole: false,
    boxes: changed(before.boxes, now.boxes),
    cables: changed(before.cables, now.cables),
  };
}

/** The answer that news make of the one before. Throws where there is none and the news are not the whole. */
export function withNews(before: Energised | undefined, { whole, boxes, cables, ...rest }: EnergisedNews): Energised {
  if (!whole && before === undefined) throw new Error("An answer came without the one that it continues.");
  return {
    ...rest,
    boxes: merged(whole ? undefined : before?.boxes, boxes),
    cables: merged(whole ? undefined : before?.cables, cables),
  };
}

type Table<V> = Readonly<Record<string, V>>;

/** Whatever is not the same object is told; what is gone is null. */
function changed<V>(before: Table<V>, now: Table<V>): Record<string, V | null> {
  const found: Record<string, V | null> = {};
  for (const key in now) if (now[key] !== before[key]) found[key] = now[key] as V;
  for (const key in before) if (!(key in now)) found[key] = null;
  return found;
}

function merged<V>(before: Table<V> | undefined, news: Table<V | null>): Table<V> {
  if (before !== undefined && Object.keys(news).length === 0) return before;
  const found: Record<string, V> = { ...before };
  for (const key in news) {
    const value = news[key];
    if (value === null || value === undefined) delete found[key];
    else found[key] = value;
  }
  return found;
}
