/** Files that windows read and write: only those that the person named, and each only for its window. */
import { spawnSync } from "node:child_process";
import { mkdtemp, readdir, readFile, rm, symlink, truncate, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import type { DocumentWindow } from "../../electron/main/document-window.ts";
import { createDocuments, type Documents } from "../../electron/main/documents.ts";
import { openRecentList, parseRecent, recentId, withRecent } from "../../electron/main/recent-files.ts";
import { DOCUMENT_LIMIT, type ReplaceFile } from "../../electron/opened-file.mjs";
import { ROOT } from "../small-project.ts";

let replaceFile: ReplaceFile;
beforeAll(async () => {
  const built = spawnSync(process.execPath, ["shared-model/hosts/build.mjs", "host"], { cwd: ROOT, encoding: "utf8" });
  expect(built.status, built.stderr).toBe(0);
  ({ replaceFile } = await import(new URL("../../dist/host/atomic-file.mjs", import.meta.url).href));
});

/** A window as far as files are concerned. */
const windowOf = (id: number, file?: string) => ({ id, file }) as DocumentWindow;

let folder = "";
let path = "";
let used: string[] = [];
let documents: Documents;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "loadside-documents-"));
  path = join(folder, "house.loadside");
  await writeFile(path, "old");
  used = [];
  documents = createDocuments({ replaceFile, folder, onUse: (one) => used.push(one) });
});
afterEach(() => rm(folder, { recursive: true }));

const onDisk = () => readFile(path, "utf8");

async function opened(window = windowOf(1)): Promise<string> {
  const answer = await documents.open(path, window);
  if (!answer.ok) throw new Error(answer.message);
  return answer.file;
}

describe("a file", () => {
  test("comes with its name, text and a token that tells nothing", async () => {
    const answer = await documents.open(path, windowOf(1));
    expect(answer).toMatchObject({ ok: true, name: "house.loadside", text: "old" });
    expect(JSON.stringify(answer)).not.toContain(folder);
    expect(used).toEqual([path]);
    expect(await opened()).not.toBe(await opened());
  });

  test.each<readonly [what: string, prepare: () => Promise<unknown>, says: string]>([
    ["that is gone", () => rm(path), "there is no such file"],
    ["that is not text", () => writeFile(path, Buffer.from([0xff, 0xfe, 0])), "not UTF-8 text"],
    ["that is too large", () => truncate(path, DOCUMENT_LIMIT + 1), "the file is too large"],
  ])("%s is refused before it is taken", async (_, prepare, says) => {
    await prepare();
    expect(await documents.open(path, windowOf(1))).toMatchObject({
      ok: false,
      message: expect.stringContaining(says),
    });
    expect(used).toEqual([]);
  });

  test("of another kind is refused, and so is a folder", async () => {
    for (const other of ["/etc/passwd", folder, join(folder, "x.txt"), "/dev/zero"]) {
      expect((await documents.open(other, windowOf(1))).ok).toBe(false);
    }
  });

  test("is saved under its token by its own window, and by nobody else", async () => {
    const file = await opened();
    const save = (token: string, window: number) =>
      documents.save({ file: token, text: "new", overwrite: true }, windowOf(window));
    const notYours = { kind: "failed", message: expect.stringContaining("not one of this window") };
    expect(await save(file, 2)).toEqual(notYours);
    for (const forged of ["", "x", file.slice(1), `${file}x`, path, "A".repeat(32), "__proto__", "constructor"]) {
      expect(await save(forged, 1)).toEqual(notYours);
    }
    expect(await onDisk()).toBe("old");
    expect(await save(file, 1)).toEqual({ kind: "saved" });
    expect(await onDisk()).toBe("new");
    documents.forgetAll(windowOf(1));
    expect(await save(file, 1)).toEqual(notYours);
  });

  test("that another program changed is not written over unasked, whatever its size and time say", async () => {
    const file = await opened();
    const save = (overwrite: boolean) => documents.save({ file, text: "mine", overwrite }, windowOf(1));
    await writeFile(path, "dlo");
    expect(await save(false)).toMatchObject({ kind: "changed-elsewhere" });
    expect(await onDisk()).toBe("dlo");
    expect(await save(true)).toEqual({ kind: "saved" });
    // The same again is no change, and a file that holds our very text is none either.
    expect(await save(false)).toEqual({ kind: "saved" });
    await writeFile(path, "mine");
    expect(await save(false)).toEqual({ kind: "saved" });
  });

  test("that has become huge meanwhile is not read to compare it", async () => {
    const file = await opened();
    // More than Node reads at once: reading it would fail, and a failure is no leave to write over it.
    await truncate(path, 3 * 2 ** 30);
    expect(await documents.save({ file, text: "mine", overwrite: false }, windowOf(1))).toMatchObject({
      kind: "changed-elsewhere",
    });
  });

  test("is limited when it is saved as when it is opened", async () => {
    const file = await opened();
    // Two bytes a letter: as many letters as bytes are allowed are too many.
    const text = "ü".repeat(DOCUMENT_LIMIT / 2 + 1);
    expect(await documents.save({ file, text, overwrite: true }, windowOf(1))).toMatchObject({ kind: "failed" });
    expect(await onDisk()).toBe("old");
  });

  test("behind a link is saved where it is", async () => {
    const link = join(folder, "link.loadside");
    await symlink(path, link);
    const answer = await documents.open(link, windowOf(1));
    if (!answer.ok) throw new Error(answer.message);
    await documents.save({ file: answer.file, text: "new", overwrite: false }, windowOf(1));
    expect(await onDisk()).toBe("new");
  });
});

describe("saving elsewhere", () => {
  test("gives a token for the new file", async () => {
    const target = join(folder, "copy.loadside");
    const saved = await documents.saveTo(target, "first", windowOf(1));
    expect(saved).toMatchObject({
      outcome: { kind: "saved" },
      file: { name: "copy.loadside", recent: recentId(target) },
    });
    const file = saved?.file?.file ?? "";
    expect(documents.pathOf(file, windowOf(1))).toBe(target);
    expect(documents.pathOf(file, windowOf(2))).toBeUndefined();
    expect(await documents.save({ file, text: "second", overwrite: false }, windowOf(1))).toEqual({ kind: "saved" });
    expect(await readFile(target, "utf8")).toBe("second");
    await writeFile(target, "theirs");
    expect(await documents.save({ file, text: "third", overwrite: false }, windowOf(1))).toMatchObject({
      kind: "changed-elsewhere",
    });
  });

  test("takes the place of a file that the person saw in the dialog, and of no other", async () => {
    expect(await documents.saveTo(path, "new", windowOf(1))).toMatchObject({ outcome: { kind: "saved" } });
    expect(await documents.saveTo(join(folder, "house"), "newer", windowOf(1))).toMatchObject({
      outcome: { kind: "failed", message: expect.stringContaining("house.loadside was not saved") },
      file: null,
    });
    expect(await onDisk()).toBe("new");
  });

  test("that fails gives no token and says why", async () => {
    const saved = await documents.saveTo(join(folder, "gone", "x.loadside"), "new", windowOf(1));
    expect(saved).toEqual({
      outcome: { kind: "failed", message: expect.stringContaining("the folder is not there") },
      file: null,
    });
    expect(used).toEqual([]);
  });

  test("is suggested beside the file that is open, under a plain name", () => {
    expect(documents.suggestion("../x", windowOf(1))).toBe(join(folder, "x.loadside"));
    expect(documents.suggestion("plan", windowOf(1, "/a/b/c.loadside"))).toBe("/a/b/plan.loadside");
  });
});

describe("saving what is made of a drawing", () => {
  const bytes = new Uint8Array([0, 255, 10, 13, 0x1f, 0x8b]);

  test("writes the bytes as they are, whole, and holds nothing afterwards", async () => {
    const target = join(folder, "house job folder.pdf");
    await writeFile(target, "an older one");
    expect(await documents.saveCopyTo(target, { kind: "pdf", bytes })).toEqual({
      kind: "saved",
      name: "house job folder.pdf",
    });
    expect(new Uint8Array(await readFile(target))).toEqual(bytes);
    expect((await readdir(folder)).sort()).toEqual(["house job folder.pdf", "house.loadside"]);
    expect(used).toEqual([]);
  });

  test("adds the ending, and never takes the place of a file that the dialog has not shown", async () => {
    expect(await documents.saveCopyTo(join(folder, "list"), { kind: "csv", bytes })).toMatchObject({
      name: "list.csv",
    });
    await writeFile(join(folder, "list.csv"), "theirs");
    expect(await documents.saveCopyTo(join(folder, "list"), { kind: "csv", bytes })).toMatchObject({
      kind: "failed",
      message: expect.stringContaining("list.csv was not saved"),
    });
    expect(await readFile(join(folder, "list.csv"), "utf8")).toBe("theirs");
  });

  test("leaves a drawing alone that it is pointed at", async () => {
    expect(await documents.saveCopyTo(path, { kind: "png", bytes })).toMatchObject({ name: "house.loadside.png" });
    expect(await onDisk()).toBe("old");
  });

  test("that fails says why, without the path", async () => {
    const failed = await documents.saveCopyTo(join(folder, "gone", "x.pdf"), { kind: "pdf", bytes });
    expect(failed).toEqual({ kind: "failed", message: expect.stringContaining("x.pdf was not saved") });
    expect(JSON.stringify(failed)).not.toContain(folder);
  });

  test("is suggested beside the file that is open, with its own ending", () => {
    expect(documents.suggestion("plan", windowOf(1, "/a/b/c.loadside"), ".pdf")).toBe("/a/b/plan.pdf");
  });
});

describe("the list of recent files", () => {
  const at = "2026-01-02T03:04:05.678Z";

  test("has each file once, the latest first, twenty in all", () => {
    let list: ReturnType<typeof parseRecent> = [];
    for (let index = 0; index < 30; index += 1) list = withRecent(list, `/f${index % 25}.loadside`, at);
    expect(list).toHaveLength(20);
    expect(list[0]?.path).toBe("/f4.loadside");
    expect(new Set(list.map(({ path: one }) => one)).size).toBe(20);
  });

  test("is read back as far as it makes sense", () => {
    const good = { path: "/a.loadside", usedAt: at };
    const bad = [
      { path: "a.loadside", usedAt: at },
      { path: "/etc/passwd", usedAt: at },
      { path: "/a.loadside" },
      7,
      null,
    ];
    expect(parseRecent(JSON.stringify([...bad, good]))).toEqual([good]);
    for (const text of ["", "{", "7", "null", '{"0":1}', "[[]]"]) expect(parseRecent(text)).toEqual([]);
    expect(parseRecent(JSON.stringify(Array(50).fill(good)))).toHaveLength(20);
  });

  test("outlives the program, tells what is gone, and gives no path away", async () => {
    const file = join(folder, "recent.json");
    const open = () => openRecentList({ file, home: folder, replaceFile, onChange: () => {} });
    const list = await open();
    list.add(join(folder, "gone.loadside"));
    list.add(path);
    await expect.poll(() => readFile(file, "utf8").catch(() => "")).toContain("house");
    const again = await open();
    expect(again.entries()).toEqual(list.entries());
    const shown = await again.shown();
    expect(shown.map(({ name, isThere, folder: where }) => [name, isThere, where])).toEqual([
      ["house.loadside", true, "~"],
      ["gone.loadside", false, "~"],
    ]);
    expect(JSON.stringify(shown)).not.toContain(folder);
    expect(again.pathOf(recentId(path))).toBe(path);
    for (const forged of ["", path, "0".repeat(32)]) expect(again.pathOf(forged)).toBeUndefined();
    again.forget(recentId(path));
    expect(again.pathOf(recentId(path))).toBeUndefined();
    await expect.poll(() => readFile(file, "utf8")).not.toContain("house");
    await expect.poll(() => readdir(folder)).toEqual(["house.loadside", "recent.json"]);
  });

  test("is empty where it cannot be kept, and nothing else fails", async () => {
    const list = await openRecentList({
      file: join(folder, "no", "recent.json"),
      home: folder,
      replaceFile,
      onChange: () => {},
    });
    list.add(path);
    expect(list.entries()).toHaveLength(1);
  });
});
