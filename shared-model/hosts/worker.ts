import { fillIfDone, isBlank, nothingDrawn } from "../analysis/blank-document.ts";
import type { Energiser } from "../analysis/energiser.ts";
import type { deviceDrops } from "../analysis/outlet-drops.ts";
import {
  type ArrangedMove,
  type FromWorker,
  PROTOCOL_VERSION,
  type SurveyReply,
  type ToWorker,
} from "../analysis/protocol.ts";
import type { Answers, Session } from "../analysis/session.ts";
import type { EnergisedNews } from "../answers/energised.ts";
import type { ExpectedAnswer } from "../answers/expected-test.ts";
import type { ScopePart, ScopeWork } from "../answers/scope.ts";
import { parseProject } from "../format/parse-project.ts";
import { inSlices } from "../lib/in-slices.ts";
import { unreachable } from "../lib/unreachable.ts";
import type { Project } from "../model/project.ts";
import { findInstallation } from "../queries/installation-of.ts";
import type { RuleWatch } from "../rules/run-rules.ts";

// The checking worker: mirrors the window's document and answers every change of it.
const scope = self as unknown as Pick<DedicatedWorkerGlobalScope, "postMessage" | "onmessage">;

/** Rules and circuits: most of the script, and not needed before something is drawn. */
type Checking = typeof import("../analysis/checking.ts")["checking"];
let checking: Checking | undefined;
/** What came while they were fetched, in its order. */
let waiting: ToWorker[] | undefined;

let session: Session | undefined;
let held = -1;
let energiser: Energiser | undefined;
/** A document in which nothing is drawn yet; only as long as there is no session. */
let blank: Project | undefined;
/** What was read last, until it is known whether the window opens it. */
let read: { readonly request: number; readonly project: Project } | undefined;
let skipped: ReadonlySet<string> = new Set();
let watchful = false;
/** When the window was last told that the job goes on: the two states of a large drawing take longer than one rule may. */
let saidAt = 0;
const SIGN_OF_LIFE_MS = 500;

const post = (message: FromWorker): void => scope.postMessage(message);

const watch: RuleWatch = {
  skips: (rule) => skipped.has(rule),
  begins(rule) {
    if (watchful) post({ type: "started", revision: held, rule });
    else if (performance.now() - saidAt > SIGN_OF_LIFE_MS) post({ type: "started", revision: held });
    else return;
    saidAt = performance.now();
  },
};

scope.onmessage = ({ data }: MessageEvent<ToWorker>) => take(data);

/** A message is answered at once when what it needs is there; else it waits, and all that follows waits behind it. */
function take(message: ToWorker): void {
  if (waiting !== undefined) waiting.push(message);
  else if (checking !== undefined || !needsChecking(message)) receive(message, checking);
  else {
    waiting = [message];
    fetchChecking();
  }
}

function needsChecking(message: ToWorker): boolean {
  switch (message.type) {
    case "hello":
    case "parse":
    case "stop-arranging":
      return false;
    case "snapshot":
      return !isBlank(message.project);
    case "preview":
      return blank === undefined || message.fillOf === undefined || message.mends !== undefined;
    default:
      return true;
  }
}

async function fetchChecking(): Promise<void> {
  // Fetching is not hanging, however long it takes.
  const signs = setInterval(() => post({ type: "started", revision: held }), SIGN_OF_LIFE_MS);
  try {
    ({ checking } = await import("../analysis/checking.ts"));
    if (blank !== undefined) {
      session = checking.openSession(blank, { watch });
      energiser = checking.newEnergiser();
    }
    blank = undefined;
    const messages = waiting ?? [];
    waiting = undefined;
    for (const message of messages) receive(message, checking);
  } catch (fault) {
    // Outside of this promise, so that the window learns of it and starts another worker.
    setTimeout(() => {
      throw fault;
    });
  } finally {
    clearInterval(signs);
  }
}

/** @param ready Absent only where `needsChecking` says that the message does without. */
function receive(message: ToWorker, ready: Checking | undefined): void {
  switch (message.type) {
    case "hello":
      skipped = new Set(message.disabledRules ?? []);
      watchful = message.watchful ?? false;
      post({ type: "hello", version: PROTOCOL_VERSION });
      break;
    case "parse":
      parse(message.request, message.text);
      break;
    case "opened":
      if (read?.request === message.request) open(read.project, message.revision, ready);
      else post({ type: "need-snapshot", have: held });
      break;
    case "snapshot":
      open(message.project, message.revision, ready);
      break;
    case "patches": {
      const mirror = session;
      if (mirror === undefined || message.base !== held) post({ type: "need-snapshot", have: held });
      else answer(message.revision, () => mirror.applyPatches(message.patches, message.revision));
      break;
    }
    case "preview":
      preview(message);
      break;
    case "energise":
      answerEnergised(message);
      break;
    case "outlet-drops":
      answerDrops(message, ready);
      break;
    case "expected-tests":
      answerExpected(message, ready);
      break;
    case "make-up":
    case "fit":
      plan(message);
      break;
    case "scope":
      answerScope(message);
      break;
    case "survey":
      survey(message);
      break;
    case "rule-book":
      post({ type: "rule-book", request: message.request, rules: ready?.ruleBook(message.edition) ?? [] });
      break;
    case "arrange":
      arrange(message);
      break;
    case "stop-arranging":
      stopArranging();
      break;
    default:
      unreachable(message);
  }
}

function open(project: Project, revision: number, ready: Checking | undefined): void {
  read = undefined;
  answer(revision, () => {
    if (ready === undefined) {
      blank = project;
      return nothingDrawn(revision);
    }
    session = ready.openSession(project, { watch });
    energiser = ready.newEnergiser();
    return session.answers(revision);
  });
}

function answer(revision: number, work: () => Answers): void {
  post({ type: "started", revision });
  const start = performance.now();
  saidAt = start;
  held = revision;
  const answers = work();
  post({ ...answers, tookMs: performance.now() - start });
}

function parse(request: number, text: string): void {
  read = undefined;
  const parsed = parseProject(text, undefined, () => post({ type: "readable", request }));
  if (parsed.ok) {
    const { project, readOnly } = parsed.value;
    // The window keeps the photos; here nothing would look at them.
    read = { request, project: { ...project, attachments: {} } };
    post({ type: "parsed", request, readOnly });
  } else post({ type: "not-parsed", request, problems: parsed.problems });
}

function preview({
  request,
  base,
  state,
  calls,
  mends,
  fillOf,
}: Extract<ToWorker, { readonly type: "preview" }>): void {
  if (blank !== undefined && fillOf !== undefined) {
    const project = blank;
    const results = calls.map((call) => fillIfDone(project, state, call, fillOf));
    post({ type: "previewed", request, base: base === held ? base : -1, results });
    return;
  }
  const known = base === held && session?.states.includes(state) === true ? session : undefined;
  post({
    type: "previewed",
    request,
    base: known === undefined ? -1 : base,
    results: known?.preview(state, calls, mends, fillOf) ?? [],
  });
}

function answerEnergised({
  request,
  base,
  state,
  setting,
  ask,
}: Extract<ToWorker, { readonly type: "energise" }>): void {
  const project = base === held ? session?.project : undefined;
  const installation = project && findInstallation(project, state);
  let answer: EnergisedNews | undefined;
  try {
    answer = installation && project && energiser?.answer(state, installation, project.supply, setting, ask);
  } catch (fault) {
    // The checks go on without it: a fault here must not cost the drawing its findings.
    console.error(fault);
  }
  post({ type: "energised", request, base, ...(answer && { answer }) });
}

function answerExpected(
  { request, base, wanted }: Extract<ToWorker, { readonly type: "expected-tests" }>,
  ready: Checking | undefined,
): void {
  const project = base === held ? session?.project : undefined;
  let answers: readonly ExpectedAnswer[] | undefined;
  try {
    answers = project && ready?.expectedTests(project, wanted);
  } catch (fault) {
    console.error(fault);
  }
  post({ type: "expected-tests", request, base, ...(answers && { answers }) });
}

function answerDrops(
  { request, base, state, device }: Extract<ToWorker, { readonly type: "outlet-drops" }>,
  ready: Checking | undefined,
): void {
  const project = base === held ? session?.project : undefined;
  let drops: ReturnType<typeof deviceDrops> | undefined;
  try {
    drops = project && ready?.deviceDrops(project, state, device);
  } catch (fault) {
    console.error(fault);
  }
  post({ type: "outlet-drops", request, base, ...(drops && { drops }) });
}

/** A copy of one revision to plan on: the same for the questions that follow each other while a form is filled in. */
let toPlanOn: { readonly session: Session; readonly revision: number; readonly project: Project } | undefined;

function copyToPlanOn(): Project | undefined {
  if (session === undefined) return undefined;
  if (toPlanOn?.session !== session || toPlanOn.revision !== held)
    toPlanOn = { session, revision: held, project: session.copy() };
  return toPlanOn.project;
}

/** A make-up of a box; what plans it is fetched when it is asked for first. */
async function plan(message: Extract<ToWorker, { readonly type: "make-up" | "fit" }>): Promise<void> {
  const { type, request, base } = message;
  const project = base === held ? copyToPlanOn() : undefined;
  const fault = (error: unknown): void => console.error(error);
  // It takes as long as it takes to come, and that is no hanging.
  const signs = setInterval(() => post({ type: "started", revision: held }), SIGN_OF_LIFE_MS);
  const fetched = await import("../planning/answer-make-up.ts").catch(fault);
  clearInterval(signs);
  try {
    if (type === "make-up") {
      const answer = project && fetched?.answerMakeUp(project, message.ask);
      post({ type: "made-up", request, base, ...(answer && { answer }) });
    } else {
      const answer = project && fetched?.answerFit(project, message.ask);
      post({ type: "fitted", request, base, ...(answer && { answer }) });
    }
  } catch (error) {
    fault(error);
    post({ type: type === "make-up" ? "made-up" : "fitted", request, base });
  }
}

/** Milliseconds in which the difference of an ordinary drawing is there with all its work. */
const SCOPE_AT_ONCE_MS = 300;

/**
 * The difference of the states; what works it out is fetched when it is asked for first. Where its work takes a while, the
 * difference goes first and the work is done in slices, until an edit comes.
 */
async function answerScope({ request, base }: Extract<ToWorker, { readonly type: "scope" }>): Promise<void> {
  const fault = (error: unknown): void => console.error(error);
  const signs = setInterval(() => post({ type: "started", revision: held }), SIGN_OF_LIFE_MS);
  const fetched = await import("../analysis/scope-answer.ts").catch(fault);
  clearInterval(signs);
  try {
    // Edits may have come meanwhile.
    const begun = base === held && session !== undefined ? fetched?.beginScope(session) : undefined;
    if (begun === undefined) post({ type: "scoped", request, base });
    else followScope(request, base, begun.part, begun.work());
  } catch (error) {
    fault(error);
    post({ type: "scoped", request, base });
  }
}

function followScope(
  request: number,
  base: number,
  part: ScopePart,
  work: Iterator<undefined, ScopeWork, undefined>,
): void {
  let budget = SCOPE_AT_ONCE_MS;
  let told = false;
  const slice = (): void => {
    const until = performance.now() + budget;
    budget = SLICE_MS;
    try {
      if (held !== base) {
        post({ type: "scope-work", request, base });
        return;
      }
      for (;;) {
        const step = work.next();
        if (step.done === true) {
          if (told) post({ type: "scope-work", request, base, work: step.value });
          else post({ type: "scoped", request, base, answer: { ...part, ...step.value } });
          return;
        }
        if (performance.now() >= until) break;
      }
    } catch (error) {
      console.error(error);
      post(told ? { type: "scope-work", request, base } : { type: "scoped", request, base });
      return;
    }
    if (!told) post({ type: "scope-part", request, base, part });
    else if (performance.now() - saidAt > SIGN_OF_LIFE_MS) {
      post({ type: "started", revision: held });
      saidAt = performance.now();
    }
    told = true;
    setTimeout(slice);
  };
  slice();
}

/** What a survey tells; what works it out is fetched when it is asked for first. */
async function survey({ request, base, ask }: Extract<ToWorker, { readonly type: "survey" }>): Promise<void> {
  const project = base === held ? session?.project : undefined;
  const signs = setInterval(() => post({ type: "started", revision: held }), SIGN_OF_LIFE_MS);
  let reply: SurveyReply | undefined;
  try {
    const { answerSurvey } = await import("../analysis/answer-survey.ts");
    reply = project && answerSurvey(project, ask);
  } catch (fault) {
    console.error(fault);
  } finally {
    clearInterval(signs);
  }
  post({ type: "surveyed", request, base, ...(reply && { reply }) });
}

let stopArranging = (): void => {};
/** Milliseconds after which other messages have their turn. */
const SLICE_MS = 30;

/** Where boxes go; what works it out is fetched when it is asked for first. */
async function arrange(message: Extract<ToWorker, { readonly type: "arrange" }>): Promise<void> {
  stopArranging();
  const { request, base, state, what } = message;
  const project = base === held ? session?.project : undefined;
  let dropped = false;
  const end = (moves?: readonly ArrangedMove[]): void => {
    stopArranging = () => {};
    post({ type: "arranged", request, base, ...(moves && { moves }) });
  };
  const drop = (): void => {
    dropped = true;
    end();
  };
  stopArranging = drop;
  try {
    const { arrangeSteps } = await import("../geometry/house/arrange-steps.ts");
    const steps = project && arrangeSteps(project, state, what);
    if (dropped) return;
    if (steps === undefined) {
      end();
      return;
    }
    const stop = inSlices(steps, SLICE_MS, {
      now: () => performance.now(),
      later: (then) => void setTimeout(then),
      tell: (progress) => post({ type: "arranging", request, ...progress }),
      end,
    });
    if (stopArranging === drop)
      stopArranging = () => {
        stop();
        drop();
      };
  } catch (fault) {
    console.error(fault);
    if (!dropped) end();
  }
}
