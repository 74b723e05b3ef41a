import { startTransition, useEffect, useState } from "react";
import "./panels/fold.css";
import { NoticeBar } from "./panels/notice-bar.tsx";
import { StatusLine } from "./panels/status-line.tsx";
import { TitleStrip } from "./panels/title-strip.tsx";
import { afterPaint } from "./platform/after-paint.ts";
import { fetchLater } from "./sheet/later.ts";
import { Sheet } from "./sheet/sheet.tsx";
import { isFolded } from "./state/folding.ts";
import { preferencesStore } from "./state/preferences-store.ts";
import { useStore } from "./state/use-store.ts";
import { ErrorBoundary } from "./ui/error-boundary.tsx";
import { wording } from "./words/words.ts";

type Beside = typeof import("./panels/beside.ts")["parts"];

/**
 * A drawing with everything around it: title strip, stock, sheet, pane, status line. Fetched once it is needed. The
 * drawing comes first; what stands beside it is built in small turns after it, so that neither waits for the other.
 */
export default function Workbench() {
  // What they say in lengths is written anew when lengths are read in another way.
  const lengths = useStore(preferencesStore, (state) => state.lengths);
  const left = useStore(preferencesStore, isFolded.left);
  const right = useStore(preferencesStore, isFolded.right);
  const beside = useBeside();
  return (
    <div className="window">
      <TitleStrip />
      <nav data-region data-folded={left || undefined} className="stock region" aria-label={wording.stockAndOutline}>
        <ErrorBoundary what={wording.theLeftPane}>
          {isThere(beside) ? <beside.LeftPane key={lengths} /> : beside && <NotFetched />}
        </ErrorBoundary>
      </nav>
      <main data-region className="sheet-region" tabIndex={-1} aria-label={wording.sheet}>
        <ErrorBoundary what={wording.theSheet}>
          <Sheet />
        </ErrorBoundary>
        <NoticeBar />
      </main>
      <aside
        data-region
        data-folded={right || undefined}
        className="pane region"
        aria-label={wording.detailsFindingsAndRooms}
      >
        <ErrorBoundary what={wording.thePane}>
          {isThere(beside) ? <beside.SidePane key={lengths} /> : beside && <NotFetched />}
        </ErrorBoundary>
      </aside>
      <StatusLine />
      {isThere(beside) && <beside.PickDialog />}
      {isThere(beside) && <beside.TourHost />}
    </div>
  );
}

async function fetchBeside(): Promise<Beside> {
  const { parts } = await import("./panels/beside.ts");
  return parts;
}

/** What stands beside the sheet, once the sheet was built and it has come. */
function useBeside(): Beside | "failed" | undefined {
  const [beside, setBeside] = useState<Beside | "failed">();
  useEffect(() => {
    const bring = (): void => {
      fetchBeside().then(
        (fetched) => {
          startTransition(() => setBeside(fetched));
          // Not with the panes: both at once would make the window miss a frame.
          afterPaint(() => fetchLater().catch(() => setBeside("failed")));
        },
        () => setBeside("failed"),
      );
    };
    // The drawing answers to a hand before anything else is built.
    afterPaint(() => afterPaint(bring));
  }, []);
  return beside;
}

const isThere = (beside: Beside | "failed" | undefined): beside is Beside =>
  beside !== undefined && beside !== "failed";

/** The drawing goes on without its panes: it can be saved. */
function NotFetched(): never {
  throw new Error("A part of the window could not be fetched. Save the drawing and load the window again.");
}
