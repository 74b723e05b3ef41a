/** What the browser host serves, and to whom. */
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { startBrowserHost } from "../electron/browser-host.mjs";
import { type HostCase, makeHostCase, SECRET } from "./host-case.ts";

let host: HostCase;
beforeEach(async () => {
  host = await makeHostCase();
  await host.start();
});
afterEach(() => host.end());

test("is served with the right types, and afresh each time", async () => {
  const types: [string, string][] = [
    ["/", "text/html; charset=utf-8"],
    ["/index.html", "text/html; charset=utf-8"],
    ["/?open=abc", "text/html; charset=utf-8"],
    ["/assets/main.js", "text/javascript; charset=utf-8"],
    ["/assets/main.css", "text/css; charset=utf-8"],
    ["/assets/font.woff2", "font/woff2"],
    ["/assets/paper.woff", "font/woff"],
  ];
  for (const [path, type] of types) {
    const { status, headers, body } = await host.ask(path);
    expect({ status, type: headers["content-type"], cache: headers["cache-control"] }).toEqual({
      status: 200,
      type,
      cache: "no-store",
    });
    const head = await host.ask(path, { method: "HEAD" });
    expect(head).toMatchObject({ status: 200, body: "", headers: { "content-length": String(body.length) } });
  }
});

test("every answer carries the security headers", async () => {
  const answers = [
    await host.ask("/"),
    await host.ask("/nothing"),
    await host.ask("/", { method: "POST", body: "x" }),
    await host.ask("/", { headers: { host: "example.invalid" } }),
    await host.ask("/opened-file?token=x"),
  ];
  expect(answers.map(({ status }) => status)).toEqual([200, 404, 405, 403, 404]);
  for (const { headers } of answers) {
    expect(headers["x-content-type-options"]).toBe("nosniff");
    expect(headers["cross-origin-opener-policy"]).toBe("same-origin");
    expect(headers["referrer-policy"]).toBe("no-referrer");
    const policy = new Map(
      String(headers["content-security-policy"])
        .split("; ")
        .map((directive) => [directive.split(" ")[0] ?? "", directive.split(" ").slice(1).join(" ")]),
    );
    expect(policy.get("default-src")).toBe("'none'");
    for (const name of ["script-src", "worker-src", "style-src", "font-src", "connect-src"]) {
      expect(policy.get(name), name).toBe("'self'");
    }
    for (const name of ["base-uri", "form-action", "frame-ancestors", "object-src"]) {
      expect(policy.get(name), name).toBe("'none'");
    }
    expect(policy.get("require-trusted-types-for")).toBe("'script'");
    expect(String(headers["content-security-policy"])).not.toContain("unsafe");
  }
});

test.each([
  "/../secret.txt",
  "/assets/../../secret.txt",
  "/assets/..%2f..%2fsecret.txt",
  "/%2e%2e/secret.txt",
  "/..%5csecret.txt",
  "/..\\secret.txt",
  "//secret.txt",
  "/./../secret.txt",
  "/assets/main.js/../../../secret.txt",
  "/assets/main.js%00.txt",
  "/assets/link.txt",
  "/assets/notes.md",
  "/assets",
  "/assets/",
  "/__proto__",
  "/constructor",
  "secret.txt",
  "http://127.0.0.1/../secret.txt",
  "file:///etc/hostname",
  "*",
])("nothing outside is reached by %s", async (path) => {
  const { status, body } = await host.ask(path);
  expect(status).toBeGreaterThanOrEqual(400);
  expect(status).toBeLessThan(500);
  expect(body).not.toContain(SECRET);
});

test("only its own address is answered", async () => {
  const own = `127.0.0.1:${host.port}`;
  for (const name of [own, `localhost:${host.port}`]) {
    expect((await host.ask("/", { headers: { host: name } })).status).toBe(200);
  }
  const others = [
    "example.invalid",
    `example.invalid:${host.port}`,
    "127.0.0.1",
    "127.0.0.1:1",
    `${own}.example.invalid`,
  ];
  for (const name of others) expect((await host.ask("/", { headers: { host: name } })).status).toBe(403);
  for (const origin of ["http://example.invalid", `https://${own}`, "null"]) {
    expect((await host.ask("/", { headers: { host: own, origin } })).status).toBe(403);
  }
  expect((await host.ask("/", { headers: { host: own, origin: `http://${own}` } })).status).toBe(200);
});

test("is served on loopback alone", () => {
  expect(new URL(host.url)).toMatchObject({ protocol: "http:", hostname: "127.0.0.1", search: "" });
});

test("a port that is taken is not waited for", async () => {
  const second = await startBrowserHost({ folder: join(host.folder, "window"), port: host.port });
  expect(second.port).not.toBe(host.port);
  await second.close();
});

test("a folder without a window is refused", async () => {
  await expect(startBrowserHost({ folder: join(host.folder, "window", "assets") })).rejects.toThrow("no built window");
});
