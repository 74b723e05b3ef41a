import { useId } from "react";
import type { SupplyAnswer } from "../../../shared-model/answers/supply.ts";
import type { SeenBox } from "../../state/new-box.ts";
import { wording } from "./words.ts";

interface Props {
  readonly seen: SeenBox;
  readonly onChange: (seen: SeenBox) => void;
  /** What would be drawn, or why nothing can be; undefined while it is asked for. */
  readonly panel: SupplyAnswer | undefined;
}

/** Whether the panel of the supply is drawn with the box: nobody has read its breaker, and the words say so. */
export function PanelChoice({ seen, onChange, panel }: Props) {
  const id = useId();
  const { panel: _before, ...rest } = seen;
  if (panel?.ok === false)
    return (
      <span className="dim" role="note">
        {wording.itsPanelIsNotDrawn(panel.why)}
      </span>
    );
  return (
    <span className="seen-pair">
      <label htmlFor={id}>{wording.itsPanel}</label>
      <select
        id={id}
        className="field pick-panel"
        value={seen.panel ?? "draw"}
        onChange={({ target }) => onChange(target.value === "draw" ? rest : { ...rest, panel: "left-out" })}
      >
        <option value="draw">
          {panel === undefined ? wording.drawItBreakerNotRead : wording.drawItWithBreaker(panel.ratingA)}
        </option>
        <option value="left-out">{wording.leaveItOut}</option>
      </select>
    </span>
  );
}
