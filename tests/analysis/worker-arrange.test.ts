/** Boxes that the worker arranges, and a survey that it answers: of the revision that it holds, and of two arrangings the later. */
import { beforeAll, beforeEach, expect, test, vi } from "vitest";
import { answerSurvey } from "../../shared-model/analysis/answer-survey.ts";
import { type FromWorker, PROTOCOL_VERSION, type ToWorker } from "../../shared-model/analysis/protocol.ts";
import { arrangeSteps } from "../../shared-model/geometry/house/arrange-steps.ts";
import { allAtOnce } from "../../shared-model/lib/in-slices.ts";
import { laundryAsFound } from "../builders/drawing.ts";
import { boxId } from "../builders/ids.ts";

let said: FromWorker[] = [];
const scope: { onmessage?: (event: { readonly data: ToWorker }) => void; postMessage(message: FromWorker): void } = {
  postMessage: (message) => said.push(message),
};
const tell = (message: ToWorker): void => scope.onmessage?.({ data: message });
const laundry = laundryAsFound();
const what = { order: "by-circuit", places: {}, sizes: [] } as const;
const arrange = (request: number, base = 3): void => tell({ type: "arrange", request, base, state: "as-found", what });
const ends = (type: "arranged" | "surveyed") => said.filter((message) => message.type === type);
const ended = (type: "arranged" | "surveyed", count: number) =>
  vi.waitFor(() => expect(ends(type)).toHaveLength(count), 20_000);

beforeAll(async () => {
  vi.stubGlobal("self", scope);
  const host = "../../shared-model/hosts/worker.ts";
  await import(host);
  tell({ type: "hello", version: PROTOCOL_VERSION });
  tell({ type: "snapshot", project: laundry, revision: 3 });
  await vi.waitFor(() => expect(said.some(({ type }) => type === "answers")).toBe(true), 20_000);
});
beforeEach(() => {
  said = [];
});

test("boxes go where the layout puts them; of another revision there is no answer", async () => {
  arrange(1);
  await ended("arranged", 1);
  const steps = arrangeSteps(laundry, "as-found", what);
  const moves = steps && allAtOnce(steps);
  expect(moves?.length).toBeGreaterThan(0);
  expect(ends("arranged")).toEqual([{ type: "arranged", request: 1, base: 3, moves }]);
  arrange(2, 2);
  await ended("arranged", 2);
  expect(ends("arranged").at(-1)).toEqual({ type: "arranged", request: 2, base: 2 });
});

test("of two the later counts, and one that is left off comes to nothing", async () => {
  arrange(3);
  arrange(4);
  expect(ends("arranged")).toEqual([{ type: "arranged", request: 3, base: 3 }]);
  await ended("arranged", 2);
  expect(ends("arranged").at(-1)).toMatchObject({ request: 4, moves: expect.any(Array) });
  arrange(5);
  tell({ type: "stop-arranging" });
  expect(ends("arranged").at(-1)).toEqual({ type: "arranged", request: 5, base: 3 });
  tell({ type: "stop-arranging" });
  arrange(6);
  await ended("arranged", 4);
  expect(ends("arranged").at(-1)).toMatchObject({ request: 6, moves: expect.any(Array) });
});

test("a survey is answered as the core answers it; of another revision there is no answer", async () => {
  const ask = { kind: "box", box: boxId("B1") } as const;
  tell({ type: "survey", request: 7, base: 3, ask });
  await ended("surveyed", 1);
  expect(said.at(-1)).toEqual({ type: "surveyed", request: 7, base: 3, reply: answerSurvey(laundry, ask) });
  tell({ type: "survey", request: 8, base: 2, ask });
  await ended("surveyed", 2);
  expect(said.at(-1)).toEqual({ type: "surveyed", request: 8, base: 2 });
});
