import { saysInTradeWords } from "../trade-words.ts";

/** One line of the command field. */
export interface CommandLine {
  readonly key: string;
  readonly title: string;
  /** What it is, or what is selected. */
  readonly note: string;
  /** What it is called in full, where the title is only its name: "Splice Z". */
  readonly fullName?: string;
  readonly group: "Commands" | "On the sheet" | "Findings" | "Stock";
  readonly shortcut?: string;
  readonly run: () => void;
}

/** No more than a person can look through. */
export const SHOWN = 40;

/** Lines that hold every word typed, those that begin with it first; without a word, the first of each group. */
export function findLines(lines: readonly CommandLine[], typed: string): readonly CommandLine[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  const [first = ""] = words;
  const hits = lines.filter(({ title, note, group }) => {
    const text = `${title} ${note}`.toLowerCase();
    return words.every((word) => text.includes(word)) || (group === "Stock" && saysInTradeWords(title, typed));
  });
  const rank = ({ title, fullName = title }: CommandLine): number => {
    const texts = [title.toLowerCase(), fullName.toLowerCase()];
    if (words.length === 0) return 0;
    if (texts.includes(words.join(" "))) return 0;
    return texts.some((text) => text.startsWith(first)) ? 1 : 2;
  };
  return hits
    .map((line, place) => ({ line, place, rank: rank(line) }))
    .sort((a, b) => a.rank - b.rank || a.place - b.place)
    .slice(0, SHOWN)
    .map(({ line }) => line);
}
