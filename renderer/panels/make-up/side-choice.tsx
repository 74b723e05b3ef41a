import { useId } from "react";
import { wording } from "./words.ts";

interface Props {
  /** What is asked about, for its name: "C2". */
  readonly name: string;
  readonly protect: boolean;
  readonly onChange: (protect: boolean) => void;
  readonly disabled?: boolean;
}

/** Behind the ground-fault device, or left on LINE: two radio buttons. */
export function SideChoice({ name, protect, onChange, disabled = false }: Props) {
  const id = useId();
  return (
    <div className="make-up-sides" role="radiogroup" aria-label={wording.sideOf(name)}>
      {[true, false].map((side) => (
        <label key={String(side)} className="make-up-side">
          <input
            type="radio"
            name={id}
            checked={protect === side}
            disabled={disabled}
            onChange={() => onChange(side)}
          />
          {side ? wording.loadLong : wording.lineLong}
        </label>
      ))}
    </div>
  );
}
