import { type FromWorker, PROTOCOL_VERSION, type ToWorker } from "../analysis/protocol.ts";
import { type Answers, openSession, type Session } from "../analysis/session.ts";
import type { CommandCall } from "../answers/command-call.ts";
import { parseProject } from "../format/parse-project.ts";
import { unreachable } from "../lib/unreachable.ts";
import type { StateName } from "../model/project.ts";
import type { RuleWatch } from "../rules/run-rules.ts";

// The checking worker: mirrors the window's document and answers every change of it.
const scope = self as unknown as Pick<DedicatedWorkerGlobalScope, "postMessage" | "onmessage">;

let session: Session | undefined;
let held = -1;
let skipped: ReadonlySet<string> = new Set();
let watchful = false;

const post = (message: FromWorker): void => scope.postMessage(message);

const watch: RuleWatch = {
  skips: (rule) => skipped.has(rule),
  begins(rule) {
    if (watchful) post({ type: "started", revision: held, rule });
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
      preview(message.request, message.base, message.state, message.calls);
      break;
    default:
      unreachable(message);
  }
}

function answer(revision: number, work: () => Answers): void {
  post({ type: "started", revision });
  const start = performance.now();
  held = revision;
  const answers = work();
  post({ ...answers, tookMs: performance.now() - start });
}

function parse(request: number, text: string): void {
  const parsed = parseProject(text);
  if (parsed.ok) post({ type: "parsed", request, project: parsed.value.project, readOnly: parsed.value.readOnly });
  else post({ type: "not-parsed", request, problems: parsed.problems });
}

function preview(request: number, base: number, state: StateName, calls: readonly CommandCall[]): void {
  const known = session !== undefined && base === held && session.state === state;
  post({
    type: "previewed",
    request,
    base: known ? base : held,
    results: known ? (session?.preview(calls) ?? []) : [],
  });
}
