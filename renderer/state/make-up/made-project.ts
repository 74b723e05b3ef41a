import type { MadeUp } from "../../../shared-model/answers/make-up.ts";
import type { TypedCall } from "../../../shared-model/commands/command-args.ts";
import type { Project } from "../../../shared-model/model/project.ts";
import { tryCall } from "../document-store.ts";

/** A copy of the document with a make-up run on it; undefined where it would not run. The document stays as it is. */
export function madeProject({ call }: MadeUp): Project | undefined {
  // The call is data from the worker: the command looks at its form.
  const tried = tryCall({ command: call.command, args: call.args } as TypedCall);
  return tried.ok ? tried.project : undefined;
}
