/**
 * What no source of the desktop program may say. Background: Electron's own security guide; its scanner is no longer
 * kept up, so the checks are ours.
 */
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join, relative } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { REQUESTS } from "../../electron/ipc/channels.ts";
import { ROOT } from "../small-project.ts";

interface Source {
  readonly path: string;
  readonly text: string;
}

const sourcesIn = (folder: string): readonly Source[] =>
  readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /[.](ts|tsx|mjs|html|css)$/.test(entry.name))
    .map((entry) => {
      const path = join(entry.parentPath, entry.name);
      return { path: relative(ROOT, path), text: readFileSync(path, "utf8") };
    });

const DESKTOP = ["electron/main", "electron/preload", "electron/ipc"].flatMap(sourcesIn);
const WINDOW = sourcesIn("renderer");
/** Comments may speak of what the code must not do. */
const code = ({ text }: Source): string => text.replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, "");

const filesWith = (sources: readonly Source[], pattern: RegExp): readonly string[] =>
  sources.filter((source) => pattern.test(code(source))).map(({ path }) => path);

describe("the sources of the desktop program", () => {
  test("are there", () => expect(DESKTOP.length).toBeGreaterThan(15));

  test.each<readonly [what: string, pattern: RegExp, allowedIn: readonly string[]]>([
    ["make windows", /new BrowserWindow\b/, ["electron/main/make-browser-window.ts"]],
    [
      "set the walls of a window",
      /nodeIntegration|contextIsolation|webSecurity|sandbox:/,
      ["electron/main/policies/web-preferences.ts"],
    ],
    [
      "set a wall to its weaker side",
      /(sandbox|contextIsolation|webSecurity): false|(nodeIntegration\w*|webviewTag|allowRunningInsecureContent|experimentalFeatures|plugins|spellcheck|navigateOnDragDrop): true/,
      [],
    ],
    ["use Blink's hidden features", /enableBlinkFeatures|disableBlinkFeatures/, []],
    ["weaken Chromium by a switch", /appendSwitch|appendArgument|commandLine/, []],
    [
      "listen to a page on a bare channel",
      /ipcMain[.](handle|on|once|handleOnce)\b/,
      ["electron/main/serve-requests.ts"],
    ],
    ["hand things to another program", /\bshell\b|openExternal|openPath|child_process|\bspawn\b|\bexec(File)?\b\(/, []],
    ["speak to a network", /\bfetch\(|\bnet[.]|node:(http|https|net|tls|dgram|dns)|WebSocket/, []],
    ["name an address elsewhere", /(https?|wss?|ftp):\/\//, []],
    ["read the file scheme", /file:\/\/|loadFile\(|registerFileProtocol/, []],
    ["bypass the content policy", /bypassCSP|corsEnabled|allowServiceWorkers/, []],
    ["run text as code", /\beval\(|new Function\b|executeJavaScript|insertCSS/, []],
    ["open the tools for developers by itself", /openDevTools/, []],
    ["write a file other than whole", /writeFile|appendFile|createWriteStream/, []],
    ["embed other pages", /<webview|WebContentsView|BrowserView/, []],
    ["use the remote module", /enableRemoteModule|@electron\/remote/, []],
    ["go round the types", /\bas any\b|@ts-(ignore|nocheck)/, []],
  ])("%s in their place only", (_, pattern, allowedIn) => {
    expect(filesWith(DESKTOP, pattern)).toEqual(allowedIn);
  });

  test("policies need neither Electron nor the disk", () => {
    const policies = DESKTOP.filter(({ path }) => path.startsWith("electron/main/policies/"));
    expect(policies.length).toBeGreaterThan(8);
    expect(filesWith(policies, /from "electron"|node:fs|process[.]/)).toEqual([]);
  });

  test("every request has its channel in preload, with a name of its own", () => {
    const preload = DESKTOP.find(({ path }) => path === "electron/preload/preload.ts");
    const invoked = [...(preload?.text ?? "").matchAll(/invoke\(channelOf\("(\w+)"\)/g)].map(([, name]) => name);
    expect(invoked.sort()).toEqual([...REQUESTS].sort());
    expect(preload?.text).not.toMatch(/exposeInMainWorld\("loadside", \{?\s*ipcRenderer|sendSync|postMessage/);
  });
});

describe("the sources of the window", () => {
  test.each<readonly [what: string, pattern: RegExp]>([
    ["put text in as code", /dangerouslySetInnerHTML|[.]innerHTML|outerHTML|insertAdjacentHTML|document[.]write/],
    ["embed foreign content", /<foreignObject|<iframe|<object\b|<embed\b|<webview/],
    ["run text as code", /\beval\(|new Function\b/],
    ["know Electron", /require\("electron"\)|from "electron"|ipcRenderer/],
    ["load from elsewhere", /(src|href)=["'{`]+(https?:)?\/\//],
  ])("never %s", (_, pattern) => {
    expect(filesWith(WINDOW, pattern)).toEqual([]);
  });
});

describe("the compiled desktop program", () => {
  beforeAll(() => {
    const built = spawnSync(process.execPath, ["shared-model/hosts/build.mjs", "main", "preload"], {
      cwd: ROOT,
      encoding: "utf8",
    });
    expect(built.status, built.stderr).toBe(0);
  });
  const requiredBy = (file: string) =>
    [...readFileSync(join(ROOT, "dist", file), "utf8").matchAll(/\brequire\("([^"]+)"\)/g)].map(([, name]) => name);

  test("preload needs nothing but Electron: it runs in a sandbox", () => {
    expect(requiredBy("preload/preload.cjs")).toEqual(["electron"]);
  });

  test("main needs Electron and Node, and no package", () => {
    const names = [...new Set(requiredBy("main/main.cjs"))];
    expect(names).toContain("electron");
    expect(names.filter((name) => name !== "electron" && !name?.startsWith("node:"))).toEqual([]);
  });

  test("main is read and run in less than 100 ms, with nothing in the place of Electron", () => {
    const script = `
      const Module = require("node:module");
      const load = Module._load;
      const nothing = new Proxy(() => {}, { get: () => nothing, apply: () => nothing });
      Module._load = (name, ...rest) => (name === "electron" ? nothing : load(name, ...rest));
      const started = performance.now();
      require(${JSON.stringify(join(ROOT, "dist/main/main.cjs"))});
      console.log(performance.now() - started);
      process.exit();`;
    const runs = [1, 2, 3].map(() => spawnSync(process.execPath, ["-e", script], { encoding: "utf8" }));
    expect(runs.map(({ stderr }) => stderr)).toEqual(["", "", ""]);
    // The best of three: other work on this computer is not the program's.
    expect(Math.min(...runs.map(({ stdout }) => Number(stdout)))).toBeLessThan(100);
    expect(readFileSync(join(ROOT, "dist/preload/preload.cjs")).length).toBeLessThan(10_000);
  });
});

test("the runtime is pinned to one version", () => {
  const { devDependencies } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
  const locked = JSON.parse(readFileSync(join(ROOT, "package-lock.json"), "utf8")).packages["node_modules/electron"];
  expect(devDependencies.electron).toMatch(/^\d+[.]\d+[.]\d+$/);
  expect(locked.version).toBe(devDependencies.electron);
});
