import { lazy, Suspense } from "react";
import { type MakeUpState, madeOf, makeUpStore } from "../../state/make-up/make-up-store.ts";
import { useStore } from "../../state/use-store.ts";

const MakeUpPreview = lazy(() => import("./preview-parts.ts"));

const isShown = (state: MakeUpState): boolean => state.preview && madeOf(state) !== undefined;

/** What a make-up would move, while it is looked at on the sheet. What draws it is fetched then. */
export function MakeUpPreviewHost() {
  const shown = useStore(makeUpStore, isShown);
  return (
    shown && (
      <Suspense fallback={null}>
        <MakeUpPreview />
      </Suspense>
    )
  );
}
