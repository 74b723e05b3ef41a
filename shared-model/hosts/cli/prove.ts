import { type Command, Option } from "commander";
import { type ProtectionLine, type ProtectionSchedule, proveState } from "../../analysis/prove-state.ts";
import type { StateName } from "../../model/project.ts";
import { complainAbout, print, printJson } from "./console.ts";
import { openState } from "./open-state.ts";
import { provedAsJson, provedAsText } from "./prove-forms.ts";
import { inputName } from "./read-input.ts";
import { STATUS, type Status } from "./status.ts";

interface ProveOptions {
  readonly state?: StateName;
  readonly json?: true;
}

export function addProve(program: Command, end: (status: Status) => void): void {
  program
    .command("prove")
    .description("Prove the ground-fault protection of every outlet, or name the test that fails.")
    .argument("<file>", "a drawing (.loadside); - reads standard input")
    .addOption(
      new Option("--state <state>", "which wiring (default: proposed if it was started, else as-found)").choices([
        "as-found",
        "proposed",
      ]),
    )
    .option("--json", "print JSON")
    .addHelpText("after", HELP)
    .action(async (file: string, options: ProveOptions) => end(await prove(file, options)));
}

const HELP = `
An outlet is protected when some device passes P1 to P5 in every switch position in which the outlet is live, or one device
or another does in each:
  P1 isolation   with the device open no source reaches the outlet, by its conductors or through a load
  P2 balance     of what the outlet uses, nothing goes round the device
  P3 detection   of a leak from its hot to the ground outside, the device sees all
  P4 power       the device has hot and neutral on LINE wherever the outlet is live
  P5 class       the device protects people (6 mA) and is fed on LINE
  P6 quiet       nothing that is used anywhere makes the device trip; no part of the protection
It is computed from the drawing with loads removed; nothing was measured. Press TEST and see what goes dead.

Exit status: 0 every outlet whose protection is required or wished is proved, 1 one of them is not, or it cannot be told,
2 bad input, 3 a fault of the program. Where the room of an outlet is not entered, nobody can tell whether protection is
required: the last lines count these, and they leave the status as it is.`;

async function prove(file: string, options: ProveOptions): Promise<Status> {
  const opened = await openState(file, options.state);
  if (!opened.ok) {
    complainAbout(inputName(file), opened.problems);
    return STATUS.badInput;
  }
  const schedule = proveState(opened.value.project, opened.value.state);
  if (options.json) await printJson(provedAsJson(file, schedule));
  else await print(provedAsText(file, schedule));
  return isAllProved(schedule) ? STATUS.good : STATUS.findings;
}

const isAllProved = ({ lines }: ProtectionSchedule): boolean =>
  lines.every((line) => line.isProtected || !isAsked(line));

const isAsked = ({ askedBy: { kind } }: ProtectionLine): boolean => kind === "section" || kind === "wish";
