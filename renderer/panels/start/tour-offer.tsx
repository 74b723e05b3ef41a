import { useKeys } from "../../state/keys/keys.ts";
import { preferencesStore } from "../../state/preferences-store.ts";
import { declineTour, startTour } from "../../state/tour.ts";
import { useStore } from "../../state/use-store.ts";
import { TOUR_WORDS } from "../tour/tour-words.ts";

/** Offers the tour until it was taken or declined once. */
export function TourOffer() {
  const seen = useStore(preferencesStore, ({ tourSeen }) => tourSeen);
  const [next, find] = [useKeys("next-region"), useKeys("find-anything")];
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
      {next !== undefined && find !== undefined && <span className="dim tour-keys">{TOUR_WORDS.keys(next, find)}</span>}
    </p>
  );
}
