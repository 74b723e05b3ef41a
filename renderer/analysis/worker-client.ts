import { type FromWorker, PROTOCOL_VERSION } from "../../shared-model/analysis/protocol.ts";
import type { Project } from "../../shared-model/model/project.ts";
import type { Surroundings, WorkerClient } from "./client-contract.ts";
import { wording } from "./words.ts";
import { createArranging } from "./worker-arranging.ts";
import { type AllTakers, type Line, take } from "./worker-line.ts";
import { createQuestions } from "./worker-questions.ts";
import { createReading } from "./worker-reading.ts";
import { countRestarts, DEADLINE_MS, SLOW_DEADLINE_MS } from "./worker-restarts.ts";

/** No rule looks at a picture: the worker is not sent any. */
const PHOTOS = "attachments";
const withoutPhotos = (project: Project): Project =>
  Object.keys(project.attachments).length === 0 ? project : { ...project, [PHOTOS]: {} };

/**
 * Talks to the checking worker: every change goes out with its revision, answers come back with theirs. A worker that
 * does not answer in time is replaced and asked to name each rule as it begins; the rule that hangs again is left out.
 */
export function createWorkerClient(around: Surroundings): WorkerClient {
  let worker: ReturnType<Surroundings["createWorker"]> | undefined;
  let ready = false;
  let sent = -1;
  let answered = -1;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let lastRequest = 0;

  const line: Line = {
    isOpen: () => worker !== undefined,
    sent: () => sent,
    ifCurrent: (base, answer) => (base === around.document().revision ? answer : undefined),
    nextRequest: () => ++lastRequest,
    post: (message) => worker?.postMessage(message),
    watch,
  };
  const reading = createReading(line);
  const questions = createQuestions(line);
  const arranging = createArranging(line);
  const restarts = countRestarts(around.trouble);

  const takers: AllTakers = {
    hello({ version }) {
      ready = true;
      if (version !== PROTOCOL_VERSION) around.trouble(wording.theWindowAndItsChecksAre);
    },
    started: ({ rule }) => restarts.isAt(rule),
    answers(message) {
      answered = message.revision;
      restarts.isAt(undefined);
      if (answered >= sent) restarts.isWell();
      around.deliver(message);
    },
    "need-snapshot": sendSnapshot,
    ...reading.takers,
    ...questions.takers,
    ...arranging.takers,
  };

  function launch(): void {
    ready = false;
    answered = -1;
    restarts.isAt(undefined);
    worker = around.createWorker();
    worker.onmessage = ({ data }: MessageEvent<FromWorker>) => {
      take(takers, data);
      watch();
    };
    worker.onerror = replace;
    worker.onmessageerror = replace;
    line.post({ type: "hello", version: PROTOCOL_VERSION, ...restarts.greeting() });
    sendDocument();
    reading.sendUnjudged();
    watch();
  }

  function replace(): void {
    clearTimeout(timer);
    worker?.terminate();
    worker = undefined;
    arranging.giveUp();
    questions.giveUp();
    reading.giveUp();
    restarts.hasFailed();
    if (restarts.isAllowed()) launch();
    else reading.stop();
  }

  function retry(): void {
    if (worker !== undefined) return;
    restarts.beginAnew();
    launch();
  }

  /** Waits for what the worker owes, and no longer than that may take. */
  function watch(): void {
    clearTimeout(timer);
    const isBusy = !ready || answered < sent || reading.isGoingOn() || questions.isAny();
    if (worker === undefined || !isBusy) return;
    // The difference of the states of a large building, with every figure of its tests, is longer work than a check.
    const isQuick = ready && !reading.isGoingOn() && !questions.isOfScope();
    timer = setTimeout(replace, isQuick ? DEADLINE_MS : SLOW_DEADLINE_MS);
  }

  /** The whole document; where the worker has read it from a file itself, only that this is it. */
  function sendDocument(): void {
    const { project, revision } = around.document();
    const request = reading.requestOf(project);
    if (request === undefined) sendSnapshot();
    else {
      sent = revision;
      line.post({ type: "opened", request, revision });
    }
  }

  function sendSnapshot(): void {
    const { project, revision } = around.document();
    sent = revision;
    line.post({ type: "snapshot", project: withoutPhotos(project), revision });
  }

  return {
    start() {
      if (worker === undefined) {
        if (restarts.isAllowed()) launch();
      } else if (around.document().revision !== sent) {
        // It was started before, to read the file that is the document now.
        sendDocument();
        reading.sendUnjudged();
        watch();
      }
    },
    follow({ base, revision, patches }) {
      if (worker === undefined) return;
      if (patches === undefined) sendDocument();
      else if (base !== sent) sendSnapshot();
      else {
        sent = revision;
        line.post({ type: "patches", base, revision, patches: patches.filter(({ path }) => path[0] !== PHOTOS) });
      }
      watch();
    },
    parse(text) {
      if (worker === undefined) retry();
      return reading.parse(text);
    },
    readHere: reading.readHere,
    ...questions.asks,
    arrange: arranging.arrange,
    retry,
  };
}
