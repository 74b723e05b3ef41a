import { type Command, Option } from "commander";
import { openSession } from "../../analysis/session.ts";
import { parseProject } from "../../format/parse-project.ts";
import { failed, ok, type Problem, problem, type Result } from "../../lib/result.ts";
import { EDITIONS, type Project, type StateName } from "../../model/project.ts";
import { isSerious } from "../../model/severity.ts";
import { currentState, findInstallation } from "../../queries/installation-of.ts";
import { checkAsJson, checkAsText } from "./check-forms.ts";
import { type CheckedFile, checkedFile } from "./checked-file.ts";
import { complainAbout, print, printJson } from "./console.ts";
import { inputName, readInput } from "./read-input.ts";
import { checkAsSarif } from "./sarif.ts";
import { STATUS, type Status, worst } from "./status.ts";

interface CheckOptions {
  readonly state?: StateName | "both";
  readonly edition?: string;
  readonly json?: true;
  readonly sarif?: true;
}

export function addCheck(program: Command, end: (status: Status) => void): void {
  program
    .command("check")
    .description("Run every rule over drawings.")
    .argument("<file...>", "drawings (.loadside); - reads one from standard input")
    .addOption(
      new Option(
        "--state <state>",
        "which wiring; both is as-found alone before anything is proposed (default: proposed if it was started, else as-found)",
      ).choices(["as-found", "proposed", "both"]),
    )
    .addOption(
      new Option("--edition <year>", "by another edition than the drawing names").choices(EDITIONS.map(String)),
    )
    .addOption(
      new Option("--json", "print JSON: an object for one file and one state, else an array").conflicts("sarif"),
    )
    .option("--sarif", "print SARIF 2.1.0, a run for each file and state")
    .addHelpText("after", STATUSES)
    .action(async (files: readonly string[], options: CheckOptions) => end(await check(files, options)));
}

const STATUSES = `
Once something is proposed, every finding says how it stands: introduced by the plan, inherited, or inherited at a box that
the work opens (inherited-touched); as found: repaired, or it stays. A violation inherited at a box that nobody opens is
told as a caution, existing. Fixes are told for proposed, those that hold when tried.

Exit status: 0 nothing at danger or violation in the wiring asked for, acknowledged or not, 1 something at danger or violation, 2 bad input, 3 a fault of the program.`;

async function check(files: readonly string[], options: CheckOptions): Promise<Status> {
  const checked: CheckedFile[] = [];
  let status: Status = STATUS.good;
  for (const [index, file] of files.entries()) {
    const result = files.indexOf(file) === index || file !== "-" ? await checkFile(file, options) : failed(READ_TWICE);
    if (result.ok) checked.push(...result.value);
    else {
      complainAbout(inputName(file), result.problems);
      status = worst(status, STATUS.badInput);
    }
  }
  const single = files.length === 1 && options.state !== "both";
  if (options.sarif) await printJson(checkAsSarif(checked));
  else if (options.json === undefined) await print(checked.map(checkAsText).join("\n"));
  else if (!single) await printJson(checked.map(checkAsJson));
  else if (checked[0] !== undefined) await printJson(checkAsJson(checked[0]));
  return worst(status, checked.some(hasSerious) ? STATUS.findings : STATUS.good);
}

const READ_TWICE = problem("read-twice", "", "It can be read only once. Name - once.");

const hasSerious = ({ report }: CheckedFile): boolean => report.findings.some(isSerious);

/** One answer for each state asked for. */
async function checkFile(file: string, { state, edition }: CheckOptions): Promise<Result<readonly CheckedFile[]>> {
  const text = await readInput(file);
  if (!text.ok) return text;
  const opened = parseProject(text.value);
  if (!opened.ok) return opened;
  if (opened.value.readOnly) return failed(tooNew(opened.value.fileVersion));
  const { project } = opened.value;
  const states = statesOf(project, state);
  if (!states.ok) return states;
  const other = EDITIONS.find((one) => String(one) === edition);
  const by = other === undefined ? {} : { edition: other };
  const session = openSession(project, by);
  return ok(states.value.map((one) => checkedFile(file, session, one)));
}

function tooNew(version: number): Problem {
  const message = `It is of version ${version} of the file format, newer than this program. Check it with a newer one.`;
  return problem("too-new", "/version", message);
}

function statesOf(project: Project, asked: CheckOptions["state"]): Result<readonly StateName[]> {
  if (asked === undefined) return ok([currentState(project)]);
  if (asked === "both")
    return ok((["as-found", "proposed"] as const).filter((state) => findInstallation(project, state) !== undefined));
  if (findInstallation(project, asked) !== undefined) return ok([asked]);
  return failed(problem("no-such-state", "/proposed", "Nothing is proposed in it yet. Ask for --state as-found."));
}
