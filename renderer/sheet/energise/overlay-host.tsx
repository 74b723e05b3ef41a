import { lazy, Suspense } from "react";
import { energiseStore } from "../../state/energise/energise-store.ts";
import { useStore } from "../../state/use-store.ts";

const EnergiseOverlay = lazy(() => import("./energise-overlay.tsx"));

/** What lies over the sheet while it is energised. It is fetched then: most drawings are opened without. */
export function EnergiseOverlayHost() {
  const on = useStore(energiseStore, (state) => state.on);
  return (
    on && (
      <Suspense fallback={null}>
        <EnergiseOverlay />
      </Suspense>
    )
  );
}
