import { parseProject } from "../../format/parse-project.ts";
import { failed, ok, problem, type Result } from "../../lib/result.ts";
import type { Project, StateName } from "../../model/project.ts";
import { currentState, findInstallation } from "../../queries/installation-of.ts";
import { readInput } from "./read-input.ts";

export interface OpenedState {
  readonly project: Project;
  readonly state: StateName;
}

/** Reads a drawing and finds the wiring asked for; not asked, proposed if it was started. */
export async function openState(file: string, asked: StateName | undefined): Promise<Result<OpenedState>> {
  const text = await readInput(file);
  if (!text.ok) return text;
  const opened = parseProject(text.value);
  if (!opened.ok) return opened;
  const { project, readOnly, fileVersion } = opened.value;
  if (readOnly) {
    const message = `It is of version ${fileVersion} of the file format, newer than this program. Use a newer one.`;
    return failed(problem("too-new", "/version", message));
  }
  const state = asked ?? currentState(project);
  if (findInstallation(project, state) !== undefined) return ok({ project, state });
  return failed(problem("no-such-state", "/proposed", "Nothing is proposed in it yet. Ask for --state as-found."));
}
