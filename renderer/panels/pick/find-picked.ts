import type { Pick, PickLine } from "../../state/pick-store.ts";
import { wording } from "./words.ts";

/** Lines that hold every word typed, those that begin with all of it first; what the person typed may be a line itself. */
export function findPicked(pick: Pick, typed: string): readonly PickLine[] {
  const text = typed.trim();
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  const lines = toldApart(pick.lines());
  if (words.length === 0) return lines;
  const hits = lines.filter((line) => {
    const all = `${line.title} ${line.note ?? ""}`.toLowerCase();
    return words.every((word) => all.includes(word));
  });
  const rank = ({ title }: PickLine): number => {
    const own = title.toLowerCase();
    const wanted = words.join(" ");
    if (own === wanted) return 0;
    if (own.startsWith(wanted)) return 1;
    return words.every((word) => own.includes(word)) ? 2 : 3;
  };
  const ranked = hits
    .map((line, place) => ({ line, place, rank: rank(line) }))
    .sort((a, b) => a.rank - b.rank || a.place - b.place)
    .map(({ line }) => line);
  const own = pick.typed?.line(text);
  // A line of the list that is called just so is meant, not words that happen to be the same.
  const isMeant = ranked[0] !== undefined && rank(ranked[0]) === 0;
  return own === undefined || isMeant ? ranked : [own, ...ranked.filter(({ key }) => key !== own.key)];
}

/** Two screws of a device may be called the same: such lines say which of them they are. */
function toldApart(lines: readonly PickLine[]): readonly PickLine[] {
  const counts = new Map<string, number>();
  for (const { title } of lines) counts.set(title, (counts.get(title) ?? 0) + 1);
  return lines.map((line) => {
    const { title, note, key } = line;
    const count = counts.get(title) ?? 1;
    if (count === 1) return line;
    // By key, so that a line is called the same wherever it stands in the list.
    const at = 1 + lines.filter((other) => other.title === title && other.key < key).length;
    const which = wording.ofWord(at, count);
    return { ...line, note: note === undefined ? which : `${which}, ${note}` };
  });
}
