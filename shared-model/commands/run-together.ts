import { catalogue } from "../lib/catalogue.ts";
import { type Check, catalogText, optional, record, titleText, wholeFrom } from "./args-shape.ts";
import { argsWording, forms } from "./args-words.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";

type Args = CommandArgs["run-together"];

const wording = catalogue({
  nested: "Commands that run together cannot hold others that do. Put all of them into one list.",
});

const MOST_CALLS = 200;

/** What a call carries is judged by its own command, when its turn comes. */
const anyArgs: Check = (value, at) => (value === undefined ? argsWording.missing(at) : undefined);

const call = record<{ command: string; args: unknown; base?: number }>({
  command: catalogText,
  args: anyArgs,
  base: optional(wholeFrom(0, Number.MAX_SAFE_INTEGER)),
});

const calls: Check = (value, at) => {
  if (!Array.isArray(value)) return argsWording.isNot(at, forms.list);
  if (value.length === 0) return argsWording.noCall(at);
  if (value.length > MOST_CALLS) return argsWording.many(at, MOST_CALLS);
  for (let index = 0; index < value.length; index++) {
    const wrong = call(value[index], `${at}[${index}]`);
    if (wrong !== undefined) return wrong;
  }
  return undefined;
};

/**
 * Several commands as one step, each on what the one before made of the document; all of them or none. `run-command.ts`
 * runs the calls, because a command cannot run another.
 */
export const runTogether = defineCommand<Args>({
  id: "run-together",
  args: record<Args>({ title: titleText, calls }),
  label: (_project, { title }) => title.trim(),
  refuse(_project, args) {
    if (args.calls.every(({ command }) => command !== "run-together")) return undefined;
    return refusal("nested", wording.nested);
  },
  apply() {
    throw new Error("run-together has no edit of its own.");
  },
});
