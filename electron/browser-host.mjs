/**
 * The browser host: serves the built window on loopback, and the one document it was started with.
 */
import { timingSafeEqual } from "node:crypto";
import { createServer } from "node:http";
import { SECURITY_HEADERS } from "./security-headers.mjs";
import { readWindowFiles } from "./window-files.mjs";

const OPENED_FILE = "/opened-file";
/** Carries its name, percent-encoded. */
const NAME_HEADER = "Loadside-File-Name";
/** Names of the scripts that the page and its workbench need; the build writes it. */
const SCRIPTS = "/scripts.json";

/**
 * Serves on 127.0.0.1 until `close` is called.
 * @param {object} options
 * @param {string} options.folder The built window.
 * @param {number} [options.port] Preferred port; another free one is taken when it is in use. 0: any.
 * @param {import("./opened-file.mjs").OpenedFile} [options.openedFile] The document the window may fetch and save.
 * @returns {Promise<{ url: string, port: number, close: () => Promise<void> }>} `url` carries the token of the opened file.
 */
export async function startBrowserHost({ folder, port = 0, openedFile }) {
  const files = await readWindowFiles(folder);
  const server = createServer((request, response) => {
    answer(request, response, files, openedFile).catch(() => refuse(response, 500, "The request failed."));
  });
  const taken = await listen(server, port);
  const query = openedFile === undefined ? "" : `?open=${openedFile.token}`;
  return { url: `http://127.0.0.1:${taken}/${query}`, port: taken, close: () => stop(server) };
}

/**
 * @param {import("node:http").Server} server
 * @param {number} port
 * @returns {Promise<number>}
 */
function listen(server, port) {
  return new Promise((resolve, reject) => {
    server.once("error", (/** @type {NodeJS.ErrnoException} */ error) => {
      const busy = port !== 0 && (error.code === "EADDRINUSE" || error.code === "EACCES");
      busy ? listen(server, 0).then(resolve, reject) : reject(error);
    });
    server.listen(port, "127.0.0.1", () => {
      server.removeAllListeners("error");
      resolve(/** @type {import("node:net").AddressInfo} */ (server.address()).port);
    });
  });
}

/** Lets a save that is under way finish, but does not wait for a page that only keeps its connection open. */
function stop(/** @type {import("node:http").Server} */ server) {
  return /** @type {Promise<void>} */ (
    new Promise((resolve) => {
      const impatience = setTimeout(() => server.closeAllConnections(), 5000);
      server.close(() => {
        clearTimeout(impatience);
        resolve();
      });
      server.closeIdleConnections();
    })
  );
}

/**
 * @param {import("node:http").IncomingMessage} request
 * @param {import("node:http").ServerResponse} response
 * @param {ReadonlyMap<string, import("./window-files.mjs").WindowFile>} files
 * @param {import("./opened-file.mjs").OpenedFile | undefined} openedFile
 */
async function answer(request, response, files, openedFile) {
  if (!isOwnHost(request)) return refuse(response, 403, "This address answers on loopback only.");
  const [path = "", query = ""] = (request.url ?? "").split("?", 2);
  if (path === OPENED_FILE) return answerOpenedFile(request, response, new URLSearchParams(query), openedFile);
  if (request.method !== "GET" && request.method !== "HEAD")
    return refuse(response, 405, "Only GET and HEAD.", "GET, HEAD");
  const file = files.get(path);
  if (file === undefined) return refuse(response, 404, "There is nothing here.");
  const token = new URLSearchParams(query).get("open");
  const links = path === "/" ? linksAhead(files, token, openedFile) : "";
  if (links !== "") response.setHeader("Link", links);
  send(response, 200, file.type, file.bytes);
}

/**
 * What a page will ask for, opened on a drawing or on the start page: named with the page, so that it comes at the same time
 * as the scripts that would ask for it. Its own scripts come first. Nothing for a page with a token that is not ours.
 * @param {ReadonlyMap<string, import("./window-files.mjs").WindowFile>} files
 * @param {string | null} token
 * @param {import("./opened-file.mjs").OpenedFile | undefined} openedFile
 */
function linksAhead(files, token, openedFile) {
  /** @type {{ page?: string[], drawing?: string[], start?: string[] }} */
  const { page = [], drawing = [], start = [] } = JSON.parse(files.get(SCRIPTS)?.bytes.toString() ?? "{}");
  const script = (/** @type {string} */ name) => `</${name}>; rel=modulepreload`;
  if (token === null) return start.length === 0 ? "" : [...page, ...start].map(script).join(", ");
  if (openedFile === undefined || !sameToken(token, openedFile.token)) return "";
  const text = `<${OPENED_FILE}?token=${encodeURIComponent(openedFile.token)}>; rel=preload; as=fetch; crossorigin`;
  return [...page.map(script), text, ...drawing.map(script)].join(", ");
}

/**
 * A page elsewhere can point its own name at 127.0.0.1; its requests then carry that name as host.
 * @param {import("node:http").IncomingMessage} request
 */
function isOwnHost(request) {
  const { host, origin } = request.headers;
  const own = [`127.0.0.1:${request.socket.localPort}`, `localhost:${request.socket.localPort}`];
  return own.includes(host ?? "") && (origin === undefined || origin === `http://${host}`);
}

/**
 * @param {import("node:http").IncomingMessage} request
 * @param {import("node:http").ServerResponse} response
 * @param {URLSearchParams} query
 * @param {import("./opened-file.mjs").OpenedFile | undefined} openedFile
 */
async function answerOpenedFile(request, response, query, openedFile) {
  if (openedFile === undefined || !sameToken(query.get("token") ?? "", openedFile.token)) {
    return refuse(response, 404, "There is nothing here.");
  }
  if (request.method === "GET" || request.method === "HEAD") {
    const read = await openedFile.read();
    if (!read.ok) return refuse(response, 500, read.message);
    // The bytes as they are: as a field of an answer a large drawing would be written and read once more.
    response.setHeader(NAME_HEADER, encodeURIComponent(openedFile.name));
    return send(response, 200, "text/plain; charset=utf-8", Buffer.from(read.text));
  }
  if (request.method !== "PUT") return refuse(response, 405, "Only GET, HEAD and PUT.", "GET, HEAD, PUT");
  const bytes = await bodyOf(request, openedFile.limit);
  if (bytes === undefined) return refuse(response, 413, `A document holds at most ${openedFile.limit} bytes.`);
  const saved = await openedFile.save(bytes, query.get("overwrite") === "1");
  return saved.ok
    ? sendJson(response, 200, { name: openedFile.name, note: saved.note })
    : refuse(response, saved.status, saved.message);
}

/** @param {string} given @param {string} expected */
function sameToken(given, expected) {
  const [a, b] = [Buffer.from(given), Buffer.from(expected)];
  return a.length === b.length && timingSafeEqual(a, b);
}

/**
 * @param {import("node:http").IncomingMessage} request
 * @param {number} limit In bytes.
 * @returns {Promise<Buffer | undefined>} Undefined as soon as it is clear that the body is longer than `limit`.
 */
async function bodyOf(request, limit) {
  const chunks = [];
  let length = Number(request.headers["content-length"] ?? 0);
  if (length <= limit) {
    length = 0;
    for await (const chunk of request.iterator({ destroyOnReturn: false })) {
      length += chunk.length;
      if (length > limit) break;
      chunks.push(chunk);
    }
  }
  if (length <= limit) return Buffer.concat(chunks);
  // A sender reads the refusal only after it has sent everything.
  request.resume();
  return undefined;
}

/** @param {import("node:http").ServerResponse} response @param {number} status @param {unknown} value */
function sendJson(response, status, value) {
  send(response, status, "application/json; charset=utf-8", Buffer.from(JSON.stringify(value)));
}

/**
 * @param {import("node:http").ServerResponse} response
 * @param {number} status
 * @param {string} message
 * @param {string} [allow]
 */
function refuse(response, status, message, allow) {
  if (response.headersSent) return response.destroy();
  if (allow !== undefined) response.setHeader("Allow", allow);
  sendJson(response, status, { message });
}

/**
 * @param {import("node:http").ServerResponse} response
 * @param {number} status
 * @param {string} type
 * @param {Buffer} bytes
 */
function send(response, status, type, bytes) {
  // A rebuilt window has the same address, so a page is always asked for anew.
  const headers = {
    ...SECURITY_HEADERS,
    "Cache-Control": "no-store",
    "Content-Type": type,
    "Content-Length": bytes.length,
  };
  response.writeHead(status, headers);
  response.end(response.req.method === "HEAD" ? undefined : bytes);
}
