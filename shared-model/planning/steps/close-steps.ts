import type { ScopeChange, ScopeDifference, ScopeLabel } from "../../answers/scope.ts";
import type { StepDraft } from "./step-draft.ts";

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
        text: `${kind === "reset-slip" ? "Leave a slip at" : "Fix a label to"} ${on.name}: “${wording}”.`,
        details: [because],
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
      text: "Write the test record: what was found, by which instrument, when and by whom.",
    },
    {
      id: "hand-over",
      stage: 15,
      kind: "write-down",
      sign: true,
      text: "Show the customer TEST and RESET, where to reset, and what stays as it was; hand over the record.",
    },
  ];
}

function directory({ item, was, will }: ScopeChange): StepDraft {
  return {
    id: `directory:${item.id}`,
    stage: 15,
    kind: "label",
    items: [{ kind: "device", id: item.id, name: item.name }],
    text:
      will === undefined
        ? `Strike ${item.name} out of the panel directory.`
        : `Write in the panel ${item.name}: “${will.words}”.`,
    details: was === undefined ? [] : [`It said “${was.words}”.`],
  };
}
