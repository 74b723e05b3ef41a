interface Props<K extends string> {
  readonly title: string;
  readonly options: readonly (readonly [K, string])[];
  readonly chosen: K | undefined;
  readonly onChoose: (key: K) => void;
}

/** One of few, all in sight: pressed is what holds. */
export const Choice = <K extends string>({ title, options, chosen, onChoose }: Props<K>) => (
  <fieldset className="survey-choice">
    <legend>{title}</legend>
    <span className="survey-usual">
      {options.map(([key, words]) => (
        <button
          key={key}
          type="button"
          className="button small"
          aria-pressed={chosen === key}
          onClick={() => onChoose(key)}
        >
          {words}
        </button>
      ))}
    </span>
  </fieldset>
);
