/** Opening and saving, with a host that does what the test tells it. */
import { beforeEach, describe, expect, test } from "vitest";
import type { FileHost, FileTarget, SaveOutcome } from "../../renderer/platform/file-host.ts";
import { closeDialog, dialogStore } from "../../renderer/state/dialog-store.ts";
import { documentStore, isDirty, newDocument, openDocument } from "../../renderer/state/document-store.ts";
import { createFileActions } from "../../renderer/state/file-actions.ts";
import { picturesAmong } from "../../renderer/state/photos/photos.ts";
import { placeEnclosure } from "../../renderer/state/placing.ts";
import { closeNotice, sessionStore } from "../../renderer/state/session-store.ts";
import { failed, ok, problem } from "../../shared-model/lib/result.ts";
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
  // The host knows the name within the event; a file that cannot be read is told without it.
  takeDropped: (dropped) => {
    const name = dropped.files[0]?.name ?? "";
    return () =>
      Promise.resolve(chosen === undefined ? failed(problem("p", "", "It is too large.")) : ok({ name, text: chosen }));
  },
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

describe("a file dropped on unsaved work", () => {
  const drop = (name: string) =>
    files.openDropped({ files: [new File([], name)] as unknown as FileList } as DataTransfer);

  test("is judged before anything is asked, and refused by its name", async () => {
    edit();
    const before = documentStore.get();
    chosen = "bad";
    await drop("house.loadside");
    expect([dialogStore.get().kind, documentStore.get()]).toEqual(["none", before]);
    expect(sessionStore.get().notice).toMatchObject({
      title: "house.loadside was not opened",
      lines: ["/asFound: It is broken. Mend it."],
    });
    chosen = undefined;
    await drop("plan.loadside");
    expect(sessionStore.get().notice).toMatchObject({
      title: "plan.loadside was not opened",
      lines: ["It is too large."],
    });
    expect(dialogStore.get().kind).toBe("none");
  });

  test("says what a drawing is called, and where a photo goes, when it is called otherwise", async () => {
    chosen = "bad";
    await drop("notes.pdf");
    expect(sessionStore.get().notice).toMatchObject({
      title: "notes.pdf was not opened",
      lines: [expect.stringMatching(/ends in \.loadside.*photo.*dropped on the box/i), expect.any(String)],
    });
  });

  test("is asked about once it is known to be a drawing, and opens or does not", async () => {
    edit();
    const before = documentStore.get();
    await answering(drop("house.loadside"), undefined);
    expect(documentStore.get()).toBe(before);
    await answering(drop("house.loadside"), "Do not save");
    expect([dialogStore.get().kind, documentStore.get().fileName]).toEqual(["none", "house.loadside"]);
  });
});

test("pictures are told by their type, or by their name where the computer knows no type", () => {
  const names = (...all: readonly File[]) => picturesAmong(all).map(({ name }) => name);
  const photo = new File([], "photo", { type: "image/png" });
  const raw = new File([], "IMG_1.HEIC");
  const text = new File([], "photo.png", { type: "text/plain" });
  expect(names(photo, raw, text, new File([], "house.loadside"))).toEqual(["photo", "IMG_1.HEIC"]);
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
