import {
  applyPatches as applyToDraft,
  type Draft,
  enablePatches,
  type Patch,
  produceWithPatches,
  setAutoFreeze,
} from "immer";
import type { CommandCall } from "../answers/command-call.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import { freezeThrough } from "../lib/freeze-through.ts";
import type { Project } from "../model/project.ts";
import type { CommandArgs } from "./command-args.ts";
import { type Command, type Refusal, refusal } from "./define-command.ts";
import { carryOver, writeCarried } from "./flow/carry-over.ts";
import { holdBack } from "./flow/held-back.ts";
import { freezeAlong } from "./plain-data.ts";
import { commands, isCommandId } from "./registry.ts";

const wording = catalogue({
  malformed: (command: Part, wrong: Part) =>
    `“${command}” cannot be run as it was asked: ${wrong}. Correct it and try again.`,
  noCommand: "There is no such command. Pick one from the list of commands.",
});

enablePatches();
// Its own freezing looks through every entry of a table that changed; `freezeAlong` does with what was made.
setAutoFreeze(false);

/** What a command made of a document. `project` is the same object as before when nothing changed; `patches` is then empty. */
export interface Edit extends Made {
  /** Name of the step, for undo. */
  readonly title: string;
  /** Equal keys of steps that follow each other quickly make one undo step. */
  readonly mergeKey?: string;
}

interface Made {
  readonly project: Project;
  readonly patches: readonly Patch[];
  /** Patches that take the step back, to be applied in their order. */
  readonly inverse: readonly Patch[];
}

export type RunResult = ({ readonly ok: true } & Edit) | Refused;

interface Refused {
  readonly ok: false;
  readonly refusal: Refusal;
}

/**
 * Runs one command on a document, which keeps its content: the result is a new, frozen document that shares what did not
 * change. Where it edits as found, the edit is carried on into proposed in the same step. A document that is not frozen
 * yet is frozen in place first. An unknown command, malformed arguments and everything the command refuses come back as
 * a refusal; it throws only where the program is wrong.
 */
export function runCommand(project: Project, call: CommandCall): RunResult {
  const no = whyNot(project, call);
  if (no !== undefined) return { ok: false, refusal: no };
  const before = frozen(project);
  const command = getCommand(call);
  const title = command.label(before, call.args);
  const made = isTogether(call) ? runTogether(before, call, title) : runOne(before, call, title);
  if (!("patches" in made)) return made;
  const mergeKey = command.mergeKey?.(call.args);
  const edit: RunResult = {
    ok: true,
    ...made,
    title,
    ...(mergeKey !== undefined && { mergeKey: `${call.command} ${mergeKey}` }),
  };
  return Object.freeze(edit);
}

/** Why a call would not run on this document; undefined when it would. */
export function refusalOf(project: Project, call: CommandCall): Refusal | undefined {
  const no = whyNot(project, call);
  if (no !== undefined || !isTogether(call)) return no;
  const made = runTogether(frozen(project), call, "");
  return "patches" in made ? undefined : made.refusal;
}

/** What speaks against a call at first sight; calls that run together are looked at when their turn comes. */
function whyNot(project: Project, call: CommandCall): Refusal | undefined {
  if (typeof call !== "object" || call === null || typeof call.command !== "string" || !isCommandId(call.command))
    return refusal("unknown-command", wording.noCommand);
  const command = getCommand(call);
  const wrong = command.args(call.args, "args");
  if (wrong !== undefined) return refusal("malformed-arguments", wording.malformed(call.command, wrong));
  return command.refuse(project, call.args);
}

/** One command, carried on into proposed where it edited as found. */
function runOne(before: Project, call: CommandCall, title: string): Made {
  const own = runAlone(before, call);
  const carried = carryOn(before, own);
  return "because" in carried ? heldBack(before, own, title, carried.because) : carried;
}

const runAlone = (before: Project, call: CommandCall): Made =>
  produce(before, (draft) => getCommand(call).apply(draft, call.args, before));

/** An edit with what follows from it in proposed, or why that cannot follow. */
function carryOn(before: Project, own: Made): Made | { readonly because: string } {
  const outcome = carryOver(before, own.project, own.patches);
  if (outcome === undefined) return own;
  if (!outcome.ok) return outcome;
  return joined(
    own,
    produce(own.project, (draft) => writeCarried(draft, own.project, outcome)),
  );
}

function heldBack(before: Project, own: Made, title: string, because: string): Made {
  const { project, patches } = own;
  return joined(
    own,
    produce(project, (draft) => holdBack(draft, before, project, patches, { title, because })),
  );
}

type TogetherCall = { readonly command: "run-together"; readonly args: CommandArgs["run-together"] };

const isTogether = (call: CommandCall): call is TogetherCall => call.command === "run-together";

/**
 * Call after call, each carried on into proposed before the next. Where one of them cannot be, none is: they are one
 * gesture, so all run again without being carried on, and one word is kept for all.
 */
function runTogether(before: Project, { args: { calls } }: TogetherCall, title: string): Made | Refused {
  let because: string | undefined;
  const ran = runEach(before, calls, (from, own) => {
    const carried = carryOn(from, own);
    if (!("because" in carried)) return carried;
    because = carried.because;
    return undefined;
  });
  if (ran !== undefined || because === undefined) return ran ?? nothing(before);
  const alone = runEach(before, calls, (_from, own) => own) ?? nothing(before);
  return "patches" in alone ? heldBack(before, alone, title, because) : alone;
}

const nothing = (project: Project): Made => ({ project, patches: [], inverse: [] });

/** Undefined where `next` gives up on a call. */
function runEach(
  before: Project,
  calls: readonly CommandCall[],
  next: (from: Project, own: Made) => Made | undefined,
): Made | Refused | undefined {
  let sum = nothing(before);
  for (const call of calls) {
    const no = whyNot(sum.project, call);
    if (no !== undefined) return { ok: false, refusal: no };
    const made = next(sum.project, runAlone(sum.project, call));
    if (made === undefined) return undefined;
    sum = joined(sum, made);
  }
  return sum;
}

const joined = (first: Made, second: Made): Made =>
  second.patches.length === 0
    ? first
    : {
        project: second.project,
        patches: [...first.patches, ...second.patches],
        inverse: [...second.inverse, ...first.inverse],
      };

function produce(before: Project, recipe: (draft: Draft<Project>) => void): Made {
  const [project, patches, inverse] = produceWithPatches(before, recipe);
  freezeAlong(project, patches);
  return { project, patches, inverse };
}

/** The document after some patches, frozen. Throws when they do not belong to it: that is a bug, or a document out of step. */
export const applyPatches = (project: Project, patches: readonly Patch[]): Project =>
  patches.length === 0 ? project : follow(frozen(project), patches);

/** The same for a part of a document, with paths from that part. */
export const applyPatchesTo = <T extends object>(part: T, patches: readonly Patch[]): T => follow(part, patches);

function follow<T extends object>(before: T, patches: readonly Patch[]): T {
  const after = applyToDraft(before, patches as Patch[]);
  freezeAlong(after, patches);
  return after;
}

/**
 * A document that just came from a file or a message is not frozen yet: once frozen through and through, every later
 * edit freezes only what it makes.
 */
const frozen = (project: Project): Project => (Object.isFrozen(project) ? project : freezeThrough(project));

/** The arguments were checked by the command's own form, which is what its type says. */
const getCommand = (call: CommandCall): Command<unknown> => {
  if (!isCommandId(call.command)) throw new Error(`No command ${call.command}.`);
  return commands[call.command];
};
