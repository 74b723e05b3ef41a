/** The window's own scheme serves the built window, under the same rules as the browser host, and nothing else. */
import { mkdir, mkdtemp, readFile, rm, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ServeWindow, serveWindow } from "../../electron/main/serve-window.ts";
import { PAGE_POLICY, SECURITY_HEADERS } from "../../electron/security-headers.mjs";
import { ROOT } from "../small-project.ts";

let around = "";
let serve: ServeWindow;
beforeAll(async () => {
  around = await mkdtemp(join(tmpdir(), "loadside-serve-"));
  const folder = join(around, "window");
  await mkdir(join(folder, "assets"), { recursive: true });
  await writeFile(join(around, "secret.txt"), "secret");
  await writeFile(join(around, "secret.html"), "secret");
  await writeFile(join(folder, "index.html"), "<title>page</title>");
  await writeFile(join(folder, "assets", "a.js"), "1");
  await writeFile(join(folder, "assets", "notes.md"), "secret");
  await symlink(join(around, "secret.txt"), join(folder, "link.txt"));
  await symlink(around, join(folder, "up"));
  serve = await serveWindow(folder);
});
afterAll(() => rm(around, { recursive: true }));

const get = async (url: string, method = "GET") => {
  const { status, headers, ...answer } = serve({ url, method }) as Response & { text(): Promise<string> };
  return { status, headers, text: await serve({ url, method }).text(), answer };
};

describe("the window's scheme", () => {
  test("serves files with their type and the policy", async () => {
    for (const address of ["app://window/", "app://window/index.html", "app://window/index.html?a=1#b"]) {
      const { status, headers, text } = await get(address);
      expect([status, headers.get("content-type"), text]).toEqual([
        200,
        "text/html; charset=utf-8",
        "<title>page</title>",
      ]);
      for (const [name, value] of Object.entries(SECURITY_HEADERS)) expect(headers.get(name)).toBe(value);
    }
    expect((await get("app://window/assets/a.js")).headers.get("content-type")).toBe("text/javascript; charset=utf-8");
    expect((await get("app://window/assets/a.js", "HEAD")).text).toBe("");
  });

  test("takes GET and HEAD only", async () => {
    for (const method of ["POST", "PUT", "DELETE", "OPTIONS", "PATCH", "TRACE", "get"]) {
      expect((await get("app://window/", method)).status).toBe(405);
    }
  });

  /** Ways up, in every spelling, from every depth, to what is there and must not be served. */
  const UPS = ["..", "%2e%2e", "%2E%2E", ".%2e", "%2e.", "..%00", "....", "%252e%252e", "..%c0%af", "\u2025", "..;"];
  const SLASHES = ["/", "\\", "%2f", "%5c", "%2F", "%255c", "//", "/./"];
  const GOALS = ["secret.txt", "secret.html", "etc/passwd"];
  const hostile = UPS.flatMap((up) =>
    SLASHES.flatMap((slash) =>
      GOALS.flatMap((goal) => [
        `app://window/${up}${slash}${goal}`,
        `app://window/assets/${up}${slash}${up}${slash}${goal}`,
      ]),
    ),
  );
  const odd = [
    "app://window/link.txt",
    "app://window/up/secret.txt",
    "app://window/up/secret.html",
    "app://window/assets/notes.md",
    "app://window/assets",
    "app://window/assets/",
    "app://window/C:/secret.txt",
    "app://window//secret.txt",
    "app://window/index.html%00",
    "app://window/index.html/",
    "app://window/INDEX.HTML",
    "app://window/__proto__",
    "app://window/constructor",
    "app://other/index.html",
    "file:///etc/passwd",
    "http://window/index.html",
    "",
    "nonsense",
  ];

  test("serves nothing else, however it is spelled", async () => {
    expect(hostile.length + odd.length).toBeGreaterThan(300);
    for (const address of [...hostile, ...odd]) {
      const { status, text } = await get(address);
      expect([address, status, text]).toEqual([address, 404, ""]);
    }
  });
});

test("the page sets the same rules for itself, as far as a page can", async () => {
  const page = await readFile(join(ROOT, "renderer/index.html"), "utf8");
  const [, policy] = /Content-Security-Policy"\s+content="([^"]+)"/.exec(page) ?? [];
  expect(policy).toBe(PAGE_POLICY);
  expect(SECURITY_HEADERS["Content-Security-Policy"]).toBe(`${PAGE_POLICY}; frame-ancestors 'none'`);
  const rules = PAGE_POLICY.split("; ");
  expect(rules).toContain("default-src 'none'");
  expect(PAGE_POLICY).not.toMatch(/unsafe|\*|https?:|wss?:/);
});
