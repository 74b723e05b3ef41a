import type { PaperJob } from "../../../shared-model/answers/paper-messages.ts";
import type { SheetInput, SheetKind } from "../../../shared-model/answers/sheet-input.ts";
import type { StateName } from "../../../shared-model/model/project.ts";
import type { Page } from "../../../shared-model/sheets/display-list.ts";
import { text } from "../../../shared-model/sheets/marks.ts";
import type { SheetDefinition } from "../../../shared-model/sheets/registry.ts";

export const JOB: PaperJob = {
  sheets: ["drawing", "steps", "materials"],
  state: "proposed",
  paper: "a4",
  date: "2026-05-04",
};

/** A page that says what it was made of, and has a place for its number. */
export const pageOf = (kind: SheetKind, words: string): Page => ({
  sheet: kind,
  title: words,
  width: 210,
  height: 297,
  margin: 10,
  marks: [text(words, 20, 20, { size: 4 })],
  number: { x: 200, y: 290, anchor: "end", size: 3 },
});

/** A sheet of one page that says of which kind, state and box it is; `made` counts. */
export function sheetOf(
  kind: SheetKind,
  shows: SheetDefinition["shows"],
  made: string[] = [],
  more: Partial<SheetDefinition> = {},
): SheetDefinition {
  return {
    kind,
    title: `Title of ${kind}`,
    shows,
    make(input) {
      const words = [kind, input.state, input.box ?? "all"].join(" ");
      made.push(words);
      return [pageOf(kind, words)];
    },
    nothing: () => undefined,
    ...more,
  };
}

/** Of all that a sheet may be told only what the sheets in here look at. */
export const inputOf = (state: StateName): SheetInput => ({ state }) as SheetInput;

/** All words of a page. */
export const wordsOf = ({ marks }: Page): readonly string[] =>
  marks.flatMap((mark) => (mark.kind === "text" ? [mark.text] : []));
