import { type FromWorker, PROTOCOL_VERSION, type ToWorker } from "../analysis/protocol.ts";
import { type Answers, openSession, type Session } from "../analysis/session.ts";
import { parseProject } from "../format/parse-project.ts";
import { unreachable } from "../lib/unreachable.ts";
import type { RuleWatch } from "../rules/run-rules.ts";

// The checking worker: mirrors the window's document and answers every change of it.
const scope = self as unknown as Pick<DedicatedWorkerGlobalScope, "postMessage" | "onmessage">;

let session: Session | undefined;
let held = -1;
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
    case "snapshot":
      answer(message.revision, () => {
        session = openSession(message.project, { watch });
        return session.answers(message.revision);
      });
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
    default:
      unreachable(message);
  }
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
  const parsed = parseProject(text);
  if (parsed.ok) post({ type: "parsed", request, project: parsed.value.project, readOnly: parsed.value.readOnly });
  else post({ type: "not-parsed", request, problems: parsed.problems });
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
