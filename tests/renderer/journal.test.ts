/** Unsaved work is kept as it is made, and comes back; no file is written by that. */
import { createHash } from "node:crypto";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import type { FileHost, FileTarget } from "../../renderer/platform/file-host.ts";
import { closeDialog, dialogStore } from "../../renderer/state/dialog-store.ts";
import {
  dispatch,
  documentStore,
  isDirty,
  newDocument,
  openDocument,
  redo,
  undo,
} from "../../renderer/state/document-store.ts";
import { createFileActions } from "../../renderer/state/file-actions.ts";
import { type JournalKeeper, journalStore, keepJournal } from "../../renderer/state/journal.ts";
import { createRecovery, type RecoveryTools, unsavedStore } from "../../renderer/state/journal-recovery.ts";
import { placeEnclosure } from "../../renderer/state/placing.ts";
import { sessionStore } from "../../renderer/state/session-store.ts";
import { parseProject } from "../../shared-model/format/parse-project.ts";
import { textToSave } from "../../shared-model/format/text-to-save.ts";
import { failed, ok, problem } from "../../shared-model/lib/result.ts";
import { StoreInMemory } from "./journal-store-in-memory.ts";

const sha256 = (text: string) => Promise.resolve(createHash("sha256").update(text).digest("hex"));
const parse = async (text: string) => {
  const parsed = parseProject(text);
  return parsed.ok ? { ok: true as const, ...parsed.value } : { ok: false as const, problems: parsed.problems };
};

const written: string[] = [];
const target: FileTarget = {
  name: "house.loadside",
  write(text) {
    written.push(text);
    onDisk = text;
    return Promise.resolve({ kind: "saved" });
  },
};
let onDisk: string | undefined;
const host: FileHost = {
  chooseFile: () => Promise.resolve(onDisk === undefined ? undefined : ok({ name: target.name, text: onDisk, target })),
  saveCopy: async () => undefined,
  saveAs: async (_name, text) => ({ outcome: await target.write(text, true), target }),
  startFile: () => Promise.resolve(undefined),
  takeDropped: () => undefined,
  recent: {
    list: () => Promise.resolve([{ id: "1", name: target.name, usedAt: "2026-01-01T00:00:00Z", isThere: true }]),
    open: () =>
      Promise.resolve(
        onDisk === undefined
          ? failed(problem("file-unreadable", "", "gone"))
          : ok({ name: target.name, text: onDisk, target }),
      ),
    forget: () => Promise.resolve(),
  },
};
const files = createFileActions({ host, parse });

let store: StoreInMemory;
let keeper: JournalKeeper;
let clock = 1000;
const keep = (id: string) => keepJournal({ store, id, sha256, now: () => clock });

beforeEach(() => {
  store = new StoreInMemory();
  openDocument(newDocument());
  keeper = keep("here");
  [written.length, onDisk, clock] = [0, undefined, 1000];
});
afterEach(() => {
  keeper.stop();
  vi.useRealTimers();
});

const rename = (title: string) =>
  dispatch({
    command: "set-property",
    args: { state: "as-found", target: { kind: "project" }, field: "title", value: title },
  });
const titleOf = () => documentStore.get().project.title;
const textNow = () => textToSave(documentStore.get().project);

/** The window dies: nothing more is written, and another one starts with an empty drawing. */
async function crash(): Promise<ReturnType<typeof createRecovery>> {
  await keeper.settled();
  keeper.stop();
  openDocument(newDocument());
  keeper = keep("after");
  const tools: RecoveryTools = {
    store,
    host,
    live: () => Promise.resolve(new Set(["after"])),
    alone: (_id, work) => work(),
    sha256,
    parse,
    takeOver: files.takeOver,
    async keptHere() {
      await keeper.settled();
      return journalStore.get().trouble === undefined;
    },
  };
  const recovery = createRecovery(tools);
  await recovery.refresh();
  return recovery;
}

describe("keeping", () => {
  test("a drawing without changes keeps nothing", async () => {
    await keeper.settled();
    expect(store.calls).toEqual([]);
  });

  test("every change comes back, undo and redo included", async () => {
    placeEnclosure("square-4-2-1-8", { x: 0, y: 0 });
    rename("One");
    rename("Two");
    undo();
    redo();
    placeEnclosure("octagon-4-1-1-2", { x: 500, y: 0 });
    undo();
    const before = textNow();
    const recovery = await crash();
    expect(unsavedStore.get().works).toMatchObject([{ id: "here", name: "Two" }]);
    await recovery.continueWith("here");
    expect(textNow()).toBe(before);
    expect(isDirty(documentStore.get())).toBe(true);
  });

  test("what is undone to the saved drawing is no unsaved work", async () => {
    rename("One");
    undo();
    await keeper.settled();
    expect([...store.journals]).toEqual([]);
  });

  test("a save ends it, and the next change begins it anew", async () => {
    rename("One");
    await files.save();
    await keeper.settled();
    expect([...store.journals]).toEqual([]);
    rename("Two");
    await crash();
    expect(unsavedStore.get().works).toMatchObject([{ id: "here", name: "house.loadside" }]);
  });

  test("changes made while a save is under way stay unsaved work, about the file as it was saved", async () => {
    rename("One");
    const saving = files.save();
    rename("Two");
    await saving;
    const recovery = await crash();
    await recovery.continueWith("here");
    expect([titleOf(), documentStore.get().target]).toEqual(["Two", target]);
  });

  test("a drawing that is left on purpose is given up", async () => {
    rename("One");
    const leaving = files.startNew();
    await Promise.resolve();
    closeDialog("Do not save");
    await leaving;
    await keeper.settled();
    expect([...store.journals]).toEqual([]);
  });

  test("what comes while a write is under way goes out with the next, in order", async () => {
    let open = (): void => undefined;
    store.gate = new Promise((resolve) => {
      open = resolve;
    });
    for (let index = 1; index <= 50; index += 1) rename(`${index}`);
    open();
    const recovery = await crash();
    expect(store.calls.filter((call) => call === "append")).toHaveLength(1);
    await recovery.continueWith("here");
    expect(titleOf()).toBe("50");
  });

  test("many changes are written as one document in the end, and still come back", async () => {
    const long = "x".repeat(4000);
    for (let index = 0; index < 400; index += 1) {
      const value = `${long}${index}`;
      const args = { state: "as-found", target: { kind: "project" }, field: "notes", value } as const;
      expect(dispatch({ command: "set-property", args }).ok).toBe(true);
      await keeper.settled();
    }
    expect(store.calls.filter((call) => call === "begin").length).toBeGreaterThan(1);
    expect(store.journals.get("here")?.text.length).toBeLessThan(400 * 4000);
    const recovery = await crash();
    await recovery.continueWith("here");
    expect(documentStore.get().project.notes).toBe(`${long}399`);
  });
});

describe("no room", () => {
  test("is said, keeps what was kept, is tried again, and begins anew", async () => {
    vi.useFakeTimers();
    rename("One");
    await keeper.settled();
    store.failing = true;
    rename("Two");
    rename("Three");
    await keeper.settled();
    expect(journalStore.get().trouble).toMatch(/not being kept/);
    expect(store.journals.get("here")?.text).toContain("One");
    const tried = store.calls.length;
    rename("Four");
    await keeper.settled();
    expect(store.calls).toHaveLength(tried);
    store.failing = false;
    await vi.advanceTimersByTimeAsync(10_000);
    await keeper.settled();
    expect(journalStore.get().trouble).toBeUndefined();
    vi.useRealTimers();
    const recovery = await crash();
    await recovery.continueWith("here");
    expect(titleOf()).toBe("Four");
  });

  test("a save takes back what was kept before", async () => {
    rename("One");
    await keeper.settled();
    store.failing = true;
    rename("Two");
    await keeper.settled();
    store.failing = false;
    await files.save();
    await keeper.settled();
    expect([...store.journals]).toEqual([]);
    expect(journalStore.get().trouble).toBeUndefined();
  });
});

describe("coming back", () => {
  const openHouse = async (): Promise<void> => {
    onDisk = textNow();
    await files.open();
    expect(documentStore.get().fileName).toBe("house.loadside");
  };

  test("work on a file goes back to that file, which stays as it is until it is saved", async () => {
    await openHouse();
    const before = onDisk;
    rename("Changed");
    const recovery = await crash();
    await recovery.continueWith("here");
    const { fileName, target: now } = documentStore.get();
    expect([titleOf(), fileName, now]).toEqual(["Changed", "house.loadside", target]);
    expect([onDisk, written]).toEqual([before, []]);
    await files.save();
    expect(written).toHaveLength(1);
    expect(written[0]).toContain("Changed");
  });

  test("a file that changed meanwhile is left alone: the work opens as a copy and says so", async () => {
    await openHouse();
    rename("Changed");
    onDisk = `${onDisk}\n`;
    const recovery = await crash();
    await recovery.continueWith("here");
    const { fileName, target: now } = documentStore.get();
    expect([titleOf(), fileName, now]).toEqual(["Changed", undefined, undefined]);
    expect(sessionStore.get().notice?.lines.join()).toContain("changed by another program");
    expect(written).toEqual([]);
  });

  test("a file that is gone makes it a copy too", async () => {
    await openHouse();
    rename("Changed");
    onDisk = undefined;
    const recovery = await crash();
    await recovery.continueWith("here");
    expect([titleOf(), documentStore.get().target]).toEqual(["Changed", undefined]);
    expect(sessionStore.get().notice?.lines.join()).toContain("could not be reached");
  });

  test("the journal goes only once this window keeps the same work", async () => {
    rename("One");
    const recovery = await crash();
    store.failing = true;
    await recovery.continueWith("here");
    expect(titleOf()).toBe("One");
    expect(store.journals.has("here")).toBe(true);
    store.failing = false;
    openDocument(newDocument());
    await keeper.settled();
    await recovery.continueWith("here");
    expect([...store.journals.keys()]).toEqual(["after"]);
  });

  test("unsaved work on the sheet is asked about first", async () => {
    rename("One");
    const recovery = await crash();
    rename("Here");
    const going = recovery.continueWith("here");
    await vi.waitFor(() => closeDialogOpen());
    await going;
    expect(titleOf()).toBe("Here");
    expect(store.journals.has("here")).toBe(true);
  });

  test("a journal that cannot be read stays, and says so", async () => {
    store.journals.set("bad", { about: { id: "bad", name: "Old", at: 1 }, text: "nothing" });
    const recovery = await crash();
    await recovery.continueWith("bad");
    expect(sessionStore.get().notice).toMatchObject({ kind: "problem", title: "The unsaved work was not opened" });
    expect(store.journals.has("bad")).toBe(true);
    await recovery.discard("bad");
    expect(unsavedStore.get().works).toEqual([]);
  });

  test("a torn end costs the last change and is told", async () => {
    rename("One");
    await keeper.settled();
    rename("Two");
    const recovery = await crash();
    const kept = store.journals.get("here");
    if (kept === undefined) throw new Error("Nothing was kept.");
    store.journals.set("here", { ...kept, text: kept.text.slice(0, -5) });
    await recovery.continueWith("here");
    expect(titleOf()).toBe("One");
    expect(sessionStore.get().notice?.lines.join()).toContain("last change could not be read");
  });

  test("what another window has is not offered", async () => {
    rename("One");
    await crash();
    const other = createRecovery({
      store,
      host,
      live: () => Promise.resolve(new Set(["here"])),
      alone: () => Promise.resolve(undefined),
      sha256,
      parse,
      takeOver: files.takeOver,
      keptHere: () => Promise.resolve(true),
    });
    await other.refresh();
    expect(unsavedStore.get().works).toEqual([]);
    await other.continueWith("here");
    expect(sessionStore.get().notice?.title).toBe("Another window has it");
  });
});

/** Closes the question that must be open. */
function closeDialogOpen(): void {
  expect(dialogStore.get().kind).toBe("question");
  closeDialog();
}
