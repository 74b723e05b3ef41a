/** A save leaves the whole old file or the whole new one, whatever fails on the way. */
import { constants } from "node:fs";
import * as nodeDisk from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { type Disk, type ReplaceOptions, type ReplaceResult, replaceFile } from "../shared-model/hosts/atomic-file.ts";

const { chmod, lstat, mkdir, mkdtemp, readdir, readFile, rm, stat, symlink, utimes, writeFile } = nodeDisk;
const OLD = Buffer.from("the old document\n");
const NEW = Buffer.from(`the document after an edit, ${"longer ".repeat(3000)}\n`);
const NAME = "house.loadside";

let all = "";
let folder = "";
let file = "";
beforeAll(async () => {
  all = await mkdtemp(join(tmpdir(), "loadside-atomic-"));
});
beforeEach(async () => {
  folder = await mkdtemp(join(all, "case-"));
  file = join(folder, NAME);
});
afterAll(() => rm(all, { recursive: true, force: true }));

type Call = { readonly name: string; readonly args: unknown[] };
/** Runs in place of a call; calls `real` or does not. */
type Intercept = (call: Call, index: number, real: () => Promise<unknown>) => Promise<unknown>;

/** The real disk with every call, those of its open files included, going through `intercept`. */
function interceptedDisk(intercept: Intercept): { readonly disk: Disk; readonly calls: Call[] } {
  const calls: Call[] = [];
  const watched = <T extends object>(target: T, prefix: string): T =>
    new Proxy(target, {
      get(_, key) {
        const method: unknown = Reflect.get(target, key);
        if (typeof method !== "function" || typeof key !== "string") return method;
        return async (...args: unknown[]) => {
          const call = { name: `${prefix}${key}`, args };
          calls.push(call);
          const answer = await intercept(call, calls.length - 1, () => method.apply(target, args));
          return key === "open" ? watched(answer as nodeDisk.FileHandle, "handle.") : answer;
        };
      },
    });
  return { disk: watched({ ...nodeDisk }, ""), calls };
}

const refusal = (code: string) => Object.assign(new Error(`${code}: planted`), { code });

/** A planted fault; a refused `close` closes nevertheless, as the system's own does. */
async function fail(code: string, { name }: Call, real: () => Promise<unknown>): Promise<never> {
  if (name === "handle.close") await real();
  throw refusal(code);
}

const QUICK: ReplaceOptions = { retryForMs: 100, wait: async () => undefined };

const contents = (path = file): Promise<Buffer | undefined> => readFile(path).catch(() => undefined);

async function callsOfOneSave(): Promise<readonly string[]> {
  const { disk, calls } = interceptedDisk((_, __, real) => real());
  await replaceFile(file, NEW, { ...QUICK, disk });
  return calls.map(({ name }) => name);
}

/** What must hold after any save. @param old Undefined where there was no file. */
async function expectWhole(result: ReplaceResult, old: Buffer | undefined, what: string): Promise<void> {
  const now = await contents();
  if (result.saved) {
    expect(now, what).toEqual(NEW);
    return;
  }
  expect(now, what).toEqual(old);
  expect(result.message, what).toMatch(/^house\.loadside was not saved: .{10,}\. [A-Z].{10,}\.$/);
  if (result.recoveryCopy !== undefined) expect(await contents(join(folder, result.recoveryCopy)), what).toEqual(NEW);
}

describe("replacing a file", () => {
  test("a new file appears whole", async () => {
    expect(await replaceFile(file, NEW)).toEqual({ saved: true });
    expect(await contents()).toEqual(NEW);
    expect(await readdir(folder)).toEqual([NAME]);
  });

  test("an empty document and one that is read back in several pieces are saved", async () => {
    for (const bytes of [Buffer.alloc(0), Buffer.alloc((1 << 20) * 2 + 1, "ab")]) {
      expect(await replaceFile(file, bytes)).toEqual({ saved: true });
      expect(Buffer.compare((await contents()) ?? NEW, bytes)).toBe(0);
    }
  });

  test("the bytes are flushed and read back before the rename, and the folder is flushed after it", async () => {
    await writeFile(file, OLD, { mode: 0o640 });
    const names = await callsOfOneSave();
    const order = [
      "open",
      "handle.write",
      "handle.sync",
      "handle.read",
      "handle.close",
      "rename",
      "open",
      "handle.sync",
    ];
    const rest = [...names];
    for (const name of order) {
      expect(rest, `${name} in ${names.join(" ")}`).toContain(name);
      rest.splice(0, rest.indexOf(name) + 1);
    }
  });

  test("permissions are kept", async () => {
    for (const mode of [0o600, 0o640, 0o664]) {
      await writeFile(file, OLD);
      await chmod(file, mode);
      expect((await replaceFile(file, NEW)).saved).toBe(true);
      expect((await stat(file)).mode & 0o777).toBe(mode);
    }
  });

  test("a link stays a link, and the file behind it is replaced, even one that is not there yet", async () => {
    await mkdir(join(folder, "elsewhere"));
    const target = join(folder, "elsewhere", "real.loadside");
    await symlink(join("elsewhere", "real.loadside"), file);
    for (const bytes of [OLD, NEW]) {
      expect((await replaceFile(file, bytes)).saved).toBe(true);
      expect((await lstat(file)).isSymbolicLink()).toBe(true);
      expect(await contents(target)).toEqual(bytes);
    }
  });

  test("links in a circle, a folder and a missing folder are refused with a reason", async () => {
    await symlink(NAME, file);
    await mkdir(join(folder, "folder.loadside"));
    const refused: [string, string][] = [
      [file, "ELOOP"],
      [join(folder, "folder.loadside"), "not-a-file"],
      [join(folder, "nowhere", NAME), "ENOENT"],
    ];
    for (const [path, code] of refused) {
      expect(await replaceFile(path, NEW, QUICK)).toMatchObject({ saved: false, code });
    }
    expect((await readdir(folder)).sort()).toEqual(["folder.loadside", NAME].sort());
  });

  test("a name as long as the file system allows is saved", async () => {
    const long = join(folder, `${"n".repeat(246)}.loadside`);
    expect((await replaceFile(long, NEW)).saved).toBe(true);
    expect(await contents(long)).toEqual(NEW);
  });
});

describe("faults", () => {
  // What a worn disk, a full one, one without permission, one in use by others and one behind a network report.
  const CODES = ["EIO", "ENOSPC", "EACCES", "EPERM", "EBUSY", "EROFS", "EMFILE", "ENOENT", "ETIMEDOUT"];

  /** Some hundred saves, each flushed to the disk, which takes its time when others use it too. */
  const MANY_SAVES = { timeout: 300_000 };

  test.each([
    ["over an old file", OLD],
    ["of a new file", undefined],
  ])("each call of a save %s fails once, with each code", MANY_SAVES, async (_, old) => {
    if (old !== undefined) await writeFile(file, old);
    const names = await callsOfOneSave();
    expect(names.length).toBeGreaterThan(10);
    for (const code of CODES) {
      for (let at = 0; at < names.length; at++) {
        await rm(file, { force: true });
        if (old !== undefined) await writeFile(file, old);
        const { disk } = interceptedDisk((call, index, real) => (index === at ? fail(code, call, real) : real()));
        const result = await replaceFile(file, NEW, { ...QUICK, disk, shownAs: NAME });
        const what = `${code} at call ${at}, ${names[at]}`;
        await expectWhole(result, old, what);
        expect(await readdir(folder), what).toEqual(result.saved || old !== undefined ? [NAME] : []);
      }
    }
  });

  test("from each call on everything fails, with each code", MANY_SAVES, async () => {
    await writeFile(file, OLD);
    const names = await callsOfOneSave();
    for (const code of CODES) {
      for (let at = 0; at < names.length; at++) {
        const what = `${code} from call ${at} on, ${names[at]}`;
        await rm(folder, { recursive: true });
        await mkdir(folder);
        await writeFile(file, OLD);
        const { disk } = interceptedDisk((call, index, real) => (index >= at ? fail(code, call, real) : real()));
        const result = await replaceFile(file, NEW, { ...QUICK, disk, shownAs: NAME });
        await expectWhole(result, OLD, what);
        // A temporary file that could not be deleted is what may be left, under a name that a later save sweeps.
        for (const name of await readdir(folder)) expect(name, what).toMatch(/^house\.loadside$|^\..*\.saving$/);
      }
    }
  });

  test("a disk that takes a part at a time gets all of it", async () => {
    await writeFile(file, OLD);
    const { disk } = interceptedDisk((call, _, real) => {
      if (call.name === "handle.write") call.args[2] = Math.min(1000, Number(call.args[2]));
      return real();
    });
    expect(await replaceFile(file, NEW, { disk })).toEqual({ saved: true });
    expect(await contents()).toEqual(NEW);
  });

  test("a full disk that takes nothing and reports no fault is noticed", async () => {
    await writeFile(file, OLD);
    const { disk } = interceptedDisk(async (call, _, real) =>
      call.name === "handle.write" ? { bytesWritten: 0, buffer: call.args[0] } : real(),
    );
    expect(await replaceFile(file, NEW, { disk })).toMatchObject({ saved: false, code: "short-write" });
    expect(await contents()).toEqual(OLD);
    expect(await readdir(folder)).toEqual([NAME]);
  });

  test("a disk that holds other bytes than were written is noticed", async () => {
    await writeFile(file, OLD);
    const { disk } = interceptedDisk(async (call, _, real) => {
      const answer = await real();
      if (call.name === "handle.read") (call.args[0] as Buffer)[17] = 0;
      return answer;
    });
    expect(await replaceFile(file, NEW, { disk })).toMatchObject({ saved: false, code: "read-back-differs" });
    expect(await contents()).toEqual(OLD);
    expect(await readdir(folder)).toEqual([NAME]);
  });

  test("a rename that another program holds up for a while succeeds later", async () => {
    await writeFile(file, OLD);
    let refusals = 0;
    const waits: number[] = [];
    const { disk } = interceptedDisk((call, _, real) => {
      if (call.name === "rename" && refusals++ < 6) throw refusal("EPERM");
      return real();
    });
    const wait = async (ms: number) => void waits.push(ms);
    expect(await replaceFile(file, NEW, { disk, wait })).toEqual({ saved: true });
    expect(await contents()).toEqual(NEW);
    expect(waits.length).toBe(6);
    expect(waits.reduce((sum, ms) => sum + ms, 0)).toBeLessThanOrEqual(10_000);
  });

  test("a rename that is never allowed leaves the old file, and the new bytes under a name that says so", async () => {
    await writeFile(file, OLD);
    const { disk } = interceptedDisk((call, _, real) => {
      if (call.name === "rename" && call.args[1] === file) throw refusal("EBUSY");
      return real();
    });
    const result = await replaceFile(file, NEW, { ...QUICK, disk });
    expect(await contents()).toEqual(OLD);
    const copy = (await readdir(folder)).filter((name) => name !== NAME);
    expect(copy).toEqual([expect.stringMatching(/^house \(not saved, [0-9a-f]{8}\)\.loadside$/)]);
    expect(result).toMatchObject({ saved: false, code: "EBUSY", recoveryCopy: copy[0] });
    expect(result).toHaveProperty("message", expect.stringContaining(`"${copy[0]}"`));
    expect(await contents(join(folder, copy[0] ?? ""))).toEqual(NEW);
  });

  test("a file that is write-protected is not replaced", async () => {
    await writeFile(file, OLD);
    // Asked of the disk rather than set on the file: an administrator may write everything.
    const { disk } = interceptedDisk(async (call, _, real) => {
      if (call.name === "access" && call.args[1] === constants.W_OK) throw refusal("EACCES");
      return real();
    });
    expect(await replaceFile(file, NEW, { disk })).toMatchObject({ saved: false, code: "EACCES" });
    expect(await contents()).toEqual(OLD);
  });

  test("left-overs of an hour ago are swept, and nothing else", async () => {
    const names = [
      ".a.loadside.0123456789abcdef.saving",
      ".b.loadside.fedcba9876543210.saving",
      ".c.saving",
      "d.loadside",
    ];
    for (const name of names) {
      await writeFile(join(folder, name), "x");
      const hours = name.startsWith(".b") ? 0.5 : 2;
      const then = new Date(Date.now() - hours * 3_600_000);
      await utimes(join(folder, name), then, then);
    }
    expect((await replaceFile(file, NEW)).saved).toBe(true);
    expect((await readdir(folder)).sort()).toEqual([...names.slice(1), NAME].sort());
  });
});

describe("making a file that is not there yet", () => {
  const ONLY_NEW = { ...QUICK, shownAs: NAME, onlyNew: true };
  const there = { saved: false, code: "EEXIST" };

  test("it appears whole, and nothing is left beside it", async () => {
    expect(await replaceFile(file, NEW, ONLY_NEW)).toEqual({ saved: true });
    expect([await contents(), await readdir(folder)]).toEqual([NEW, [NAME]]);
  });

  test("what is there stays: a file, a folder, a link that leads nowhere", async () => {
    await writeFile(file, OLD);
    await mkdir(join(folder, "sub"));
    await symlink("nowhere", join(folder, "link"));
    for (const name of [NAME, "sub", "link"])
      expect(await replaceFile(join(folder, name), NEW, ONLY_NEW)).toMatchObject(there);
    expect([await contents(), (await readdir(folder)).sort()]).toEqual([OLD, [NAME, "link", "sub"]]);
  });

  test("what another program makes in the last moment stays", async () => {
    const { disk } = interceptedDisk(async (call, _, real) => {
      if (call.name === "link") await writeFile(file, OLD);
      return real();
    });
    expect(await replaceFile(file, NEW, { ...ONLY_NEW, disk })).toMatchObject(there);
    expect([await contents(), await readdir(folder)]).toEqual([OLD, [NAME]]);
  });

  test("a disk without second names takes it all the same, where nothing is there", async () => {
    const without = (meanwhile: () => Promise<void>) =>
      interceptedDisk(async (call, _, real) => {
        if (call.name !== "link") return real();
        await meanwhile();
        throw refusal("ENOTSUP");
      }).disk;
    const disk = without(async () => undefined);
    expect(await replaceFile(file, NEW, { ...ONLY_NEW, disk })).toEqual({ saved: true });
    expect([await contents(), await readdir(folder)]).toEqual([NEW, [NAME]]);
    await rm(file);
    const filled = without(() => writeFile(file, OLD));
    expect(await replaceFile(file, NEW, { ...ONLY_NEW, disk: filled })).toMatchObject(there);
    expect([await contents(), await readdir(folder)]).toEqual([OLD, [NAME]]);
  });

  test("whichever call fails, the file is whole or not there", async () => {
    const { disk: counting, calls } = interceptedDisk((_, __, real) => real());
    await replaceFile(file, NEW, { ...ONLY_NEW, disk: counting });
    for (let at = 0; at < calls.length; at += 1) {
      await rm(file, { force: true });
      const { disk } = interceptedDisk((call, index, real) => (index === at ? fail("EIO", call, real) : real()));
      const result = await replaceFile(file, NEW, { ...ONLY_NEW, disk });
      await expectWhole(result, undefined, `${calls[at]?.name} of call ${at}`);
    }
  });
});
