import type { SurveyAnswer, SurveyProposal } from "../../answers/survey.ts";
import { onOneLine } from "../../format/json-path.ts";
import { table } from "./table.ts";

/** A survey as a person reads it. */
export function surveyAsText(title: string, answer: SurveyAnswer): string {
  const { cables, contradiction, surviving, rejected, notProved, next, others, refused, setAside, mismatches } = answer;
  const lines = [`${title}: ${answer.left} of ${answer.atStart} arrangements left, ${answer.bits.toFixed(2)} bits`];
  if (contradiction !== undefined) {
    lines.push(contradiction.words);
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
  if (next !== undefined) lines.push("", ...proposalLines("Next test", next));
  for (const one of others) lines.push(`Or: ${one.words} (${one.bits.toFixed(2)} bits, cost ${one.cost})`);
  lines.push(...refused.map(({ words, reason }) => `Refused: ${words}. ${reason}`));
  lines.push("", ...answer.holdPoints.map(({ id, words }) => `${id} ${words}`));
  lines.push(...answer.cautions.map(({ id, words }) => `${id} ${words}`), "");
  return lines.map(onOneLine).join("\n");
}

function proposalLines(head: string, { words, bits, cost, why, steps }: SurveyProposal): readonly string[] {
  return [
    `${head}: ${words} (${bits.toFixed(2)} bits, cost ${cost})`,
    why,
    ...steps.map((step) => `  ${step.arrangement}${step.hold === true ? " HOLD" : ""} ${step.words}`),
  ];
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
