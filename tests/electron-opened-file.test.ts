/** The document that the window may read and save through the browser host. */
import { spawnSync } from "node:child_process";
import { mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { request } from "node:http";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { openFile, type ReplaceFile } from "../electron/opened-file.mjs";
import { type HostCase, makeHostCase, OLD } from "./host-case.ts";

const LIMIT = 1000;

let replaceFile: ReplaceFile;
beforeAll(async () => {
  const root = fileURLToPath(new URL("../", import.meta.url));
  const built = spawnSync(process.execPath, ["shared-model/hosts/build.mjs", "host"], { cwd: root, encoding: "utf8" });
  expect(built.status, built.stderr).toBe(0);
  ({ replaceFile } = await import(new URL("../dist/host/atomic-file.mjs", import.meta.url).href));
});

let host: HostCase;
beforeEach(async () => {
  host = await makeHostCase();
});
afterEach(() => host.end());

describe("the opened file", () => {
  let address = "";
  let path = "";
  const open = async (replace: ReplaceFile = replaceFile) => {
    path = join(host.folder, "house.loadside");
    const opened = await openFile(path, replace, LIMIT);
    if (!opened.ok) throw new Error(opened.message);
    await host.start(opened.file);
    address = `/opened-file?token=${opened.file.token}`;
  };
  const put = (body: string | Buffer, query = "") => host.ask(`${address}${query}`, { method: "PUT", body });
  const onDisk = () => readFile(path, "utf8");

  test("comes with its name and not its folder, to who knows the token", async () => {
    await open();
    const { status, body, headers } = await host.ask(address);
    expect({ status, body, name: headers["loadside-file-name"] }).toEqual({
      status: 200,
      body: OLD,
      name: "house.loadside",
    });
    expect(new URL(host.url).searchParams.get("open")).toBe(address.split("=")[1]);
  });

  test("is named together with the page that shows it, after the scripts of the page, and to nobody else", async () => {
    const scripts = { page: ["assets/main.js"], drawing: ["assets/sheet.js"] };
    await writeFile(join(host.folder, "window", "scripts.json"), JSON.stringify(scripts));
    await open();
    const token = address.split("=")[1] ?? "";
    expect((await host.ask(`/?open=${token}`)).headers.link).toBe(
      [
        "</assets/main.js>; rel=modulepreload",
        `<${address}>; rel=preload; as=fetch; crossorigin`,
        "</assets/sheet.js>; rel=modulepreload",
      ].join(", "),
    );
    for (const other of ["/?open=", "/?open=x", `/assets/main.js?open=${token}`])
      expect((await host.ask(other)).headers.link, other).toBeUndefined();
  });

  test("is not what a page without a token asks for: that is the start page", async () => {
    const scripts = { page: ["assets/main.js"], drawing: ["assets/sheet.js"], start: ["assets/start.js"] };
    await writeFile(join(host.folder, "window", "scripts.json"), JSON.stringify(scripts));
    await open();
    expect((await host.ask("/")).headers.link).toBe(
      "</assets/main.js>; rel=modulepreload, </assets/start.js>; rel=modulepreload",
    );
  });

  test("is neither read nor written with another token or none", async () => {
    await open();
    const wrong = [
      "",
      "?token=",
      "?token=x",
      "?open=x",
      address.slice("/opened-file".length, -1),
      `?token=${"A".repeat(32)}`,
    ];
    for (const query of wrong) {
      for (const method of ["GET", "HEAD", "PUT"]) {
        const { status, body } = await host.ask(`/opened-file${query}`, {
          method,
          ...(method === "PUT" && { body: "new" }),
        });
        expect({ status, old: body.includes("old") }).toEqual({ status: 404, old: false });
      }
    }
    expect(await onDisk()).toBe(OLD);
  });

  test("takes GET, HEAD and PUT only", async () => {
    await open();
    for (const method of ["POST", "DELETE", "PATCH", "OPTIONS"]) {
      expect(await host.ask(address, { method })).toMatchObject({ status: 405, headers: { allow: "GET, HEAD, PUT" } });
    }
    expect(await onDisk()).toBe(OLD);
  });

  test("is replaced whole, every byte kept", async () => {
    await open();
    const text = "\uFEFFgrüße \u{1F50C}\r\n";
    expect(await put(text)).toMatchObject({ status: 200 });
    expect(await readFile(path)).toEqual(Buffer.from(text));
    expect((await host.ask(address)).body).toBe(text);
    expect((await readdir(host.folder)).sort()).toEqual(["house.loadside", "secret.txt", "window"]);
  });

  test("takes a document of the largest size, and none that is a byte longer, declared or not", async () => {
    await open();
    expect((await put("x".repeat(LIMIT))).status).toBe(200);
    expect((await put("y".repeat(LIMIT + 1))).status).toBe(413);
    const headers = { "transfer-encoding": "chunked" };
    expect((await host.ask(address, { method: "PUT", headers, body: "z".repeat(LIMIT + 1) })).status).toBe(413);
    expect((await host.ask(address, { method: "PUT", headers, body: "z".repeat(5_000_000) })).status).toBe(413);
    expect(await onDisk()).toBe("x".repeat(LIMIT));
  });

  test("stays as it was when the sender goes away in the middle", async () => {
    await open();
    await new Promise<void>((resolve) => {
      const headers = { "content-length": "500" };
      const sent = request({ host: "127.0.0.1", port: host.port, path: address, method: "PUT", headers, agent: false });
      sent.once("error", () => resolve());
      sent.write("half of ", () => setTimeout(() => sent.destroy(new Error("gone")), 50));
    });
    expect((await host.ask("/")).status).toBe(200);
    expect(await onDisk()).toBe(OLD);
  });

  test("stays as it was when saving fails, and the window is told why", async () => {
    await open(async () => ({
      saved: false,
      code: "ENOSPC",
      message: "house.loadside was not saved: the disk is full.",
    }));
    const { status, body } = await put("new");
    expect({ status, body: JSON.parse(body) }).toEqual({
      status: 500,
      body: { message: "house.loadside was not saved: the disk is full." },
    });
    expect(await onDisk()).toBe(OLD);
  });

  test("is not written over when another program has changed it, unless asked to", async () => {
    await open();
    await writeFile(path, "theirs");
    expect((await put("ours")).status).toBe(409);
    expect(await onDisk()).toBe("theirs");
    expect((await put("theirs")).status, "the same bytes are no conflict").toBe(200);
    await writeFile(path, "theirs again");
    expect((await put("ours", "&overwrite=1")).status).toBe(200);
    expect((await put("ours, edited")).status, "our own save is no conflict").toBe(200);
    await rm(path);
    expect((await put("ours, once more")).status, "a file that is gone comes back").toBe(200);
    expect(await onDisk()).toBe("ours, once more");
  });

  test("saves that overlap are made in the order they came", async () => {
    const started: string[] = [];
    await open(async (file, bytes, options) => {
      started.push(Buffer.from(bytes).toString());
      // The earlier one is the slower one.
      await new Promise((done) => setTimeout(done, started.length === 1 ? 100 : 0));
      return replaceFile(file, bytes, options);
    });
    const first = put("first");
    while (started.length === 0) await new Promise((done) => setTimeout(done, 5));
    expect((await Promise.all([first, put("second")])).map(({ status }) => status)).toEqual([200, 200]);
    expect(started).toEqual(["first", "second"]);
    expect(await onDisk()).toBe("second");
  });
});

describe("opening a file", () => {
  test("what cannot be opened is named, with the reason", async () => {
    const files: [string, string | Buffer | undefined, string][] = [
      ["picture.png", "x", "picture.png: documents have the ending .loadside."],
      ["missing.loadside", undefined, "missing.loadside: there is no such file."],
      ["bytes.loadside", Buffer.from([0x7b, 0xff, 0x7d]), "bytes.loadside: the file is not UTF-8 text."],
      [
        "large.loadside",
        "x".repeat(LIMIT + 1),
        "large.loadside: the file is too large: 1001 bytes, at most 1000 are read.",
      ],
    ];
    for (const [name, contents, message] of files) {
      if (contents !== undefined) await writeFile(join(host.folder, name), contents);
      expect(await openFile(join(host.folder, name), replaceFile, LIMIT)).toEqual({ ok: false, message });
    }
    await mkdir(join(host.folder, "folder.loadside"));
    const folderOpened = await openFile(join(host.folder, "folder.loadside"), replaceFile, LIMIT);
    expect(folderOpened).toEqual({ ok: false, message: "folder.loadside: this is not a file." });
  });

  test("no two openings share a token", async () => {
    const opened = await Promise.all([1, 2].map(() => openFile(join(host.folder, "house.loadside"), replaceFile)));
    const tokens = opened.map((each) => (each.ok ? each.file.token : ""));
    expect(new Set(tokens).size).toBe(2);
    // 24 random bytes.
    for (const token of tokens) expect(token).toMatch(/^[\w-]{32}$/);
  });
});
