import { basename, extname } from "node:path";
import { type Command, InvalidArgumentError, Option } from "commander";
import { PAPERS, type PaperName, SHEET_KINDS } from "../../answers/sheet-input.ts";
import type { StateName } from "../../model/project.ts";
import { complain, complainAbout } from "./console.ts";
import { type ExportAsk, type ExportFormat, FORMATS, JOB_FOLDER, prepareExport } from "./export-ask.ts";
import { writeExport } from "./export-files.ts";
import { openState } from "./open-state.ts";
import { inputName } from "./read-input.ts";
import { STATUS, type Status } from "./status.ts";

interface ExportOptions {
  readonly sheet: string;
  readonly out: string;
  readonly paper: PaperName;
  readonly state?: StateName;
  readonly box?: string;
  readonly scale: number;
  readonly sheets?: string;
  readonly date?: string;
}

export function addExport(program: Command, end: (status: Status) => void): void {
  program
    .command("export")
    .description("Put a sheet, or a job folder of many, into a file to print or to send.")
    .argument("<file>", "a drawing (.loadside); - reads standard input")
    .addOption(new Option("--sheet <kind>", "which sheet").choices([...SHEET_KINDS, JOB_FOLDER]).makeOptionMandatory())
    .requiredOption("--out <file>", "where to; its ending says what it becomes")
    .addOption(new Option("--paper <size>", "what it is printed on").choices([...PAPERS]).default("letter"))
    .addOption(
      new Option("--state <state>", "which wiring (default: proposed if it was started, else as-found)").choices([
        "as-found",
        "proposed",
      ]),
    )
    .option("--box <box>", "of one box or panel only, by id or name: drawing, make-up, box-fill, as-found, test-record")
    .option("--sheets <kinds>", "of a job folder: which, with commas between them (default: all there are)")
    .addOption(new Option("--scale <n>", "of PNG: 1 is 96 points to the inch").argParser(scaleOf).default(1))
    .addOption(new Option("--date <day>", "day that the sheets bear (default: today)").argParser(dayOf))
    .addHelpText("after", HELP)
    .action(async (file: string, options: ExportOptions) => end(await exportFile(file, options)));
}

const HELP = `
By the ending of --out:
  .pdf        any sheet, and the job folder
  .svg .png   any sheet; of several pages each becomes a file: out-1.svg, out-2.svg
  .csv .xlsx  sheets that are lists: all but drawing and make-up; of the job folder .xlsx has all its lists
A file of that name is replaced, whole or not at all; never the drawing itself.
drawing shows the whole, or with --box one box with every conductor. make-up makes a card for each box that the work opens.
A sheet with nothing to say, as labels where none is required, is left out of a folder of all there is; by its name it is
made all the same. Either is told on standard error, and so are letters that the sheets have no type for.
scope, steps and materials show the difference of both states and need something proposed.

Exit status: 0 written, 2 bad input or it could not be written, 3 a fault of the program.`;

function scaleOf(text: string): number {
  if (/^[1-4]$/.test(text)) return Number(text);
  throw new InvalidArgumentError("Give 1, 2, 3 or 4.");
}

function dayOf(text: string): string {
  const isDay = /^\d{4}-\d{2}-\d{2}$/.test(text) && new Date(`${text}T12:00:00Z`).toISOString().startsWith(text);
  if (isDay) return text;
  throw new InvalidArgumentError("Give a day as 2026-05-04.");
}

/** Today where the person is. */
function today(): string {
  const now = new Date();
  const two = (part: number): string => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

async function exportFile(file: string, options: ExportOptions): Promise<Status> {
  if (options.out.trim() === "" || options.out === "-") {
    complain("loadside: --out needs the name of a file. Give one.");
    return STATUS.badInput;
  }
  const format = FORMATS.find((each) => `.${each}` === extname(options.out).toLowerCase());
  if (format === undefined) {
    complain(`${options.out}: Its ending says nothing. Give .${FORMATS.join(", .")}.`);
    return STATUS.badInput;
  }
  const opened = await openState(file, options.state);
  if (!opened.ok) {
    complainAbout(inputName(file), opened.problems);
    return STATUS.badInput;
  }
  const ask = askOf(file, options, format, opened.value.state);
  const prepared = prepareExport(opened.value.project, ask);
  if (!prepared.ok) {
    complainAbout(inputName(file), prepared.problems);
    return STATUS.badInput;
  }
  const outcome = await writeExport(file, options.out, prepared.value, ask);
  if ("trouble" in outcome) {
    complain(outcome.trouble);
    return STATUS.badInput;
  }
  for (const note of outcome.notes) complain(`${inputName(file)}: ${note}`);
  return STATUS.good;
}

const askOf = (file: string, options: ExportOptions, format: ExportFormat, state: StateName): ExportAsk => ({
  sheet: options.sheet,
  format,
  paper: options.paper,
  state,
  isStateAsked: options.state !== undefined,
  date: options.date ?? today(),
  scale: options.scale,
  ...(options.box !== undefined && { box: options.box }),
  ...(options.sheets !== undefined && { sheets: options.sheets }),
  ...(file !== "-" && { fileName: basename(file) }),
});
