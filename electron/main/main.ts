/** The desktop program: puts its parts together and hands them what the operating system says. */
import { basename, join } from "node:path";
import { app, protocol, session } from "electron";
import type { ChosenKeys } from "../../shared-model/commands/catalog/keys.ts";
import { replaceFile } from "../../shared-model/hosts/atomic-file.ts";
import { createDocuments } from "./documents.ts";
import { guardSession } from "./guard-session.ts";
import { createHandlers } from "./handlers.ts";
import { showMenus } from "./menu.ts";
import { filesAmong, filesHandedOver, isDocumentPath, refusedSwitch } from "./policies/command-line.ts";
import { SCHEME } from "./policies/own-address.ts";
import { openRecentList, recentId } from "./recent-files.ts";
import { serveRequests, tell } from "./serve-requests.ts";
import { serveWindow } from "./serve-window.ts";
import { createWindows } from "./windows.ts";

/** Beside this file in every build: `dist/main`, `dist/preload`, `dist/window`. */
const DIST = join(__dirname, "..");
const args = process.argv.slice(app.isPackaged ? 1 : 2);
const given = filesAmong(args, process.cwd());
/** A file that the operating system asks for before the windows can be made. */
const early: string[] = [...given];

// Before the lock: the name says where it is, and whose.
app.setName("Loadside");
const refused = refusedSwitch(args, app.isPackaged);
if (refused !== undefined) {
  console.error(`Loadside does not start with ${refused}.`);
  app.exit(2);
} else if (!app.requestSingleInstanceLock({ files: given })) {
  // The one that runs already shows the files.
  app.quit();
} else {
  app.enableSandbox();
  protocol.registerSchemesAsPrivileged([
    { scheme: SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
  app.on("open-file", rememberFile);
  app.on("second-instance", rememberHandedOver);
  app
    .whenReady()
    .then(start)
    .catch((error: unknown) => {
      report(error);
      app.exit(1);
    });
}

function rememberFile(event: { preventDefault(): void }, path: string): void {
  event.preventDefault();
  if (isDocumentPath(path)) early.push(path);
}

function rememberHandedOver(_event: unknown, _args: unknown, _folder: unknown, data: unknown): void {
  early.push(...filesHandedOver(data));
}

async function start(): Promise<void> {
  const serve = await serveWindow(join(DIST, "window"));
  protocol.handle(SCHEME, serve);
  guardSession(session.defaultSession, app.isPackaged);

  const recent = await openRecentList({
    file: join(app.getPath("userData"), "recent-files.json"),
    home: app.getPath("home"),
    replaceFile,
    onChange: () => refreshMenus(),
  });
  const documents = createDocuments({
    replaceFile,
    folder: app.getPath("documents"),
    onUse(path) {
      app.addRecentDocument(path);
      recent.add(path);
    },
  });
  const windows = createWindows({
    preload: join(DIST, "preload", "preload.cjs"),
    onClosed: (window) => documents.forgetAll(window),
  });
  let keys: ChosenKeys = {};
  const onKeys = (chosen: ChosenKeys): void => {
    keys = chosen;
    refreshMenus();
  };
  serveRequests(createHandlers({ documents, recent, windows, onKeys }), windows.byContents, report);

  function refreshMenus(): void {
    const lines = recent.entries().map(({ path }) => ({ id: recentId(path), name: basename(path) }));
    showMenus(
      { platform: process.platform, isPackaged: app.isPackaged, recent: lines, keys },
      {
        command(id) {
          const window = windows.latest();
          if (window !== undefined) tell(window, "runCommand", { id });
          else if (id === "new-document" || id === "open-document") windows.open();
        },
        action(action) {
          if (action === "new-window") return windows.open();
          app.clearRecentDocuments();
          recent.clear();
        },
        recent(id) {
          const path = recent.pathOf(id);
          if (path !== undefined) windows.openFile(path);
        },
      },
    );
  }
  refreshMenus();

  app.off("open-file", rememberFile);
  app.on("open-file", (event, path) => {
    event.preventDefault();
    if (isDocumentPath(path)) windows.openFile(path);
  });
  app.off("second-instance", rememberHandedOver);
  app.on("second-instance", (_event, _args, _folder, data) => {
    const files = filesHandedOver(data);
    if (files.length === 0) windows.show();
    for (const path of files) windows.openFile(path);
  });
  app.on("activate", () => {
    windows.show();
  });
  app.on("before-quit", () => windows.quitting());
  app.on("window-all-closed", () => {
    if (process.platform !== "darwin") app.quit();
  });

  if (early.length === 0) windows.open();
  for (const path of early) windows.openFile(path);
  console.log("Loadside is open.");
}

function report(error: unknown): void {
  console.error(error);
}
