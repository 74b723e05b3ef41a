import { openSession, type Session } from "../analysis/session.ts";
import { sheetInput } from "../analysis/sheet-input.ts";
import type { FromPaper, PaperJob, ToPaper } from "../answers/paper-messages.ts";
import type { SheetInput } from "../answers/sheet-input.ts";
import type { Project, StateName } from "../model/project.ts";
import { createPaperDesk } from "../sheets/job/paper-desk.ts";
import { withFace } from "../sheets/job/with-face.ts";
import { SHEETS } from "../sheets/registry.ts";
import { svgOf } from "../sheets/svg-writer.ts";
import { fetchFace, type PaperFace } from "./paper-worker-face.ts";

// The paper worker: lays out sheets of a document of its own and writes files, so that neither editing nor checking waits.
const scope = self as unknown as Pick<DedicatedWorkerGlobalScope, "postMessage" | "onmessage">;

let fetching: Promise<PaperFace> | undefined;

/** Fetched once; what could not be had is asked for again the next time. */
function face(): Promise<PaperFace> {
  fetching ??= fetchFace().catch((fault: unknown) => {
    fetching = undefined;
    throw fault;
  });
  return fetching;
}

/** A document is checked once for all sheets of a state, and the two states together. */
function open(project: Project): (state: StateName, job: PaperJob) => SheetInput {
  let session: Session | undefined;
  const inputs = new Map<string, SheetInput>();
  return (state, { paper, date, fileName }) => {
    session ??= openSession(project);
    const key = [state, paper, date, fileName ?? ""].join("\n");
    const known = inputs.get(key);
    if (known !== undefined) return known;
    const input = sheetInput(project, { state, paper, date, ...(fileName !== undefined && { fileName }) }, session);
    inputs.set(key, input);
    return input;
  };
}

/** Messages that came meanwhile are taken before it goes on. A timer would wait for some milliseconds at each turn. */
function turn(): Promise<void> {
  return new Promise((done) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      done();
    };
    port2.postMessage(undefined);
  });
}

const desk = createPaperDesk({
  sheets: SHEETS,
  open,
  turn,
  svg: async (page) => withFace(svgOf(page), (await face()).inPictures),
  async pdf(pages, { title, date, onPage, isStopped }) {
    const { pdfOf } = await import("./paper.ts");
    const abort = new AbortController();
    const pause = async (): Promise<void> => {
      await turn();
      if (isStopped()) abort.abort();
    };
    return pdfOf(pages, { title, date, onPage, pause, signal: abort.signal, face: (await face()).inFiles });
  },
  async csv(tables) {
    const { csvOf } = await import("./tables.ts");
    return csvOf(tables);
  },
  async xlsx(tables) {
    const { xlsxOf } = await import("./tables.ts");
    return xlsxOf(tables);
  },
  post(message: FromPaper) {
    scope.postMessage(message, message.type === "file" ? [message.bytes.buffer] : []);
  },
});

scope.onmessage = ({ data }: MessageEvent<ToPaper>) => desk.take(data);
