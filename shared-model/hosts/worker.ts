import { energise } from "../analysis/energise.ts";
import { type FromWorker, PROTOCOL_VERSION, type ToWorker } from "../analysis/protocol.ts";
import { type Answers, openSession, type Session } from "../analysis/session.ts";
import type { Energised } from "../answers/energised.ts";
import { parseProject } from "../format/parse-project.ts";
import { unreachable } from "../lib/unreachable.ts";
import type { Project } from "../model/project.ts";
import { findInstallation } from "../queries/installation-of.ts";
import type { RuleWatch } from "../rules/run-rules.ts";

// The checking worker: mirrors the window's document and answers every change of it.
const scope = self as unknown as Pick<DedicatedWorkerGlobalScope, "postMessage" | "onmessage">;

let session: Session | undefined;
let held = -1;
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

scope.onmessage = ({ data }: MessageEvent<ToWorker>) => receive(data);

function receive(message: ToWorker): void {
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
      if (read?.request === message.request) open(read.project, message.revision);
      else post({ type: "need-snapshot", have: held });
      break;
    case "snapshot":
      open(message.project, message.revision);
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
    default:
      unreachable(message);
  }
}

function open(project: Project, revision: number): void {
  read = undefined;
  answer(revision, () => {
    session = openSession(project, { watch });
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
    read = { request, project };
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
  let answer: Energised | undefined;
  try {
    answer = installation && project && energise(installation, project.supply, setting, ask);
  } catch (fault) {
    // The checks go on without it: a fault here must not cost the drawing its findings.
    console.error(fault);
  }
  post({ type: "energised", request, base, ...(answer && { answer }) });
}
