/**
 * The one text of a plain-data value: keys sorted by UTF-16 code unit, one-space indent, a trailing newline.
 * Equal values have equal texts, whatever the order in which their keys were written.
 * Keys whose value is `undefined` are left out; a number that is not finite is a bug and throws.
 */
export function canonicalText(value: unknown): string {
  return `${write(value, "")}\n`;
}

function write(value: unknown, indent: string): string {
  if (Array.isArray(value)) return writeList(value, indent);
  if (typeof value === "object" && value !== null) return writeRecord(value as Record<string, unknown>, indent);
  if (typeof value === "number" && !Number.isFinite(value))
    throw new Error(`A number that is not finite cannot be written: ${value}`);
  const text = JSON.stringify(Object.is(value, -0) ? 0 : value);
  if (text === undefined) throw new Error(`A ${typeof value} cannot be written.`);
  return text;
}

function writeList(items: readonly unknown[], indent: string): string {
  if (items.length === 0) return "[]";
  const inner = `${indent} `;
  return `[\n${items.map((item) => inner + write(item, inner)).join(",\n")}\n${indent}]`;
}

function writeRecord(record: Record<string, unknown>, indent: string): string {
  const inner = `${indent} `;
  const lines: string[] = [];
  for (const key of Object.keys(record).sort()) {
    if (record[key] !== undefined) lines.push(`${inner}${JSON.stringify(key)}: ${write(record[key], inner)}`);
  }
  return lines.length === 0 ? "{}" : `{\n${lines.join(",\n")}\n${indent}}`;
}
