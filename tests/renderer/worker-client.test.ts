/** The window's side of the protocol, against a stand-in for the worker that answers as it is told. */
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import type { Surroundings, WorkerClient } from "../../renderer/analysis/client-contract.ts";
import { createWorkerClient } from "../../renderer/analysis/worker-client.ts";
import { DEADLINE_MS } from "../../renderer/analysis/worker-restarts.ts";
import {
  type AnswersMessage,
  type FromWorker,
  PROTOCOL_VERSION,
  type ToWorker,
} from "../../shared-model/analysis/protocol.ts";
import type { Energised, EnergisedNews } from "../../shared-model/answers/energised.ts";
import type { MakeUpAnswer } from "../../shared-model/answers/make-up.ts";
import type { ScopeAnswer, ScopePart, ScopeWork } from "../../shared-model/answers/scope.ts";
import { type Problem, problem } from "../../shared-model/lib/result.ts";
import type { DeviceId, OutletKey } from "../../shared-model/model/ids.ts";
import { emptyProject, type Project } from "../../shared-model/model/project.ts";
import { boxId } from "../builders/ids.ts";

class StandIn implements ReturnType<Surroundings["createWorker"]> {
  readonly received: ToWorker[] = [];
  ended = false;
  onmessage: Worker["onmessage"] = null;
  onerror: Worker["onerror"] = null;
  onmessageerror: Worker["onmessageerror"] = null;
  postMessage(message: ToWorker): void {
    this.received.push(message);
  }
  terminate(): void {
    this.ended = true;
  }
  say(data: FromWorker): void {
    this.onmessage?.call(this as unknown as Worker, { data } as MessageEvent);
  }
  types(): readonly string[] {
    return this.received.map(({ type }) => type);
  }
}

const answers = (revision: number): AnswersMessage => ({
  type: "answers",
  revision,
  states: ["as-found"],
  changed: [],
  tookMs: 0,
});

let workers: StandIn[];
let delivered: AnswersMessage[];
let troubles: (string | undefined)[];
let revision: number;
let client: WorkerClient;

const brings = (repairs: number) => ({ introduces: [], repairs, unprotects: [] });
const project = emptyProject("t", 2020);
const hello: FromWorker = { type: "hello", version: PROTOCOL_VERSION };
const last = (): StandIn => {
  const worker = workers.at(-1);
  if (worker === undefined) throw new Error("No worker was made.");
  return worker;
};
const edit = (): void => {
  revision += 1;
  client.follow({ base: revision - 1, revision, patches: [] });
};

beforeEach(() => {
  vi.useFakeTimers();
  [workers, delivered, troubles, revision] = [[], [], [], 0];
  client = createWorkerClient({
    createWorker() {
      const worker = new StandIn();
      workers.push(worker);
      return worker;
    },
    document: () => ({ project, revision }),
    deliver: (message) => delivered.push(message),
    trouble: (sentence) => troubles.push(sentence),
  });
  client.start();
  last().say(hello);
});
afterEach(() => vi.useRealTimers());

/** Something that can be told apart. */
const lit = (volts: number) => ({ bond: { kind: "ground", volts } });

describe("the window and its checks", () => {
  test("begin with a greeting and the whole document", () => {
    expect(last().received).toEqual([
      { type: "hello", version: PROTOCOL_VERSION },
      { type: "snapshot", project, revision: 0 },
    ]);
    last().say(answers(0));
    expect(delivered).toHaveLength(1);
  });

  test("begin once, however often they are told to", () => {
    client.start();
    expect(workers).toHaveLength(1);
  });

  test("a worker that was started to read a file gets the document that the file has become when checking begins", () => {
    last().say(answers(0));
    // Nobody follows the document yet.
    revision = 1;
    client.start();
    expect(workers).toHaveLength(1);
    expect(last().received.at(-1)).toEqual({ type: "snapshot", project, revision: 1 });
    last().say(answers(1));
    expect(delivered).toHaveLength(2);
  });

  test("an edit goes out as patches on the revision before it", () => {
    last().say(answers(0));
    edit();
    expect(last().received.at(-1)).toEqual({ type: "patches", base: 0, revision: 1, patches: [] });
  });

  test("another document, or one that has moved on unseen, goes out whole", () => {
    last().say(answers(0));
    revision = 5;
    client.follow({ base: 4, revision: 5, patches: [] });
    expect(last().received.at(-1)).toEqual({ type: "snapshot", project, revision: 5 });
    revision = 6;
    client.follow({ base: 5, revision: 6 });
    expect(last().received.at(-1)).toEqual({ type: "snapshot", project, revision: 6 });
  });

  describe("a file", () => {
    const text = JSON.stringify({ ...emptyProject("From a file", 2020) });
    /** The document of the window; the others of these tests never change theirs. */
    let opened: Project;

    const read = async (): Promise<Project> => {
      const reading = client.parse(text);
      last().say({ type: "readable", request: 1 });
      last().say({ type: "parsed", request: 1, readOnly: false });
      const outcome = await reading;
      if (!outcome.ok) throw new Error("It was not read.");
      return outcome.project;
    };
    const open = (next: Project): void => {
      opened = next;
      revision += 1;
      client.follow({ base: revision - 1, revision });
    };

    beforeEach(() => {
      opened = project;
      client = createWorkerClient({
        createWorker() {
          const worker = new StandIn();
          workers.push(worker);
          return worker;
        },
        document: () => ({ project: opened, revision }),
        deliver: (message) => delivered.push(message),
        trouble: (sentence) => troubles.push(sentence),
      });
      client.start();
      last().say(hello);
      last().say(answers(0));
    });

    test("is read here once the worker has judged it", async () => {
      expect(await read()).toEqual(emptyProject("From a file", 2020));
    });

    test("that is opened as it was read does not go back to the worker", async () => {
      open(await read());
      expect(last().received.at(-1)).toEqual({ type: "opened", request: 1, revision: 1 });
      edit();
      expect(last().received.at(-1)).toEqual({ type: "patches", base: 1, revision: 2, patches: [] });
    });

    test("that the worker no longer holds goes out whole when it asks", async () => {
      open(await read());
      last().say({ type: "need-snapshot", have: 0 });
      expect(last().received.at(-1)).toEqual({ type: "snapshot", project: opened, revision: 1 });
    });

    test("that is not what is opened leaves the document to go out whole", async () => {
      await read();
      open(emptyProject("Another", 2020));
      expect(last().received.at(-1)).toEqual({ type: "snapshot", project: opened, revision: 1 });
    });

    test("that a former worker read goes out whole", async () => {
      const fromFile = await read();
      last().onerror?.call(last() as unknown as Worker, {} as ErrorEvent);
      last().say(hello);
      open(fromFile);
      expect(last().received.at(-1)).toEqual({ type: "snapshot", project: fromFile, revision: 1 });
    });

    test("that the window read itself goes to the worker as the text it is, once", () => {
      const own = emptyProject("Read here", 2020);
      client.readHere("its text", own);
      open(own);
      expect(last().received.slice(-2)).toEqual([
        { type: "parse", request: 1, text: "its text" },
        { type: "opened", request: 1, revision: 1 },
      ]);
      last().say({ type: "readable", request: 1 });
      last().say({ type: "parsed", request: 1, readOnly: false });
      last().say(answers(1));
      last().onerror?.call(last() as unknown as Worker, {} as ErrorEvent);
      expect(last().received.at(-1)).toEqual({ type: "snapshot", project: own, revision: 1 });
    });

    describe("that is shown before all of it is judged", () => {
      const own = emptyProject("Read here", 2020);
      let told: (readonly Problem[] | undefined)[];
      beforeEach(() => {
        told = [];
        client.readHere("its text", own, (problems) => told.push(problems));
      });
      const fault = problem("unknown-entry", "/asFound", "It names nothing.");

      test("the worker judges, once", () => {
        open(own);
        last().say({ type: "not-parsed", request: 1, problems: [fault] });
        last().say({ type: "not-parsed", request: 1, problems: [fault] });
        expect(told).toEqual([[fault]]);
      });

      test("the next worker judges, where the first one did not get that far", () => {
        open(own);
        last().onerror?.call(last() as unknown as Worker, {} as ErrorEvent);
        expect(last().received.slice(-2)).toEqual([
          { type: "snapshot", project: own, revision: 1 },
          { type: "parse", request: 2, text: "its text" },
        ]);
        last().say({ type: "parsed", request: 2, readOnly: false });
        expect(told).toEqual([[]]);
      });

      test("nobody can, and says so, once no worker starts any more", () => {
        open(own);
        for (let fails = 0; fails < 4; fails += 1) last().onerror?.call(last() as unknown as Worker, {} as ErrorEvent);
        expect(told).toEqual([undefined]);
      });
    });

    test("that the window read itself goes out whole once it was changed", () => {
      client.readHere("its text", emptyProject("Read here", 2020));
      open(emptyProject("Changed since", 2020));
      expect(last().received.at(-1)).toEqual({ type: "snapshot", project: opened, revision: 1 });
    });

    test("that turns out to be no document is refused, though it could be read", async () => {
      const reading = client.parse(text);
      last().say({ type: "readable", request: 1 });
      last().say({ type: "not-parsed", request: 1, problems: [] });
      expect(await reading).toEqual({ ok: false, problems: [] });
    });
  });

  test("a worker that asks for the document gets it", () => {
    edit();
    last().say({ type: "need-snapshot", have: 0 });
    expect(last().received.at(-1)).toEqual({ type: "snapshot", project, revision: 1 });
  });

  test("a preview of an older revision is no answer", async () => {
    last().say(answers(0));
    const call = { command: "lift-end", args: {} };
    const asked = client.preview("as-found", [call]);
    edit();
    last().say({ type: "previewed", request: 1, base: 0, results: [brings(0)] });
    expect(await asked).toBeUndefined();
    const again = client.preview("as-found", [call]);
    last().say({ type: "previewed", request: 2, base: 1, results: [brings(1)] });
    expect(await again).toEqual([brings(1)]);
  });

  test("the difference of the states is asked of the revision that was sent last, and of an older one it is none", async () => {
    last().say(answers(0));
    const scope = { boxes: [] } as unknown as ScopeAnswer;
    const asked = client.scope();
    expect(last().received.at(-1)).toEqual({ type: "scope", request: 1, base: 0 });
    edit();
    last().say({ type: "scoped", request: 1, base: 0, answer: scope });
    expect(await asked).toBeUndefined();
    const again = client.scope();
    last().say({ type: "scoped", request: 2, base: 1, answer: scope });
    expect(await again).toBe(scope);
  });

  test("where its work takes a while the difference is told first; the answer has both, and of an older revision neither", async () => {
    last().say(answers(0));
    const part = { boxes: [] } as unknown as ScopePart;
    const work = { steps: [] } as unknown as ScopeWork;
    const told = vi.fn();
    const asked = client.scope(told);
    last().say({ type: "scope-part", request: 1, base: 0, part });
    expect(told).toHaveBeenCalledExactlyOnceWith(part);
    // It is at it still: another sign of life, another deadline.
    vi.advanceTimersByTime(9 * DEADLINE_MS);
    last().say({ type: "started", revision: 0 });
    vi.advanceTimersByTime(9 * DEADLINE_MS);
    expect(workers).toHaveLength(1);
    last().say({ type: "scope-work", request: 1, base: 0, work });
    const whole = await asked;
    expect(whole).toEqual({ boxes: [], steps: [] });
    // What is drawn already stays what it is.
    expect(whole?.boxes).toBe(part.boxes);
    const again = client.scope(told);
    edit();
    last().say({ type: "scope-part", request: 2, base: 0, part });
    last().say({ type: "scope-work", request: 2, base: 0, work });
    expect(await again).toBeUndefined();
    expect(told).toHaveBeenCalledTimes(1);
  });

  test("the difference of a large building may take longer than a check, and not for ever", async () => {
    last().say(hello);
    last().say(answers(0));
    const asked = client.scope();
    vi.advanceTimersByTime(3 * DEADLINE_MS);
    expect(workers).toHaveLength(1);
    vi.advanceTimersByTime(10 * DEADLINE_MS);
    expect(workers).toHaveLength(2);
    expect(await asked).toBeUndefined();
  });

  test("what a circuit does is asked of the revision that was sent last, and comes with the revision it is about", async () => {
    last().say(answers(0));
    edit();
    const setting = { off: [], positions: {}, tripped: [], idle: [] };
    const asked = client.energise("as-found", setting, {});
    expect(last().received.at(-1)).toEqual({
      type: "energise",
      request: 1,
      base: 1,
      state: "as-found",
      setting,
      ask: {},
    });
    const [one, other] = [boxId("one"), boxId("other")];
    const answer = { boxes: { [one]: lit(1), [other]: lit(2) }, cables: {}, supplyV: 120 } as unknown as Energised;
    last().say({ type: "energised", request: 1, base: 1, answer: { ...answer, whole: true } });
    expect(await asked).toEqual({ revision: 1, answer });
    const unknown = client.energise("proposed", setting, {});
    last().say({ type: "energised", request: 2, base: 1 });
    expect(await unknown).toBeUndefined();
    // The next continues the last that there was.
    const more = client.energise("as-found", setting, {});
    const news = { boxes: { [one]: null, [other]: lit(3) }, cables: {}, supplyV: 121, whole: false };
    last().say({ type: "energised", request: 3, base: 1, answer: news as unknown as EnergisedNews });
    expect(await more).toEqual({ revision: 1, answer: { boxes: { [other]: lit(3) }, cables: {}, supplyV: 121 } });
  });

  test("voltage drop is asked of the revision that was sent last; an answer about an older one is none", async () => {
    last().say(answers(0));
    const device = "R1" as DeviceId;
    const asked = client.outletDrops("as-found", device);
    expect(last().received.at(-1)).toEqual({ type: "outlet-drops", request: 1, base: 0, state: "as-found", device });
    edit();
    last().say({ type: "outlet-drops", request: 1, base: 0, drops: [] });
    expect(await asked).toBeUndefined();
    const again = client.outletDrops("as-found", device);
    last().say({ type: "outlet-drops", request: 2, base: 1, drops: [] });
    expect(await again).toEqual([]);
    const hanging = client.outletDrops("as-found", device);
    vi.advanceTimersByTime(DEADLINE_MS + 1);
    expect(await hanging).toBeUndefined();
  });

  test("expected results are asked of the revision that was sent last; an answer about an older one is none", async () => {
    last().say(answers(0));
    const wanted = [{ stage: "after", test: "hot-neutral", point: "R1" }] as const;
    const asked = client.expectedTests(wanted);
    expect(last().received.at(-1)).toEqual({ type: "expected-tests", request: 1, base: 0, wanted });
    edit();
    last().say({ type: "expected-tests", request: 1, base: 0, answers: wanted });
    expect(await asked).toBeUndefined();
    const again = client.expectedTests(wanted);
    last().say({ type: "expected-tests", request: 2, base: 1, answers: wanted });
    expect(await again).toEqual(wanted);
    const hanging = client.expectedTests(wanted);
    vi.advanceTimersByTime(DEADLINE_MS + 1);
    expect(await hanging).toBeUndefined();
  });

  test("a make-up is asked of the revision that was sent last; an answer about an older one is none", async () => {
    last().say(answers(0));
    const ask = { state: "proposed", box: boxId("B1") } as const;
    const made = { name: "B1" } as MakeUpAnswer;
    const asked = client.makeUp(ask);
    expect(last().received.at(-1)).toEqual({ type: "make-up", request: 1, base: 0, ask });
    edit();
    last().say({ type: "made-up", request: 1, base: 0, answer: made });
    expect(await asked).toBeUndefined();
    const again = client.makeUp(ask);
    last().say({ type: "made-up", request: 2, base: 1, answer: made });
    expect(await again).toBe(made);
    const fit = { outlet: "R1" as OutletKey };
    const fitting = client.fit(fit);
    expect(last().received.at(-1)).toEqual({ type: "fit", request: 3, base: 1, ask: fit });
    vi.advanceTimersByTime(DEADLINE_MS + 1);
    expect(await fitting).toBeUndefined();
  });

  test("the rules of an edition are asked for, and a worker that does not tell them is given up", async () => {
    last().say(answers(0));
    const asked = client.ruleBook(2020);
    expect(last().received.at(-1)).toEqual({ type: "rule-book", request: 1, edition: 2020 });
    // The document may change meanwhile: the rules do not hang on it.
    edit();
    last().say({ type: "rule-book", request: 1, rules: [] });
    expect(await asked).toEqual([]);
    last().say(answers(1));
    const hanging = client.ruleBook(2023);
    vi.advanceTimersByTime(DEADLINE_MS + 1);
    expect(await hanging).toBeUndefined();
  });

  test("a circuit that takes too long is given up with its worker", async () => {
    last().say(answers(0));
    const asked = client.energise("as-found", { off: [], positions: {}, tripped: [], idle: [] }, {});
    const before = last();
    vi.advanceTimersByTime(DEADLINE_MS + 1);
    expect(before.ended).toBe(true);
    expect(await asked).toBeUndefined();
  });

  test("a preview names its state and, where calls are to mend something, what", () => {
    last().say(answers(0));
    const call = { command: "lift-end", args: {} };
    client.preview("proposed", [call], "box-overfull|enclosure:B1");
    expect(last().received.at(-1)).toEqual({
      type: "preview",
      request: 1,
      base: 0,
      state: "proposed",
      calls: [call],
      mends: "box-overfull|enclosure:B1",
    });
  });

  test("a worker that does not hold the state or the revision answers for none", async () => {
    last().say(answers(0));
    const asked = client.preview("proposed", [{ command: "lift-end", args: {} }]);
    last().say({ type: "previewed", request: 1, base: -1, results: [] });
    expect(await asked).toBeUndefined();
  });
});

describe("checks that do not answer", () => {
  test("an answer just before the deadline keeps the worker, silence past it does not", () => {
    last().say(answers(0));
    edit();
    vi.advanceTimersByTime(DEADLINE_MS - 1);
    expect(workers).toHaveLength(1);
    vi.advanceTimersByTime(1);
    expect(workers).toHaveLength(2);
    expect(workers[0]?.ended).toBe(true);
    expect(last().received[0]).toEqual({ type: "hello", version: PROTOCOL_VERSION, watchful: true });
    expect(last().received[1]).toEqual({ type: "snapshot", project, revision: 1 });
  });

  test("a long check that goes on keeps the worker, and one that goes on no more does not", () => {
    last().say(answers(0));
    edit();
    for (let sign = 0; sign < 10; sign += 1) {
      vi.advanceTimersByTime(DEADLINE_MS - 1);
      last().say({ type: "started", revision: 1 });
    }
    expect(workers).toHaveLength(1);
    vi.advanceTimersByTime(DEADLINE_MS);
    expect(workers).toHaveLength(2);
  });

  test("nothing is waited for when all is answered", () => {
    last().say(answers(0));
    vi.advanceTimersByTime(DEADLINE_MS * 100);
    expect(workers).toHaveLength(1);
  });

  test("the rule that hangs again is left out, and the person is told which", () => {
    last().say(answers(0));
    edit();
    vi.advanceTimersByTime(DEADLINE_MS);
    last().say(hello);
    last().say({ type: "started", revision: 1, rule: "box-overfull" });
    last().say({ type: "started", revision: 1, rule: "open-neutral" });
    vi.advanceTimersByTime(DEADLINE_MS);
    expect(last().received[0]).toEqual({
      type: "hello",
      version: PROTOCOL_VERSION,
      watchful: true,
      disabledRules: ["open-neutral"],
    });
    last().say(hello);
    last().say(answers(1));
    expect(troubles.at(-1)).toContain("open-neutral");
    expect(delivered.at(-1)?.revision).toBe(1);
  });

  test("after three vain restarts it stops and says so, and a person can try again", () => {
    for (let turn = 0; turn < 10; turn += 1) vi.advanceTimersByTime(60_000);
    expect(workers).toHaveLength(1 + 3);
    expect(troubles.at(-1)).toContain("Checking has stopped");
    edit();
    expect(workers).toHaveLength(1 + 3);
    client.retry();
    last().say(hello);
    last().say(answers(1));
    expect(delivered.at(-1)?.revision).toBe(1);
    expect(troubles.at(-1)).toBeUndefined();
  });

  test("a worker that fails is replaced at once", () => {
    last().onerror?.call(last() as unknown as Worker, {} as ErrorEvent);
    expect(workers).toHaveLength(2);
  });

  test("reading a file may take longer than a check, and a file that hangs is refused", async () => {
    last().say(answers(0));
    const reading = client.parse("text");
    vi.advanceTimersByTime(DEADLINE_MS * 2);
    expect(workers).toHaveLength(1);
    vi.advanceTimersByTime(60_000);
    const outcome = await reading;
    expect(outcome.ok).toBe(false);
    expect(workers.length).toBeGreaterThan(1);
  });
});

describe("arranging", () => {
  const what = { order: "by-circuit", places: {}, sizes: [] } as const;
  const moves = [{ id: boxId("B1"), to: { x: 16, y: 32 } }];
  const begin = () => {
    last().say(answers(0));
    const told: number[] = [];
    const arranging = client.arrange("as-found", what, ({ done }) => told.push(done));
    const message = last().received.at(-1);
    if (message?.type !== "arrange") throw new Error("It was not asked.");
    return { arranging, told, message };
  };

  test("tells how far it is, then where the boxes go", async () => {
    const { arranging, told, message } = begin();
    expect(message).toMatchObject({ base: 0, state: "as-found", what });
    last().say({ type: "arranging", request: message.request, done: 3, of: 8 });
    last().say({ type: "arranging", request: message.request + 1, done: 5, of: 8 });
    last().say({ type: "arranged", request: message.request, base: 0, moves });
    expect(told).toEqual([3]);
    expect(await arranging.moves).toEqual(moves);
  });

  test("comes to nothing when it is stopped, and the worker hears of it; nor when the document has moved on", async () => {
    const one = begin();
    one.arranging.stop();
    expect(last().received.at(-1)).toEqual({ type: "stop-arranging" });
    expect(await one.arranging.moves).toBeUndefined();
    const two = begin();
    edit();
    last().say({ type: "arranged", request: two.message.request, base: 0, moves });
    expect(await two.arranging.moves).toBeUndefined();
  });

  test("may take longer than a check may; a worker that is replaced gives it up", async () => {
    const { arranging } = begin();
    vi.advanceTimersByTime(5 * DEADLINE_MS);
    expect(workers).toHaveLength(1);
    edit();
    vi.advanceTimersByTime(DEADLINE_MS + 1);
    expect(workers).toHaveLength(2);
    expect(await arranging.moves).toBeUndefined();
  });
});

test("photos never go to the worker: not with the document, not with an edit", () => {
  const photo = { id: "f1", name: "Photo", mediaType: "image/jpeg", base64: "AAAA", order: 0 };
  const withPhoto = { ...project, attachments: { f1: photo } } as unknown as Project;
  const sent: StandIn[] = [];
  let now = 0;
  const own = createWorkerClient({
    createWorker() {
      const worker = new StandIn();
      sent.push(worker);
      return worker;
    },
    document: () => ({ project: withPhoto, revision: now }),
    deliver: () => undefined,
    trouble: () => undefined,
  });
  own.start();
  const attach = { op: "add" as const, path: ["attachments", "f2"], value: photo };
  const rename = { op: "replace" as const, path: ["title"], value: "House" };
  now = 1;
  own.follow({ base: 0, revision: 1, patches: [attach, rename] });
  const [, snapshot, patches] = sent[0]?.received ?? [];
  expect(snapshot).toMatchObject({ type: "snapshot", project: { title: "t", attachments: {} } });
  expect(patches).toEqual({ type: "patches", base: 0, revision: 1, patches: [rename] });
  // A revision of nothing but photos is told all the same, so that the next one is known to follow it.
  own.follow({ base: 1, revision: 2, patches: [attach] });
  expect(sent[0]?.received.at(-1)).toEqual({ type: "patches", base: 1, revision: 2, patches: [] });
});
