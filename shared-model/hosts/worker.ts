import { isBlank } from "../analysis/blank-document.ts";
import { PROTOCOL_VERSION, type ToWorker } from "../analysis/protocol.ts";
import { blankDocument, type Checking, checkBlank, opened, parse, patches, snapshot } from "./worker/document.ts";
import { heedGreeting, post, whileFetching } from "./worker/line.ts";
import {
  energise,
  expectedTests,
  fit,
  makeUp,
  outletDrops,
  preview,
  ruleBook,
  supply,
  survey,
} from "./worker/questions.ts";
import { arrange, scope, stopArranging } from "./worker/slices.ts";

// The checking worker: mirrors the window's document and answers every change of it.
const host = self as unknown as Pick<DedicatedWorkerGlobalScope, "onmessage">;

type Messages = { readonly [M in ToWorker as M["type"]]: M };

/** What is done about each message; `checking` is absent only where `needsChecking` says that the message does without. */
const handlers: {
  readonly [T in keyof Messages]: (message: Messages[T], checking: Checking | undefined) => void;
} = {
  hello(message) {
    heedGreeting(message);
    post({ type: "hello", version: PROTOCOL_VERSION });
  },
  parse,
  opened,
  snapshot,
  patches,
  preview,
  energise,
  "outlet-drops": outletDrops,
  "expected-tests": expectedTests,
  "make-up": makeUp,
  fit,
  supply,
  scope,
  survey,
  "rule-book": ruleBook,
  arrange,
  "stop-arranging": stopArranging,
};

let checking: Checking | undefined;
/** What came while rules and circuits were fetched, in its order. */
let waiting: ToWorker[] | undefined;

host.onmessage = ({ data }: MessageEvent<ToWorker>) => take(data);

/** A message is answered at once when what it needs is there; else it waits, and all that follows waits behind it. */
function take(message: ToWorker): void {
  if (waiting !== undefined) waiting.push(message);
  else if (checking !== undefined || !needsChecking(message)) receive(message);
  else {
    waiting = [message];
    fetchChecking();
  }
}

function receive<T extends keyof Messages>(message: Messages[T] & { readonly type: T }): void {
  const type: T = message.type;
  handlers[type](message, checking);
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
      return blankDocument() === undefined || message.fillOf === undefined || message.mends !== undefined;
    default:
      return true;
  }
}

async function fetchChecking(): Promise<void> {
  try {
    ({ checking } = await whileFetching(() => import("../analysis/checking.ts")));
    checkBlank(checking);
    const messages = waiting ?? [];
    waiting = undefined;
    for (const message of messages) receive(message);
  } catch (fault) {
    // Outside of this promise, so that the window learns of it and starts another worker.
    setTimeout(() => {
      throw fault;
    });
  }
}
