import { readFileSync } from "node:fs";
import type { Severity, Standing } from "../../shared-model/answers/finding.ts";
import type { StateName } from "../../shared-model/model/project.ts";

export const EXPECTED = new URL("./expected/", import.meta.url);

const HEADINGS: Readonly<Record<string, StateName>> = { "as found": "as-found", proposed: "proposed" };

/** One line of an expectation: the finding in short, and words that its message must hold. */
interface Line {
  readonly short: string;
  readonly words: readonly string[];
}

/**
 * Under "as found" or "proposed" a line for each finding: "introduced danger line-load-swapped R1b (+1): LOAD, B1". Before the
 * rule stand its standing and severity, after it its first subject, how many consequences are folded under it, and after
 * the colon words of the message. "nothing" alone is a state without findings.
 */
export function readExpectation(name: string): ReadonlyMap<StateName, readonly Line[]> {
  const states = new Map<StateName, Line[]>();
  let lines: Line[] = [];
  for (const raw of readFileSync(new URL(`${name}.txt`, EXPECTED), "utf8").split("\n")) {
    const text = raw.trim();
    if (text === "" || text.startsWith("#") || text === "nothing") continue;
    const state = HEADINGS[text];
    if (state !== undefined) {
      lines = [];
      states.set(state, lines);
      continue;
    }
    if (states.size === 0) throw new Error(`${name}: "${text}" stands under no state.`);
    const [short = "", ...rest] = text.split(": ");
    const words = rest.join(": ").split(", ");
    lines.push({ short, words: words.filter((word) => word !== "") });
  }
  return states;
}

interface About {
  readonly rule: string;
  readonly subjects: readonly { readonly name: string }[];
}

/** What is told of a finding by the session, and by `check --json`. */
interface Told extends About {
  readonly severity: Severity;
  readonly folded: number;
  readonly standing?: Standing | null;
  readonly existing?: boolean;
}

const isText = (part: string | false | undefined | null): part is string => typeof part === "string";

/** A finding in the words of an expectation. */
export const findingInShort = ({ standing, existing, severity, rule, subjects, folded }: Told): string =>
  [standing, existing === true && "existing", severity, rule, subjects[0]?.name, folded > 0 && `(+${folded})`]
    .filter(isText)
    .join(" ");

export const questionInShort = ({ rule, subjects }: About): string => `cannot tell ${rule} ${subjects[0]?.name}`;
