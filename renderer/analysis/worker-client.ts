import {
  type ArrangedMove,
  type ArrangeProgress,
  type FromWorker,
  PROTOCOL_VERSION,
  type PreviewResult,
  type SurveyReply,
  type ToWorker,
} from "../../shared-model/analysis/protocol.ts";
import type { Energised } from "../../shared-model/answers/energised.ts";
import type { ExpectedAnswer } from "../../shared-model/answers/expected-test.ts";
import type { FitAnswer, MakeUpAnswer } from "../../shared-model/answers/make-up.ts";
import type { OutletDropAnswer } from "../../shared-model/answers/outlet-drop.ts";
import type { BookRule } from "../../shared-model/answers/rule-book.ts";
import type { ScopeAnswer, ScopePart } from "../../shared-model/answers/scope.ts";
import type { Json } from "../../shared-model/format/json.ts";
import { projectOfReadable, readableJson } from "../../shared-model/format/read-again.ts";
import { type Problem, problem } from "../../shared-model/lib/result.ts";
import { unreachable } from "../../shared-model/lib/unreachable.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { withNews } from "../../shared-model/queries/energised-news.ts";
import type { EnergisedAt, ParseOutcome, Surroundings, WorkerClient } from "./client-contract.ts";
import { wording } from "./words.ts";

/** A check that takes longer hangs: the whole of the largest drawing takes a fraction of it. */
export const DEADLINE_MS = 2000;
/** The first answer waits for the script to load; reading the largest file that is taken waits for its size. */
const SLOW_DEADLINE_MS = 20_000;
const RESTARTS = 3;

/** No rule looks at a picture: the worker is not sent any. */
const PHOTOS = "attachments";
const withoutPhotos = (project: Project): Project =>
  Object.keys(project.attachments).length === 0 ? project : { ...project, [PHOTOS]: {} };

/** Questions of one kind that wait for an answer, by their number. */
type Waiting<T> = Map<number, (answer: T | undefined) => void>;

/** A text that is being judged. */
interface Parse {
  readonly text: string;
  /** Read here while the worker judges it: a text that it called readable cannot hold the window up for long. */
  json?: Json;
  done(outcome: ParseOutcome): void;
}

/** A text whose document is shown already, while the worker judges it. */
interface Unjudged {
  readonly text: string;
  /** The question that this worker was sent it with. */
  request?: number | undefined;
  judged(problems: readonly Problem[] | undefined): void;
}

/**
 * Talks to the checking worker: every change goes out with its revision, answers come back with theirs. A worker that
 * does not answer in time is replaced and asked to name each rule as it begins; the rule that hangs again is left out.
 */
export function createWorkerClient(around: Surroundings): WorkerClient {
  let worker: ReturnType<Surroundings["createWorker"]> | undefined;
  let ready = false;
  let restarts = 0;
  let sent = -1;
  let answered = -1;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let lastRule: string | undefined;
  let nextRequest = 1;
  const disabledRules: string[] = [];
  const parses = new Map<number, Parse>();
  /** What this worker read last and may still hold. */
  let read: { readonly request: number; readonly project: Project } | undefined;
  /** What this window read itself last, and nobody has told the worker of. */
  let own: { readonly text: string; readonly project: Project } | undefined;
  let unjudged: Unjudged | undefined;
  const previews: Waiting<readonly PreviewResult[]> = new Map();
  const energisings: Waiting<EnergisedAt> = new Map();
  const dropsAsked: Waiting<readonly OutletDropAnswer[]> = new Map();
  const testsAsked: Waiting<readonly ExpectedAnswer[]> = new Map();
  const makeUpsAsked: Waiting<MakeUpAnswer> = new Map();
  const fitsAsked: Waiting<FitAnswer> = new Map();
  const scopesAsked: Waiting<ScopeAnswer> = new Map();
  /** Differences whose work is still being worked out, and who is told of one. */
  const scopeParts = new Map<number, { part?: ScopePart; readonly first: (part: ScopePart) => void }>();
  const surveysAsked: Waiting<SurveyReply> = new Map();
  const booksAsked: Waiting<readonly BookRule[]> = new Map();
  /** It takes as long as it takes, and other answers come meanwhile: nobody waits for the deadline by it. */
  let arranging:
    | {
        readonly request: number;
        readonly tell: (progress: ArrangeProgress) => void;
        readonly done: (moves: readonly ArrangedMove[] | undefined) => void;
      }
    | undefined;
  /** What this worker answered last: its next answer continues it. */
  let energised: Energised | undefined;

  const asked = [
    previews,
    energisings,
    dropsAsked,
    testsAsked,
    makeUpsAsked,
    fitsAsked,
    scopesAsked,
    surveysAsked,
    booksAsked,
  ];

  const post = (message: ToWorker): void => worker?.postMessage(message);
  const isReading = (): boolean => parses.size > 0 || unjudged !== undefined;
  const isBusy = (): boolean => !ready || answered < sent || isReading() || asked.some(({ size }) => size > 0);

  /** Puts a question to the worker; undefined when there is none. */
  function ask<T>(waiting: Waiting<T>, question: (request: number) => ToWorker): Promise<T | undefined> {
    if (worker === undefined) return Promise.resolve(undefined);
    return new Promise((done) => {
      const request = nextRequest++;
      waiting.set(request, done);
      post(question(request));
      watch();
    });
  }

  function answer<T>(waiting: Waiting<T>, request: number, given: T | undefined): void {
    waiting.get(request)?.(given);
    waiting.delete(request);
  }

  /** An answer about another state of the document than the present one is none. */
  const ifCurrent = <T>(base: number, given: T): T | undefined =>
    base === around.document().revision ? given : undefined;

  function watch(): void {
    clearTimeout(timer);
    if (worker === undefined || !isBusy()) return;
    // The difference of the states of a large building, with every figure of its tests, is longer work than a check.
    const isQuick = ready && !isReading() && scopesAsked.size === 0;
    timer = setTimeout(replace, isQuick ? DEADLINE_MS : SLOW_DEADLINE_MS);
  }

  function launch(): void {
    ready = false;
    answered = -1;
    lastRule = undefined;
    read = undefined;
    energised = undefined;
    worker = around.createWorker();
    worker.onmessage = ({ data }: MessageEvent<FromWorker>) => receive(data);
    worker.onerror = replace;
    worker.onmessageerror = replace;
    const watchful = restarts > 0;
    post({
      type: "hello",
      version: PROTOCOL_VERSION,
      ...(disabledRules.length > 0 && { disabledRules }),
      ...(watchful && { watchful }),
    });
    if (unjudged !== undefined) unjudged.request = undefined;
    sendDocument();
    for (const [request, { text }] of parses) post({ type: "parse", request, text });
    sendUnjudged();
    watch();
  }

  /** The whole document; where the worker has read it from a file itself, only that this is it. */
  function sendDocument(): void {
    const { project, revision } = around.document();
    const request = read?.project === project ? read.request : sendOwn(project);
    read = undefined;
    if (request === undefined) sendSnapshot();
    else {
      sent = revision;
      post({ type: "opened", request, revision });
    }
  }

  /** Has the worker read the text that this window read the document from. */
  function sendOwn(project: Project): number | undefined {
    if (own?.project !== project) return undefined;
    const request = nextRequest++;
    post({ type: "parse", request, text: own.text });
    if (unjudged !== undefined && unjudged.text === own.text) unjudged.request = request;
    own = undefined;
    return request;
  }

  /** The document may have moved on, or another worker may have begun to read it: it is to be judged all the same. */
  function sendUnjudged(): void {
    if (unjudged === undefined || unjudged.request !== undefined) return;
    unjudged.request = nextRequest++;
    post({ type: "parse", request: unjudged.request, text: unjudged.text });
  }

  function judge(problems: readonly Problem[] | undefined): void {
    const told = unjudged;
    unjudged = undefined;
    told?.judged(problems);
  }

  function sendSnapshot(): void {
    const { project, revision } = around.document();
    sent = revision;
    post({ type: "snapshot", project: withoutPhotos(project), revision });
  }

  function replace(): void {
    clearTimeout(timer);
    worker?.terminate();
    worker = undefined;
    settleAsked();
    // A file that hangs the reader would hang the next worker too.
    for (const [request, { done }] of parses) {
      parses.delete(request);
      done({
        ok: false,
        problems: [problem("reading-stopped", "", wording.readingThisFileTookTooLong)],
      });
    }
    if (lastRule !== undefined) disabledRules.push(lastRule);
    restarts += 1;
    if (restarts > RESTARTS) {
      around.trouble(wording.checkingHasStoppedItDidNot);
      judge(undefined);
      return;
    }
    around.trouble(troubleSentence() ?? wording.checkingDidNotAnswerAndWas);
    launch();
  }

  const troubleSentence = (): string | undefined =>
    disabledRules.length === 0 ? undefined : wording.leftOutBecauseItDidNot(disabledRules.join(", "));

  function endArranging(moves: readonly ArrangedMove[] | undefined): void {
    const ended = arranging;
    arranging = undefined;
    ended?.done(moves);
  }

  function settleAsked(): void {
    endArranging(undefined);
    for (const open of asked) {
      for (const done of open.values()) done(undefined);
      open.clear();
    }
    scopeParts.clear();
  }

  function receive(message: FromWorker): void {
    switch (message.type) {
      case "hello":
        ready = true;
        if (message.version !== PROTOCOL_VERSION) around.trouble(wording.theWindowAndItsChecksAre);
        break;
      case "started":
        lastRule = message.rule;
        break;
      case "answers":
        answered = message.revision;
        lastRule = undefined;
        if (answered >= sent) {
          restarts = 0;
          around.trouble(troubleSentence());
        }
        around.deliver(message);
        break;
      case "need-snapshot":
        sendSnapshot();
        break;
      case "readable":
        readHere(message.request);
        break;
      case "parsed":
        if (message.request === unjudged?.request) judge([]);
        takeParsed(message.request, message.readOnly);
        break;
      case "not-parsed":
        if (message.request === unjudged?.request) judge(message.problems);
        finishParse(message.request, { ok: false, problems: message.problems });
        break;
      case "previewed":
        answer(previews, message.request, ifCurrent(message.base, message.results));
        break;
      case "energised": {
        const { request, base, answer: news } = message;
        if (news !== undefined) energised = withNews(energised, news);
        answer(energisings, request, news && energised && { revision: base, answer: energised });
        break;
      }
      case "outlet-drops":
        answer(dropsAsked, message.request, ifCurrent(message.base, message.drops));
        break;
      case "expected-tests":
        answer(testsAsked, message.request, ifCurrent(message.base, message.answers));
        break;
      case "made-up":
        answer(makeUpsAsked, message.request, ifCurrent(message.base, message.answer));
        break;
      case "fitted":
        answer(fitsAsked, message.request, ifCurrent(message.base, message.answer));
        break;
      case "scoped":
        scopeParts.delete(message.request);
        answer(scopesAsked, message.request, ifCurrent(message.base, message.answer));
        break;
      case "scope-part": {
        const asker = scopeParts.get(message.request);
        const part = ifCurrent(message.base, message.part);
        if (asker === undefined || part === undefined) break;
        asker.part = part;
        asker.first(part);
        break;
      }
      case "scope-work": {
        const { request, base, work } = message;
        const part = scopeParts.get(request)?.part;
        scopeParts.delete(request);
        answer(scopesAsked, request, ifCurrent(base, part && work && { ...part, ...work }));
        break;
      }
      case "surveyed":
        answer(surveysAsked, message.request, ifCurrent(message.base, message.reply));
        break;
      case "arranging":
        if (message.request === arranging?.request) arranging.tell(message);
        break;
      case "arranged":
        if (message.request === arranging?.request) endArranging(ifCurrent(message.base, message.moves));
        break;
      case "rule-book":
        answer(booksAsked, message.request, message.rules);
        break;
      default:
        unreachable(message);
    }
    watch();
  }

  function readHere(request: number): void {
    const parse = parses.get(request);
    if (parse !== undefined) parse.json = readableJson(parse.text);
  }

  function takeParsed(request: number, readOnly: boolean): void {
    const parse = parses.get(request);
    if (parse === undefined) return;
    const project = projectOfReadable(parse.json ?? readableJson(parse.text));
    read = { request, project };
    finishParse(request, { ok: true, project, readOnly });
  }

  function finishParse(request: number, outcome: ParseOutcome): void {
    parses.get(request)?.done(outcome);
    parses.delete(request);
  }

  function retry(): void {
    if (worker !== undefined) return;
    restarts = 0;
    around.trouble(undefined);
    launch();
  }

  return {
    start() {
      if (worker === undefined) {
        if (restarts <= RESTARTS) launch();
      } else if (around.document().revision !== sent) {
        // It was started before, to read the file that is the document now.
        sendDocument();
        sendUnjudged();
        watch();
      }
    },
    readHere(text, project, judged) {
      own = { text, project };
      if (judged !== undefined) unjudged = { text, judged };
    },
    follow({ base, revision, patches }) {
      if (worker === undefined) return;
      if (patches === undefined) sendDocument();
      else if (base !== sent) sendSnapshot();
      else {
        sent = revision;
        post({ type: "patches", base, revision, patches: patches.filter(({ path }) => path[0] !== PHOTOS) });
      }
      watch();
    },
    parse(text) {
      if (worker === undefined) retry();
      return new Promise((done) => {
        const request = nextRequest++;
        parses.set(request, { text, done });
        post({ type: "parse", request, text });
        watch();
      });
    },
    preview(state, calls, mends, fillOf) {
      if (calls.length === 0) return Promise.resolve(undefined);
      const more = { ...(mends !== undefined && { mends }), ...(fillOf !== undefined && { fillOf }) };
      return ask(previews, (request) => ({ type: "preview", request, base: sent, state, calls, ...more }));
    },
    energise: (state, setting, wanted) =>
      ask(energisings, (request) => ({ type: "energise", request, base: sent, state, setting, ask: wanted })),
    outletDrops: (state, device) =>
      ask(dropsAsked, (request) => ({ type: "outlet-drops", request, base: sent, state, device })),
    expectedTests: (wanted) => ask(testsAsked, (request) => ({ type: "expected-tests", request, base: sent, wanted })),
    makeUp: (wanted) => ask(makeUpsAsked, (request) => ({ type: "make-up", request, base: sent, ask: wanted })),
    fit: (wanted) => ask(fitsAsked, (request) => ({ type: "fit", request, base: sent, ask: wanted })),
    scope: (first = () => {}) =>
      ask(scopesAsked, (request) => {
        scopeParts.set(request, { first });
        return { type: "scope", request, base: sent };
      }),
    survey: (wanted) => ask(surveysAsked, (request) => ({ type: "survey", request, base: sent, ask: wanted })),
    ruleBook: (edition) => ask(booksAsked, (request) => ({ type: "rule-book", request, edition })),
    arrange(state, what, tell) {
      endArranging(undefined);
      if (worker === undefined) return { moves: Promise.resolve(undefined), stop: () => {} };
      const request = nextRequest++;
      const moves = new Promise<readonly ArrangedMove[] | undefined>((done) => {
        arranging = { request, tell, done };
      });
      post({ type: "arrange", request, base: sent, state, what });
      return {
        moves,
        stop() {
          if (arranging?.request !== request) return;
          endArranging(undefined);
          post({ type: "stop-arranging" });
        },
      };
    },
    retry,
  };
}
