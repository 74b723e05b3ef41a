import { amendableRules } from "../catalog/amendable-rules.ts";
import { catalogue, type Part } from "../lib/catalogue.ts";
import { inSentence } from "../lib/in-sentence.ts";
import type { Amendment, Project } from "../model/project.ts";
import { takesFractions, unitOfValue, valueWords } from "../model/value-unit.ts";
import { byKind, numberFrom, record, textUpTo } from "./args-shape.ts";
import type { CommandArgs } from "./command-args.ts";
import { defineCommand, type Refusal, refusal } from "./define-command.ts";

type Args = CommandArgs["set-amendment"];

const wording = catalogue({
  amend: (value: Part, rule: Part) => `Amend ${value} of ${rule}`,
  count: (value: Part) => `“${value}” is a count. Give a whole number.`,
  negative: (value: Part) => `“${value}” cannot be less than nothing. Give 0 or more.`,
  noName: "Say who requires it: the authority, the by-law, or the person.",
  noReason: "Say why it is amended. The reason is shown with every finding that it touches.",
  noRule: (rule: Part) => `There is no rule “${rule}”. Choose one of the list of rules.`,
  noValue: (rule: Part, value: Part, values: Part) =>
    `The rule “${rule}” reads no number “${value}”. It reads ${values}.`,
  noValues: (rule: Part) => `The rule “${rule}” reads no number that could be another. It can only be switched off.`,
  off: (rule: Part) => `Switch off ${rule} by local amendment`,
  quoted: (name: Part) => `“${name}”`,
  same: "This amendment is there already, word for word.",
  tooMuch: (value: Part, unit: Part) => `“${value}” is told in ${unit}. Give at most 1000.`,
});

const MOST = 1_000_000;
const ruleText = textUpTo(200);

/** Whether an amendment changes a value of a rule, or without a value whether it switches the rule off. */
export const changesThat = ({ rule, change }: Amendment, ofRule: string, value: string | undefined): boolean =>
  rule === ofRule && (change.kind === "off" ? value === undefined : change.name === value);

/** Judges the drawing by what the authority has amended, with the reason that is told wherever it matters. */
export const setAmendment = defineCommand<Args>({
  id: "set-amendment",
  args: record<Args>({
    rule: ruleText,
    change: byKind({ off: {}, value: { name: ruleText, value: numberFrom(-MOST, MOST) } }),
    reason: textUpTo(2_000),
    by: textUpTo(200),
  }),
  label: (_project, { rule, change }) =>
    change.kind === "off" ? wording.off(rule) : wording.amend(inSentence(valueWords(change.name)), rule),
  refuse(project, { rule, change, reason, by }) {
    const no = change.kind === "off" ? ruleRefusal(rule) : valueRefusal(rule, change);
    if (no !== undefined) return no;
    if (reason.trim() === "") return refusal("reason-required", wording.noReason);
    if (by.trim() === "") return refusal("name-required", wording.noName);
    return isThere(project, { rule, change, reason, by }) ? refusal("nothing-to-change", wording.same) : undefined;
  },
  apply(draft, { rule, change, reason, by }, before) {
    const amendment = { rule, change, reason: reason.trim(), by: by.trim() };
    const value = change.kind === "value" ? change.name : undefined;
    const first = before.amendments.findIndex((one) => changesThat(one, rule, value));
    if (first < 0) draft.amendments.push(amendment);
    // A file may hold several for one thing: the last was in force, and this takes the place of all of them.
    else
      draft.amendments = before.amendments.flatMap((one, index) =>
        index === first ? [amendment] : changesThat(one, rule, value) ? [] : [one],
      );
  },
});

function ruleRefusal(rule: string): Refusal | undefined {
  if (Object.hasOwn(amendableRules, rule)) return undefined;
  return refusal("unknown-rule", wording.noRule(rule));
}

function valueRefusal(rule: string, { name, value }: Extract<Amendment["change"], { kind: "value" }>) {
  const no = ruleRefusal(rule);
  if (no !== undefined) return no;
  const names = amendableRules[rule] ?? [];
  if (names.length === 0) return refusal("no-value", wording.noValues(rule));
  if (!names.includes(name))
    return refusal("unknown-value", wording.noValue(rule, name, names.map(wording.quoted).join(", ")));
  if (value < 0) return refusal("not-a-value", wording.negative(valueWords(name)));
  if (!Number.isInteger(value) && !takesFractions(name)) return refusal("not-a-value", wording.count(valueWords(name)));
  if (name.endsWith("Percent") && value > 1_000)
    return refusal("not-a-value", wording.tooMuch(valueWords(name), unitOfValue(name) ?? ""));
  return undefined;
}

const isThere = ({ amendments }: Project, { rule, change, reason, by }: Args): boolean => {
  const same = amendments.filter((one) => changesThat(one, rule, change.kind === "value" ? change.name : undefined));
  const [only] = same;
  if (same.length !== 1 || only === undefined) return false;
  const sameValue = only.change.kind === "off" || (change.kind === "value" && only.change.value === change.value);
  return sameValue && only.reason === reason.trim() && only.by === by.trim();
};
