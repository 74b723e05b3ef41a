import type { SurveyTakeOver } from "../../../shared-model/answers/survey.ts";
import type { TypedCall } from "../../../shared-model/commands/command-args.ts";
import { type Dispatched, type DocumentState, dispatch } from "../document-store.ts";

/** Takes the roles that are settled, with their evidence, over into as found: one command, one step to undo. */
export const takeOver = ({ call }: SurveyTakeOver): Dispatched => dispatch(call as TypedCall);

/** Whether the last step of the document took this over, so that undo takes it back. */
export function wasTakenOver({ call }: SurveyTakeOver, { history }: Pick<DocumentState, "history">): boolean {
  const { title } = call.args as { readonly title?: string };
  return title !== undefined && history.past.at(-1)?.title === title.trim();
}
