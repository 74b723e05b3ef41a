import type { CommandCall } from "../../shared-model/answers/command-call.ts";
import type { FillLedger } from "../../shared-model/answers/fill.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { StateName } from "../../shared-model/model/project.ts";
import { documentStore, followDocument } from "../state/document-store.ts";
import { forgetAnswers, receiveAnswers, reportTrouble, showFindingsOf } from "../state/findings-store.ts";
import { tryFixesBy } from "../state/fix-trials.ts";
import { watchHeldEnd } from "../state/landing-store.ts";
import { createCheckingWorker } from "./trusted-worker.ts";
import { createWorkerClient } from "./worker-client.ts";

const client = createWorkerClient({
  createWorker: createCheckingWorker,
  document: documentStore.get,
  deliver: receiveAnswers,
  trouble: reportTrouble,
});

/** Reads the text of a file in the worker, so that a hostile one cannot stop the window. */
export const parseText = client.parse;

/** Starts checking again after it has stopped. */
export const retryChecks = client.retry;

/** The box fill of an enclosure as it would be after a command; undefined when nobody can tell now. */
export async function fillIfDone(
  state: StateName,
  call: CommandCall,
  enclosure: EnclosureId,
): Promise<FillLedger | undefined> {
  const [result] = (await client.preview(state, [call], undefined, enclosure)) ?? [];
  return result !== undefined && "fill" in result ? result.fill : undefined;
}

/**
 * Starts the worker and keeps it true to the document of this window, and the findings to the state that is shown. Call
 * once, before anything is drawn: whoever draws then never sees the findings of one state on the other.
 */
export function startChecks(): void {
  client.start();
  const showFindings = () => showFindingsOf(documentStore.get().state);
  documentStore.subscribe(showFindings);
  showFindings();
  tryFixesBy(client.preview);
  followDocument((change) => {
    if (change.patches === undefined) forgetAnswers();
    client.follow(change);
  });
  watchHeldEnd((choices) =>
    client.preview(
      documentStore.get().state,
      choices.map(({ call }) => call),
    ),
  );
}
