import { startTransition, useEffect, useState } from "react";
import { LeftPane } from "./panels/left-pane.tsx";
import { NoticeBar } from "./panels/notice-bar.tsx";
import { PickDialog } from "./panels/pick/pick-dialog.tsx";
import { SidePane } from "./panels/side-pane.tsx";
import { StatusLine } from "./panels/status-line.tsx";
import { TitleStrip } from "./panels/title-strip.tsx";
import { Sheet } from "./sheet/sheet.tsx";
import { ErrorBoundary } from "./ui/error-boundary.tsx";

/**
 * A drawing with everything around it: title strip, stock, sheet, pane, status line. Fetched once it is needed. The
 * drawing comes first; what stands beside it is built in small turns after it, so that neither waits for the other.
 */
export default function Workbench() {
  const [isDrawn, setDrawn] = useState(false);
  useEffect(() => startTransition(() => setDrawn(true)), []);
  return (
    <div className="window">
      <TitleStrip />
      <nav data-region className="stock region" aria-label="Stock and outline">
        <ErrorBoundary what="The left pane">{isDrawn && <LeftPane />}</ErrorBoundary>
      </nav>
      <main data-region className="sheet-region" aria-label="Sheet">
        <ErrorBoundary what="The sheet">
          <Sheet />
        </ErrorBoundary>
        <NoticeBar />
      </main>
      <aside data-region className="pane region" aria-label="Details, findings and rooms">
        <ErrorBoundary what="The pane">{isDrawn && <SidePane />}</ErrorBoundary>
      </aside>
      <StatusLine />
      {isDrawn && <PickDialog />}
    </div>
  );
}
