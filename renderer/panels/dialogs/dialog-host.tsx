import { lazy, Suspense } from "react";
import { dialogStore } from "../../state/dialog-store.ts";
import { useStore } from "../../state/use-store.ts";
import { ErrorBoundary } from "../../ui/error-boundary.tsx";
import { wording } from "../words.ts";
import type { ExamplePictures } from "./wrong-and-right.tsx";

const OpenDialog = lazy(() => import("./open-dialog.tsx"));

/** The dialog that is open, if one is. */
export function DialogHost({ examples }: { readonly examples: ExamplePictures }) {
  const open = useStore(dialogStore, ({ kind }) => kind !== "none");
  if (!open) return null;
  return (
    <ErrorBoundary what={wording.theDialog}>
      <Suspense fallback={null}>
        <OpenDialog examples={examples} />
      </Suspense>
    </ErrorBoundary>
  );
}
