import type { ScopeChange, ScopeDifference, ScopeLabel } from "../../answers/scope.ts";
import { catalogue, type Part } from "../../lib/catalogue.ts";
import type { StepDraft } from "./step-draft.ts";

const CLOSE_WORDS = catalogue({
  fix: (bearer: Part, text: Part) => `Fix a label to ${bearer}: “${text}”.`,
  itSaid: (text: Part) => `It said “${text}”.`,
  leave: (bearer: Part, text: Part) => `Leave a slip at ${bearer}: “${text}”.`,
  record: "Write the test record: what was found, by which instrument, when and by whom.",
  show: "Show the customer TEST and RESET, where to reset, and what stays as it was; hand over the record.",
  strike: (line: Part) => `Strike ${line} out of the panel directory.`,
  write: (line: Part, text: Part) => `Write in the panel ${line}: “${text}”.`,
});

/** Stage 15: labels, slips, the directory, the record, and the hand-over. None where there is nothing to close. */
export function closeSteps({ boxes, elsewhere }: ScopeDifference, labels: readonly ScopeLabel[]): readonly StepDraft[] {
  const isWork = boxes.some(({ work }) => work !== "not-opened");
  const written = elsewhere.filter(({ item }) => item.kind === "directory");
  const steps: readonly StepDraft[] = [
    ...labels.map(
      ({ key, kind, wording, on, box, because }): StepDraft => ({
        id: `label:${key}`,
        stage: 15,
        kind: "label",
        ...(box !== undefined && { box }),
        items: [{ kind: on.kind === "outlet" ? "device" : on.kind, id: on.id.split("/")[0] ?? on.id, name: on.name }],
        text: kind === "reset-slip" ? CLOSE_WORDS.leave(on.name, wording) : CLOSE_WORDS.fix(on.name, wording),
        details: [because],
        ...(kind === "required" && { cautions: ["LIM3", "LIM4"] as const }),
      }),
    ),
    ...written.map(directory),
  ];
  if (!isWork) return steps;
  return [
    ...steps,
    {
      id: "record-after",
      stage: 15,
      kind: "write-down",
      text: CLOSE_WORDS.record,
    },
    {
      id: "hand-over",
      stage: 15,
      kind: "write-down",
      sign: true,
      text: CLOSE_WORDS.show,
    },
  ];
}

function directory({ item, was, will }: ScopeChange): StepDraft {
  return {
    id: `directory:${item.id}`,
    stage: 15,
    kind: "label",
    items: [{ kind: "device", id: item.id, name: item.name }],
    text: will === undefined ? CLOSE_WORDS.strike(item.name) : CLOSE_WORDS.write(item.name, will.words),
    details: was === undefined ? [] : [CLOSE_WORDS.itSaid(was.words)],
  };
}
