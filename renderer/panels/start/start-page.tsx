import { lazy, Suspense } from "react";
import { files } from "../../state/files.ts";
import { ErrorBoundary } from "../../ui/error-boundary.tsx";
import { NoticeBar } from "../notice-bar.tsx";
import type { BoxPicture } from "./box-picture-type.ts";
import { Continue } from "./continue.tsx";
import { RecentList } from "./recent-list.tsx";
import { SampleList } from "./sample-list.tsx";
import { StartStrip } from "./start-strip.tsx";
import { TemplateList } from "./template-list.tsx";
import { TourOffer } from "./tour-offer.tsx";
import { wording } from "./words.ts";

const NewBox = lazy(() => import("./new-box.tsx"));

/** What the window shows while nothing is open, and whenever it is asked for. */
export function StartPage({ picture }: { readonly picture: BoxPicture }) {
  return (
    <div className="start">
      <StartStrip />
      <aside data-region className="start-side" aria-label={wording.continueOpenOrLookAtA}>
        <TourOffer />
        <Continue />
        <RecentList />
        <section className="start-part" aria-labelledby="start-new">
          <h2 id="start-new">{wording.newDrawing}</h2>
          <div className="start-row">
            <button type="button" className="button" onClick={files.startNew}>
              {wording.emptyDrawing}
            </button>
            <span className="dim">{wording.aBareSheetAndTheStock}</span>
          </div>
        </section>
        <TemplateList />
        <SampleList />
      </aside>
      <main data-region className="start-sheet" aria-label={wording.newFromWhatISee}>
        <NoticeBar />
        <ErrorBoundary what={wording.theForm}>
          <Suspense fallback={<p className="dim">{wording.fetchingTheForm}</p>}>
            <NewBox picture={picture} />
          </Suspense>
        </ErrorBoundary>
      </main>
    </div>
  );
}
