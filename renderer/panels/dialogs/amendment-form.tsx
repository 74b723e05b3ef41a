import { useEffect, useId, useRef, useState } from "react";
import type { BookRule } from "../../../shared-model/answers/rule-book.ts";
import type { Amendment } from "../../../shared-model/model/project.ts";
import { SEVERITIES } from "../../../shared-model/model/severity.ts";
import { valueWords } from "../../../shared-model/model/value-unit.ts";
import { amend, backingWords, type Change, figureTyped, figureWords } from "../../state/amending.ts";
import { SEVERITY_WORDS } from "../../state/finding-groups.ts";
import { preferencesStore } from "../../state/preferences-store.ts";
import { Refused } from "../refused.tsx";
import { wording } from "./words.ts";

interface Props {
  readonly book: readonly BookRule[];
  /** The one that is edited: its rule and what it changes stay. */
  readonly edited: Amendment | undefined;
  readonly onDone: () => void;
}

const OFF = "off";
const NO_RULE = wording.chooseTheRuleThatIsAmended;
const NO_FIGURE = wording.giveTheNumberThatHoldsInstead;

/** Makes an amendment, or edits one: rule, what changes, the figure, the reason, and who asks for it. */
export function AmendmentForm({ book, edited, onDone }: Props) {
  const id = useId();
  const change = edited?.change;
  const [ruleId, setRuleId] = useState(edited?.rule ?? "");
  const [what, setWhat] = useState(change?.kind === "value" ? change.name : OFF);
  const [figure, setFigure] = useState(change?.kind === "value" ? String(change.value) : "");
  const [reason, setReason] = useState(edited?.reason ?? "");
  const [by, setBy] = useState(edited?.by ?? preferencesStore.get().authority);
  const [refusal, setRefusal] = useState<string>();
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    if (edited !== undefined) form.current?.querySelector<HTMLElement>("input, textarea")?.focus();
  }, [edited]);
  const rule = book.find((one) => one.id === ruleId);
  const value = rule?.values.find(({ name }) => name === what);
  const submit = (): void => {
    const made = changeOf(what, figure);
    if (rule === undefined || made === undefined) {
      setRefusal(rule === undefined ? NO_RULE : NO_FIGURE);
      return;
    }
    const done = amend(rule.id, made, reason, by);
    setRefusal(done.ok ? undefined : done.refusal.message);
    if (!done.ok) return;
    setRuleId("");
    setWhat(OFF);
    setFigure("");
    setReason("");
    onDone();
  };
  return (
    <form
      ref={form}
      className="amendment-form"
      aria-label={edited === undefined ? wording.newAmendment : wording.editTheAmendment}
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <label htmlFor={`${id}rule`}>{wording.rule}</label>
      <select
        id={`${id}rule`}
        className="field small"
        value={ruleId}
        disabled={edited !== undefined}
        onChange={({ target }) => {
          setRuleId(target.value);
          setWhat(OFF);
        }}
      >
        <option value="">{wording.chooseARule}</option>
        {SEVERITIES.map((severity) => (
          <optgroup key={severity} label={SEVERITY_WORDS[severity]}>
            {book.flatMap((one) =>
              one.severity === severity ? (
                <option key={one.id} value={one.id}>
                  {one.summary.replace(/\.$/, "")}
                </option>
              ) : (
                []
              ),
            )}
          </optgroup>
        ))}
      </select>
      <label htmlFor={`${id}what`}>{wording.whatIsAmended}</label>
      <select
        id={`${id}what`}
        className="field small"
        value={what}
        disabled={edited !== undefined}
        onChange={({ target }) => setWhat(target.value)}
      >
        <option value={OFF}>{wording.theRuleIsSwitchedOff}</option>
        {rule?.values.map(({ name, value: held, unit }) => (
          <option key={name} value={name}>
            {wording.byTheEdition(valueWords(name), figureWords(held, unit))}
          </option>
        ))}
      </select>
      {value !== undefined && (
        <>
          <label htmlFor={`${id}figure`}>
            {wording.holdsInstead}
            {value.unit === undefined ? "" : `, ${value.unit}`}
          </label>
          <input
            id={`${id}figure`}
            className="field small"
            inputMode="decimal"
            autoComplete="off"
            aria-describedby={`${id}backing`}
            value={figure}
            onChange={({ target }) => setFigure(target.value)}
          />
          <p id={`${id}backing`} className="dim amendment-note">
            {wording.theEdition(figureWords(value.value, value.unit), backingWords(value))}
          </p>
        </>
      )}
      <label htmlFor={`${id}why`}>{wording.reason}</label>
      <textarea
        id={`${id}why`}
        className="field small"
        rows={2}
        value={reason}
        onChange={({ target }) => setReason(target.value)}
      />
      <label htmlFor={`${id}by`}>{wording.requiredBy}</label>
      <input
        id={`${id}by`}
        className="field small"
        autoComplete="off"
        value={by}
        onChange={({ target }) => setBy(target.value)}
      />
      {what === OFF && rule?.severity === "danger" && (
        <p className="amendment-note">{wording.thisRuleLooksForADanger}</p>
      )}
      <div className="amendment-buttons">
        <button type="submit" className="button small">
          {edited === undefined ? wording.makeTheAmendment : wording.changeTheAmendment}
        </button>
        {edited !== undefined && (
          <button type="button" className="button small" onClick={onDone}>
            {wording.leaveItAsItWas}
          </button>
        )}
      </div>
      <Refused message={refusal} />
    </form>
  );
}

function changeOf(what: string, figure: string): Change | undefined {
  if (what === OFF) return { kind: "off" };
  const value = figureTyped(figure);
  return value === undefined ? undefined : { kind: "value", name: what, value };
}
