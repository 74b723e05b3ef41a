import { type Command, Option } from "commander";
import type { RoomWay } from "../../answers/make-up.ts";
import { onOneLine } from "../../format/json-path.ts";
import { parseJson } from "../../format/parse-json.ts";
import { textToSave } from "../../format/text-to-save.ts";
import { failed, ok, type Problem, problem, type Result } from "../../lib/result.ts";
import type { Box, Enclosure } from "../../model/enclosure.ts";
import type { Installation, StateName } from "../../model/project.ts";
import type { MakeUpRefusal, Planned } from "../../planning/joint-group.ts";
import { makeUp } from "../../planning/make-up.ts";
import { readIntent } from "../../planning/read-intent.ts";
import { getInstallation } from "../../queries/installation-of.ts";
import { complain, complainAbout, print, printJson } from "./console.ts";
import { findingAsJson, madeUpAsJson, madeUpAsText } from "./make-up-forms.ts";
import { openState } from "./open-state.ts";
import { putDrawing } from "./put-drawing.ts";
import { inputName, readInput } from "./read-input.ts";
import { STATUS, type Status } from "./status.ts";

interface MakeUpOptions {
  readonly box: string;
  readonly intent: string;
  readonly out?: string;
  readonly state?: StateName;
  readonly room?: string;
  readonly json?: true;
}

export function addMakeUp(program: Command, end: (status: Status) => void): void {
  program
    .command("makeup")
    .description("Generate the make-up of a box from what it is to do, with the fewest moves from what is there.")
    .argument("<file>", "a drawing (.loadside); - reads standard input")
    .requiredOption("--box <box>", "which box, by id or name")
    .requiredOption("--intent <file>", "JSON file with what it is to do; - reads standard input")
    .option("--out <file>", "where the drawing goes; it may be named itself, any other file that is there stays")
    .addOption(
      new Option("--state <state>", "which wiring (default: proposed if it was started, else as-found)").choices([
        "as-found",
        "proposed",
      ]),
    )
    .option(
      "--room <way>",
      'how an overfull box gets room, as --json lists the ways; "as-it-is" leaves it (default: the least work)',
    )
    .option("--json", "print JSON")
    .addHelpText("after", HELP)
    .action(async (file: string, options: MakeUpOptions) => end(await makeUpFile(file, options)));
}

const HELP = `
What the box is to do; cables and devices by id or name, every cable that enters the box with one use:
  {
    "supply": "C1",
    "downstream": [{"cable": "C2", "protect": true}, {"cable": "C3", "protect": false}],
    "switched":   [{"cable": "C7", "switch": "S1", "protect": false}],
    "loops":      [{"cable": "C8", "feeds": {"devices": ["L1"], "cables": []}}],
    "travellers": [{"cable": "C9", "switch": "S2"}],
    "devices":    [{"device": "R2", "protect": true}],
    "replace":    [{"device": "R1", "type": "gfci-receptacle-15", "name": "R1b"}],
    "connectors": ["twist-medium", "twist-large"], "noPushIn": true, "direct": true, "bothHoles": false
  }
supply     the cable that feeds the box; or {"cable": "C1", "leg": "red"} where a multiwire supply has two hots, or
           {"cable": "C1", "as": "switch-loop" or "travellers", "switch": "S1"} where it comes to a switch only; with
           "as": "two-hots" it brings two hots and no neutral, as to a double-pole switch
protect    behind the ground-fault device of the box, or left on its LINE: false unless told
devices    and feeds: a split receptacle or a fan-light half by half, as "R5/upper" and "R5/lower"
loops      cables to a switch elsewhere: white out as the feed, black back as the return, as common practice has it
replace    other devices in the place of some: in proposed, which is started for it unless --state says otherwise
connectors those at hand, the first that takes a joint is used (default: twist-ons of the stock)
Every make-up is tried first: one that would bring a danger or a violation is not made. Without --out nothing is written.

Exit status: 0 made, 1 it cannot be made so, with the reason, 2 bad input or it could not be written, 3 a fault of the
program.`;

async function makeUpFile(file: string, options: MakeUpOptions): Promise<Status> {
  if (file === "-" && options.intent === "-") {
    complainAbout("standard input", [problem("read-twice", "", "It can be read only once. Name - once.")]);
    return STATUS.badInput;
  }
  const opened = await openState(file, options.state);
  if (!opened.ok) {
    complainAbout(inputName(file), opened.problems);
    return STATUS.badInput;
  }
  const { project } = opened.value;
  const installation = getInstallation(project, opened.value.state);
  const box = findBox(installation, options.box);
  if (!box.ok) {
    complainAbout(inputName(file), box.problems);
    return STATUS.badInput;
  }
  const intent = await readIntentFile(options.intent, installation, box.value);
  if (!intent.ok) {
    complainAbout(inputName(options.intent), intent.problems);
    return STATUS.badInput;
  }
  // Another device is work to be done: as found, it would only correct the record of what is there.
  const isWork = options.state === undefined && intent.value.replace.length > 0;
  const state = isWork ? "proposed" : opened.value.state;
  const { room } = options;
  const made = makeUp(
    project,
    state,
    box.value.id,
    intent.value,
    room === undefined ? {} : { room: room === AS_IT_IS ? false : room },
  );
  const unheard = room === undefined || room === AS_IT_IS ? undefined : whyNoSuchRoom(room, made);
  if (unheard !== undefined) {
    complainAbout(inputName(file), [unheard]);
    return STATUS.badInput;
  }
  if (!made.ok) return tellRefusal(made.refusal, inputName(options.intent), options.json === true);
  const trouble =
    options.out === undefined ? undefined : await putDrawing(file, options.out, textToSave(made.value.project));
  if (trouble !== undefined) {
    complain(trouble);
    return STATUS.badInput;
  }
  const after = getInstallation(made.value.project, state);
  const shown = {
    ...made.value,
    installation: after,
    after: after.enclosures[box.value.id] as Enclosure,
  };
  if (options.json)
    await printJson({ file, state, box: { id: box.value.id, name: box.value.name }, ...madeUpAsJson(shown) });
  else await print(madeUpAsText(`${inputName(file)}: ${box.value.name}`, shown));
  return STATUS.good;
}

const AS_IT_IS = "as-it-is";

/** A way that is none of those there are must not look as if it were taken. */
export function whyNoSuchRoom(
  room: string,
  told: Planned<{ readonly rooms: readonly RoomWay[] }>,
): Problem | undefined {
  const { rooms = [] } = told.ok ? told.value : told.refusal;
  if (rooms.some(({ title }) => title === room)) return undefined;
  const ways = rooms.map(({ title }) => `"${title}"`).join(", ");
  const toDo = ways === "" ? "The box needs no room. Leave --room out." : `Give one of ${ways}.`;
  return problem("no-such-way", "", `${onOneLine(JSON.stringify(room))} is no way to give the box room. ${toDo}`);
}

/** A box by id, or by a name that only one has. */
export function findBox({ enclosures }: Installation, text: string): Result<Box> {
  const boxes = Object.values(enclosures).filter((one): one is Box => one.kind === "box");
  const byId = boxes.find(({ id }) => id === text);
  const named = boxes.filter(({ name }) => name === text);
  const [only] = named;
  const isPanel = Object.values(enclosures).some((one) => one.kind !== "box" && (one.id === text || one.name === text));
  if (byId !== undefined) return ok(byId);
  if (only !== undefined && named.length === 1) return ok(only);
  const asked = onOneLine(JSON.stringify(text));
  if (named.length > 1)
    return failed(problem("not-unique", "", `Several boxes are named ${asked}. Give an id to --box.`));
  if (isPanel) return failed(problem("is-a-panel", "", `${asked} is a panel. Name one of its boxes in --box.`));
  return failed(problem("no-such-box", "", `It has no box ${asked}. Name one of its boxes in --box.`));
}

async function readIntentFile(file: string, installation: Installation, box: Box): ReturnType<typeof readOf> {
  return readOf(await readInput(file), installation, box);
}

async function readOf(text: Result<string>, installation: Installation, box: Box) {
  if (!text.ok) return text;
  const json = parseJson(text.value);
  return json.ok ? readIntent(json.value, installation, box) : json;
}

/** Mistakes of the intent itself; every other reason lies in the wiring or in the stock. */
const OF_THE_INPUT =
  /^(no-such-|cable-not-here|cable-without-use|device-without-use|.*-used-twice|guards-itself|not-a-switch)/;

/** The reason in one line; what the rules said, for scripts. */
export async function tellRefusal(
  { code, message, path = "", findings = [] }: MakeUpRefusal,
  input: string,
  asJson: boolean,
): Promise<Status> {
  // The rules can be looked up by their ids.
  const rules = [...new Set(findings.map(({ rule }) => rule))].join(", ");
  complainAbout(input, [problem(code, path, rules === "" ? message : `${message} (${rules})`)]);
  if (OF_THE_INPUT.test(code)) return STATUS.badInput;
  if (asJson) await printJson({ refused: { code, message, path, findings: findings.map(findingAsJson) } });
  return STATUS.findings;
}
