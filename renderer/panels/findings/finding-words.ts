import type { Finding, SectionConfidence } from "../../../shared-model/answers/finding.ts";
import { wording } from "./words.ts";

/** Small marks behind what a finding rests on, each explained once at the head of the list and by name to a reader of the screen. */
export const MARKS = {
  unchecked: { sign: "*", words: wording.numberNotCheckedAgainstTheText },
  draft: { sign: "†", words: wording.draftRule },
} as const;

export const FINDING_WORDS = {
  ownRule: wording.ourOwnRule,
  doubtful: wording.doubtful,
  explainTells: wording.explainTellsMore,
} as const;

/** What follows from a finding, or is wrong by the same cause, and is told with it. */
export const foldedWords = (count: number): string => wording.moreByTheSameCause(count);

const UNCHECKED: ReadonlySet<SectionConfidence> = new Set<SectionConfidence>(["from-memory", "unconfirmed"]);

export const isUnchecked = ({ section }: Pick<Finding, "section">): boolean =>
  section !== undefined && UNCHECKED.has(section.confidence);

export const isDraft = ({ status }: Pick<Finding, "status">): boolean => status === "draft";

/** "* number not checked against the text, † draft rule. Explain tells more."; undefined where no finding has a mark. */
export function legendOf(findings: readonly Pick<Finding, "section" | "status">[]): string | undefined {
  const { unchecked, draft } = MARKS;
  const parts = [
    ...(findings.some(isUnchecked) ? [`${unchecked.sign} ${unchecked.words}`] : []),
    ...(findings.some(isDraft) ? [`${draft.sign} ${draft.words}`] : []),
  ];
  return parts.length === 0 ? undefined : `${parts.join(", ")}. ${FINDING_WORDS.explainTells}`;
}
