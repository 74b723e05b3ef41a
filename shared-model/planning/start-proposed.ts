import type { CommandCall } from "../answers/command-call.ts";
import { runCommand } from "../commands/run-command.ts";
import type { Project, StateName } from "../model/project.ts";

/** A document whose state can be planned in; `first` is what starts proposed where it was not, as part of the same step. */
export interface Started {
  readonly project: Project;
  readonly first: readonly CommandCall[];
}

const kept = new WeakMap<Project, Started>();

/** Of one document the same each time: what is derived of it is derived once. */
export function started(document: Project, state: StateName): Started {
  if (state === "as-found" || document.proposed !== undefined) return { project: document, first: [] };
  const known = kept.get(document) ?? start(document);
  kept.set(document, known);
  return known;
}

function start(document: Project): Started {
  const call: CommandCall = { command: "start-proposed", args: {} };
  const ran = runCommand(document, call);
  if (!ran.ok) throw new Error(`Proposed cannot be started: ${ran.refusal.message}`);
  return { project: ran.project, first: [call] };
}

/** A step of calls that run together, with others before them. */
export function withFirst(first: readonly CommandCall[], call: CommandCall): CommandCall {
  if (first.length === 0) return call;
  const { title, calls } = call.args as { readonly title: string; readonly calls: readonly CommandCall[] };
  return { command: "run-together", args: { title, calls: [...first, ...calls] } };
}
