import type { MakeUpTold } from "../../state/make-up/make-up-store.ts";
import { wording } from "./words.ts";

/** What came of the answers, in one breath. */
export function spokenOutcome(told: MakeUpTold | undefined, trouble: string | undefined): string {
  if (trouble !== undefined) return trouble;
  if (told === undefined) return "";
  const { result } = told.answer;
  if ("refused" in result) return `${wording.notPossible}. ${result.refused.message}`;
  const { moves, replaced } = result.made;
  const count =
    moves.ends.length === 0 && replaced.length === 0
      ? told.answer.room === undefined
        ? wording.alreadySo
        : wording.onlyTheBox
      : `${wording.moves(moves.detach, moves.attach, moves.newSplices)}.`;
  const { verdict } = result.made.fill.after;
  const fill = verdict === "fits" ? wording.fits : verdict === "overfull" ? wording.notFits : "";
  return [count, fill === "" ? "" : `${wording.fill}: ${fill}.`].filter(Boolean).join(" ");
}
