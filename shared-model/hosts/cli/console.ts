import { onOneLine } from "../../format/json-path.ts";
import { canonicalText } from "../../lib/canonical-text.ts";
import type { Problem } from "../../lib/result.ts";

/** Problems of one input that are told at most; a person who mends these sees the next ones. */
const MOST_TOLD = 20;

let readerIsGone = false;

/** What was to be printed could not be written where it was sent; `code` is the operating system's. */
export class NotPrinted extends Error {
  constructor(readonly code: string) {
    super(`standard output: ${code}`);
  }
}

/** Writes to standard output and waits until it is taken. A reader that has gone away, as `head` does, is no fault. */
export function print(text: string): Promise<void> {
  if (readerIsGone || text === "") return Promise.resolve();
  return new Promise((done, fail) => {
    const onError = ({ code = "unknown" }: NodeJS.ErrnoException): void => {
      readerIsGone = true;
      if (code === "EPIPE") done();
      else fail(new NotPrinted(code));
    };
    // The stream says it twice, to whoever wrote and as an event; unheard, the event would end the program.
    process.stdout.on("error", onError);
    process.stdout.write(text, (error) => {
      if (error) return;
      process.stdout.off("error", onError);
      done();
    });
  });
}

export const printJson = (value: unknown): Promise<void> => print(canonicalText(value));

/** One line on standard error, whatever the text holds. */
export const complain = (line: string): void => {
  process.stderr.write(`${onOneLine(line)}\n`);
};

/** A line for each problem of an input: the file, the path inside it, what is wrong and what to do. */
export function complainAbout(input: string, problems: readonly Problem[]): void {
  for (const { path, message } of problems.slice(0, MOST_TOLD))
    complain(path === "" ? `${input}: ${message}` : `${input}: ${path}: ${message}`);
  const left = problems.length - MOST_TOLD;
  if (left > 0) complain(`${input}: ${left} more problem${left === 1 ? "" : "s"} of this kind.`);
}
