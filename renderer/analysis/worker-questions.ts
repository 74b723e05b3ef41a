import type { PreviewResult, SurveyReply, ToWorker } from "../../shared-model/analysis/protocol.ts";
import type { Energised } from "../../shared-model/answers/energised.ts";
import type { ExpectedAnswer } from "../../shared-model/answers/expected-test.ts";
import type { FitAnswer, MakeUpAnswer } from "../../shared-model/answers/make-up.ts";
import type { OutletDropAnswer } from "../../shared-model/answers/outlet-drop.ts";
import type { BookRule } from "../../shared-model/answers/rule-book.ts";
import type { ScopeAnswer, ScopePart } from "../../shared-model/answers/scope.ts";
import type { SupplyAnswer } from "../../shared-model/answers/supply.ts";
import { withNews } from "../../shared-model/queries/energised-news.ts";
import type { EnergisedAt, WorkerClient } from "./client-contract.ts";
import type { Line, Takers } from "./worker-line.ts";

/** The kinds of question, by the message that puts one, and what each is answered with. */
interface Answers {
  readonly preview: readonly PreviewResult[];
  readonly energise: EnergisedAt;
  readonly "outlet-drops": readonly OutletDropAnswer[];
  readonly "expected-tests": readonly ExpectedAnswer[];
  readonly "make-up": MakeUpAnswer;
  readonly fit: FitAnswer;
  readonly supply: SupplyAnswer;
  readonly scope: ScopeAnswer;
  readonly survey: SurveyReply;
  readonly "rule-book": readonly BookRule[];
}

type Kind = keyof Answers;
type Asking =
  | "preview"
  | "energise"
  | "outletDrops"
  | "expectedTests"
  | "makeUp"
  | "fit"
  | "supply"
  | "scope"
  | "survey"
  | "ruleBook";
type Answering =
  | "previewed"
  | "energised"
  | "outlet-drops"
  | "expected-tests"
  | "made-up"
  | "fitted"
  | "supplied"
  | "scope-part"
  | "scope-work"
  | "scoped"
  | "surveyed"
  | "rule-book";

interface Questions {
  readonly asks: Pick<WorkerClient, Asking>;
  readonly takers: Takers<Answering>;
  isAny(): boolean;
  /** Whether the difference of the states is asked for: longer work than a check. */
  isOfScope(): boolean;
  /** The worker is gone: nobody answers what is asked any more. */
  giveUp(): void;
}

/** Questions about the document: each is put to the worker, and settled by its answer or when the worker is given up. */
export function createQuestions(line: Line): Questions {
  const { ifCurrent } = line;
  /** Those that wait for an answer, by kind and number. */
  const open: { readonly [K in Kind]: Map<number, (answer: Answers[K] | undefined) => void> } = {
    preview: new Map(),
    energise: new Map(),
    "outlet-drops": new Map(),
    "expected-tests": new Map(),
    "make-up": new Map(),
    fit: new Map(),
    supply: new Map(),
    scope: new Map(),
    survey: new Map(),
    "rule-book": new Map(),
  };
  /** What this worker answered last about the circuit: its next answer continues it. */
  let energised: Energised | undefined;
  /** Differences whose work is still being worked out, and who is told of one. */
  const scopeParts = new Map<number, { part?: ScopePart; readonly first: (part: ScopePart) => void }>();

  /** Puts a question; it comes to undefined when there is no worker, or nobody can answer. */
  function ask<K extends Kind>(
    kind: K,
    question: (request: number, base: number) => Extract<ToWorker, { readonly type: K }>,
  ): Promise<Answers[K] | undefined> {
    if (!line.isOpen()) return Promise.resolve(undefined);
    return new Promise((done) => {
      const request = line.nextRequest();
      open[kind].set(request, done);
      line.post(question(request, line.sent()));
      line.watch();
    });
  }

  function settle<K extends Kind>(kind: K, request: number, answer: Answers[K] | undefined): void {
    open[kind].get(request)?.(answer);
    open[kind].delete(request);
  }

  return {
    asks: {
      preview(state, calls, mends, fillOf) {
        if (calls.length === 0) return Promise.resolve(undefined);
        const more = { ...(mends !== undefined && { mends }), ...(fillOf !== undefined && { fillOf }) };
        return ask("preview", (request, base) => ({ type: "preview", request, base, state, calls, ...more }));
      },
      energise: (state, setting, wanted) =>
        ask("energise", (request, base) => ({ type: "energise", request, base, state, setting, ask: wanted })),
      outletDrops: (state, device) =>
        ask("outlet-drops", (request, base) => ({ type: "outlet-drops", request, base, state, device })),
      expectedTests: (wanted) =>
        ask("expected-tests", (request, base) => ({ type: "expected-tests", request, base, wanted })),
      makeUp: (wanted) => ask("make-up", (request, base) => ({ type: "make-up", request, base, ask: wanted })),
      fit: (wanted) => ask("fit", (request, base) => ({ type: "fit", request, base, ask: wanted })),
      supply: (wanted) => ask("supply", (request, base) => ({ type: "supply", request, base, ask: wanted })),
      scope: (first = () => {}) =>
        ask("scope", (request, base) => {
          scopeParts.set(request, { first });
          return { type: "scope", request, base };
        }),
      survey: (wanted) => ask("survey", (request, base) => ({ type: "survey", request, base, ask: wanted })),
      ruleBook: (edition) => ask("rule-book", (request) => ({ type: "rule-book", request, edition })),
    },
    takers: {
      previewed: ({ request, base, results }) => settle("preview", request, ifCurrent(base, results)),
      energised({ request, base, answer: news }) {
        if (news !== undefined) energised = withNews(energised, news);
        settle("energise", request, news && energised && { revision: base, answer: energised });
      },
      "outlet-drops": ({ request, base, drops }) => settle("outlet-drops", request, ifCurrent(base, drops)),
      "expected-tests": ({ request, base, answers }) => settle("expected-tests", request, ifCurrent(base, answers)),
      "made-up": ({ request, base, answer }) => settle("make-up", request, ifCurrent(base, answer)),
      fitted: ({ request, base, answer }) => settle("fit", request, ifCurrent(base, answer)),
      supplied: ({ request, base, answer }) => settle("supply", request, ifCurrent(base, answer)),
      "scope-part"({ request, base, part }) {
        const asker = scopeParts.get(request);
        const current = ifCurrent(base, part);
        if (asker === undefined || current === undefined) return;
        asker.part = current;
        asker.first(current);
      },
      "scope-work"({ request, base, work }) {
        const part = scopeParts.get(request)?.part;
        scopeParts.delete(request);
        settle("scope", request, ifCurrent(base, part && work && { ...part, ...work }));
      },
      scoped({ request, base, answer }) {
        scopeParts.delete(request);
        settle("scope", request, ifCurrent(base, answer));
      },
      surveyed: ({ request, base, reply }) => settle("survey", request, ifCurrent(base, reply)),
      // The rules do not hang on the document.
      "rule-book": ({ request, rules }) => settle("rule-book", request, rules),
    },
    isAny: () => Object.values(open).some(({ size }) => size > 0),
    isOfScope: () => open.scope.size > 0,
    giveUp() {
      for (const waiting of Object.values(open)) {
        for (const done of waiting.values()) done(undefined);
        waiting.clear();
      }
      scopeParts.clear();
      energised = undefined;
    },
  };
}
