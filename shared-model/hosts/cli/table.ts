/** Rows under a heading, in columns; nothing for a heading alone. */
export function table(rows: readonly (readonly string[])[]): readonly string[] {
  if (rows.length < 2) return [];
  const widths = (rows[0] ?? []).map((_, column) => Math.max(...rows.map((row) => (row[column] ?? "").length)));
  return rows.map((row) =>
    row
      .map((cell, column) => cell.padEnd(widths[column] ?? 0))
      .join("  ")
      .trimEnd(),
  );
}
