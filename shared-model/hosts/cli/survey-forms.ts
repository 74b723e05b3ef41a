import type { SurveyAnswer, SurveyProposal } from "../../answers/survey.ts";
import { onOneLine } from "../../format/json-path.ts";
import { table } from "./table.ts";

/** A survey as a person reads it. */
export function surveyAsText(title: string, answer: SurveyAnswer): string {
  const { cables, contradiction, surviving, rejected, notProved, next, others, refused, setAside, mismatches } = answer;
  const lines = [`${title}: ${answer.left} of ${answer.atStart} possible wirings left`];
  lines.push(DRAWN_WORDS[answer.itemsFrom]);
  lines.push(...answer.known.map(({ cable, words }) => `${cables.find(({ id }) => id === cable)?.name}: ${words}`));
  if (contradiction !== undefined) {
    lines.push(contradiction.words);
    contradiction.doubt.forEach((set, index) => {
      lines.push(`${index === 0 ? "Doubt first" : "Or doubt"}: ${set.join("; and ")}`);
    });
    for (const { words, against } of contradiction.leastBad) {
      lines.push(`Least bad: ${words}.`);
      lines.push(...against.map((one) => `  against it: ${one}`));
    }
    lines.push(...contradiction.lookFor);
  } else {
    lines.push(
      ...table([
        ["cable", "is", ""],
        ...cables.map(({ name, role, may }) =>
          [name, role?.words ?? "not known", role === undefined ? `${may.length} roles left` : "settled"].map(
            onOneLine,
          ),
        ),
      ]),
    );
    if (!answer.settled) lines.push(...surviving.slice(0, 6).map(({ weight, words }) => `${percent(weight)} ${words}`));
    lines.push(...rejected.map(({ reason }) => reason));
  }
  lines.push(...notProved.map((one) => `Not proved: ${one}`));
  lines.push(...mismatches.map(({ words }) => `Differs: ${words}`));
  lines.push(...setAside.map(({ index, reason }) => `Reading ${index + 1} does not count: ${reason}`));
  if (next !== undefined) lines.push("", ...proposalLines("Next test", next, answer.left));
  for (const one of others) lines.push(`Or: ${one.words} (${leavesWords(one, answer.left)})`);
  lines.push(...refused.map(({ words, reason }) => `Refused: ${words}. ${reason}`));
  lines.push("", ...answer.holdPoints.map(({ id, words }) => `${id} ${words}`));
  lines.push(...answer.cautions.map(({ id, words }) => `${id} ${words}`), "");
  return lines.map(onOneLine).join("\n");
}

function proposalLines(head: string, next: SurveyProposal, left: number): readonly string[] {
  return [
    `${head}: ${next.words} (${leavesWords(next, left)})`,
    next.why,
    ...next.steps.map(
      ({ arrangement, hold, words }) => `  ${arrangement}${hold === undefined ? "" : ` HOLD ${hold}`} ${words}`,
    ),
  ];
}

const leavesWords = ({ atMost, minutes }: SurveyProposal, left: number): string =>
  `${atMost === undefined ? "shows what is likelier" : `leaves at most ${atMost} of ${left}`}, about ${Math.ceil(minutes)} min`;

/** Whether what is drawn is used. */
const DRAWN_WORDS: Readonly<Record<SurveyAnswer["itemsFrom"], string>> = {
  drawing:
    "What the cables may lead to is taken from the drawing; which of them leads where is not: a drawing is no reading.",
  person: "What the cables may lead to is as listed by a person; the drawing is not used.",
  nowhere: "What the cables lead to is not known: the drawing does not show it, and nobody listed it.",
};

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
