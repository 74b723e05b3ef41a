import { applyPatches as applyToDraft, enablePatches, type Patch, produceWithPatches, setAutoFreeze } from "immer";
import type { CommandCall } from "../answers/command-call.ts";
import type { Project } from "../model/project.ts";
import { type Command, type Refusal, refusal } from "./define-command.ts";
import { freezeAlong, freezeThrough } from "./plain-data.ts";
import { commands, isCommandId } from "./registry.ts";

enablePatches();
// Its own freezing looks through every entry of a table that changed; `freezeAlong` does with what was made.
setAutoFreeze(false);

/** What a command made of a document. `project` is the same object as before when nothing changed; `patches` is then empty. */
export interface Edit {
  readonly project: Project;
  readonly patches: readonly Patch[];
  /** Patches that take the step back, to be applied in their order. */
  readonly inverse: readonly Patch[];
  /** Name of the step, for undo. */
  readonly title: string;
  /** Equal keys of steps that follow each other quickly make one undo step. */
  readonly mergeKey?: string;
}

export type RunResult = ({ readonly ok: true } & Edit) | { readonly ok: false; readonly refusal: Refusal };

/**
 * Runs one command on a document, which keeps its content: the result is a new, frozen document that shares what did not
 * change. A document that is not frozen yet is frozen in place first. An unknown command, malformed arguments and
 * everything the command refuses come back as a refusal; it throws only where the program is wrong.
 */
export function runCommand(project: Project, call: CommandCall): RunResult {
  const no = refusalOf(project, call);
  if (no !== undefined) return { ok: false, refusal: no };
  const command = getCommand(call);
  const before = frozen(project);
  const [after, patches, inverse] = produceWithPatches(before, (draft) => {
    command.apply(draft, call.args, before);
  });
  freezeAlong(after, patches);
  const mergeKey = command.mergeKey?.(call.args);
  const edit: RunResult = {
    ok: true,
    project: after,
    patches,
    inverse,
    title: command.label(before, call.args),
    ...(mergeKey !== undefined && { mergeKey }),
  };
  return Object.freeze(edit);
}

/** Why a call would not run on this document; undefined when it would. */
export function refusalOf(project: Project, call: CommandCall): Refusal | undefined {
  if (typeof call !== "object" || call === null || typeof call.command !== "string" || !isCommandId(call.command))
    return refusal("unknown-command", "There is no such command. Pick one from the list of commands.");
  const command = getCommand(call);
  const wrong = command.args(call.args, "args");
  if (wrong !== undefined)
    return refusal(
      "malformed-arguments",
      `“${call.command}” cannot be run as it was asked: ${wrong}. Correct it and try again.`,
    );
  return command.refuse(project, call.args);
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
