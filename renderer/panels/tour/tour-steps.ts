import { wording } from "./words.ts";
/** A step of the tour: the region that it points at, by selector, and what it says of it. */
export interface TourStep {
  readonly region: string;
  readonly title: string;
  readonly text: string;
}

export const TOUR_STEPS: readonly TourStep[] = [
  {
    region: ".stock.region",
    title: wording.takeWhatIsThereFromThe,
    text: wording.pressABoxThenPressThe,
  },
  {
    region: ".sheet-region",
    title: wording.landEveryEndOnTheSheet,
    text: wording.pressAConductorEndThenThe,
  },
  {
    region: ".pane.region",
    title: wording.detailsWhatItIsAndHow,
    text: wording.whateverIsSelectedShowsItsFill,
  },
  {
    region: ".pane.region [role='tab']:nth-child(2)",
    title: wording.findingsFollowEveryStep,
    text: wording.dangerViolationCautionOrAdviceWith,
  },
  {
    region: ".strip-command",
    title: wording.findAnythingByTyping,
    text: wording.everyCommandPartRoomAndFinding,
  },
];
