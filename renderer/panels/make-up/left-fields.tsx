import type { LeftOnLine } from "../../../shared-model/answers/make-up.ts";
import type { CableId } from "../../../shared-model/model/ids.ts";
import { wording } from "./words.ts";

interface Props {
  readonly cable: CableId;
  readonly name: string;
  readonly wanting: readonly string[];
  readonly left: readonly LeftOnLine[];
  readonly onChange: (left: readonly LeftOnLine[]) => void;
}

/** Who decided that a cable stays unprotected although something beyond it asks for protection, and why. */
export function LeftFields({ cable, name, wanting, left, onChange }: Props) {
  const now = left.find((one) => one.cable === cable) ?? { cable, by: "", reason: "" };
  const set = (part: Partial<LeftOnLine>): void => {
    const next = { ...now, ...part };
    const others = left.filter((one) => one.cable !== cable);
    onChange(next.by === "" && next.reason === "" ? others : [...others, next]);
  };
  return (
    <div className="make-up-left">
      <p>{wording.asks(wanting.join(", "), wanting.length)}</p>
      <label>
        {wording.decidedBy}
        <input
          className="field small"
          aria-label={wording.decidedByFor(name)}
          maxLength={100}
          value={now.by}
          onChange={({ target }) => set({ by: target.value })}
        />
      </label>
      <label>
        {wording.because}
        <input
          className="field small"
          aria-label={wording.becauseFor(name)}
          maxLength={500}
          value={now.reason}
          onChange={({ target }) => set({ reason: target.value })}
        />
      </label>
    </div>
  );
}
