/** The contract between window and main process holds against anything that is sent. */
import * as fc from "fast-check";
import * as v from "valibot";
import { describe, expect, test } from "vitest";
import { channelOf, EVENTS, REQUESTS, type RequestName } from "../../electron/ipc/channels.ts";
import { answerRequest, checkedEvent } from "../../electron/ipc/check.ts";
import { events, type ReplyOf, requests } from "../../electron/ipc/contract.ts";
import { FILE_LIMIT_BYTES } from "../../renderer/platform/file-host.ts";
import { windowCommands } from "../../shared-model/commands/catalog/commands.ts";

const TOKEN = `${"aZ09_-".repeat(5)}ab`;
const ID = "0123456789abcdef".repeat(2);

/** One right request and one right reply for each channel. */
const RIGHT: { readonly [N in RequestName]: readonly [request: unknown, reply: unknown] } = {
  chooseFile: [undefined, { ok: true, name: "a.loadside", text: "{}", file: TOKEN, recent: ID }],
  takeWaitingFile: [{ wanted: true }, null],
  openDropped: [{ path: "/a/b.loadside" }, { ok: false, message: "It is not there." }],
  saveFile: [{ file: TOKEN, text: "{}", overwrite: false }, { kind: "saved" }],
  saveFileAs: [
    { name: "a.loadside", text: "{}" },
    { outcome: { kind: "saved", note: "x" }, file: { file: TOKEN, name: "a.loadside", recent: ID } },
  ],
  saveCopyAs: [
    { name: "house job folder", kind: "pdf", bytes: new Uint8Array([37, 80, 68, 70]) },
    { kind: "saved", name: "house job folder.pdf", note: "x" },
  ],
  recentFiles: [
    undefined,
    [{ id: ID, name: "a.loadside", folder: "~", usedAt: "2026-01-02T03:04:05.678Z", isThere: true }],
  ],
  openRecent: [{ id: ID }, null],
  forgetRecent: [{ id: ID }, null],
  showDocument: [{ file: null, edited: true }, null],
  answerClose: [{ leave: true }, null],
  showKeys: [
    {
      keys: [
        { id: "energise", chord: "Mod+Shift+E" },
        { id: "save-document", chord: null },
      ],
    },
    null,
  ],
};

const ask = (name: RequestName, payload: unknown, run: (request: unknown) => unknown, report = (_: unknown) => {}) =>
  answerRequest(name, payload, async (request) => run(request) as ReplyOf<typeof name>, report);

const REFUSED = { ok: false, message: "The window asked for something that does not exist." };

describe.each(REQUESTS)("%s", (name) => {
  const [request, reply] = RIGHT[name];

  test("takes a right request and lets a right reply out", async () => {
    expect(await ask(name, request, () => reply)).toEqual({ ok: true, value: reply });
  });

  test("runs nothing and never throws for ten thousand pieces of junk", async () => {
    let ran = 0;
    const junk = fc.oneof(
      fc.anything({ withBigInt: true, withDate: true, withMap: true, withSet: true, withTypedArray: true }),
      // Near misses: right fields with anything in them, or one too many.
      typeof request === "object" && request !== null
        ? fc.oneof(
            ...Object.keys(request).map((key) => fc.anything().map((value) => ({ ...request, [key]: value }))),
            fc.anything().map((value) => ({ ...request, more: value })),
          )
        : fc.string(),
    );
    await fc.assert(
      fc.asyncProperty(junk, async (payload) => {
        if (v.is(requests[name].request as v.GenericSchema, payload)) return;
        expect(await ask(name, payload, () => (ran += 1))).toEqual(REFUSED);
      }),
      { numRuns: 10_000 },
    );
    expect(ran).toBe(0);
  });

  test("keeps a wrong reply and a fault inside, and tells neither cause nor path", async () => {
    const reports: unknown[] = [];
    const secret = new Error("ENOENT: /home/someone/secret");
    const run = () => {
      throw secret;
    };
    const failed = { ok: false, message: "That did not work. The drawing is still here: try again." };
    expect(await ask(name, request, run, (error) => reports.push(error))).toEqual(failed);
    expect(
      await ask(
        name,
        request,
        () => ({ stack: "x" }),
        (error) => reports.push(error),
      ),
    ).toEqual(failed);
    expect(reports).toHaveLength(2);
    expect(reports[0]).toBe(secret);
  });

  test("takes nothing that is more than it asks for", async () => {
    const more = typeof request === "object" && request !== null ? { ...request, more: 1 } : { more: 1 };
    expect(await ask(name, more, () => reply)).toEqual(REFUSED);
  });
});

test("texts are limited before they are looked at, at the size of a document", async () => {
  const text = "x".repeat(FILE_LIMIT_BYTES);
  const saved = (given: string) =>
    ask("saveFile", { file: TOKEN, text: given, overwrite: true }, () => ({ kind: "saved" }));
  expect(await saved(text)).toMatchObject({ ok: true });
  expect(await saved(`${text}x`)).toEqual(REFUSED);
});

test("what is made of a drawing is bytes of a known kind, and limited before it is looked at", async () => {
  const saved = (copy: object) => ask("saveCopyAs", { name: "a", kind: "pdf", ...copy }, () => null);
  expect(await saved({ bytes: new Uint8Array(3) })).toMatchObject({ ok: true });
  for (const bytes of [
    [1, 2],
    "JVBERg==",
    new Uint16Array(3),
    new ArrayBuffer(3),
    new Uint8Array(256 * 1024 * 1024 + 1),
  ])
    expect(await saved({ bytes })).toEqual(REFUSED);
  for (const kind of ["exe", "html", "loadside", ""])
    expect(await saved({ kind, bytes: new Uint8Array(3) })).toEqual(REFUSED);
});

test("channels are named once, and none like another", () => {
  const names = [...REQUESTS, ...EVENTS].map(channelOf);
  expect(new Set(names).size).toBe(names.length);
  expect(Object.keys(requests).sort()).toEqual([...REQUESTS].sort());
  expect(Object.keys(events).sort()).toEqual([...EVENTS].sort());
});

test("the window is told to run what the catalogue has, and nothing else", () => {
  for (const { id } of windowCommands) expect(checkedEvent("runCommand", { id })).toEqual({ id });
  expect(() => checkedEvent("runCommand", { id: "toString" as "undo" })).toThrow("runCommand");
  expect(() => checkedEvent("fileWaiting", { path: "/x" } as object)).toThrow("fileWaiting");
});
