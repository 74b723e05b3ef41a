import { catalogue } from "../lib/catalogue.ts";
import type { Acknowledgement } from "../model/project.ts";
import { SEVERITIES } from "../model/severity.ts";
import { type Check, isPlainText, oneOf, record, stateName, textUpTo } from "./args-shape.ts";
import { argsWording, forms } from "./args-words.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, refusal } from "./define-command.ts";
import { installationOr } from "./find-or-refuse.ts";

type Args = CommandArgs["acknowledge-finding"];

const wording = catalogue({
  acknowledge: "Acknowledge a finding",
  noMessage: "Say what the finding says. Give its message.",
  noName: "Say who acknowledges it. Write a name.",
  noReason: "Say why it is acceptable. Write a reason.",
});

const findingText: Check = (value, at) =>
  typeof value === "string" && value.trim() !== "" && value.length <= 8_000 && isPlainText(value)
    ? undefined
    : argsWording.isNot(at, forms.findingKey);

/** "2026-05-04T10:20:30Z", with or without parts of a second, in any zone; a day that the calendar has. */
const isoTime: Check = (value, at) => {
  const good =
    typeof value === "string" &&
    /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d([.]\d{1,9})?)?(Z|[+-]\d\d:\d\d)$/.test(value) &&
    !Number.isNaN(Date.parse(value)) &&
    isDay(value.slice(0, 10));
  return good ? undefined : argsWording.isNot(at, forms.time);
};

/** Some readers of times turn 30 February into 2 March. */
const isDay = (day: string): boolean => new Date(`${day}T00:00:00Z`).toISOString().startsWith(day);

/**
 * A person's word that a finding is known and accepted, with who and why. A second word on the same finding takes the
 * place of the first.
 */
export const acknowledgeFinding = defineCommand<Args>({
  id: "acknowledge-finding",
  args: record<Args>({
    finding: findingText,
    state: stateName,
    by: textUpTo(100),
    reason: textUpTo(500),
    at: isoTime,
    said: textUpTo(8_000),
    severity: oneOf(SEVERITIES),
  }),
  label: () => wording.acknowledge,
  refuse(project, { state, by, reason, said }) {
    const { no } = installationOr(project, state);
    if (no !== undefined) return no;
    if (by.trim() === "") return refusal("name-required", wording.noName);
    if (reason.trim() === "") return refusal("reason-required", wording.noReason);
    if (said.trim() === "") return refusal("message-required", wording.noMessage);
    return undefined;
  },
  apply(draft, { finding, state, by, reason, at, said, severity }, before) {
    const word: Acknowledgement = { finding, state, by: by.trim(), reason: reason.trim(), at, said, severity };
    const index = before.acknowledgements.findIndex((one) => one.finding === finding && one.state === state);
    if (index < 0) draft.acknowledgements.push(word);
    else draft.acknowledgements[index] = word;
  },
});
