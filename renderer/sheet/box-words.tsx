import { memo } from "react";
import type { CannotTell, Finding } from "../../shared-model/answers/finding.ts";
import type { Enclosure } from "../../shared-model/model/enclosure.ts";
import type { EnclosureChange } from "../../shared-model/queries/changed-between-states.ts";
import { answerWords } from "../state/answer-words.ts";
import { boxName } from "./item-names.ts";
import { boxWords, wordsId } from "./to-flow.ts";

/** The full name of a box, which its node refers to: drawn by nobody, read to people who hear the sheet. */
export const BoxWords = memo(function BoxWords({
  enclosure,
  change,
  answers,
}: {
  readonly enclosure: Enclosure;
  readonly change: EnclosureChange | undefined;
  readonly answers: readonly (Finding | CannotTell)[];
}) {
  return (
    <desc id={wordsId(enclosure.id)}>{boxName(enclosure, boxWords(enclosure, change), answerWords(answers))}</desc>
  );
});
