import { fromToWords } from "./scope-words.ts";

/** From so many names in a row on, the row is told by its first and its last. */
const LEAST_IN_ROW = 4;

/** "C1 C3 C4", "C1 to C4", "C1 to C4 C7": names that count up stand for those between them. */
export function foldedNames(names: readonly string[]): string {
  const sorted = [...new Set(names)].sort((p, q) => p.localeCompare(q, "en", { numeric: true }));
  const words: string[] = [];
  for (let at = 0; at < sorted.length; ) {
    let last = at;
    while (isNext(sorted[last], sorted[last + 1])) last += 1;
    if (last - at + 1 >= LEAST_IN_ROW) words.push(fromToWords(sorted[at] ?? "", sorted[last] ?? ""));
    else words.push(...sorted.slice(at, last + 1));
    at = last + 1;
  }
  return words.join(" ");
}

function isNext(one: string | undefined, other: string | undefined): boolean {
  const [a, b] = [/^(\D*)(\d+)$/.exec(one ?? ""), /^(\D*)(\d+)$/.exec(other ?? "")];
  return a !== null && b !== null && a[1] === b[1] && Number(b[2]) === Number(a[2]) + 1;
}
