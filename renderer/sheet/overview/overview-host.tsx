import { lazy, Suspense, useState } from "react";
import { preferencesStore } from "../../state/preferences-store.ts";
import { useStore } from "../../state/use-store.ts";
import type { SheetDrawings } from "../sheet-drawings.ts";

const Overview = lazy(() => import("./overview.tsx"));

/** The overview while it is wanted; fetched then. */
export function OverviewHost({ shown }: { readonly shown: SheetDrawings }) {
  const open = useStore(preferencesStore, ({ overview }) => overview);
  // Remembered from the last time it was not asked for, and leaves the keys where they are.
  const [remembered, setRemembered] = useState(open);
  if (remembered && !open) setRemembered(false);
  return (
    open && (
      <Suspense fallback={null}>
        <Overview shown={shown} isAsked={!remembered} />
      </Suspense>
    )
  );
}
