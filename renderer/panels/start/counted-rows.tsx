import type { Counted } from "../../state/new-box.ts";
import { Stepper } from "../../ui/stepper.tsx";
import { wording } from "./words.ts";

interface Props {
  /** Word before the first row. */
  readonly first: string;
  /** Words between a number and a kind, for one and for more: "cable of", "cables of". */
  readonly joint?: readonly [string, string];
  readonly one: string;
  readonly many: string;
  readonly choices: readonly { readonly id: string; readonly title: string }[];
  readonly rows: readonly Counted[];
  /** How many more there may be in all. */
  readonly free: number;
  readonly onChange: (rows: readonly Counted[]) => void;
}

/** How many of which kind, a line a kind. */
export function CountedRows({ first, joint, one, many, choices, rows, free, onChange }: Props) {
  const set = (at: number, row: Counted): void => onChange(rows.map((each, index) => (index === at ? row : each)));
  const other = choices.find(({ id }) => rows.every((row) => row.id !== id));
  return (
    <>
      {rows.map(({ id, count }, at) => {
        const kind = choices.find((each) => each.id === id)?.title ?? id;
        const which = rows.length > 1 ? ` ${at + 1}` : "";
        return (
          <p className="seen-line" key={id}>
            <span className="seen-word">{at === 0 ? first : wording.andWord}</span>
            <Stepper
              label={wording.ofWord(many, kind)}
              value={count}
              least={0}
              most={count + free}
              onChange={(next) => set(at, { id, count: next })}
            />
            <span className="seen-pair">
              {joint && <span>{joint[count === 1 ? 0 : 1]}</span>}
              <select
                className="field pick-wide"
                aria-label={wording.kindOf(one, which)}
                value={id}
                onChange={({ target }) => set(at, { id: target.value, count })}
              >
                {choices.map((each) => (
                  <option
                    key={each.id}
                    value={each.id}
                    disabled={each.id !== id && rows.some((row) => row.id === each.id)}
                  >
                    {each.title}
                  </option>
                ))}
              </select>
            </span>
            {rows.length > 1 && (
              <button
                type="button"
                className="button"
                onClick={() => onChange(rows.filter((_, index) => index !== at))}
              >
                {wording.takeAway}
                <span className="unseen"> {kind}</span>
              </button>
            )}
            {at === rows.length - 1 && other !== undefined && (
              <button
                type="button"
                className="link"
                disabled={free < 1}
                onClick={() => onChange([...rows, { id: other.id, count: 1 }])}
              >
                {wording.anotherKindOf(one)}
              </button>
            )}
          </p>
        );
      })}
    </>
  );
}
