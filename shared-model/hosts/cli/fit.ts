import type { Command } from "commander";
import { findDeviceType } from "../../catalog/device-types.ts";
import { runCommand } from "../../commands/run-command.ts";
import { onOneLine } from "../../format/json-path.ts";
import { isName } from "../../format/schema/basics.ts";
import { textToSave } from "../../format/text-to-save.ts";
import { failed, ok, type Problem, problem, type Result } from "../../lib/result.ts";
import type { Enclosure } from "../../model/enclosure.ts";
import type { CableId, OutletKey } from "../../model/ids.ts";
import type { Installation, Project } from "../../model/project.ts";
import { type FitProposal, type FitRequest, fitDevice } from "../../planning/fit-device.ts";
import { outletsOf } from "../../queries/outlets-of.ts";
import { complain, complainAbout, print, printJson } from "./console.ts";
import { tellRefusal, whyNoSuchRoom } from "./make-up.ts";
import { fittedAsJson, fittedAsText } from "./make-up-forms.ts";
import { openState } from "./open-state.ts";
import { putDrawing } from "./put-drawing.ts";
import { inputName } from "./read-input.ts";
import { STATUS, type Status } from "./status.ts";

interface FitOptions {
  readonly outlet: string;
  readonly out?: string;
  readonly type?: string;
  readonly name?: string;
  readonly protect?: readonly string[];
  readonly leave?: readonly string[];
  readonly room?: string;
  readonly json?: true;
}

export function addFit(program: Command, end: (status: Status) => void): void {
  program
    .command("fit")
    .description("Put a ground-fault device in the place of a receptacle, in proposed, with the fewest moves.")
    .argument("<file>", "a drawing (.loadside); - reads standard input")
    .requiredOption("--outlet <outlet>", "which receptacle, by id or name")
    .option("--out <file>", "where the drawing goes; it may be named itself, any other file that is there stays")
    .option("--type <type>", "device of the stock to fit (default: the first that brings no violation)")
    .option("--name <name>", "what to call it (default: the old name with a letter)")
    .option("--protect <cables...>", "cables to put on LOAD, whatever wishes and requirements say")
    .option("--leave <cables...>", "cables to leave on LINE")
    .option(
      "--room <way>",
      "how the box gets the room that it needs, as --json lists the ways (default: the least work)",
    )
    .option("--json", "print JSON")
    .addHelpText("after", HELP)
    .action(async (file: string, options: FitOptions) => end(await fitInto(file, options)));
}

const HELP = `
What needs protection, by the code or a wish, goes to LOAD, hot and neutral of a cable together; the rest stays on LINE.
A cable to a freezer or an alarm stays on LINE unless --protect names it, and is told of. Proposed is started where it was
not. Nothing is fitted that would bring a danger or a violation: the reason is told, and what would help.
Without --out nothing is written.

Exit status: 0 fitted, 1 it cannot be fitted there, with the reason, 2 bad input or it could not be written, 3 a fault of
the program.`;

async function fitInto(file: string, options: FitOptions): Promise<Status> {
  const opened = await openState(file, undefined);
  if (!opened.ok) {
    complainAbout(inputName(file), opened.problems);
    return STATUS.badInput;
  }
  const { project } = opened.value;
  const proposed = project.proposed ?? project.asFound;
  const asked = readRequest(proposed, options);
  if (!asked.ok) {
    complainAbout(inputName(file), asked.problems);
    return STATUS.badInput;
  }
  const fitted = fitDevice(project, asked.value);
  const noRoom = options.room === undefined ? undefined : whyNoSuchRoom(options.room, fitted);
  if (noRoom !== undefined) {
    complainAbout(inputName(file), [noRoom]);
    return STATUS.badInput;
  }
  if (!fitted.ok) return tellRefusal(fitted.refusal, inputName(file), options.json === true);
  const { value } = fitted;
  const unheard = whyUndecided(value, proposed, asked.value.decided);
  if (unheard !== undefined) {
    complainAbout(inputName(file), [unheard]);
    return STATUS.badInput;
  }
  const done = runCommand(project, value.call);
  if (!done.ok) throw new Error(done.refusal.message);
  const trouble = options.out === undefined ? undefined : await putDrawing(file, options.out, textToSave(done.project));
  if (trouble !== undefined) {
    complain(trouble);
    return STATUS.badInput;
  }
  const installation = (done.project as Project).proposed as Installation;
  const made = {
    installation,
    before: value.box,
    after: installation.enclosures[value.box.id] as Enclosure,
    plan: value.plan,
    judged: value.judged,
    room: value.room,
    rooms: value.rooms,
  };
  if (options.json) await printJson(fittedAsJson(file, value, made));
  else await print(fittedAsText(value, made));
  return STATUS.good;
}

/** A cable that was given to a side and is not there: what nobody heeds must not look as if it were done. */
function whyUndecided(
  { sides, old }: FitProposal,
  { cables }: Installation,
  decided: ReadonlyMap<CableId, boolean>,
): Problem | undefined {
  for (const [id, protect] of decided) {
    const name = cables[id]?.name ?? id;
    const option = protect ? "--protect" : "--leave";
    const side = sides.find((one) => one.cables.includes(id));
    if (side === undefined)
      return problem("cable-not-here", "", `${name} does not hang on ${old.name}. Leave it out of ${option}.`);
    if (side.side !== (protect ? "LOAD" : "LINE"))
      return problem("side-fixed", "", `${name} stays on ${side.side}: ${side.why}. Leave it out of ${option}.`);
  }
  return undefined;
}

function readRequest(installation: Installation, options: FitOptions): Result<FitRequest & { decided: Decided }> {
  const outlet = findOutlet(installation, options.outlet);
  if (!outlet.ok) return outlet;
  if (options.name !== undefined && !isName(options.name))
    return failed(problem("bad-name", "", "--name needs a name of 1 to 80 characters on one line. Give one."));
  if (options.type !== undefined && findDeviceType(options.type) === undefined)
    return failed(
      problem(
        "unknown-type",
        "",
        `The stock has no device ${quoted(options.type)}. Give --type such as gfci-receptacle-15.`,
      ),
    );
  const decided: Decided = new Map();
  for (const [names, protect] of [
    [options.protect ?? [], true],
    [options.leave ?? [], false],
  ] as const)
    for (const name of names) {
      const found = Object.values(installation.cables).filter((cable) => cable.id === name || cable.name === name);
      const [only] = found;
      if (only === undefined || found.length > 1)
        return failed(
          problem(
            "no-such-cable",
            "",
            `${found.length > 1 ? "Several cables are" : "No cable is"} named ${quoted(name)}. Name one in --${protect ? "protect" : "leave"}.`,
          ),
        );
      if (decided.get(only.id) === !protect)
        return failed(
          problem("decided-twice", "", `${only.name} is named in --protect and in --leave. Name it in one of them.`),
        );
      decided.set(only.id, protect);
    }
  const { type, name, room } = options;
  return ok({
    outlet: outlet.value,
    decided,
    ...(type !== undefined && { type }),
    ...(name !== undefined && { name }),
    ...(room !== undefined && { room }),
  });
}

type Decided = Map<CableId, boolean>;

const quoted = (text: string): string => onOneLine(JSON.stringify(text));

/** An outlet by its key, or by a name that only one has; a device by its own. */
function findOutlet({ enclosures }: Installation, text: string): Result<OutletKey> {
  const devices = Object.values(enclosures).flatMap((enclosure) => Object.values(enclosure.devices));
  const all = devices.flatMap((device) => [
    { key: device.id as string as OutletKey, name: device.name },
    ...outletsOf(device).map(({ key, name }) => ({ key, name })),
  ]);
  const unique = [...new Map(all.map((one) => [one.key, one])).values()];
  const byKey = unique.find(({ key }) => key === text);
  const named = unique.filter(({ name }) => name === text);
  const [only] = named;
  if (byKey !== undefined) return ok(byKey.key);
  if (only !== undefined && named.length === 1) return ok(only.key);
  if (named.length > 1)
    return failed(problem("not-unique", "", `Several outlets are named ${quoted(text)}. Give an id to --outlet.`));
  return failed(problem("no-such-outlet", "", `It has no outlet ${quoted(text)}. Name one in --outlet.`));
}
