import { lazy, Suspense } from "react";
import { files } from "../../state/files.ts";
import { ErrorBoundary } from "../../ui/error-boundary.tsx";
import { NoticeBar } from "../notice-bar.tsx";
import type { BoxPicture } from "./box-picture-type.ts";
import { Continue } from "./continue.tsx";
import { RecentList } from "./recent-list.tsx";
import { SampleList } from "./sample-list.tsx";
import { StartStrip } from "./start-strip.tsx";

const NewBox = lazy(() => import("./new-box.tsx"));

/** What the window shows while nothing is open, and whenever it is asked for. */
export function StartPage({ picture }: { readonly picture: BoxPicture }) {
  return (
    <div className="start">
      <StartStrip />
      <aside data-region className="start-side" aria-label="Continue, open or look at a sample">
        <Continue />
        <RecentList />
        <section className="start-part" aria-labelledby="start-new">
          <h2 id="start-new">New drawing</h2>
          <div className="start-row">
            <button type="button" className="button" onClick={files.startNew}>
              Empty drawing
            </button>
            <span className="dim">a bare sheet and the stock</span>
          </div>
        </section>
        <SampleList />
      </aside>
      <main data-region className="start-sheet" aria-label="New from what I see">
        <NoticeBar />
        <ErrorBoundary what="The form">
          <Suspense fallback={<p className="dim">Fetching the form.</p>}>
            <NewBox picture={picture} />
          </Suspense>
        </ErrorBoundary>
      </main>
    </div>
  );
}
