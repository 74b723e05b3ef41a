/** What the desktop program allows, row by row. Background: Electron's own security guide. */
import { describe, expect, test } from "vitest";
import { closeStep } from "../../electron/main/policies/closing.ts";
import {
  filesAmong,
  filesHandedOver,
  isDocumentPath,
  refusedSwitch,
} from "../../electron/main/policies/command-line.ts";
import { afterCrash } from "../../electron/main/policies/crashes.ts";
import { isOwnAddress, mayNavigate, mayRequest, WINDOW_ADDRESS } from "../../electron/main/policies/own-address.ts";
import { mayUse } from "../../electron/main/policies/permissions.ts";
import { safeName, withEnding } from "../../electron/main/policies/save-name.ts";
import { isTrusted } from "../../electron/main/policies/senders.ts";
import { WEB_PREFERENCES } from "../../electron/main/policies/web-preferences.ts";
import { type OpenWindow, whereToOpen } from "../../electron/main/policies/where-to-open.ts";

/** Addresses that are not the window's, though many look like it. */
const ELSEWHERE: readonly string[] = [
  ...["", " ", "window", "//window/", "/index.html", "app:", "app:/", "app://", "app:window", "app:/window/x"],
  ...["http", "https", "ws", "wss", "ftp", "file", "apps", "ap", "chrome", "devtools", "view-source", "filesystem"].map(
    (scheme) => `${scheme}://window/index.html`,
  ),
  ...["windows", "window.example", "example.window", "window.", "wind%6Fw.example", "w", "127.0.0.1", "[::1]"].map(
    (host) => `app://${host}/index.html`,
  ),
  ...["user@", "user:secret@", ":secret@", "window@example/", "window:80@example/", "example@"].map(
    (user) => `app://${user}window/index.html`,
  ),
  ...[":1", ":80", ":443", ":65535"].map((port) => `app://window${port}/index.html`),
  ...["javascript:alert(1)", "JAVASCRIPT:alert(1)", " javascript:alert(1)", "java\nscript:alert(1)", "vbscript:x"],
  ...["data:text/html,<script>1</script>", "blob:app://window/1", "about:blank", "about:srcdoc", "mailto:a@example"],
  ...["ms-settings:", "ms-word:ofe|u|x", "search-ms:query=x", "tel:1", "steam://run", "intent://x#Intent;end"],
  ...["\\\\server\\share\\x.html", "//server/share/x.html", "file://server/share/x", "file:////server/share/x"],
  ...[
    "C:\\x.html",
    "c:/x.html",
    "file:///C:/x.html",
    "\u0000app://window/",
    "app\u0000://window/",
    "app://window\u0000/",
  ],
  ...["app://window%2f@example/", "app://window%00/", "app://window\\@example/", "app:\\\\example\\window"],
  ...["https://app://window/", "https://example/?app://window/", "https://example/#app://window/", "app//window/"],
  ...["app://WINDOW.example/", "app://window,example/", "app://window;example/", "app://-window/", "app://window_/"],
  ...["gopher://window/", "smb://window/x", "ldap://window/", "jar:app://window/!/x", "about:app://window/"],
  ...["app://\u0455indow/", "app://w\u0456ndow/", "app://window\uFF0E/", "app://xn--window-/", "app://*.window/"],
  ...[
    "nfs://window/",
    "dav://window/",
    "chrome-extension://window/index.html",
    "content://window/",
    "resource://window/",
  ],
];

describe("addresses", () => {
  test("of the window are its own, whatever follows the host", () => {
    for (const own of [WINDOW_ADDRESS, "app://window/", "app://window/a/b.js?c#d", "APP://window/x"]) {
      expect([own, isOwnAddress(own)]).toEqual([own, true]);
    }
  });

  test("elsewhere are not, and nothing is loaded from there or goes there", () => {
    expect(ELSEWHERE.length).toBeGreaterThanOrEqual(90);
    const made = (address: string) => /^\s*(data|blob):/i.test(address);
    for (const address of ELSEWHERE) {
      const answers = [isOwnAddress(address), mayNavigate(address), !made(address) && mayRequest(address, false)];
      expect([address, ...answers]).toEqual([address, false, false, false]);
    }
  });

  test("of the window's files are loaded and not gone to", () => {
    const reload = ["app://window/", "app://window/index.html", "app://window/index.html?a#b"];
    const files = ["app://window/assets/a.js", "app://window/index.htm", "app://window//index.html", "app://window/x"];
    expect([...reload, ...files].map((address) => mayNavigate(address))).toEqual([
      true,
      true,
      true,
      ...files.map(() => false),
    ]);
    expect([...reload, ...files].every((address) => mayRequest(address, false))).toBe(true);
  });

  test("that pages make for themselves are loaded; those of the tools where there are tools", () => {
    expect(mayRequest("blob:app://window/1", false)).toBe(true);
    expect(mayRequest("data:image/png;base64,", false)).toBe(true);
    expect([mayRequest("devtools://devtools/x", true), mayRequest("devtools://devtools/x", false)]).toEqual([
      true,
      false,
    ]);
  });
});

test("a window is walled in", () => {
  expect(WEB_PREFERENCES).toEqual({
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    allowRunningInsecureContent: false,
    experimentalFeatures: false,
    webviewTag: false,
    navigateOnDragDrop: false,
    plugins: false,
    spellcheck: false,
  });
  expect(Object.isFrozen(WEB_PREFERENCES)).toBe(true);
});

/** Every name in the type declarations of Electron 45.4.1, `Session.setPermissionCheckHandler` and `...RequestHandler`. */
const PERMISSIONS = `ar automatic-fullscreen background-fetch background-sync captured-surface-control clipboard-read
  clipboard-sanitized-write deprecated-sync-clipboard-read display-capture fileSystem fullscreen geolocation
  geolocation-approximate hand-tracking hid idle-detection keyboardLock local-fonts local-network local-network-access
  loopback-network media mediaKeySystem midi midiSysex nfc notifications openExternal payment-handler
  periodic-background-sync persistent-storage pointerLock screen-wake-lock sensors serial smart-card speaker-selection
  storage-access system-wake-lock top-level-storage-access usb vr web-app-installation web-printing window-management
  unknown`.split(/\s+/);

test("of all permissions the page has the two that copying and pasting need, and nothing else has any", () => {
  expect(PERMISSIONS).toHaveLength(46);
  const made = ["", "constructor", "__proto__", "clipboard", "all"];
  const granted = [...PERMISSIONS, ...made].filter((permission) => mayUse(permission, true));
  expect(granted).toEqual(["clipboard-read", "clipboard-sanitized-write"]);
  expect(PERMISSIONS.filter((permission) => mayUse(permission, false))).toEqual([]);
});

test("only the top frame of a known window with the own address is believed", () => {
  const own = { isKnown: true, isTopFrame: true, address: WINDOW_ADDRESS };
  expect(isTrusted(own)).toBe(true);
  expect(isTrusted({ ...own, isKnown: false })).toBe(false);
  expect(isTrusted({ ...own, isTopFrame: false })).toBe(false);
  expect(isTrusted({ ...own, address: undefined })).toBe(false);
  for (const address of ELSEWHERE) expect([address, isTrusted({ ...own, address })]).toEqual([address, false]);
});

describe("the command line", () => {
  test("opens documents by absolute path, and nothing else", () => {
    const given = ["a.loadside", "--flag", "-x.loadside", "notes.txt", "app://x/y.loadside", "https://x/y.loadside"];
    expect(filesAmong([...given, "/b/c.loadside", "../d.loadside", ""], "/home/me")).toEqual([
      "/home/me/a.loadside",
      "/b/c.loadside",
      "/home/d.loadside",
    ]);
    expect(filesAmong(Array(50).fill("a.loadside"), "/")).toHaveLength(20);
  });

  test("of a second start is believed in its shape only", () => {
    expect(filesHandedOver({ files: ["/a.loadside"] })).toEqual(["/a.loadside"]);
    const bad = [
      "a.loadside",
      "../a.loadside",
      "/a/../b.loadside",
      "/a.txt",
      7,
      null,
      {},
      ["/a.loadside"],
      "/a\0.loadside",
    ];
    expect(filesHandedOver({ files: bad })).toEqual([]);
    for (const junk of [undefined, null, 7, "x", [], {}, { files: "/a.loadside" }, { files: { 0: "/a.loadside" } }]) {
      expect(filesHandedOver(junk)).toEqual([]);
    }
    expect(filesHandedOver({ files: Array(50).fill("/a.loadside") })).toHaveLength(20);
  });

  test.each([
    "/a.LOADSIDE",
    "/a.loadside.exe",
    "/a",
    "/.loadside",
    "javascript:x.loadside",
    `/${"a".repeat(40_000)}.loadside`,
  ])("takes %j for no document", (path) => expect(isDocumentPath(path)).toBe(false));

  test.each(["C:\\x.loadside", "\\\\server\\share\\x.loadside", "/x y/ü.loadside"])("takes %j for one", (path) =>
    expect(isDocumentPath(path)).toBe(true),
  );

  test.each([
    "--inspect",
    "--inspect-brk=0.0.0.0:1",
    "--INSPECT",
    "--remote-debugging-port=1",
    "--remote-debugging-pipe",
    "--js-flags=--expose-gc",
    "--no-sandbox",
    "--disable-web-security",
    "--disable-site-isolation-trials",
    "--enable-blink-features=X",
    "--load-extension=/x",
    "--proxy-server=x",
    "--host-rules=MAP * x",
    "--ignore-certificate-errors",
  ])("of the packaged program refuses %s", (arg) => {
    expect(refusedSwitch(["a.loadside", arg], true)).toBe(arg);
    expect(refusedSwitch([arg], false)).toBeUndefined();
  });

  test("of the packaged program takes the usual ones", () => {
    expect(
      refusedSwitch(["a.loadside", "--force-device-scale-factor=2", "--ozone-platform=wayland"], true),
    ).toBeUndefined();
  });
});

describe("a name to save under", () => {
  test.each([
    ["house.loadside", "house.loadside"],
    ["house", "house.loadside"],
    ["a/b\\c:d", "abcd.loadside"],
    ["../../etc/passwd", "etcpasswd.loadside"],
    ["..", "drawing.loadside"],
    [".hidden.loadside", "hidden.loadside"],
    ["", "drawing.loadside"],
    ["a\u0000b\u001fc\u007fd", "abcd.loadside"],
    ["a\u202Eedisdaol.b\u2066c\u200F", "aedisdaol.bc.loadside"],
    ["Küche 1. OG", "Küche 1. OG.loadside"],
    ["\u{1F50C}".repeat(200), `${"\u{1F50C}".repeat(120)}.loadside`],
  ])("%j becomes %j", (suggested, name) => expect(safeName(suggested)).toBe(name));

  test("gets the ending where the person left it away", () => {
    expect(withEnding("/a/b.loadside")).toEqual({ path: "/a/b.loadside", asChosen: true });
    expect(withEnding("/a/b")).toEqual({ path: "/a/b.loadside", asChosen: false });
    expect(withEnding("/a/b.txt")).toEqual({ path: "/a/b.txt.loadside", asChosen: false });
  });

  test("of what is made of a drawing has the ending of its kind", () => {
    expect(safeName("../house job folder", ".pdf")).toBe("house job folder.pdf");
    expect(safeName("house.loadside", ".csv")).toBe("house.loadside.csv");
    expect(safeName("a.png", ".png")).toBe("a.png");
    expect(withEnding("/a/b.pdf", ".pdf")).toEqual({ path: "/a/b.pdf", asChosen: true });
    // A drawing that a person points at is never written over by a picture of it.
    expect(withEnding("/a/b.loadside", ".pdf")).toEqual({ path: "/a/b.loadside.pdf", asChosen: false });
  });
});

describe("a file from outside", () => {
  const window = (id: number, part: Partial<OpenWindow> = {}): OpenWindow => ({
    id,
    file: undefined,
    edited: false,
    focusedAt: id,
    ...part,
  });

  test("is shown where it is open, even with edits", () => {
    const windows = [window(1), window(2, { file: "/a", edited: true })];
    expect(whereToOpen("/a", windows)).toEqual({ kind: "show", id: 2 });
  });

  test("goes into the free window that was used last", () => {
    expect(whereToOpen("/a", [window(3), window(9), window(4)])).toEqual({ kind: "reuse", id: 9 });
  });

  test("gets a window of its own where each has work or another file", () => {
    expect(whereToOpen("/a", [window(1, { edited: true }), window(2, { file: "/b" })])).toEqual({ kind: "new-window" });
    expect(whereToOpen("/a", [])).toEqual({ kind: "new-window" });
  });
});

test.each([
  [{ mayClose: false, listens: true, edited: true, asked: false }, "ask"],
  [{ mayClose: false, listens: true, edited: true, asked: true }, "insist"],
  [{ mayClose: false, listens: true, edited: false, asked: false }, "close"],
  [{ mayClose: false, listens: false, edited: true, asked: false }, "close"],
  [{ mayClose: true, listens: true, edited: true, asked: true }, "close"],
] as const)("closing %j: %s", (window, step) => expect(closeStep(window)).toBe(step));

/** Reasons of `render-process-gone` in the type declarations of Electron 45.4.1. */
test.each([
  ["clean-exit", "nothing", "nothing"],
  ["abnormal-exit", "reload", "ask"],
  ["killed", "reload", "ask"],
  ["crashed", "reload", "ask"],
  ["oom", "reload", "ask"],
  ["launch-failed", "ask", "ask"],
  ["integrity-failure", "ask", "ask"],
  ["memory-eviction", "reload", "ask"],
])("after %s: %s the first time, %s soon after", (reason, first, again) => {
  expect(afterCrash(reason, 100_000, undefined)).toBe(first);
  expect(afterCrash(reason, 100_000, 40_001)).toBe(again);
  expect(afterCrash(reason, 100_000, 40_000)).toBe(first);
});
