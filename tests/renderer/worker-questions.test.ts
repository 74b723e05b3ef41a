/** Questions of every kind: settled by the answer to them, and by nothing else but the end of their worker. */
import { beforeEach, expect, test } from "vitest";
import { type Line, take } from "../../renderer/analysis/worker-line.ts";
import { createQuestions } from "../../renderer/analysis/worker-questions.ts";
import type { ToWorker } from "../../shared-model/analysis/protocol.ts";
import { boxId, deviceId } from "../builders/ids.ts";

type Questions = ReturnType<typeof createQuestions>;
type Answering = Parameters<typeof take<keyof Questions["takers"]>>[1];

let posted: ToWorker[];
let revision: number;
let questions: Questions;
/** What a question came to; it has no outcome while it waits. */
let outcomes: { readonly answer: unknown }[];

const line: Line = {
  isOpen: () => true,
  sent: () => 0,
  ifCurrent: (base, answer) => (base === revision ? answer : undefined),
  nextRequest: () => posted.length + 1,
  post: (message) => posted.push(message),
  watch: () => undefined,
};

beforeEach(() => {
  [posted, outcomes, revision] = [[], [], 0];
  questions = createQuestions(line);
});

/** Stands for an answer, whatever it would say. */
const said = { boxes: {}, cables: {}, whole: true } as never;
const box = boxId("B1");

/** How each is asked, and how the worker answers it. */
const KINDS: readonly (readonly [ToWorker["type"], () => Promise<unknown>, (request: number) => Answering])[] = [
  [
    "preview",
    () => questions.asks.preview("as-found", [{ command: "lift-end", args: {} }]),
    (request) => ({ type: "previewed", request, base: 0, results: said }),
  ],
  [
    "energise",
    () => questions.asks.energise("as-found", { off: [], positions: {}, tripped: [], idle: [] }, {}),
    (request) => ({ type: "energised", request, base: 0, answer: said }),
  ],
  [
    "outlet-drops",
    () => questions.asks.outletDrops("as-found", deviceId("R1")),
    (request) => ({ type: "outlet-drops", request, base: 0, drops: said }),
  ],
  [
    "expected-tests",
    () => questions.asks.expectedTests([]),
    (request) => ({ type: "expected-tests", request, base: 0, answers: said }),
  ],
  [
    "make-up",
    () => questions.asks.makeUp({ state: "proposed", box }),
    (request) => ({ type: "made-up", request, base: 0, answer: said }),
  ],
  ["fit", () => questions.asks.fit(said), (request) => ({ type: "fitted", request, base: 0, answer: said })],
  ["supply", () => questions.asks.supply(said), (request) => ({ type: "supplied", request, base: 0, answer: said })],
  ["scope", () => questions.asks.scope(), (request) => ({ type: "scoped", request, base: 0, answer: said })],
  [
    "survey",
    () => questions.asks.survey({ kind: "box", box }),
    (request) => ({ type: "surveyed", request, base: 0, reply: said }),
  ],
  ["rule-book", () => questions.asks.ruleBook(2020), (request) => ({ type: "rule-book", request, rules: said })],
];

/** Asks, and lets what is settled come to its outcome. */
const ask = (asked: () => Promise<unknown>): void => void asked().then((answer) => outcomes.push({ answer }));
const hear = async (...messages: readonly Answering[]): Promise<void> => {
  for (const message of messages) take(questions.takers, message);
  await Promise.resolve();
};

test.each(KINDS)("%s: the answer to it settles it, once", async (kind, asked, answer) => {
  ask(asked);
  expect(posted.map(({ type }) => type)).toEqual([kind]);
  expect(questions.isAny()).toBe(true);
  await hear(answer(1), answer(1));
  expect(outcomes).toEqual([{ answer: expect.anything() }]);
  expect(questions.isAny()).toBe(false);
});

test.each(KINDS)(
  "%s: an answer to an earlier question, or to one of another kind, leaves it open",
  async (kind, asked, answer) => {
    posted = [{ type: "stop-arranging" }];
    ask(asked);
    const others = KINDS.filter(([other]) => other !== kind).map(([, , said]) => said(2));
    await hear(answer(1), ...others);
    expect(outcomes).toEqual([]);
    expect(questions.isAny()).toBe(true);
  },
);

test.each(KINDS)(
  "%s: with its worker it is given up, and what comes later is nobody's",
  async (_kind, asked, answer) => {
    ask(asked);
    questions.giveUp();
    expect(questions.isAny()).toBe(false);
    await hear(answer(1));
    expect(outcomes).toEqual([{ answer: undefined }]);
  },
);

test.each(KINDS)(
  "%s: of a document that has moved on there is no answer, except where it says so or none is needed",
  async (kind, asked, answer) => {
    ask(asked);
    revision = 1;
    await hear(answer(1));
    const stands = kind === "energise" || kind === "rule-book";
    expect(outcomes).toEqual([{ answer: stands ? expect.anything() : undefined }]);
  },
);
