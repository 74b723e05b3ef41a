import { type ComponentType, useEffect, useState } from "react";
import { tourStore } from "../../state/tour.ts";
import { useStore } from "../../state/use-store.ts";

/** The tour, while there is one. Its card is fetched when it begins. */
export function TourHost() {
  const step = useStore(tourStore, (state) => state.step);
  const [fetched, setFetched] = useState<ComponentType<{ readonly step: number }>>();
  const wanted = step !== undefined;
  useEffect(() => {
    if (wanted)
      import("./tour.tsx").then(
        (file) => setFetched(() => file.default),
        () => undefined,
      );
  }, [wanted]);
  if (step === undefined || fetched === undefined) return null;
  const Shown = fetched;
  return <Shown step={step} />;
}
