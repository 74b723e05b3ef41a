import type {
  EmptySheets,
  FromPaper,
  LaidSheet,
  LostText,
  PaperFile,
  PaperJob,
  PaperProgress,
  SheetOffer,
  ToPaper,
} from "../../shared-model/answers/paper-messages.ts";
import { unreachable } from "../../shared-model/lib/unreachable.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { wording } from "./words.ts";

/** How a piece of work on paper ended. */
export type PaperOutcome<T> =
  | { readonly kind: "done"; readonly value: T }
  | { readonly kind: "stopped" }
  /** A sentence for a person, with what helps. */
  | { readonly kind: "failed"; readonly message: string };

export interface PaperWork<T> {
  readonly outcome: Promise<PaperOutcome<T>>;
  /** It comes to nothing, at once. */
  stop(): void;
}

/** Sheets that the worker has laid out, and the number by which it knows them. */
export interface LaidOut {
  readonly layout: number;
  readonly sheets: readonly LaidSheet[];
  /** Why sheets have nothing to print, asked for or not. */
  readonly empty: EmptySheets;
  /** Texts with letters that paper cannot show. */
  readonly lost: readonly LostText[];
}

type Tell = (progress: PaperProgress) => void;

export interface PaperClient {
  /** What can be printed, in the order of a job folder. */
  offers(): PaperWork<readonly SheetOffer[]>;
  /**
   * Lays out sheets of the document as it is now. A layout before it comes to nothing; a step that both need, as checking
   * the drawing is, is not lost.
   */
  layOut(job: PaperJob, tell: Tell): PaperWork<LaidOut>;
  /** A page as an SVG that needs nothing from elsewhere. */
  page(layout: number, page: number): PaperWork<string>;
  file(layout: number, file: PaperFile, tell: Tell): PaperWork<Uint8Array<ArrayBuffer>>;
}

/** What the client needs of its surroundings; tests put stand-ins here. */
export interface PaperSurroundings {
  createWorker(): Pick<Worker, "postMessage" | "terminate" | "onmessage" | "onerror" | "onmessageerror">;
  document(): Project;
  /** The worker was ended because it did not stop in time: what it had laid out is gone with it. */
  lost(): void;
}

/** A worker that was told to stop and has not is at a step that takes long: it is ended. */
export const STOP_DEADLINE_MS = 400;
/** One step of the largest drawing takes a small part of it. */
export const SILENCE_MS = 120_000;

interface Open {
  readonly tell: Tell | undefined;
  /** Turns the answer that it waits for into what was asked; undefined for another answer. */
  readonly read: (message: FromPaper) => { readonly value: unknown } | undefined;
  readonly end: (outcome: PaperOutcome<never> | { readonly kind: "done"; readonly value: unknown }) => void;
}

/** Photos are many times as large as all else, and no sheet shows more of one than its name. */
function withoutPictures(project: Project): Project {
  const attachments = Object.fromEntries(
    Object.entries(project.attachments).map(([id, attachment]) => [id, { ...attachment, base64: "" }]),
  );
  return { ...project, attachments };
}

/**
 * Talks to the paper worker, which is started when something is asked of it first. It holds a document of its own, sent
 * when a layout is asked for and the document is another than the last time. A worker that crashed or was ended is
 * replaced at the next question.
 */
export function createPaperClient({ createWorker, document, lost }: PaperSurroundings): PaperClient {
  let worker: ReturnType<PaperSurroundings["createWorker"]> | undefined;
  let sent: Project | undefined;
  let revision = 0;
  let nextRequest = 1;
  /** The layout that was asked for last. */
  let layout = 0;
  const open = new Map<number, Open>();
  /** Told to stop, and not heard of since. */
  const stopping = new Map<number, ReturnType<typeof setTimeout>>();
  let silence: ReturnType<typeof setTimeout> | undefined;

  const post = (message: ToPaper): void => worker?.postMessage(message);

  function watch(): void {
    clearTimeout(silence);
    if (open.size > 0) silence = setTimeout(() => crashed(wording.thePaperWorkDidNotAnswer), SILENCE_MS);
  }

  function launch(): void {
    if (worker !== undefined) return;
    sent = undefined;
    worker = createWorker();
    worker.onmessage = ({ data }: MessageEvent<FromPaper>) => receive(data);
    worker.onerror = () => crashed(wording.thePaperWorkBrokeOff);
    worker.onmessageerror = () => crashed(wording.thePaperWorkBrokeOff);
  }

  function quit(): void {
    worker?.terminate();
    worker = undefined;
    for (const timer of stopping.values()) clearTimeout(timer);
    stopping.clear();
    clearTimeout(silence);
  }

  function crashed(message: string): void {
    quit();
    endAll({ kind: "failed", message });
  }

  function endAll(outcome: PaperOutcome<never>): void {
    const all = [...open.values()];
    open.clear();
    for (const { end } of all) end(outcome);
  }

  function receive(message: FromPaper): void {
    const { request } = message;
    if (message.type !== "progress") settled(request);
    const asked = open.get(request);
    if (asked === undefined) return;
    switch (message.type) {
      case "progress":
        asked.tell?.(message);
        break;
      case "stopped":
        end(request, { kind: "stopped" });
        break;
      case "failed":
        end(request, { kind: "failed", message: failure(message) });
        break;
      case "offers":
      case "laid-out":
      case "page":
      case "file": {
        const read = asked.read(message);
        end(request, read === undefined ? broken() : { kind: "done", value: read.value });
        break;
      }
      default:
        unreachable(message);
    }
    watch();
  }

  const broken = () => ({ kind: "failed", message: wording.thePaperWorkBrokeOff }) as const;

  function end(request: number, outcome: Parameters<Open["end"]>[0]): void {
    const asked = open.get(request);
    open.delete(request);
    asked?.end(outcome);
  }

  function settled(request: number): void {
    clearTimeout(stopping.get(request));
    stopping.delete(request);
  }

  function stop(request: number): void {
    if (!open.has(request)) return;
    end(request, { kind: "stopped" });
    post({ type: "stop", request });
    stopping.set(
      request,
      setTimeout(() => {
        quit();
        endAll({ kind: "stopped" });
        lost();
      }, STOP_DEADLINE_MS),
    );
    watch();
  }

  function ask<T>(
    question: (request: number) => ToPaper,
    read: (message: FromPaper, request: number) => { readonly value: T } | undefined,
    tell?: Tell,
  ): PaperWork<T> {
    launch();
    const request = nextRequest++;
    const outcome = new Promise<PaperOutcome<T>>((done) => {
      open.set(request, {
        tell,
        read: (message) => read(message, request),
        end: (ended) => done(ended as PaperOutcome<T>),
      });
    });
    post(question(request));
    watch();
    return { outcome, stop: () => stop(request) };
  }

  function sendDocument(): void {
    const project = document();
    if (sent === project) return;
    sent = project;
    revision += 1;
    post({ type: "document", revision, project: withoutPictures(project) });
  }

  return {
    offers: () =>
      ask(
        (request) => ({ type: "offers", request }),
        (message) => (message.type === "offers" ? { value: message.offers } : undefined),
      ),
    layOut(job, tell) {
      launch();
      sendDocument();
      end(layout, { kind: "stopped" });
      return ask(
        (request) => {
          layout = request;
          return { type: "lay-out", request, revision, job };
        },
        (message, own) => {
          if (message.type !== "laid-out") return undefined;
          const { sheets, empty, lost } = message;
          return { value: { layout: own, sheets, empty, lost } };
        },
        tell,
      );
    },
    page: (of, page) =>
      ask(
        (request) => ({ type: "page", request, of, page }),
        (message) => (message.type === "page" ? { value: message.svg } : undefined),
      ),
    file: (of, file, tell) =>
      ask(
        (request) => ({ type: "file", request, of, file }),
        (message) => (message.type === "file" ? { value: message.bytes } : undefined),
        tell,
      ),
  };
}

function failure({ at, reason }: Extract<FromPaper, { readonly type: "failed" }>): string {
  return at === undefined ? wording.theSheetsCouldNotBeMade(reason) : wording.aSheetCouldNotBeMade(at, reason);
}
