import type { Command } from "commander";
import { isRecorded, readRecord } from "../../analysis/read-record.ts";
import { comparedRecord } from "../../analysis/record-answers.ts";
import { runCommand } from "../../commands/run-command.ts";
import { parseJson } from "../../format/parse-json.ts";
import { textToSave } from "../../format/text-to-save.ts";
import { failed, ok, problem, type Result } from "../../lib/result.ts";
import { asId, type ReadingId } from "../../model/ids.ts";
import type { Project } from "../../model/project.ts";
import { complain, complainAbout, print, printJson } from "./console.ts";
import { openState } from "./open-state.ts";
import { putDrawing } from "./put-drawing.ts";
import { inputName, readInput } from "./read-input.ts";
import { type Recorded, recordAsJson, recordAsText } from "./record-forms.ts";
import { STATUS, type Status } from "./status.ts";

interface RecordOptions {
  readonly readings?: string;
  readonly out?: string;
  readonly json?: true;
}

export function addRecord(program: Command, end: (status: Status) => void): void {
  program
    .command("record")
    .description(
      "Put results of tests into a drawing's test record, and compare it with what the drawing leads to expect.",
    )
    .argument("<file>", "a drawing (.loadside); - reads standard input")
    .option("--readings <file>", "JSON file with results; - reads standard input (default: the record as it is)")
    .option("--out <file>", "where to; the drawing itself may be named, any other file that is there stays")
    .option("--json", "print JSON")
    .addHelpText("after", HELP)
    .action(async (file: string, options: RecordOptions) => end(await record(file, options)));
}

const HELP = `
The results; by, takenAt, instrument and instrumentId stand for all readings or for one, and may be left out:
  {
    "by": "Pat Example", "takenAt": "2026-05-04", "instrument": "meter", "instrumentId": "M-17",
    "readings": [
      {"stage": "before", "at": "R2", "test": "hot-neutral", "value": 121.8, "remark": "loose in its box"},
      {"stage": "after", "at": "R1b", "test": "own-test", "outlets": ["R1b", "R2", "R3", "R5"]}
    ]
  }
stage: before the work, on the wiring as found, or after it, on proposed where that was started. at: an id or a name that
only one thing has; "R5/upper" for a half. test, and what is given with it:
  hot-neutral, hot-ground, neutral-ground  at an outlet: value, volts
  polarity                                 at an outlet: value, what a plug-in tester shows: correct, open-ground,
                                           open-neutral, open-hot, hot-ground-reversed, hot-neutral-reversed, unnamed
  works                                    a luminaire, an appliance: value, works or does-not-work
  own-test, reset                          a device with these buttons: outlets, every one that went dark or came on
  plug-in-button                           at an outlet, the button of a plug-in tester: outlets that went dark
  dead                                     a box, a breaker, an outlet, with the breaker off: value, dead or live
  continuity                               anything: value, ohms, or open
  note                                     anything: value, a text
instrument: meter, low-impedance-meter, noncontact, continuity, insulation; of what is measured alone.
A result that is in the record already, word for word, is not put in again. Without --out nothing is written.

Exit status: 0 what was recorded agrees, 1 something differs from what is expected, 2 bad input or it could not be written,
3 a fault of the program.`;

async function record(file: string, options: RecordOptions): Promise<Status> {
  const { readings, out } = options;
  if (file === "-" && readings === "-") {
    complainAbout("standard input", [problem("read-twice", "", "It can be read only once. Name - once.")]);
    return STATUS.badInput;
  }
  if (out !== undefined && readings === undefined) {
    complain("loadside: --out needs --readings: there is nothing to put into the drawing. See loadside record --help.");
    return STATUS.badInput;
  }
  const opened = await openState(file, undefined);
  if (!opened.ok) {
    complainAbout(inputName(file), opened.problems);
    return STATUS.badInput;
  }
  const made = await withReadings(opened.value.project, readings);
  if (!made.ok) {
    complainAbout(inputName(readings ?? ""), made.problems);
    return STATUS.badInput;
  }
  const { project, ...counted } = made.value;
  const recorded: Recorded = { file, ...counted, groups: comparedRecord(project) };
  if (out !== undefined) {
    const trouble = await putDrawing(file, out, textToSave(project));
    if (trouble !== undefined) {
      complain(trouble);
      return STATUS.badInput;
    }
  }
  if (options.json) await printJson(recordAsJson(recorded));
  else await print(recordAsText(recorded, out));
  return recorded.groups.some(({ rows }) => rows.some(({ cells }) => differs(cells.before) || differs(cells.after)))
    ? STATUS.findings
    : STATUS.good;
}

const differs = (cell: Recorded["groups"][number]["rows"][number]["cells"]["after"]): boolean =>
  cell?.outcome?.kind === "differs";

type Made = { readonly project: Project } & Pick<Recorded, "added" | "alreadyRecorded">;

async function withReadings(project: Project, file: string | undefined): Promise<Result<Made>> {
  if (file === undefined) return ok({ project, added: 0, alreadyRecorded: 0 });
  const text = await readInput(file);
  if (!text.ok) return text;
  const input = parseJson(text.value);
  if (!input.ok) return input;
  const read = readRecord(input.value, project);
  if (!read.ok) return read;
  let now = project;
  let added = 0;
  for (const [index, reading] of read.value.entries()) {
    if (isRecorded(now, reading)) continue;
    const done = runCommand(now, { command: "add-reading", args: { id: freeId(now), reading } });
    if (!done.ok) return failed(problem(done.refusal.code, `/readings/${index}`, done.refusal.message));
    now = done.project;
    added++;
  }
  return ok({ project: now, added, alreadyRecorded: read.value.length - added });
}

/** The same for the same drawing, so that a run can be repeated. */
function freeId({ readings }: Project): ReadingId {
  let number = Object.keys(readings).length + 1;
  while (`test-${number}` in readings) number++;
  return asId<ReadingId>(`test-${number}`);
}
