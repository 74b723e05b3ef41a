import { realpath } from "node:fs/promises";
import { type Command, Option } from "commander";
import { parseJson } from "../../format/parse-json.ts";
import { ok, problem, type Result } from "../../lib/result.ts";
import type { StateName } from "../../model/project.ts";
import { findInstallation } from "../../queries/installation-of.ts";
import { EVERYTHING_ON, type OperatingSetting } from "../../solver/circuit/circuit.ts";
import { readSetting } from "../../solver/circuit/read-setting.ts";
import { replaceFile } from "../atomic-file.ts";
import { complain, complainAbout, print, printJson } from "./console.ts";
import { makeFile } from "./make-file.ts";
import { type OpenedState, openState } from "./open-state.ts";
import { inputName, readInput } from "./read-input.ts";
import { simulatedAsJson, simulatedAsText } from "./simulate-forms.ts";
import { netlistOf, type Simulated, simulateState } from "./simulated-file.ts";
import { STATUS, type Status } from "./status.ts";

interface SimulateOptions {
  readonly setting?: string;
  readonly state?: StateName;
  readonly netlist?: string;
  readonly json?: true;
}

export function addSimulate(program: Command, end: (status: Status) => void): void {
  program
    .command("simulate")
    .description("Compute what a drawing's circuit does when it is energised in one setting.")
    .argument("<file>", "a drawing (.loadside); - reads standard input")
    .option("--setting <file>", "JSON file with what is operated; - reads standard input (default: everything on)")
    .addOption(
      new Option("--state <state>", "which wiring (default: proposed if it was started, else as-found)").choices([
        "as-found",
        "proposed",
      ]),
    )
    .option("--netlist <file>", "write the same circuit as a SPICE deck; replaces a .cir file, no other")
    .option("--json", "print JSON")
    .addHelpText("after", HELP)
    .action(async (file: string, options: SimulateOptions) => end(await simulate(file, options)));
}

const HELP = `
The setting names what is not on, reset, in use and as drawn; without it all breakers and switches are on. Items are named
by id or by a name that only one of them has; each field may be left out:
  {
    "off":        ["Q14"],                          breakers, fuses, disconnects
    "switches":   {"S1": "off", "S3": "down"},      on/off, up/down, straight/crossed; "S2/L1" for one of two on a yoke
    "tripped":    ["R1b"],                          ground-fault devices and breakers with open contacts
    "unplugged":  ["Freezer", "L1"],                plugged loads, and luminaires or appliances that use nothing
    "leaks":      [{"at": "R3", "conductor": "hot", "to": "earth", "ohm": 19000}],
                                                    at an outlet; conductor and to: hot, neutral, ground; to also earth
    "ownTest":    ["R1b"],                          TEST of a device held: 15000 ohm from LOAD hot to LINE neutral
    "plugInTest": ["R3"]                            button of a plug-in tester held: 15000 ohm from hot to ground
  }
Readings are those before anything trips: hot-neutral, hot-ground, neutral-ground by a meter of 10 megohms, the plug-in
tester by the name on its label. It is computed from the drawing, at 60 Hz; nothing was measured, and it authorises no work on energised parts.

Exit status: 0 computed, 2 bad input or it could not be written, 3 a fault of the program.`;

async function simulate(file: string, options: SimulateOptions): Promise<Status> {
  if (file === "-" && options.setting === "-") {
    complainAbout("standard input", [problem("read-twice", "", "It can be read only once. Name - once.")]);
    return STATUS.badInput;
  }
  const opened = await openState(file, options.state);
  if (!opened.ok) {
    complainAbout(inputName(file), opened.problems);
    return STATUS.badInput;
  }
  const setting = await settingFor(opened.value, options.setting);
  if (!setting.ok) {
    complainAbout(inputName(options.setting ?? ""), setting.problems);
    return STATUS.badInput;
  }
  const simulated = simulateState(file, opened.value.project, opened.value.state, setting.value);
  if (options.netlist !== undefined) {
    const trouble = await writeNetlist(simulated, options.netlist, [file, options.setting ?? "-"]);
    if (trouble !== undefined) {
      complain(trouble);
      return STATUS.badInput;
    }
  }
  if (options.json) await printJson(simulatedAsJson(simulated));
  else await print(simulatedAsText(simulated));
  return STATUS.good;
}

async function settingFor(
  { project, state }: OpenedState,
  file: string | undefined,
): Promise<Result<OperatingSetting>> {
  const installation = findInstallation(project, state);
  if (file === undefined || installation === undefined) return ok(EVERYTHING_ON);
  const text = await readInput(file);
  if (!text.ok) return text;
  const input = parseJson(text.value);
  return input.ok ? readSetting(input.value, installation) : input;
}

/** @returns What went wrong, as one line; undefined when the deck is there, whole. */
async function writeNetlist(simulated: Simulated, out: string, inputs: readonly string[]): Promise<string | undefined> {
  const text = netlistOf(simulated);
  if (!/[.]cir$/i.test(out)) return makeFile(out, text, "--netlist");
  if (await isOneOf(out, inputs)) return `${out}: It is what was read, and stays as it is. Choose another name.`;
  const result = await replaceFile(out, new TextEncoder().encode(text));
  if (!result.saved) return result.message;
  if (result.note !== undefined) complain(result.note);
  return undefined;
}

async function isOneOf(out: string, inputs: readonly string[]): Promise<boolean> {
  const real = (name: string): Promise<string | undefined> => realpath(name).catch(() => undefined);
  const target = await real(out);
  if (target === undefined) return false;
  const read = await Promise.all(inputs.filter((name) => name !== "-").map(real));
  return read.includes(target);
}
