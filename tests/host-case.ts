/** A folder with a window to serve, a file to open and one that must never come out, and a way to ask for anything. */
import { mkdir, mkdtemp, rm, symlink, writeFile } from "node:fs/promises";
import { type IncomingHttpHeaders, request } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { startBrowserHost } from "../electron/browser-host.mjs";
import type { OpenedFile } from "../electron/opened-file.mjs";

export const SECRET = "not for the window";
export const OLD = `{"old": true}\n`;

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
}

interface Question {
  readonly method?: string;
  readonly headers?: Record<string, string>;
  readonly body?: string | Buffer;
}

export interface HostCase {
  readonly folder: string;
  readonly url: string;
  readonly port: number;
  start(openedFile?: OpenedFile): Promise<void>;
  ask(path: string, question?: Question): Promise<Answer>;
  end(): Promise<void>;
}

export async function makeHostCase(): Promise<HostCase> {
  const folder = await mkdtemp(join(tmpdir(), "loadside-host-"));
  await mkdir(join(folder, "window", "assets"), { recursive: true });
  const files = {
    "secret.txt": SECRET,
    "window/index.html": "<!doctype html><title>window</title>",
    "window/assets/main.js": "export {};",
    "window/assets/main.css": "body {}",
    "window/assets/font.woff2": "font",
    "window/assets/paper.woff": "font",
    "window/assets/notes.md": SECRET,
    "house.loadside": OLD,
  };
  for (const [name, text] of Object.entries(files)) await writeFile(join(folder, name), text);
  await symlink(join(folder, "secret.txt"), join(folder, "window", "assets", "link.txt"));

  let host: Awaited<ReturnType<typeof startBrowserHost>> | undefined;
  return {
    folder,
    get url() {
      return host?.url ?? "";
    },
    get port() {
      return host?.port ?? 0;
    },
    async start(openedFile) {
      host = await startBrowserHost({ folder: join(folder, "window"), ...(openedFile && { openedFile }) });
    },
    ask: (path, question = {}) => ask(host?.port ?? 0, path, question),
    async end() {
      await host?.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

/** Straight to the socket: `fetch` would tidy the path and refuse a foreign host. */
function ask(port: number, path: string, { method = "GET", headers = {}, body }: Question): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = request({ host: "127.0.0.1", port, path, method, headers, agent: false }, (response) => {
      let text = "";
      response.setEncoding("utf8").on("data", (chunk: string) => {
        text += chunk;
      });
      response.on("end", () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body: text }));
    });
    sent.once("error", reject);
    sent.end(body);
  });
}
