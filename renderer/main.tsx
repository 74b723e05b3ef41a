import "@fontsource-variable/atkinson-hyperlegible-next/wght.css";
import "./theme.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { startChecks } from "./analysis/checks.ts";
import { allowOwnWorkers } from "./analysis/trusted-worker.ts";
import { App } from "./app.tsx";
import { desktopBridge } from "./platform/desktop-bridge.ts";
import { startDesktopShell } from "./platform/desktop-shell.ts";
import { followTheme } from "./platform/theme.ts";
import { guardUnsavedWork } from "./platform/unsaved-work.ts";
import { startClipboard } from "./state/clipboard.ts";
import { openDialog } from "./state/dialog-store.ts";
import { files } from "./state/files.ts";
import { offerUnsavedWork, startJournal } from "./state/journal-here.ts";
import { preferencesStore } from "./state/preferences-store.ts";
import { runWindowCommand } from "./state/window-commands.ts";

const root = document.getElementById("root");
if (root === null) throw new Error("The page has no place for the window.");

followTheme();
guardUnsavedWork();
allowOwnWorkers();
startChecks();
startClipboard();
startJournal();
if (desktopBridge !== undefined) startDesktopShell(desktopBridge, { ...files, run: runWindowCommand });
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
if (!preferencesStore.get().cautionsRead) openDialog({ kind: "cautions" });
files.openStartFile().then(offerUnsavedWork);
