import type { Picker } from "../builders/picker.ts";
import type { JsonValue } from "./small-document.ts";

/** What hand editing, a bad disk or a malicious sender may leave in a text. */
const SCRAPS: readonly string[] = [
  "{",
  "}",
  "[",
  "]",
  ",",
  ":",
  '"',
  "\\",
  "\\u0000",
  "\\ud800",
  "\ud83d",
  "😀",
  "\u2028",
  "\ufeff",
  "\u0000",
  "null",
  "true",
  "-0",
  "1e999",
  "-1e-999",
  "0.1",
  "99999999999999999999",
  "NaN",
  "0x10",
  "// remark\n",
  '"__proto__": {"polluted": true},',
  '"constructor": {"prototype": {"polluted": true}},',
  '"id": "box-B1",',
  "[[[[[[[[[[",
  '{"a":{"a":{"a":',
  "\r\n",
  "\t",
];

/** The text with one to four stretches taken out, doubled, exchanged or overwritten. */
export function mutateText(text: string, pick: Picker): string {
  let result = text;
  for (let count = 1 + pick.below(4); count > 0; count--) {
    const from = pick.below(result.length + 1);
    const to = Math.min(result.length, from + 1 + pick.below(pick.chance(0.2) ? 400 : 6));
    const [before, piece, after] = [result.slice(0, from), result.slice(from, to), result.slice(to)];
    const elsewhere = pick.below(result.length + 1);
    const changed = [
      () => before + after,
      () => before + piece + piece + after,
      () => before + pick.from(SCRAPS, "") + after,
      () => before + pick.from(SCRAPS, "") + piece + after,
      () => before + String.fromCharCode(pick.below(256)) + after,
      () => before + result.slice(elsewhere, elsewhere + piece.length) + after,
      () => before,
    ];
    result = pick.from(changed, () => result)();
  }
  return result;
}

const VALUES: readonly (() => JsonValue)[] = [
  () => null,
  () => true,
  () => 0,
  () => -1,
  () => 1.5,
  () => 1e7 + 1,
  () => 30.30001,
  () => "",
  () => "capped",
  () => "box-B1",
  () => "device-R1",
  () => "toString",
  () => "as found\n",
  () => "x".repeat(200),
  () => [],
  () => ({}),
  () => [[[[[[]]]]]],
  () => ({ kind: "unknown" }),
  () => ({ kind: "splice", splice: "splice-X" }),
  () => ({ id: "box-B1", order: 0 }),
];

interface Spot {
  readonly parent: JsonValue[] | { [key: string]: JsonValue };
  readonly key: string;
}

/** Changes one to three fields or items: taken out, replaced, renamed, copied or moved to another place. */
export function mutateStructure(root: { [key: string]: JsonValue }, pick: Picker): void {
  for (let count = 1 + pick.below(3); count > 0; count--) {
    const spots = everySpot(root);
    const spot = pick.from(spots, undefined);
    const other = pick.from(spots, undefined);
    if (spot === undefined || other === undefined) return;
    const value = read(spot);
    const changes = [
      () => remove(spot),
      () => write(spot, spot.key, pick.from(VALUES, () => null)()),
      () => write(spot, spot.key, similar(value, pick)),
      () => write(spot, spot.key, structuredClone(read(other))),
      () => write(other, pick.chance(0.5) ? other.key : `${other.key}x`, structuredClone(value)),
      () => {
        remove(spot);
        write(
          spot,
          pick.from(
            ["later", "id", "kind", "__proto__", "constructor", "toString", `${spot.key}2`, other.key],
            "later",
          ),
          value,
        );
      },
    ];
    pick.from(changes, () => undefined)();
  }
}

/** A value of the same kind that is a little different. */
function similar(value: JsonValue, pick: Picker): JsonValue {
  if (typeof value === "number") return pick.from([value + 1, -value, value / 3, value * 1000], value);
  if (typeof value === "string") return pick.from([`${value}x`, value.slice(1), value.toUpperCase()], value);
  if (typeof value === "boolean") return !value;
  if (Array.isArray(value)) return [...value, ...value].reverse();
  return value;
}

function everySpot(root: JsonValue): readonly Spot[] {
  const spots: Spot[] = [];
  const visit = (value: JsonValue): void => {
    if (typeof value !== "object" || value === null) return;
    for (const key of Object.keys(value)) {
      spots.push({ parent: value, key });
      visit((value as Record<string, JsonValue>)[key] as JsonValue);
    }
  };
  visit(root);
  return spots;
}

const read = ({ parent, key }: Spot): JsonValue => (parent as Record<string, JsonValue>)[key] as JsonValue;

function remove({ parent, key }: Spot): void {
  if (Array.isArray(parent)) parent.splice(Number(key), 1);
  else delete parent[key];
}

function write({ parent }: Spot, key: string, value: JsonValue): void {
  if (Array.isArray(parent)) parent.push(value);
  // Defined, not assigned: "__proto__" becomes a field, as it does when a text is parsed.
  else Object.defineProperty(parent, key, { value, enumerable: true, configurable: true, writable: true });
}
