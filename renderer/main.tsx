import "@fontsource-variable/atkinson-hyperlegible-next/wght.css";
import "./theme.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { startChecks } from "./analysis/checks.ts";
import { allowOwnWorkers } from "./analysis/trusted-worker.ts";
import { App } from "./app.tsx";
import { followTheme } from "./platform/theme.ts";
import { guardUnsavedWork } from "./platform/unsaved-work.ts";
import { startClipboard } from "./state/clipboard.ts";
import { openDialog } from "./state/dialog-store.ts";
import { files } from "./state/files.ts";
import { preferencesStore } from "./state/preferences-store.ts";

const root = document.getElementById("root");
if (root === null) throw new Error("The page has no place for the window.");

followTheme();
guardUnsavedWork();
allowOwnWorkers();
startChecks();
startClipboard();
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
if (!preferencesStore.get().cautionsRead) openDialog({ kind: "cautions" });
files.openStartFile();
