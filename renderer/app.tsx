import { useEffect } from "react";
import { DialogHost } from "./panels/dialogs/dialog-host.tsx";
import { NoticeBar } from "./panels/notice-bar.tsx";
import { SidePane } from "./panels/side-pane.tsx";
import { StatusLine } from "./panels/status-line.tsx";
import { Stock } from "./panels/stock/stock.tsx";
import { TitleStrip } from "./panels/title-strip.tsx";
import { useFileDrop } from "./panels/use-file-drop.ts";
import { useWindowKeys } from "./panels/use-window-keys.ts";
import { Sheet } from "./sheet/sheet.tsx";
import { keepSelectionTrue, tellHeldBack } from "./state/shown-state.ts";
import { ErrorBoundary } from "./ui/error-boundary.tsx";

/** The window: title strip, stock, sheet, pane, status line. */
export function App() {
  useWindowKeys();
  useFileDrop();
  useEffect(keepSelectionTrue, []);
  useEffect(tellHeldBack, []);
  return (
    <div className="window">
      <TitleStrip />
      <nav data-region className="stock region" aria-label="Stock">
        <ErrorBoundary what="The stock">
          <Stock />
        </ErrorBoundary>
      </nav>
      <main data-region className="sheet-region" aria-label="Sheet">
        <ErrorBoundary what="The sheet">
          <Sheet />
        </ErrorBoundary>
        <NoticeBar />
      </main>
      <aside data-region className="pane region" aria-label="Details, findings and rooms">
        <ErrorBoundary what="The pane">
          <SidePane />
        </ErrorBoundary>
      </aside>
      <StatusLine />
      <DialogHost />
    </div>
  );
}
