/** The window's side of the paper worker, against a stand-in for it that answers as it is told. */
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import {
  createPaperClient,
  type PaperClient,
  type PaperOutcome,
  type PaperSurroundings,
  SILENCE_MS,
  STOP_DEADLINE_MS,
} from "../../renderer/analysis/paper-client.ts";
import type { FromPaper, PaperJob, PaperProgress, ToPaper } from "../../shared-model/answers/paper-messages.ts";
import type { AttachmentId } from "../../shared-model/model/ids.ts";
import { emptyProject, type Project } from "../../shared-model/model/project.ts";

class StandIn implements ReturnType<PaperSurroundings["createWorker"]> {
  readonly received: ToPaper[] = [];
  hasEnded = false;
  onmessage: Worker["onmessage"] = null;
  onerror: Worker["onerror"] = null;
  onmessageerror: Worker["onmessageerror"] = null;
  postMessage(message: ToPaper): void {
    this.received.push(message);
  }
  terminate(): void {
    this.hasEnded = true;
  }
  say(data: FromPaper): void {
    this.onmessage?.call(this as unknown as Worker, { data } as MessageEvent);
  }
  crash(): void {
    this.onerror?.call(this as unknown as Worker, {} as ErrorEvent);
  }
  types(): readonly string[] {
    return this.received.map(({ type }) => type);
  }
  /** Number of what was asked last. */
  request(): number {
    const last = this.received.at(-1);
    if (last === undefined || !("request" in last)) throw new Error("Nothing was asked.");
    return last.request;
  }
}

const JOB: PaperJob = { sheets: ["drawing"], state: "as-found", paper: "letter", date: "2026-05-04" };
const SHEETS = [{ kind: "drawing", title: "Drawing", hasList: false, pages: [] }] as const;

let workers: StandIn[];
let project: Project;
let lost: number;
let told: PaperProgress[];
let client: PaperClient;

const last = (): StandIn => {
  const worker = workers.at(-1);
  if (worker === undefined) throw new Error("No worker was made.");
  return worker;
};
const layOut = () => client.layOut(JOB, (progress) => told.push(progress));
/** The outcome, where it is there already. */
const now = async <T>(outcome: Promise<PaperOutcome<T>>): Promise<PaperOutcome<T> | "waits"> =>
  Promise.race([outcome, Promise.resolve().then(() => Promise.resolve("waits" as const))]);

beforeEach(() => {
  vi.useFakeTimers();
  [workers, lost, told, project] = [[], 0, [], emptyProject("t", 2020)];
  client = createPaperClient({
    createWorker() {
      const worker = new StandIn();
      workers.push(worker);
      return worker;
    },
    document: () => project,
    lost() {
      lost += 1;
    },
  });
});
afterEach(() => vi.useRealTimers());

test("nothing is started before something is asked", () => {
  expect(workers).toHaveLength(0);
  client.offers();
  client.offers();
  expect(workers).toHaveLength(1);
  expect(last().types()).toEqual(["offers", "offers"]);
});

describe("the document", () => {
  test("goes ahead of the first layout, and again only when it is another", () => {
    layOut();
    layOut();
    expect(last().types()).toEqual(["document", "lay-out", "lay-out"]);
    project = { ...project, title: "u" };
    layOut();
    expect(last().types().slice(3)).toEqual(["document", "lay-out"]);
    const [first, , , second, third] = last().received;
    expect(first).toMatchObject({ revision: 1 });
    expect(second).toMatchObject({ revision: 2, project: { title: "u" } });
    expect(third).toMatchObject({ revision: 2 });
  });

  test("leaves the pictures themselves at home, and tells of each", () => {
    const id = "ph1" as AttachmentId;
    const photo = { id, name: "a.jpg", mediaType: "image/jpeg", base64: "AAAA", order: 1 } as const;
    project = { ...project, attachments: { [id]: photo } };
    layOut();
    expect(last().received[0]).toMatchObject({ project: { attachments: { [id]: { ...photo, base64: "" } } } });
  });
});

describe("an answer", () => {
  test("comes with how far it was, and with the number of its layout", async () => {
    const { outcome } = layOut();
    const request = last().request();
    last().say({ type: "progress", request, done: 1, of: 3, at: "Drawing" });
    expect(told).toMatchObject([{ done: 1, of: 3, at: "Drawing" }]);
    expect(await now(outcome)).toBe("waits");
    last().say({ type: "laid-out", request, sheets: SHEETS, empty: {}, lost: [] });
    expect(await now(outcome)).toEqual({
      kind: "done",
      value: { layout: request, sheets: SHEETS, empty: {}, lost: [] },
    });
  });

  test("of a page and of a file is what it holds", async () => {
    const page = client.page(1, 4);
    expect(last().received.at(-1)).toMatchObject({ type: "page", of: 1, page: 4 });
    last().say({ type: "page", request: last().request(), svg: "<svg/>" });
    expect(await now(page.outcome)).toEqual({ kind: "done", value: "<svg/>" });
    const file = client.file(1, { format: "pdf" }, () => {});
    const bytes = new Uint8Array([37]);
    last().say({ type: "file", request: last().request(), bytes });
    expect(await now(file.outcome)).toEqual({ kind: "done", value: bytes });
  });

  test("that says what went wrong names the sheet and a remedy, and the worker stays", async () => {
    const { outcome } = layOut();
    last().say({ type: "failed", request: last().request(), at: "Work steps", reason: "no room" });
    const failed = await now(outcome);
    expect(failed).toEqual({
      kind: "failed",
      message: "Work steps could not be made (no room). Take its tick away to go on with the others.",
    });
    expect(last().hasEnded).toBe(false);
  });

  test("to something that was given up is heard by nobody", async () => {
    const first = layOut();
    const request = last().request();
    const second = layOut();
    expect(await now(first.outcome)).toEqual({ kind: "stopped" });
    last().say({ type: "laid-out", request, sheets: SHEETS, empty: {}, lost: [] });
    expect(await now(second.outcome)).toBe("waits");
    // The step that both need, as checking is, is not lost.
    vi.advanceTimersByTime(10 * STOP_DEADLINE_MS);
    expect(last().hasEnded).toBe(false);
    expect(workers).toHaveLength(1);
  });
});

describe("stopping", () => {
  test("is done for the person at once; a worker that says so in time stays", async () => {
    const { outcome, stop } = layOut();
    const request = last().request();
    stop();
    expect(await now(outcome)).toEqual({ kind: "stopped" });
    expect(last().received.at(-1)).toEqual({ type: "stop", request });
    vi.advanceTimersByTime(STOP_DEADLINE_MS - 1);
    last().say({ type: "stopped", request });
    vi.advanceTimersByTime(10 * STOP_DEADLINE_MS);
    expect(last().hasEnded).toBe(false);
    expect(lost).toBe(0);
  });

  test("ends a worker within half a second that does not stop, and the next question starts another", () => {
    expect(STOP_DEADLINE_MS).toBeLessThanOrEqual(500);
    layOut().stop();
    vi.advanceTimersByTime(STOP_DEADLINE_MS);
    expect(last().hasEnded).toBe(true);
    expect(lost).toBe(1);
    layOut();
    expect(workers).toHaveLength(2);
    expect(last().types()).toEqual(["document", "lay-out"]);
  });

  test("twice, or what has ended, does nothing", async () => {
    const { stop } = layOut();
    last().say({ type: "laid-out", request: last().request(), sheets: SHEETS, empty: {}, lost: [] });
    stop();
    expect(last().types()).not.toContain("stop");
    vi.advanceTimersByTime(STOP_DEADLINE_MS);
    expect(last().hasEnded).toBe(false);
  });
});

describe("a worker that breaks", () => {
  test("gives a sentence to all who wait, and is replaced when something is asked again", async () => {
    const one = layOut();
    const two = client.page(1, 0);
    last().crash();
    for (const { outcome } of [one, two])
      expect(await now<unknown>(outcome)).toEqual({
        kind: "failed",
        message: "Laying out the sheets broke off. The drawing is as it was: try again.",
      });
    expect(workers[0]?.hasEnded).toBe(true);
    const { outcome } = layOut();
    expect(workers).toHaveLength(2);
    last().say({ type: "laid-out", request: last().request(), sheets: SHEETS, empty: {}, lost: [] });
    expect(await now(outcome)).toMatchObject({ kind: "done" });
  });

  test("or says nothing for long is ended", async () => {
    const { outcome } = layOut();
    vi.advanceTimersByTime(SILENCE_MS - 1);
    last().say({ type: "progress", request: last().request(), done: 0, of: 1 });
    vi.advanceTimersByTime(SILENCE_MS - 1);
    expect(await now(outcome)).toBe("waits");
    vi.advanceTimersByTime(1);
    expect(await now(outcome)).toMatchObject({ kind: "failed", message: expect.stringContaining("Try again") });
    expect(last().hasEnded).toBe(true);
  });
});
