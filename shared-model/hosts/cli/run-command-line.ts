import { mkdtemp, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Command, CommanderError } from "commander";
import { onOneLine } from "../../format/json-path.ts";
import { saveFailure } from "../save-failure.ts";
import { addCheck } from "./check.ts";
import { complain, NotPrinted } from "./console.ts";
import { addExport } from "./export.ts";
import { addFill } from "./fill.ts";
import { addFit } from "./fit.ts";
import { addMakeUp } from "./make-up.ts";
import { addMigrate } from "./migrate.ts";
import { addProve } from "./prove.ts";
import { addRecord } from "./record.ts";
import { addRules } from "./rules.ts";
import { addNew, addSamples } from "./samples.ts";
import { addSchema } from "./schema.ts";
import { addScope } from "./scope.ts";
import { addSimulate } from "./simulate.ts";
import { STATUS, type Status, worst } from "./status.ts";
import { addSurvey } from "./survey.ts";

/** Hangs a verb into the program; `end` takes the status it ended with. */
export type AddVerb = (program: Command, end: (status: Status) => void) => void;

const VERBS: readonly AddVerb[] = [
  addCheck,
  addFill,
  addSimulate,
  addProve,
  addSamples,
  addNew,
  addRules,
  addMigrate,
  addMakeUp,
  addFit,
  addRecord,
  addSurvey,
  addExport,
  addScope,
  addSchema,
];

/** Runs one command line, without the names of the runtime and the program. Never throws. */
export async function runCommandLine(args: readonly string[]): Promise<Status> {
  let status: Status = STATUS.good;
  try {
    const program = makeProgram((ended) => {
      status = worst(status, ended);
    });
    await program.parseAsync(args, { from: "user" });
    return status;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? STATUS.good : STATUS.badInput;
    if (error instanceof NotPrinted) return reportNotPrinted(error);
    return await reportFault(error);
  }
}

function makeProgram(end: (status: Status) => void): Command {
  const program = new Command("loadside")
    .description("Checks wiring drawings and counts box fill. It makes no statement that an installation may be used.")
    .helpCommand(false)
    .showSuggestionAfterError(false)
    .configureOutput({ writeErr: () => undefined, outputError: (text) => complain(asProblem(text)) })
    .exitOverride()
    .allowExcessArguments(true)
    .action(() => {
      const [verb] = program.args;
      program.error(verb === undefined ? "no verb is given" : `there is no verb "${verb}"`);
    });
  for (const add of VERBS) add(program, end);
  for (const verb of program.commands) verb.copyInheritedSettings(program).allowExcessArguments(false);
  return program;
}

/** The library's "error: ..." as one line that names the program and what helps. */
const asProblem = (text: string): string =>
  `loadside: ${onOneLine(text.trim().replace(/^error: /, "")).replace(/[.]?$/, ".")} See loadside --help.`;

function reportNotPrinted({ code }: NotPrinted): Status {
  const { cause, remedy } = saveFailure(code);
  complain(`standard output: It was not written: ${cause}. ${remedy}.`);
  return STATUS.badInput;
}

/** Says in one line that the program is at fault, and leaves what is needed to mend it in a file. */
async function reportFault(error: unknown): Promise<Status> {
  const what = error instanceof Error ? error.message : String(error);
  const detail = error instanceof Error ? (error.stack ?? error.message) : String(error);
  let where = "no log could be written";
  try {
    const log = join(await mkdtemp(join(tmpdir(), "loadside-")), "fault.log");
    await writeFile(log, `${detail}\n`);
    where = `the log is ${log}`;
  } catch {
    // A full or missing folder for temporary files must not hide the fault itself.
  }
  complain(`loadside: this is a fault of the program, not of the input: ${what}; ${where}.`);
  return STATUS.fault;
}
