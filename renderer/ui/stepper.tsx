import { wording } from "./words.ts";

interface Props {
  /** What is counted, for people who hear it: "cables of 12/2 with ground". */
  readonly label: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly onChange: (value: number) => void;
}

/** A small whole number, by keys, by typing, or by pressing one more and one less. */
export function Stepper({ label, value, least, most, onChange }: Props) {
  const set = (next: number): void => {
    if (Number.isInteger(next)) onChange(Math.min(most, Math.max(least, next)));
  };
  return (
    <span className="stepper">
      <button
        type="button"
        aria-label={wording.oneLess(label)}
        disabled={value <= least}
        onClick={() => set(value - 1)}
      >
        <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
          <path d="M1.5 6H10.5" stroke="currentColor" strokeWidth="1.6" />
        </svg>
      </button>
      <input
        type="number"
        className="fig"
        aria-label={label}
        min={least}
        max={most}
        value={value}
        onChange={({ target }) => target.value !== "" && set(Number(target.value))}
      />
      <button type="button" aria-label={wording.oneMore(label)} disabled={value >= most} onClick={() => set(value + 1)}>
        <svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
          <path d="M1.5 6H10.5M6 1.5V10.5" stroke="currentColor" strokeWidth="1.6" />
        </svg>
      </button>
    </span>
  );
}
