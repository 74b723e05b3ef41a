import type { Command } from "commander";
import { readBreakersOff } from "../../analysis/read-breakers-off.ts";
import { readSurvey } from "../../analysis/read-survey.ts";
import { circuitSurvey, surveyAnswer } from "../../analysis/survey-answer.ts";
import { runCommand } from "../../commands/run-command.ts";
import { parseJson } from "../../format/parse-json.ts";
import { textToSave } from "../../format/text-to-save.ts";
import { failed, ok, problem, type Result } from "../../lib/result.ts";
import { asId, type ReadingId } from "../../model/ids.ts";
import type { Project } from "../../model/project.ts";
import { complain, complainAbout, print, printJson } from "./console.ts";
import { findBox } from "./make-up.ts";
import { openState } from "./open-state.ts";
import { putDrawing } from "./put-drawing.ts";
import { inputName, readInput } from "./read-input.ts";
import { STATUS, type Status } from "./status.ts";
import { circuitsAsText } from "./survey-circuits.ts";
import { surveyAsText } from "./survey-forms.ts";

interface SurveyOptions {
  readonly box?: string;
  readonly circuits?: true;
  readonly readings?: string;
  readonly out?: string;
  readonly json?: true;
}

export function addSurvey(program: Command, end: (status: Status) => void): void {
  program
    .command("survey")
    .description("Find out which cable of a box is which, from readings, and what to test next.")
    .argument("<file>", "a drawing (.loadside); - reads standard input")
    .option("--box <box>", "which box as found, by id or name")
    .option("--circuits", "which outlet hangs on which breaker, in place of the cables of a box")
    .option("--readings <file>", "JSON file with readings; - reads standard input (default: those in the drawing)")
    .option("--out <file>", "write the drawing with the readings, and with the roles that are settled taken over")
    .option("--json", "print JSON")
    .addHelpText("after", HELP)
    .action(async (file: string, options: SurveyOptions) => end(await survey(file, options)));
}

const HELP = `
What was read, after what the drawing already holds; by and takenAt stand for all readings or for one:
  {
    "by": "Pat Example", "takenAt": "2026-05-04",
    "facts": {"groups": [["R2", "R3"], ["R4"], [{"name": "porch light", "kind": "light", "switches": ["S1"]}]],
              "switchesHere": 0, "lamps": {"L1": "filament"}, "referenceProved": "water pipe, 120 V to a known hot",
              "known": [{"cable": "C1", "leadsTo": "panel", "how": "followed along the joist to the panel"}]},
    "readings": [
      {"arrangement": "A2", "instrument": "low-impedance-meter", "cable": "C1", "pair": "black-white", "value": 122},
      {"arrangement": "A1", "instrument": "continuity", "cable": "C4", "pair": "black-white", "value": "open",
       "nothingPlugged": true, "switches": {"S1": "on"}},
      {"arrangement": "A3", "instrument": "plug-in-tester", "joined": ["C1", "C2"], "works": ["R2", "R3"]}
    ]
  }
facts      all may be left out. groups: what the cables may lead to, one group a cable, where the drawing does not show far
           ends; a name that is drawn, or {name, kind: outlet or light, lamp, switches}. lamps: filament, led or none.
           known: a cable that a person knows comes from the panel, or leads to some of these (["R4"]), and how it is known;
           what is drawn is no reading and does not tell which cable is which.
arrangement  A0 as found; A1 power off and proved dead, all apart; A2 apart, power on; A3 the supply joined to others;
           A4 with a switch put in
instrument low-impedance-meter, meter (high impedance), plug-in-tester, noncontact, continuity, clamp-meter, test-lamp,
           by-eye
what was read, one of
  cable, pair, value         volts in A2, ohms or "open" in A1, between two wires by colour, or a wire and ground
  between, value             [["C1", "black"], ["C2", "black"]]: volts between two cables
  joined, works              every outlet and light that worked; "light" and "outlets" for what is not listed
  cable, current, value      amperes in a wire
  cable, testLamp, value     true where the light beyond glowed; volts across the lamp
  cable, feedAtLight         looked into the luminaire's box: true where the feed is there
  cable, breaker, wentDead   with that breaker off
switches   positions of switches elsewhere, on or off. nothingPlugged: somebody made sure of it. off: breakers that were
           off; what then reads nothing does not count.
With --circuits, one breaker off at a time; what is in neither list was not looked at, and is no evidence:
  {"by": "Pat Example", "breakersOff": [{"breaker": "Q14", "dead": ["R1", "R2"], "live": ["R9"]}]}
Nothing is written without --out; the roles that are settled are then tags of the wires, the supply of the box, and marks.

Exit status: 0 done, 1 the readings contradict each other, 2 bad input or it could not be written, 3 a fault of the program.`;

async function survey(file: string, options: SurveyOptions): Promise<Status> {
  if (file === "-" && options.readings === "-") {
    complainAbout("standard input", [problem("read-twice", "", "It can be read only once. Name - once.")]);
    return STATUS.badInput;
  }
  if ((options.box === undefined) === (options.circuits === undefined)) {
    complain("Give either --box and a box of the drawing, or --circuits.");
    return STATUS.badInput;
  }
  const opened = await openState(file, "as-found");
  if (opened.ok && options.circuits) return circuits(file, opened.value.project, options);
  const box = opened.ok ? findBox(opened.value.project.asFound, options.box ?? "") : opened;
  if (!opened.ok || !box.ok) {
    complainAbout(inputName(file), box.ok ? [] : box.problems);
    return STATUS.badInput;
  }
  const { project } = opened.value;
  const read = await withReadings(project, options.readings, (json) => readSurvey(json, project, box.value));
  if (!read.ok) {
    complainAbout(inputName(options.readings ?? ""), read.problems);
    return STATUS.badInput;
  }
  const answer = surveyAnswer(read.value, box.value.id);
  if (!answer.ok) {
    complainAbout(inputName(file), answer.problems);
    return STATUS.badInput;
  }
  const trouble =
    options.out === undefined ? undefined : await put(file, options.out, read.value, answer.value.takeOver);
  if (trouble !== undefined) {
    complain(trouble);
    return STATUS.badInput;
  }
  if (options.json) {
    const { takeOver, ...rest } = answer.value;
    await printJson({ file, ...rest, takenOver: options.out === undefined ? [] : (takeOver?.words ?? []) });
  } else await print(surveyAsText(`${inputName(file)}: ${box.value.name}`, answer.value));
  return answer.value.contradiction === undefined ? STATUS.good : STATUS.findings;
}

async function circuits(file: string, project: Project, options: SurveyOptions): Promise<Status> {
  const read = await withReadings(project, options.readings, (json) => readBreakersOff(json, project));
  if (!read.ok) {
    complainAbout(inputName(options.readings ?? ""), read.problems);
    return STATUS.badInput;
  }
  const { map, order } = circuitSurvey(read.value);
  const trouble = options.out === undefined ? undefined : await put(file, options.out, read.value, undefined);
  if (trouble !== undefined) {
    complain(trouble);
    return STATUS.badInput;
  }
  if (options.json) await printJson({ file, ...map, order });
  else await print(circuitsAsText(inputName(file), map, order));
  return STATUS.good;
}

async function withReadings(
  project: Project,
  file: string | undefined,
  reads: (json: unknown) => ReturnType<typeof readSurvey>,
): Promise<Result<Project>> {
  if (file === undefined) return ok(project);
  const text = await readInput(file);
  if (!text.ok) return text;
  const json = parseJson(text.value);
  if (!json.ok) return json;
  const taken = reads(json.value);
  if (!taken.ok) return taken;
  let now = project;
  for (const [index, reading] of taken.value.entries()) {
    const done = runCommand(now, { command: "add-reading", args: { id: freeId(now), reading } });
    if (!done.ok) return failed(problem(done.refusal.code, `/readings/${index}`, done.refusal.message));
    now = done.project;
  }
  return ok(now);
}

/** The same for the same drawing, so that a run can be repeated. */
function freeId({ readings }: Project): ReadingId {
  let number = Object.keys(readings).length + 1;
  while (`survey-${number}` in readings) number++;
  return asId<ReadingId>(`survey-${number}`);
}

async function put(
  file: string,
  out: string,
  project: Project,
  takeOver: { readonly call: { readonly command: string; readonly args: unknown } } | undefined,
): Promise<string | undefined> {
  const done = takeOver === undefined ? undefined : runCommand(project, takeOver.call);
  if (done?.ok === false) return `${out}: It was not written: ${done.refusal.message}`;
  return putDrawing(file, out, textToSave(done?.project ?? project));
}
