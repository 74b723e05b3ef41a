/** Opening and saving, with a host that does what the test tells it. */
import { beforeEach, describe, expect, test } from "vitest";
import type { FileHost, FileTarget, SaveOutcome } from "../../renderer/platform/file-host.ts";
import { closeDialog, dialogStore } from "../../renderer/state/dialog-store.ts";
import { documentStore, isDirty, newDocument, openDocument } from "../../renderer/state/document-store.ts";
import { createFileActions } from "../../renderer/state/file-actions.ts";
import { placeEnclosure } from "../../renderer/state/placing.ts";
import { closeNotice, sessionStore } from "../../renderer/state/session-store.ts";
import { ok, problem } from "../../shared-model/lib/result.ts";
import { emptyProject } from "../../shared-model/model/project.ts";

const written: [text: string, overwrite: boolean][] = [];
let outcomes: SaveOutcome[] = [];
const target: FileTarget = {
  name: "house.loadside",
  write(text, overwrite) {
    written.push([text, overwrite]);
    return Promise.resolve(outcomes.shift() ?? { kind: "saved" });
  },
};
let chosen: string | undefined = "text of the file";
const host: FileHost = {
  chooseFile: () => Promise.resolve(chosen === undefined ? undefined : ok({ name: target.name, text: chosen, target })),
  saveCopy: async () => undefined,
  saveAs: async (_name, text) => ({ outcome: await target.write(text, true), target }),
  startFile: () => Promise.resolve(undefined),
  takeDropped: () => undefined,
};
const files = createFileActions({
  host,
  parse: (text) =>
    Promise.resolve(
      text === "bad"
        ? { ok: false, problems: [problem("p", "/asFound", "It is broken. Mend it.")] }
        : { ok: true, project: emptyProject("From the file", 2020), readOnly: false },
    ),
});

const edit = () => placeEnclosure("square-4-2-1-8", { x: 0, y: 0 });
/** Answers the question that the action asks next. */
async function answering(action: Promise<unknown>, answer: string | undefined): Promise<void> {
  for (let turn = 0; turn < 20 && dialogStore.get().kind !== "question"; turn += 1) await Promise.resolve();
  expect(dialogStore.get().kind).toBe("question");
  closeDialog(answer);
  await action;
}

beforeEach(() => {
  openDocument(newDocument());
  [written.length, outcomes, chosen] = [0, [], "text of the file"];
});

describe("opening", () => {
  test("takes the drawing, its file and its name", async () => {
    await files.open();
    const { project, fileName, file } = documentStore.get();
    expect([project.title, fileName, file?.text]).toEqual(["From the file", "house.loadside", "text of the file"]);
  });

  test.each(["open", "openRecent"] as const)("%s says so where the host fails", async (way) => {
    const fails = () => Promise.reject(new Error("No."));
    const failing = createFileActions({
      host: { ...host, chooseFile: fails, recent: { list: async () => [], open: fails } as never },
      parse: () => Promise.reject(new Error("Nothing is read.")),
    });
    closeNotice();
    await failing[way]("one");
    expect(sessionStore.get().notice?.title).toBe("Nothing was opened");
  });

  test("a file that is not a drawing leaves the one on the sheet, and says where it is broken", async () => {
    edit();
    const before = documentStore.get();
    chosen = "bad";
    await answering(files.open(), "Do not save");
    expect(documentStore.get()).toBe(before);
    expect(sessionStore.get().notice).toMatchObject({
      kind: "problem",
      title: "house.loadside was not opened",
      lines: ["/asFound: It is broken. Mend it."],
    });
  });

  test("what is drawn while the file is read is asked about before it goes", async () => {
    const opening = files.open();
    edit();
    const before = documentStore.get();
    await answering(opening, undefined);
    expect(documentStore.get()).toBe(before);
    const again = files.openSample("a sample", () => Promise.resolve("text of the sample"));
    await answering(again, "Do not save");
    expect(documentStore.get().project.title).toBe("From the file");
  });

  test("work that is given up before is not asked about twice", async () => {
    edit();
    await answering(files.open(), "Do not save");
    expect([dialogStore.get().kind, documentStore.get().fileName]).toEqual(["none", "house.loadside"]);
  });

  test("a person who changes their mind changes nothing", async () => {
    chosen = undefined;
    const before = documentStore.get();
    await files.open();
    expect(documentStore.get()).toBe(before);
  });
});

test("a picker that fails says so and leaves the drawing", async () => {
  const broken = createFileActions({
    host: { ...host, chooseFile: () => Promise.reject(new Error("no picker")) },
    parse: () => Promise.reject(new Error("not asked")),
  });
  const before = documentStore.get();
  await broken.open();
  expect(documentStore.get()).toBe(before);
  expect(sessionStore.get().notice).toMatchObject({ kind: "problem", title: "Nothing was opened" });
});

describe("saving", () => {
  test("an unedited drawing goes back as the very text it came from", async () => {
    await files.open();
    await files.save();
    expect(written).toEqual([["text of the file", false]]);
  });

  test("an edited one goes out as its own text and needs no saving after", async () => {
    await files.open();
    edit();
    await files.save();
    expect(written[0]?.[0]).toContain('"name": "B1"');
    expect(isDirty(documentStore.get())).toBe(false);
  });

  test("a failure says so and keeps the work unsaved", async () => {
    await files.open();
    edit();
    outcomes = [{ kind: "failed", message: "The disk is full." }];
    expect(await files.save()).toBe(false);
    expect(sessionStore.get().notice).toMatchObject({ kind: "problem", lines: ["The disk is full."] });
    expect(isDirty(documentStore.get())).toBe(true);
  });

  test("a file that was changed elsewhere is replaced only when the person says so", async () => {
    await files.open();
    edit();
    outcomes = [{ kind: "changed-elsewhere", message: "It was changed." }];
    await answering(files.save(), undefined);
    expect(written.map(([, overwrite]) => overwrite)).toEqual([false]);
    outcomes = [{ kind: "changed-elsewhere", message: "It was changed." }];
    await answering(files.save(), "Replace it");
    expect(written.map(([, overwrite]) => overwrite)).toEqual([false, false, true]);
    expect(isDirty(documentStore.get())).toBe(false);
  });
});

describe("unsaved work", () => {
  test("stays when the question is closed, goes when it is given up, is saved when asked", async () => {
    edit();
    await answering(files.startNew(), undefined);
    expect(Object.keys(documentStore.get().project.asFound.enclosures)).toHaveLength(1);
    await answering(files.startNew(), "Save");
    expect(written).toHaveLength(1);
    expect(Object.keys(documentStore.get().project.asFound.enclosures)).toHaveLength(0);
    edit();
    await answering(files.startNew(), "Do not save");
    expect(written).toHaveLength(1);
    expect(Object.keys(documentStore.get().project.asFound.enclosures)).toHaveLength(0);
  });

  test("stays when saving it failed", async () => {
    edit();
    outcomes = [{ kind: "failed", message: "The disk is full." }];
    await answering(files.startNew(), "Save");
    expect(Object.keys(documentStore.get().project.asFound.enclosures)).toHaveLength(1);
  });
});
