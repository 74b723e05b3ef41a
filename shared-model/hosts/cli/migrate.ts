import type { Command } from "commander";
import { parseProject } from "../../format/parse-project.ts";
import { textToSave } from "../../format/text-to-save.ts";
import { failed, ok, problem, type Result } from "../../lib/result.ts";
import { complain, complainAbout } from "./console.ts";
import { putDrawing } from "./put-drawing.ts";
import { inputName, readInput } from "./read-input.ts";
import { STATUS, type Status } from "./status.ts";

export function addMigrate(program: Command, end: (status: Status) => void): void {
  program
    .command("migrate")
    .description("Write a drawing anew in the version of the file format that this program writes.")
    .argument("<file>", "a drawing (.loadside) of this or an older version; - reads standard input")
    .requiredOption("--out <file>", "where to; the drawing itself may be named, any other file that is there stays")
    .addHelpText("after", STATUSES)
    .action(async (file: string, { out }: { readonly out: string }) => end(await migrateFile(file, out)));
}

const STATUSES = `
Exit status: 0 written, 2 bad input, or it could not be written, 3 a fault of the program.`;

async function migrateFile(file: string, out: string): Promise<Status> {
  const text = await presentText(file);
  if (!text.ok) {
    complainAbout(inputName(file), text.problems);
    return STATUS.badInput;
  }
  const trouble = await putDrawing(file, out, text.value);
  if (trouble !== undefined) complain(trouble);
  return trouble === undefined ? STATUS.good : STATUS.badInput;
}

/** The canonical text of the drawing in the present version. */
async function presentText(file: string): Promise<Result<string>> {
  const text = await readInput(file);
  if (!text.ok) return text;
  const opened = parseProject(text.value);
  if (!opened.ok) return opened;
  const { readOnly, project, fileVersion } = opened.value;
  if (!readOnly) return ok(textToSave(project));
  const message = `It is of version ${fileVersion} of the file format, newer than this program. Nothing was written; use a newer one.`;
  return failed(problem("too-new", "/version", message));
}
