import type { CommandCall } from "../../shared-model/answers/command-call.ts";
import type { FillLedger } from "../../shared-model/answers/fill.ts";
import type { Problem, Result } from "../../shared-model/lib/result.ts";
import type { EnclosureId } from "../../shared-model/model/ids.ts";
import type { StateName } from "../../shared-model/model/project.ts";
import { afterPaint } from "../platform/after-paint.ts";
import { supplyBy } from "../state/ask-supply.ts";
import { documentStore, followDocument } from "../state/document-store.ts";
import { energiseBy } from "../state/energise/ask-energised.ts";
import { expectTestsBy } from "../state/expected-tests.ts";
import { forgetAnswers, receiveAnswers, reportTrouble, showFindingsOf } from "../state/findings-store.ts";
import { tryFixesBy } from "../state/fix-trials.ts";
import { watchHeldEnd } from "../state/landing-store.ts";
import { arrangeBy } from "../state/laying-out.ts";
import { makeUpBy } from "../state/make-up/making-up.ts";
import { tellDropsBy } from "../state/outlet-drops.ts";
import { readRulesBy } from "../state/rule-book.ts";
import { scopeBy } from "../state/scope/ask-scope.ts";
import { surveyBy } from "../state/survey/ask-survey.ts";
import type { ParseOutcome } from "./client-contract.ts";
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

/** From here on a text is read where a person cannot be kept waiting: it takes about 20 ms a million characters. */
const MOST_READ_HERE = 16 * 1024 * 1024;

/** Brings what reads a text in the window. */
export const fetchReader = () => import("../../shared-model/format/parse-project.ts");

/**
 * Reads the text of the file that the window is started with: here, since there is nothing yet that it could hold up,
 * and what gives cause for doubt in the worker.
 */
export async function parseStartText(text: string): Promise<ParseOutcome> {
  if (text.length > MOST_READ_HERE) return parseText(text);
  const { parsePlain, parseProject } = await fetchReader();
  const plain = parsePlain(text);
  if (plain === undefined) return parseText(text);
  const { project, readOnly, judged } = plain;
  if (judged) {
    client.readHere(text, project);
    return { ok: true, project, readOnly };
  }
  const told = new Promise<readonly Problem[] | undefined>((done) => client.readHere(text, project, done));
  const verdict = told.then((problems) => problems ?? problemsOf(parseProject(text)));
  return { ok: true, project, readOnly, verdict };
}

const problemsOf = (read: Result<unknown>): readonly Problem[] => (read.ok ? [] : read.problems);

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
 * Keeps the worker true to the document of this window, and the findings to the state that is shown. Call once, before
 * anything is drawn: whoever draws then never sees the findings of one state on the other. Checking itself begins with
 * the first document that is opened, or with `beginChecks`.
 */
export function startChecks(): void {
  const showFindings = () => showFindingsOf(documentStore.get().state);
  documentStore.subscribe(showFindings);
  showFindings();
  tryFixesBy(client.preview);
  energiseBy(client.energise);
  tellDropsBy(client.outletDrops);
  expectTestsBy(client.expectedTests);
  readRulesBy(client.ruleBook);
  makeUpBy(client.makeUp, client.fit);
  supplyBy(client.supply);
  scopeBy(client.scope);
  surveyBy(client.survey);
  arrangeBy(client.arrange);
  followDocument((change) => {
    if (change.patches !== undefined) {
      client.follow(change);
      return;
    }
    forgetAnswers();
    // Another document is seen first and checked then: both at once would keep a person waiting for either.
    if (hasBegun) afterPaint(() => client.follow(change));
  });
  watchHeldEnd((choices) =>
    client.preview(
      documentStore.get().state,
      choices.map(({ call }) => call),
    ),
  );
}

let hasBegun = false;

/** Starts the worker, where it was not started. */
export function beginChecks(): void {
  hasBegun = true;
  client.start();
}
