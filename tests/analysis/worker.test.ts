/** The checking worker itself, in a stand-in for its scope: what it holds after reading a file, and what it does not. */
import { beforeAll, beforeEach, describe, expect, test, vi } from "vitest";
import { isBlank } from "../../shared-model/analysis/blank-document.ts";
import { energise } from "../../shared-model/analysis/energise.ts";
import { expectedTests } from "../../shared-model/analysis/expected-tests.ts";
import { deviceDrops } from "../../shared-model/analysis/outlet-drops.ts";
import { type FromWorker, PROTOCOL_VERSION, type ToWorker } from "../../shared-model/analysis/protocol.ts";
import { openSession } from "../../shared-model/analysis/session.ts";
import { runCommand } from "../../shared-model/commands/run-command.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import type { OutletKey } from "../../shared-model/model/ids.ts";
import { type Edition, emptyProject } from "../../shared-model/model/project.ts";
import { answerFit } from "../../shared-model/planning/answer-make-up.ts";
import { ruleBook } from "../../shared-model/rules/rule-book.ts";
import { laundryAsFound } from "../builders/drawing.ts";
import { boxId, cableId, deviceId } from "../builders/ids.ts";

let said: FromWorker[] = [];
const scope: { onmessage?: (event: { readonly data: ToWorker }) => void; postMessage(message: FromWorker): void } = {
  postMessage: (message) => said.push(message),
};
const tell = (message: ToWorker): void => scope.onmessage?.({ data: message });
const types = (): readonly string[] => said.map(({ type }) => type);

beforeAll(async () => {
  vi.stubGlobal("self", scope);
  const host = "../../shared-model/hosts/worker.ts";
  await import(host);
  tell({ type: "hello", version: PROTOCOL_VERSION });
});

describe("before anything is drawn", () => {
  const blank = emptyProject("Nothing yet", 2020);
  const id = boxId("B1");
  const box = { id, name: "B1", item: "plastic-new-1", at: { x: 0, y: 0 } };
  const adds = { command: "place-enclosure", args: { state: "as-found", ...box } };

  test("a blank drawing is answered at once, and what its session would say later", async () => {
    tell({ type: "snapshot", project: blank, revision: 3 });
    expect(said.at(-1)).toMatchObject({ type: "answers", revision: 3, states: ["as-found"] });
    const { changed } = said.at(-1) as Extract<FromWorker, { readonly type: "answers" }>;
    const [later] = openSession(blank).answers(3).changed;
    expect({ ...changed[0], checksRun: 0 }).toEqual({ ...later, checksRun: 0 });
  });

  test("the box fill of what would be drawn is told, just as a session tells it", () => {
    tell({ type: "preview", request: 7, base: 0, state: "as-found", calls: [adds], fillOf: id });
    const [told] = (said.at(-1) as Extract<FromWorker, { readonly type: "previewed" }>).results;
    const [full] = openSession(blank).preview("as-found", [adds], undefined, id);
    expect(said.at(-1)).toMatchObject({ request: 7, base: 0 });
    expect(told).toMatchObject({ fill: { verdict: "fits" } });
    expect(told).toEqual({ ...full, introduces: [] });
    tell({ type: "preview", request: 8, base: 2, state: "as-found", calls: [adds], fillOf: id });
    expect(said.at(-1)).toMatchObject({ type: "previewed", request: 8, base: -1 });
    tell({
      type: "preview",
      request: 9,
      base: 3,
      state: "as-found",
      calls: [{ ...adds, args: {} }],
      fillOf: id,
    });
    expect(said.at(-1)).toMatchObject({ type: "previewed", results: [{ refused: expect.any(String) }] });
  });

  test("what needs the rules waits for them, and what comes after it keeps its place", async () => {
    const done = runCommand(blank, adds as Parameters<typeof runCommand>[1]);
    if (!done.ok) throw new Error(done.refusal.message);
    said = [];
    tell({ type: "patches", base: 0, revision: 4, patches: done.patches });
    tell({ type: "hello", version: PROTOCOL_VERSION });
    expect(said).toEqual([]);
    await vi.waitFor(() => expect(types()).toContain("hello"), 20_000);
    expect(types().filter((type, at) => type !== "started" || at === 0)).toEqual(["started", "answers", "hello"]);
    const answers = said.find(({ type }) => type === "answers");
    expect(answers).toMatchObject({ revision: 4 });
    const { changed } = answers as Extract<FromWorker, { readonly type: "answers" }>;
    expect(changed[0]?.ledgers).toEqual(openSession(done.project).answers(4).changed[0]?.ledgers);
  });
});

beforeEach(() => {
  tell({ type: "hello", version: PROTOCOL_VERSION });
  tell({ type: "snapshot", project: emptyProject("Before", 2020), revision: 0 });
  said = [];
});

const laundry = laundryAsFound();
const text = textToSave(laundry);

describe("a worker that has read a file", () => {
  test("says that it can be read, then that it is a document, and sends nothing of it", () => {
    tell({ type: "parse", request: 1, text });
    expect(said).toEqual([
      { type: "readable", request: 1 },
      { type: "parsed", request: 1, readOnly: false },
    ]);
  });

  test("checks what it read when the window opens it, just as it would check the document sent whole", () => {
    tell({ type: "parse", request: 1, text });
    said = [];
    tell({ type: "opened", request: 1, revision: 4 });
    const answers = said.find(({ type }) => type === "answers");
    const { tookMs: _, ...told } = answers as Extract<FromWorker, { readonly type: "answers" }>;
    expect(told).toEqual(openSession(laundry).answers(4));
    expect(told.changed[0]?.scopes.length).toBeGreaterThan(0);
  });

  test("asks for the document when it has read another since, opened another, or refused it", () => {
    const asks = (...before: readonly ToWorker[]): void => {
      for (const message of before) tell(message);
      said = [];
      tell({ type: "opened", request: 1, revision: 9 });
      expect(types()).toEqual(["need-snapshot"]);
    };
    asks({ type: "parse", request: 1, text }, { type: "parse", request: 2, text });
    asks({ type: "parse", request: 1, text }, { type: "snapshot", project: emptyProject("t", 2020), revision: 3 });
    asks({ type: "parse", request: 1, text: text.replace('"splice": "', '"splice": "no-such-') });
    asks({ type: "parse", request: 1, text }, { type: "opened", request: 1, revision: 8 });
  });

  test("refuses what is no document with its problems alone", () => {
    tell({ type: "parse", request: 1, text: "not a drawing" });
    expect(types()).toEqual(["not-parsed"]);
  });
});

describe("a worker that is asked to energise", () => {
  const ON = { off: [], positions: {}, tripped: [], idle: [] };
  const ask = (base: number, state: "as-found" | "proposed" = "as-found"): void => {
    said = [];
    tell({ type: "energise", request: 7, base, state, setting: ON, ask: {} });
  };

  test("answers about the document that it holds, as one would from the drawing itself", () => {
    tell({ type: "snapshot", project: laundry, revision: 3 });
    ask(3);
    expect(said).toEqual([
      {
        type: "energised",
        request: 7,
        base: 3,
        answer: { ...energise(laundry.asFound, laundry.supply, ON, {}), whole: true },
      },
    ]);
  });

  test("says again only what stands otherwise; a snapshot begins anew", () => {
    tell({ type: "snapshot", project: laundry, revision: 3 });
    ask(3);
    ask(3);
    expect(said).toMatchObject([{ type: "energised", answer: { whole: false, boxes: {}, cables: {} } }]);
    tell({ type: "snapshot", project: laundry, revision: 4 });
    ask(4);
    expect(said).toMatchObject([{ type: "energised", answer: { whole: true } }]);
  });

  test("goes on checking where the circuit cannot be computed", () => {
    tell({ type: "snapshot", project: laundry, revision: 3 });
    said = [];
    const complained = vi.spyOn(console, "error").mockImplementation(() => undefined);
    tell({ type: "energise", request: 7, base: 3, state: "as-found", setting: null as never, ask: {} });
    expect(said).toEqual([{ type: "energised", request: 7, base: 3 }]);
    expect(complained).toHaveBeenCalledOnce();
    complained.mockRestore();
    ask(3);
    expect(said).toMatchObject([{ type: "energised", answer: {} }]);
  });

  test("follows edits, and has no answer about another revision or a state that is not there", () => {
    tell({ type: "snapshot", project: laundry, revision: 3 });
    const path = ["supply", "nominalV"];
    tell({ type: "patches", base: 3, revision: 4, patches: [{ op: "add", path, value: 100 }] });
    ask(4);
    expect(said).toMatchObject([{ type: "energised", base: 4, answer: { supplyV: 100 } }]);
    ask(3);
    expect(said).toEqual([{ type: "energised", request: 7, base: 3 }]);
    ask(4, "proposed");
    expect(said).toEqual([{ type: "energised", request: 7, base: 4 }]);
  });
});

describe("a worker that is asked for voltage drop", () => {
  const ask = (base: number, device = deviceId("R3")): void => {
    said = [];
    tell({ type: "outlet-drops", request: 8, base, state: "as-found", device });
  };

  test("answers about the document that it holds, and follows edits", () => {
    tell({ type: "snapshot", project: laundry, revision: 3 });
    ask(3);
    const drops = deviceDrops(laundry, "as-found", deviceId("R3"));
    expect(drops).toMatchObject([{ name: "R3", known: true }]);
    expect(said).toEqual([{ type: "outlet-drops", request: 8, base: 3, drops }]);
    const path = ["asFound", "cables", cableId("C2"), "lengthFt"];
    tell({ type: "patches", base: 3, revision: 4, patches: [{ op: "remove", path }] });
    ask(4);
    expect(said).toMatchObject([{ base: 4, drops: [{ known: false, cables: [{ name: "C2" }] }] }]);
  });

  test("has none of another revision, and an empty answer of what is no outlet", () => {
    tell({ type: "snapshot", project: laundry, revision: 3 });
    ask(2);
    expect(said).toEqual([{ type: "outlet-drops", request: 8, base: 2 }]);
    ask(3, deviceId("Q14"));
    expect(said).toEqual([{ type: "outlet-drops", request: 8, base: 3, drops: [] }]);
  });
});

test("a worker that is asked what tests are expected to find answers about the document that it holds", () => {
  const wanted = [{ stage: "after", test: "hot-neutral", point: deviceId("R3") }] as const;
  const ask = (base: number): void => {
    said = [];
    tell({ type: "expected-tests", request: 9, base, wanted });
  };
  tell({ type: "snapshot", project: laundry, revision: 3 });
  ask(3);
  const told = expectedTests(laundry, wanted);
  expect(told).toMatchObject([{ expected: { kind: "figure" } }]);
  expect(said).toEqual([{ type: "expected-tests", request: 9, base: 3, answers: told }]);
  ask(2);
  expect(said).toEqual([{ type: "expected-tests", request: 9, base: 2 }]);
  tell({
    type: "patches",
    base: 3,
    revision: 4,
    patches: [{ op: "add", path: ["supply", "nominalV"], value: 100 }],
  });
  ask(4);
  expect(said).not.toMatchObject([{ answers: told }]);
});

test("a worker plans on a copy: the answer is that of the core, an older revision has none, and edits go on after it", async () => {
  const laundry = laundryAsFound();
  const ask = { outlet: deviceId("R1") as string as OutletKey };
  const answered = async (message: ToWorker): Promise<FromWorker | undefined> => {
    said = [];
    tell(message);
    await vi.waitFor(() => expect(said.some(({ type }) => type === "fitted" || type === "made-up")).toBe(true));
    return said.at(-1);
  };
  tell({ type: "snapshot", project: structuredClone(laundry), revision: 3 });
  expect(await answered({ type: "fit", request: 5, base: 3, ask })).toEqual({
    type: "fitted",
    request: 5,
    base: 3,
    answer: answerFit(laundry, ask),
  });
  const box = { state: "proposed", box: boxId("B1") } as const;
  expect(await answered({ type: "make-up", request: 6, base: 3, ask: box })).toMatchObject({
    type: "made-up",
    answer: { name: "B1" },
  });
  expect(await answered({ type: "fit", request: 7, base: 2, ask })).toEqual({ type: "fitted", request: 7, base: 2 });
  said = [];
  const edit = runCommand(laundry, {
    command: "rename-item",
    args: { state: "as-found", item: { kind: "enclosure", id: boxId("B1") }, name: "Other" },
  });
  if (!edit.ok) throw new Error(edit.refusal.message);
  tell({ type: "patches", base: 3, revision: 4, patches: edit.patches });
  expect(said.at(-1)).toMatchObject({ type: "answers", revision: 4 });
  expect(await answered({ type: "make-up", request: 8, base: 4, ask: box })).toMatchObject({
    answer: { name: "Other" },
  });
});

test("a worker tells the rules of any edition, whatever document it holds", () => {
  for (const edition of [2020, "CSA-C22.1"] as const) {
    said = [];
    tell({ type: "rule-book", request: 9, edition });
    expect(said).toEqual([{ type: "rule-book", request: 9, rules: ruleBook(edition) }]);
  }
});

test("a blank drawing is blank only by an edition that has nothing to say of itself", () => {
  const blankBy = (edition: Edition) => isBlank(emptyProject("Blank", edition));
  expect(([2011, 2014, 2020, 2026, "CSA-C22.1"] as const).map(blankBy)).toEqual([false, false, true, true, false]);
});
