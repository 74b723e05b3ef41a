import { preferencesStore } from "../../state/preferences-store.ts";
import { declineTour, startTour } from "../../state/tour.ts";
import { useStore } from "../../state/use-store.ts";
import { TOUR_WORDS } from "../tour/tour-words.ts";

/** Offers the tour until it was taken or declined once. */
export function TourOffer() {
  const seen = useStore(preferencesStore, ({ tourSeen }) => tourSeen);
  if (seen) return null;
  return (
    <p className="tour-offer">
      <span>{TOUR_WORDS.offer}</span>
      <button type="button" className="button" onClick={startTour}>
        {TOUR_WORDS.take}
      </button>
      <button type="button" className="link" onClick={declineTour}>
        {TOUR_WORDS.decline}
      </button>
    </p>
  );
}
