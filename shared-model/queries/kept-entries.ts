/** The entries of a table that a test is true of. */
export const keptEntries = <K extends string, V>(
  table: Readonly<Record<K, V>>,
  keep: (value: V, key: K) => boolean,
): Readonly<Record<K, V>> =>
  Object.fromEntries((Object.entries(table) as [K, V][]).filter(([key, value]) => keep(value, key))) as Readonly<
    Record<K, V>
  >;
