import { memo } from "react";
import type { BoxItem } from "./box-items.ts";
import { asButton } from "./svg-roles.ts";

/**
 * What takes presses and focus in a box: one invisible area per cable, device, splice and conductor end, each with its
 * full name. Arrow keys go from one to the other; the active one is where they begin.
 */
export const ItemsLayer = memo(function ItemsLayer({
  items,
  active,
  resting,
}: {
  readonly items: readonly BoxItem[];
  readonly active: string | undefined;
  /** While something is held its targets take the presses. */
  readonly resting: boolean;
}) {
  return (
    <g className={resting ? "sheet-items sheet-items-resting" : "sheet-items"}>
      {items.map(({ key, subject, name, area }) => (
        <g
          key={key}
          {...asButton(name)}
          data-active={key === active || undefined}
          aria-haspopup="menu"
          className={`sheet-item sheet-item-${subject.kind} nodrag nopan`}
          data-item={key}
        >
          <rect className="sheet-hit" {...area} rx={subject.kind === "device" ? 10 : 7} />
        </g>
      ))}
    </g>
  );
});
