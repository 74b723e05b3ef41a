import { type Colour, colourKey } from "../../shared-model/units/colour.ts";

/** A short piece of the conductor as made; its letters stand in the name beside it. */
export function Swatch({ colour }: { readonly colour: Colour }) {
  const name = colourKey(colour);
  return (
    <svg width="18" height="8" viewBox="0 0 18 8" aria-hidden="true" className="swatch">
      <rect width="18" height="8" fill={`var(--${name}-case)`} />
      <rect y="1.4" width="18" height="5.2" fill={`var(--${name})`} />
    </svg>
  );
}
