import "@fontsource-variable/atkinson-hyperlegible-next/wght.css";
import "./theme.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { languageTag } from "../shared-model/lib/language.ts";
import { beginChecks, fetchReader, startChecks } from "./analysis/checks.ts";
import { allowOwnWorkers } from "./analysis/trusted-worker.ts";
import { App, workbench } from "./app.tsx";
import { afterPaint } from "./platform/after-paint.ts";
import { desktopBridge } from "./platform/desktop-bridge.ts";
import { startDesktopShell } from "./platform/desktop-shell.ts";
import { isStartFileNamed } from "./platform/start-file.ts";
import { followTheme } from "./platform/theme.ts";
import { guardUnsavedWork } from "./platform/unsaved-work.ts";
import { startClipboard } from "./state/clipboard.ts";
import { openDialog } from "./state/dialog-store.ts";
import { files } from "./state/files.ts";
import { offerUnsavedWork, startJournal } from "./state/journal-here.ts";
import { startPictures } from "./state/pictures-here.ts";
import { preferencesStore } from "./state/preferences-store.ts";
import { keepSelectionTrue, tellHeldBack } from "./state/shown-state.ts";
import { awaitStartFile, leaveStartWhenWorking } from "./state/start.ts";
import { runWindowCommand } from "./state/window-commands.ts";

const root = document.getElementById("root");
if (root === null) throw new Error("The page has no place for the window.");

document.documentElement.lang = languageTag();
allowOwnWorkers();
startChecks();
keepSelectionTrue();
tellHeldBack();
leaveStartWhenWorking();
startJournal();
if (desktopBridge !== undefined) startDesktopShell(desktopBridge, { ...files, run: runWindowCommand });
// Both are on their way while the window is built; who else waits for a file does not wait for the drawing.
const opening = files.openStartFile();
if (isStartFileNamed() || desktopBridge !== undefined) void awaitStartFile(opening);
// A drawing is seen first and checked then: the start of the checks would take the time that the drawing needs.
if (isStartFileNamed()) {
  fetchReader().catch(() => undefined);
  void workbench.fetch();
  opening.finally(() => afterPaint(() => afterPaint(beginChecks)));
} else beginChecks();
opening.then(offerUnsavedWork);
followTheme();
guardUnsavedWork();
startClipboard();
startPictures(() => import("./sheet/sheet-picture.ts"));
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
if (!preferencesStore.get().cautionsRead) openDialog({ kind: "cautions" });
