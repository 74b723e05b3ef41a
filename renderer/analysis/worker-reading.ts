import type { Json } from "../../shared-model/format/json.ts";
import { projectOfReadable, readableJson } from "../../shared-model/format/read-again.ts";
import { type Problem, problem } from "../../shared-model/lib/result.ts";
import type { Project } from "../../shared-model/model/project.ts";
import type { ParseOutcome, WorkerClient } from "./client-contract.ts";
import { wording } from "./words.ts";
import type { Line, Takers } from "./worker-line.ts";

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

interface Reading extends Pick<WorkerClient, "parse" | "readHere"> {
  readonly takers: Takers<"readable" | "parsed" | "not-parsed">;
  isGoingOn(): boolean;
  /**
   * The question by which the worker has, or will have, read the text of a document itself; undefined where the document
   * is to be sent whole. It holds once.
   */
  requestOf(project: Project): number | undefined;
  /** Sends the text that is shown unjudged, where this worker was not sent it with its document. */
  sendUnjudged(): void;
  /** The worker is gone: it takes with it what it read, and what it hung at is refused. */
  giveUp(): void;
  /** No other worker comes: nobody judges any more. */
  stop(): void;
}

/** Texts of files: the worker judges them, so that a hostile one cannot stop the window. */
export function createReading(line: Line): Reading {
  const parses = new Map<number, Parse>();
  /** What this worker read last and may still hold. */
  let read: { readonly request: number; readonly project: Project } | undefined;
  /** What this window read itself last, and nobody has told the worker of. */
  let own: { readonly text: string; readonly project: Project } | undefined;
  let unjudged: Unjudged | undefined;

  function send(text: string): number {
    const request = line.nextRequest();
    line.post({ type: "parse", request, text });
    return request;
  }

  /** Has the worker read the text that this window read the document from. */
  function sendOwn(project: Project): number | undefined {
    if (own?.project !== project) return undefined;
    const request = send(own.text);
    if (unjudged !== undefined && unjudged.text === own.text) unjudged.request = request;
    own = undefined;
    return request;
  }

  function finish(request: number, outcome: ParseOutcome): void {
    parses.get(request)?.done(outcome);
    parses.delete(request);
  }

  function judge(problems: readonly Problem[] | undefined): void {
    const told = unjudged;
    unjudged = undefined;
    told?.judged(problems);
  }

  return {
    parse: (text) =>
      new Promise((done) => {
        parses.set(send(text), { text, done });
        line.watch();
      }),
    readHere(text, project, judged) {
      own = { text, project };
      if (judged !== undefined) unjudged = { text, judged };
    },
    takers: {
      readable({ request }) {
        const parse = parses.get(request);
        if (parse !== undefined) parse.json = readableJson(parse.text);
      },
      parsed({ request, readOnly }) {
        if (request === unjudged?.request) judge([]);
        const parse = parses.get(request);
        if (parse === undefined) return;
        const project = projectOfReadable(parse.json ?? readableJson(parse.text));
        read = { request, project };
        finish(request, { ok: true, project, readOnly });
      },
      "not-parsed"({ request, problems }) {
        if (request === unjudged?.request) judge(problems);
        finish(request, { ok: false, problems });
      },
    },
    isGoingOn: () => parses.size > 0 || unjudged !== undefined,
    requestOf(project) {
      const request = read?.project === project ? read.request : sendOwn(project);
      read = undefined;
      return request;
    },
    sendUnjudged() {
      // The document may have moved on, or another worker may have begun to read it: it is to be judged all the same.
      if (unjudged !== undefined) unjudged.request ??= send(unjudged.text);
    },
    giveUp() {
      read = undefined;
      if (unjudged !== undefined) unjudged.request = undefined;
      // A file that hangs the reader would hang the next worker too.
      const problems = [problem("reading-stopped", "", wording.readingThisFileTookTooLong)];
      for (const request of parses.keys()) finish(request, { ok: false, problems });
    },
    stop: () => judge(undefined),
  };
}
