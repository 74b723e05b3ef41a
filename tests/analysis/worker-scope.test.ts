/** The difference of the states as the worker tells it: of the revision that it holds, and of no other. */
import { beforeAll, beforeEach, expect, test, vi } from "vitest";
import { type FromWorker, PROTOCOL_VERSION, type ToWorker } from "../../shared-model/analysis/protocol.ts";
import { scopeAnswer } from "../../shared-model/analysis/scope-answer.ts";
import { openSession } from "../../shared-model/analysis/session.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import { laundryAsFound } from "../builders/drawing.ts";
import { openSample } from "../builders/samples/open-sample.ts";

type Scoped = Extract<FromWorker, { readonly type: "scoped" }>;

let said: FromWorker[] = [];
const scope: { onmessage?: (event: { readonly data: ToWorker }) => void; postMessage(message: FromWorker): void } = {
  postMessage: (message) => said.push(message),
};
const tell = (message: ToWorker): void => scope.onmessage?.({ data: message });
const both = openSample("laundry-proposed");

async function scoped(request: number): Promise<Scoped> {
  const found = (): Scoped | undefined =>
    said.find((message): message is Scoped => message.type === "scoped" && message.request === request);
  await vi.waitFor(() => expect(found()).toBeDefined(), 20_000);
  return found() as Scoped;
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
