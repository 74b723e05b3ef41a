import { documentStore } from "../state/document-store.ts";
import { createPaperClient, type PaperClient } from "./paper-client.ts";
import { createPaperWorker } from "./trusted-worker.ts";

/** The paper worker of this window. It is started when sheets are asked for first. */
export const paperOf = (lost: () => void): PaperClient =>
  createPaperClient({ createWorker: createPaperWorker, document: () => documentStore.get().project, lost });
