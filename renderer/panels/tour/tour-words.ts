import { wording } from "./words.ts";
export const TOUR_WORDS = {
  name: wording.tourOfTheWindow,
  next: wording.next,
  back: wording.back,
  done: wording.done,
  leave: wording.leaveTheTour,
  offer: wording.newHere,
  take: wording.tourInFiveSteps,
  decline: wording.noThanks,
  keys: wording.byKeys,
} as const;

export const stepOf = (step: number, of: number): string => wording.stepOf(step, of);
