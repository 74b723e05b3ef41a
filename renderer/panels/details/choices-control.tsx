import type { Choice } from "../../../shared-model/commands/catalog/properties.ts";
import { inSentence } from "../../../shared-model/lib/in-sentence.ts";
import type { ControlProps } from "./control-props.ts";
import { wording } from "./words.ts";

type Props = ControlProps & { readonly choices: readonly Choice[] };

const listOf = (value: unknown): readonly string[] =>
  Array.isArray(value) ? value.filter((one): one is string => typeof one === "string") : [];

/** Several of the choices, each once. */
export function ChoicesControl({ property, value, choices, onChange }: Props) {
  const chosen = listOf(value);
  const words = choices.filter((choice) => chosen.includes(choice.value)).map(({ label }) => label);
  return (
    <details className="choices">
      <summary>
        {property.label} <small>{words.length === 0 ? wording.none : words.join(", ")}</small>
      </summary>
      <fieldset>
        <legend className="unseen">{property.label}</legend>
        {choices.map((choice) => (
          <label key={choice.value} className="check">
            <input
              type="checkbox"
              checked={chosen.includes(choice.value)}
              onChange={({ target }) => {
                const next = choices
                  .map((one) => one.value)
                  .filter((one) => (one === choice.value ? target.checked : chosen.includes(one)));
                onChange(next.length === 0 && property.optional ? null : next);
              }}
            />
            {choice.label}
          </label>
        ))}
      </fieldset>
    </details>
  );
}

/** A list in which a choice may stand several times: one line each, and one to add. */
export function RepeatsControl({ property, value, choices, onChange }: Props) {
  const chosen = listOf(value);
  const set = (next: readonly string[]): void => onChange(next.length === 0 && property.optional ? null : next);
  return (
    <fieldset className="repeats">
      <legend>{property.label}</legend>
      {inPlaces(chosen).map(({ one, place, key }) => (
        <div key={key} className="repeat">
          <span>{choices.find((choice) => choice.value === one)?.label ?? one}</span>
          <button
            type="button"
            className="button small"
            onClick={() => set(chosen.filter((_, other) => other !== place))}
          >
            {wording.takeOff}
            <span className="unseen"> {one}</span>
          </button>
        </div>
      ))}
      <select
        className="field small"
        aria-label={wording.addTo2(inSentence(property.label))}
        value=""
        onChange={({ target }) => target.value !== "" && set([...chosen, target.value])}
      >
        <option value="">{wording.addOne}</option>
        {choices.map((choice) => (
          <option key={choice.value} value={choice.value}>
            {choice.label}
          </option>
        ))}
      </select>
    </fieldset>
  );
}

/** Equal values differ by their place alone. */
const inPlaces = (chosen: readonly string[]) => chosen.map((one, place) => ({ one, place, key: `${place} ${one}` }));
