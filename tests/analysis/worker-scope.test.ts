/** The difference of the states as the worker tells it: of the revision that it holds, and of no other. */
import { afterEach, beforeAll, beforeEach, describe, expect, test, vi } from "vitest";
import { type FromWorker, PROTOCOL_VERSION, type ToWorker } from "../../shared-model/analysis/protocol.ts";
import { scopeAnswer } from "../../shared-model/analysis/scope-answer.ts";
import { openSession } from "../../shared-model/analysis/session.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import { laundryAsFound } from "../builders/drawing.ts";
import { openSample } from "../builders/samples/open-sample.ts";

type Scoped = Extract<FromWorker, { readonly type: "scoped" }>;

let said: FromWorker[] = [];
let heard: (message: FromWorker) => void = () => {};
const scope: { onmessage?: (event: { readonly data: ToWorker }) => void; postMessage(message: FromWorker): void } = {
  postMessage(message) {
    said.push(message);
    heard(message);
  },
};
const tell = (message: ToWorker): void => scope.onmessage?.({ data: message });
const both = openSample("laundry-proposed");

/** The answer, in one part or, on a machine that is busy, in two. */
async function scoped(request: number): Promise<Pick<Scoped, "base" | "answer">> {
  const own = (): readonly FromWorker[] =>
    said.filter((message) => "request" in message && message.request === request);
  await vi.waitFor(() => expect(own().at(-1)?.type).toMatch(/^(scoped|scope-work)$/), 20_000);
  const [first, second] = own();
  if (first?.type === "scoped") return first;
  if (first?.type !== "scope-part" || second?.type !== "scope-work") throw new Error("Not answered.");
  const { base, work } = second;
  return { base, ...(work && { answer: { ...first.part, ...work } }) };
}

beforeAll(async () => {
  vi.stubGlobal("self", scope);
  const host = "../../shared-model/hosts/worker.ts";
  await import(host);
  tell({ type: "hello", version: PROTOCOL_VERSION });
});

beforeEach(async () => {
  said = [];
  tell({ type: "snapshot", project: both, revision: 5 });
  await vi.waitFor(() => expect(said.some(({ type }) => type === "answers")).toBe(true), 20_000);
});

test("it is that of a session, and can be sent", async () => {
  tell({ type: "scope", request: 1, base: 5 });
  const { base, answer } = await scoped(1);
  expect(base).toBe(5);
  expect(answer).toEqual(scopeAnswer(openSession(both)));
  expect(structuredClone(answer)).toEqual(answer);
  expect(answer?.totals).toMatchObject({ detach: 13, attach: 19 });
});

test("there is none of another revision, and none once an edit came between", async () => {
  tell({ type: "scope", request: 2, base: 4 });
  expect(await scoped(2)).not.toHaveProperty("answer");
  const done = runCommand(both, { command: "set-edition", args: { edition: 2023 } });
  if (!done.ok) throw new Error(done.refusal.message);
  tell({ type: "scope", request: 3, base: 5 });
  tell({ type: "patches", base: 5, revision: 6, patches: done.patches });
  expect(await scoped(3)).not.toHaveProperty("answer");
  tell({ type: "scope", request: 4, base: 6 });
  expect(await scoped(4)).toHaveProperty("answer");
});

test("there is none where nothing is proposed", async () => {
  said = [];
  tell({ type: "snapshot", project: laundryAsFound(), revision: 9 });
  tell({ type: "scope", request: 5, base: 9 });
  expect(await scoped(5)).not.toHaveProperty("answer");
});

describe("work that takes a while", () => {
  /** A clock that runs a second each time it is looked at: every step ends a slice. */
  const slowly = (): void => {
    let now = performance.now();
    vi.spyOn(performance, "now").mockImplementation(() => {
      now += 1000;
      return now;
    });
  };
  const ofScope = (request: number): FromWorker[] =>
    said.filter((message) => "request" in message && message.request === request);
  const ended = (request: number) =>
    vi.waitFor(() => expect(ofScope(request).at(-1)?.type).toMatch(/^(scoped|scope-work)$/), 20_000);
  afterEach(() => {
    vi.restoreAllMocks();
    heard = () => {};
  });

  test("the difference goes first, the work follows, and together they are the answer", async () => {
    slowly();
    tell({ type: "scope", request: 11, base: 5 });
    await ended(11);
    const [part, work, ...others] = ofScope(11);
    if (part?.type !== "scope-part" || work?.type !== "scope-work") throw new Error("Not in two parts.");
    expect(others).toEqual([]);
    expect({ ...part.part, ...work.work }).toEqual(scopeAnswer(openSession(both)));
    expect(part.part).not.toHaveProperty("steps");
    // So that nobody takes it for hanging.
    expect(said.filter(({ type }) => type === "started").length).toBeGreaterThan(2);
  });

  test("an edit between two slices ends it, and is answered itself", async () => {
    slowly();
    const done = runCommand(both, { command: "set-edition", args: { edition: 2023 } });
    if (!done.ok) throw new Error(done.refusal.message);
    heard = ({ type }) => {
      if (type === "scope-part") tell({ type: "patches", base: 5, revision: 6, patches: done.patches });
    };
    tell({ type: "scope", request: 12, base: 5 });
    await ended(12);
    expect(ofScope(12).at(-1)).toEqual({ type: "scope-work", request: 12, base: 5 });
    expect(said.some((message) => message.type === "answers" && message.revision === 6)).toBe(true);
  });
});
