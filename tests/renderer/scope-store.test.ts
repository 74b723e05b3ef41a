/** How the window shows the difference of the states: what it asks, that nothing is edited meanwhile, where a line goes. */
import { beforeEach, describe, expect, test, vi } from "vitest";
import {
  dispatch,
  documentStore,
  openDocument,
  refusalOf,
  setShownState,
  undo,
} from "../../renderer/state/document-store.ts";
import { energiseStore } from "../../renderer/state/energise/energise-store.ts";
import { toggleEnergise } from "../../renderer/state/energise/energising.ts";
import { isLooking } from "../../renderer/state/looking.ts";
import { scopeBy } from "../../renderer/state/scope/ask-scope.ts";
import { goToScope } from "../../renderer/state/scope/go-to-scope.ts";
import { scopeBoxIn, scopeStore, shownScope } from "../../renderer/state/scope/scope-store.ts";
import { leaveScope, needForScope, showScope, toggleScope } from "../../renderer/state/scope/scoping.ts";
import { sessionStore, showPane } from "../../renderer/state/session-store.ts";
import { scopeAnswer } from "../../shared-model/analysis/scope-answer.ts";
import { openSession } from "../../shared-model/analysis/session.ts";
import type { ScopeAnswer, ScopeLine } from "../../shared-model/answers/scope.ts";
import type { Project } from "../../shared-model/model/project.ts";
import { laundryAsFound } from "../builders/drawing.ts";
import { boxId } from "../builders/ids.ts";
import { openSample } from "../builders/samples/open-sample.ts";

const both = openSample("laundry-proposed");
let asked: number[] = [];
/** Nobody can answer so many times. */
let silent = 0;
const made = new WeakMap<Project, ScopeAnswer | undefined>();

/** As the worker does: of the drawing as it is when it is asked. */
async function answer(): Promise<ScopeAnswer | undefined> {
  const { project, revision } = documentStore.get();
  asked.push(revision);
  if (silent > 0) {
    silent -= 1;
    return undefined;
  }
  if (!made.has(project)) made.set(project, scopeAnswer(openSession(project)));
  // The answer comes a moment later.
  await Promise.resolve();
  return made.get(project);
}

const told = (): Promise<void> =>
  vi.waitFor(() => expect(scopeStore.get().about).toBe(documentStore.get().revision), 10_000);

const lineOf = (
  title: RegExp,
): { readonly line: ScopeLine; readonly box: NonNullable<ReturnType<typeof scopeBoxIn>> } => {
  for (const box of scopeStore.get().answer?.boxes ?? []) {
    const line = box.lines.find((each) => title.test(each.title));
    if (line !== undefined) return { line, box };
  }
  throw new Error(`No line ${title}.`);
};

const press = (title: RegExp): ScopeLine => {
  const { line, box } = lineOf(title);
  goToScope({ key: line.key, items: line.items, box: box.enclosure });
  return line;
};

/** What is no part of the wiring can be changed meanwhile. */
const OTHER_EDITION = { command: "set-edition", args: { edition: 2023 } } as const;

beforeEach(() => {
  leaveScope();
  asked = [];
  silent = 0;
  scopeBy(answer);
  openDocument({ project: both });
  setShownState("proposed");
  showPane("details");
  sessionStore.merge({ notice: undefined, selection: [] });
});

describe("showing it", () => {
  test("asks once, shows proposed and its list, and keeps the answer for the next time", async () => {
    setShownState("as-found");
    await showScope();
    await told();
    expect(documentStore.get().state).toBe("proposed");
    expect(sessionStore.get().pane).toBe("scope");
    expect(shownScope(scopeStore.get())?.totals).toMatchObject({ detach: 13, attach: 19, newJoints: 3 });
    await toggleScope();
    expect(scopeStore.get().on).toBe(false);
    expect(sessionStore.get().pane).toBe("details");
    await toggleScope();
    expect(shownScope(scopeStore.get())).toBeDefined();
    expect(asked).toHaveLength(1);
  });

  test("without proposed says what to do first", async () => {
    openDocument({ project: laundryAsFound() });
    await showScope();
    expect(scopeStore.get().on).toBe(false);
    expect(sessionStore.get().notice).toMatchObject({
      kind: "note",
      lines: [expect.stringContaining("Start proposed")],
    });
    expect(asked).toEqual([]);
  });

  test("waits for what draws it, and is not shown where that does not come", async () => {
    let there: () => void = () => undefined;
    const stop = needForScope(
      () =>
        new Promise<void>((done) => {
          there = done;
        }),
    );
    const showing = showScope();
    expect(scopeStore.get().on).toBe(false);
    there();
    await showing;
    expect(scopeStore.get().on).toBe(true);
    stop();
    leaveScope();
    const stopBroken = needForScope(() => Promise.reject(new Error("no net")));
    await showScope();
    stopBroken();
    expect(scopeStore.get().on).toBe(false);
    expect(sessionStore.get().notice).toMatchObject({ kind: "problem" });
  });

  test("asked for and taken back before it is there, it does not come; asked for a third time, it does", async () => {
    const there: (() => void)[] = [];
    const stop = needForScope(() => new Promise<void>((done) => there.push(done)));
    const showing = [toggleScope(), toggleScope(), toggleScope(), toggleScope()];
    for (const one of there) one();
    await Promise.all(showing);
    expect(scopeStore.get().on).toBe(false);
    const third = toggleScope();
    there.at(-1)?.();
    await third;
    expect(scopeStore.get().on).toBe(true);
    stop();
  });

  test("asks again where nobody could answer, and says so in the end", async () => {
    vi.useFakeTimers();
    try {
      silent = 2;
      await showScope();
      await vi.advanceTimersByTimeAsync(1000);
      expect(asked).toHaveLength(3);
      expect(scopeStore.get().answer).toBeDefined();
      leaveScope();
      openDocument({ project: both });
      silent = Number.POSITIVE_INFINITY;
      await showScope();
      await vi.advanceTimersByTimeAsync(60_000);
      expect(scopeStore.get().trouble).toMatch(/cannot be worked out/);
      expect(scopeStore.get().answer).toBeUndefined();
    } finally {
      vi.useRealTimers();
    }
  });

  test("is not asked for again where it was worked at for long and came to nothing", async () => {
    vi.useFakeTimers();
    try {
      let count = 0;
      scopeBy(async () => {
        count += 1;
        await new Promise((done) => setTimeout(done, 20_000));
        return undefined;
      });
      await showScope();
      await vi.advanceTimersByTimeAsync(100_000);
      expect(count).toBe(1);
      expect(scopeStore.get().trouble).toMatch(/cannot be worked out/);
    } finally {
      vi.useRealTimers();
    }
  });

  test("asks again after a change of the document, and only while it is shown", async () => {
    await showScope();
    await told();
    const before = scopeStore.get().answer;
    expect(dispatch(OTHER_EDITION)).toEqual({ ok: true });
    expect(scopeStore.get().about).not.toBe(documentStore.get().revision);
    await told();
    expect(scopeStore.get().answer).not.toBe(before);
    const count = asked.length;
    leaveScope();
    undo();
    await Promise.resolve();
    expect(asked).toHaveLength(count);
    await showScope();
    await told();
    expect(asked).toHaveLength(count + 1);
  });

  test("does not take what was told of the drawing before an edit for the drawing after it", async () => {
    let goOn: () => void = () => undefined;
    const old = scopeAnswer(openSession(both));
    scopeBy(async () => {
      await new Promise<void>((done) => {
        goOn = done;
      });
      scopeBy(answer);
      return old;
    });
    await showScope();
    await Promise.resolve();
    dispatch(OTHER_EDITION);
    goOn();
    await told();
    expect(scopeStore.get().answer).not.toBe(old);
  });

  test("ends when as found is shown, when it is energised, and with the document", async () => {
    await showScope();
    setShownState("as-found");
    expect(scopeStore.get().on).toBe(false);
    await showScope();
    toggleEnergise();
    expect([scopeStore.get().on, energiseStore.get().on]).toEqual([false, true]);
    await showScope();
    expect([scopeStore.get().on, energiseStore.get().on]).toEqual([true, false]);
    await told();
    openDocument({ project: both });
    expect(scopeStore.get()).toMatchObject({ on: false, answer: undefined, about: undefined });
  });

  test("goes back to the pane that its list took the place of", async () => {
    showPane("findings");
    await showScope();
    leaveScope();
    expect(sessionStore.get().pane).toBe("findings");
    await showScope();
    showPane("rooms");
    leaveScope();
    expect(sessionStore.get().pane).toBe("rooms");
  });

  test("puts down what is in the hand", async () => {
    sessionStore.merge({ tool: { kind: "cable", id: "nm-12-2" } });
    await showScope();
    expect(sessionStore.get().tool).toBeUndefined();
  });
});

describe("while it is shown", () => {
  beforeEach(async () => {
    await showScope();
    await told();
  });

  test("nothing of the wiring or the layout changes, and it is said how to edit", () => {
    const { project } = documentStore.get();
    const [box] = Object.values(project.asFound.enclosures);
    if (box === undefined) throw new Error("No box.");
    const calls = [
      { command: "rename-item", args: { state: "proposed", item: { kind: "enclosure", id: box.id }, name: "B77" } },
      { command: "move-enclosures", args: { moves: [{ id: box.id, to: { x: 5, y: 5 } }] } },
      { command: "pin-enclosures", args: { enclosures: [box.id], pinned: true } },
      { command: "discard-proposed", args: {} },
    ] as const;
    for (const call of calls) {
      const refusal = { code: "only-looked", message: expect.stringContaining("Show Proposed") };
      expect(dispatch(call)).toEqual({ ok: false, refusal });
      expect(refusalOf(call)).toEqual(refusal);
    }
    expect(documentStore.get().project).toBe(project);
    expect(isLooking()).toBe(true);
    leaveScope();
    expect(isLooking()).toBe(false);
    expect(dispatch(calls[0])).toEqual({ ok: true });
  });

  test("a line goes to what it stands for and selects it", () => {
    const line = press(/^C2 BK$/);
    const { selection, goTo } = sessionStore.get();
    expect(selection).toEqual([{ kind: "end", enclosure: expect.any(String), id: line.items[0]?.id }]);
    expect(goTo?.target).toEqual(selection[0]);
    expect(scopeStore.get().pressed.key).toBe(line.key);
  });

  test("a line of several selects them all", () => {
    const line = press(/^C1 C3 C4 BK$/);
    expect(line.items).toHaveLength(3);
    expect(sessionStore.get().selection.map(({ id }) => id)).toEqual(line.items.map(({ id }) => id));
  });

  test("what is taken out is shown where it is laid aside, in its box", () => {
    const line = press(/^R1 /);
    const { box } = lineOf(/^R1 /);
    expect(line.kind).toBe("removed");
    expect(sessionStore.get().selection).toEqual([{ kind: "enclosure", id: box.enclosure }]);
    expect(scopeStore.get().pressed.items).toContain(`device ${line.items[0]?.id}`);
    press(/clamps/);
    expect(scopeStore.get().pressed.items).toEqual([`part ${box.enclosure}:internalClamps`]);
  });

  test("the box of an answer is found by its id", () => {
    const { answer: found } = scopeStore.get();
    if (found === undefined) throw new Error("No answer.");
    for (const box of found.boxes) expect(scopeBoxIn(found, box.enclosure)).toBe(box);
    expect(scopeBoxIn(found, boxId("nowhere"))).toBeUndefined();
  });
});
