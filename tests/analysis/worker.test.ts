/** The checking worker itself, in a stand-in for its scope: what it holds after reading a file, and what it does not. */
import { beforeAll, beforeEach, describe, expect, test, vi } from "vitest";
import { energise } from "../../shared-model/analysis/energise.ts";
import { type FromWorker, PROTOCOL_VERSION, type ToWorker } from "../../shared-model/analysis/protocol.ts";
import { openSession } from "../../shared-model/analysis/session.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import { emptyProject } from "../../shared-model/model/project.ts";
import { laundryAsFound } from "../builders/drawing.ts";

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
      { type: "energised", request: 7, base: 3, answer: energise(laundry.asFound, laundry.supply, ON, {}) },
    ]);
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
